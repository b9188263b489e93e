package withy.benchmarks.peer;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.RodType;
import withy.catalog.WrapThread;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.oracle.EveryLayout;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Refusal;
import withy.search.planning.BrokenRules;

/** One brief's question over one catalogue with what every peer may know: the layouts, what may stand where, the rules, the score. */
public final class Question {
    private final Catalog catalog;
    private final Query query;
    private final Scoring scoring;
    private final Style style;
    private final NiceWishes wishes;
    private final List<Part> menu = new ArrayList<>();
    private final List<Layout> layouts;
    private final Map<String, BlankShape> shapes = new HashMap<>();
    private final List<Slot> slots = new ArrayList<>();

    public Question(Catalog catalog, Query query) {
        this.catalog = catalog;
        this.query = query;
        this.scoring = Scoring.of(query.brief(), catalog.rates(), query.priorities());
        this.style = new Style(catalog, query.brief());
        this.wishes = new NiceWishes(query.brief());
        Refusal refusal = new Refusal();
        for (Part part : catalog.byId().values()) {
            query.rulebook().onCandidate(query.brief(), catalog, part, refusal.reset());
            if (!refusal.refused() && usual(part)) {
                menu.add(part);
            }
        }
        List<Setting> settings = EveryLayout.of(catalog, query);
        settings.forEach(setting -> shapes.put(setting.blank().id(), setting.shape()));
        this.layouts = settings.stream().map(Setting::layout).toList();
        fillSlots();
    }

    /**
     * A station with what may stand there; null among the choices = it may be left empty.
     *
     * @param station which
     * @param choices parts, grips at each cut
     */
    public record Slot(Station station, List<@Nullable Choice> choices) {}

    /**
     * A build measured and judged.
     *
     * @param faults how much it breaks, by rule code; empty = legal
     * @param vector its objectives
     * @param score its score
     */
    public record Judged(SortedMap<String, Long> faults, ObjectiveVector vector, long score) {
        public boolean legal() {
            return faults.isEmpty();
        }

        /** All that it breaks. */
        public long broken() {
            return faults.values().stream().mapToLong(Long::longValue).sum();
        }
    }

    /** Measures and judges. */
    public Judged judge(Build build) {
        Rod rod = measure(build);
        BrokenRules tally = new BrokenRules();
        Judge.ask(rod, query.rulebook(), tally);
        ObjectiveVector vector = ObjectiveVector.of(rod, style, wishes);
        return new Judged(tally.broken(), vector, scoring.score(vector));
    }

    /** Measures. */
    public Rod measure(Build build) {
        BlankShape shape = shapes.get(build.layout().blankId());
        return shape == null
                ? Rod.measure(catalog, query.brief(), build)
                : Rod.measure(catalog, query.brief(), build, shape);
    }

    /** Score of a measured rod, legal or not. */
    public long score(Rod rod) {
        return scoring.score(ObjectiveVector.of(rod, style, wishes));
    }

    /** What a bare blank adds to the score. */
    double blankScore(Share blank) {
        return (double) blank.massMg() * scoring.perMg()
                + (double) blank.inertiaMgMm2() * scoring.perMgMm2()
                + (double) blank.costMilli() * scoring.perCostMilli();
    }

    public Catalog catalog() {
        return catalog;
    }

    public Query query() {
        return query;
    }

    /** Parts the brief itself does not refuse. */
    public List<Part> menu() {
        return menu;
    }

    public List<Layout> layouts() {
        return layouts;
    }

    /** Every station from butt to tip, as many guides as the longest train. */
    public List<Slot> slots() {
        return slots;
    }

    /** The build of a layout with one choice a slot; guides beyond its count and butt grips of a full handle are left out. */
    public Build build(Layout layout, List<@Nullable Choice> chosen) {
        SortedMap<Station, Choice> choices = new TreeMap<>();
        for (int i = 0; i < slots.size(); i++) {
            Station station = slots.get(i).station();
            Choice choice = chosen.get(i);
            boolean there = station.number() <= layout.guideCount()
                    && (layout.form() == HandleForm.SPLIT || !station.equals(Station.BUTT_GRIP));
            if (choice != null && there) {
                choices.put(station, choice);
            }
        }
        return new Build(layout, choices);
    }

    private boolean usual(Part part) {
        boolean wished = new TreeSet<>(query.brief().insisted().stream()
                        .map(wish -> wish.partId())
                        .toList())
                .contains(part.id());
        if (part instanceof WrapThread thread) {
            RodType type = query.brief().rodType();
            List<String> letters = catalog.rates().threadLetters().get(type);
            return wished || letters != null && letters.contains(thread.letter());
        }
        return part.kind() != PartKind.FINISH && part.kind() != PartKind.ADHESIVE
                || wished
                || part.id().equals(catalog.rates().houseFinish())
                || part.id().equals(catalog.rates().houseAdhesive());
    }

    private void fillSlots() {
        slot(Station.BUTT_CAP, PartKind.BUTT_CAP, true);
        grips(Station.BUTT_GRIP, List.of(Grip.Place.BUTT), false);
        grips(Station.REAR_GRIP, List.of(Grip.Place.REAR, Grip.Place.FULL), false);
        slot(Station.REAR_CHECK, PartKind.CHECK, true);
        slot(Station.SEAT, PartKind.REEL_SEAT, false);
        slot(Station.HOOD, PartKind.HOOD, true);
        slot(Station.SEAT_ARBORS, PartKind.ARBOR, true);
        slot(Station.FORE_CHECK, PartKind.CHECK, true);
        grips(Station.FORE_GRIP, List.of(Grip.Place.FORE), true);
        slot(Station.WINDING_CHECK, PartKind.CHECK, true);
        slot(Station.KEEPER, PartKind.KEEPER, true);
        int most = layouts.stream().mapToInt(Layout::guideCount).max().orElse(0);
        for (int number = 1; number <= most; number++) {
            slot(Station.guide(number), PartKind.GUIDE, false);
        }
        slot(Station.TIP_TOP, PartKind.TIP_TOP, false);
        slot(Station.THREAD, PartKind.THREAD, false);
        slot(Station.FINISH, PartKind.FINISH, false);
        slot(Station.ADHESIVE, PartKind.ADHESIVE, false);
        slot(Station.DECAL, PartKind.DECAL, query.brief().look().inscription().isEmpty());
    }

    private void slot(Station station, PartKind kind, boolean mayBeEmpty) {
        List<@Nullable Choice> choices = new ArrayList<>();
        for (Part part : menu) {
            if (part.kind() == kind) {
                choices.add(Choice.of(part.id()));
            }
        }
        add(station, choices, mayBeEmpty);
    }

    /** Grips as sold and at every 5 mm down to the shortest; full ones fill their place. */
    private void grips(Station station, List<Grip.Place> places, boolean mayBeEmpty) {
        List<@Nullable Choice> choices = new ArrayList<>();
        for (Part part : menu) {
            if (part instanceof Grip grip && places.contains(grip.place())) {
                if (grip.place() == Grip.Place.FULL) {
                    choices.add(Choice.of(grip.id()));
                } else {
                    cuts(grip, choices);
                }
            }
        }
        add(station, choices, mayBeEmpty);
    }

    private static void cuts(Grip grip, List<@Nullable Choice> to) {
        to.add(new Choice(grip.id(), grip.lengthMm()));
        for (int cut = Layout.GRID_MM; cut < grip.lengthMm(); cut += Layout.GRID_MM) {
            if (cut >= grip.shortestMm()) {
                to.add(new Choice(grip.id(), cut));
            }
        }
    }

    private void add(Station station, List<@Nullable Choice> choices, boolean mayBeEmpty) {
        if (mayBeEmpty || choices.isEmpty()) {
            choices.add(null);
        }
        slots.add(new Slot(station, choices));
    }
}
