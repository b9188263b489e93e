package withy.oracle;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.ObjLongConsumer;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Objective;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.PartKind;
import withy.catalog.TipTop;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Refusal;
import withy.rules.Unit;

/**
 * Every build of a small catalogue, one after the other, measured and judged: the oracle the search is held against. Left out are only builds
 * that a layout, one part at its place or two guides in a row already make illegal, and, where told so, all trains of a handle that its own rules
 * refuse.
 */
public final class Enumeration {
    /** Longest butt cap the menu of reel positions reckons with, mm. */
    private static final int LONGEST_CAP_MM = 60;

    private final Catalog catalog;
    private final Query query;
    private final Brief brief;
    private final Menu menu;
    private final Style style;
    private final NiceWishes wishes;
    private final Scoring scoring;
    private final Set<String> forced = new HashSet<>();
    private final boolean prune;
    private final Refusal refusal = new Refusal();

    private Predicate<Build> among = build -> true;
    private @Nullable ObjLongConsumer<Build> visitor;
    private long measured;
    private long bestScore = Long.MAX_VALUE;
    private @Nullable Build best;
    private final List<Legal> legal = new ArrayList<>();
    private int keep;

    /**
     * @param prune true to judge a handle once with one train and to leave out its other trains where its own rules refuse it
     */
    public Enumeration(Catalog catalog, Query query, boolean prune) {
        this.catalog = catalog;
        this.query = query;
        this.brief = query.brief();
        this.menu = new Menu(catalog, query);
        this.style = new Style(catalog, brief);
        this.wishes = new NiceWishes(brief);
        this.scoring = Scoring.of(brief, catalog.rates(), query.priorities());
        this.prune = prune;
        forced.addAll(query.forced());
        if (query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("must"))) {
            brief.insisted().stream().filter(PartWish::hard).forEach(wish -> forced.add(wish.partId()));
        }
    }

    /**
     * What was found.
     *
     * @param best a best legal build, or null where none is legal
     * @param score its score
     * @param builds builds there are
     * @param measured builds measured one by one
     */
    record Found(@Nullable Build best, long score, long builds, long measured) {}

    /** A legal build with its objectives. */
    public record Legal(Build build, ObjectiveVector vector) {}

    /** Every legal build that answers the question. */
    public List<Legal> legal() {
        legal.clear();
        keep = Integer.MAX_VALUE;
        run();
        return List.copyOf(legal);
    }

    /** One of them, or none. */
    List<Legal> some() {
        legal.clear();
        keep = 1;
        run();
        return List.copyOf(legal);
    }

    /** One layout with everything that may stand on it. */
    private record Table(
            Setting setting, Map<Station, List<@Nullable Choice>> handle, long trains, List<@Nullable Choice> threads) {
        long builds() {
            double product = (double) trains * threads.size();
            for (List<@Nullable Choice> choices : handle.values()) {
                product *= choices.size();
            }
            return (long) product;
        }
    }

    /** Looks among some builds only. */
    Enumeration among(Predicate<Build> wanted) {
        among = wanted;
        return this;
    }

    /** Tells every legal build with its score. */
    void eachLegal(ObjLongConsumer<Build> told) {
        visitor = told;
        run();
    }

    /** How many builds there are. */
    public long count() {
        return tables().stream().mapToLong(Table::builds).sum();
    }

    /** Measures them all. */
    Found run() {
        long builds = 0;
        for (Table table : tables()) {
            builds += table.builds();
            List<List<Choice>> trains = new ArrayList<>();
            if (enough()) {
                break;
            }
            guides(table.setting, new ArrayList<>(), trains);
            handle(table, trains, List.copyOf(table.handle.keySet()), 0, new TreeMap<>());
        }
        return new Found(best, bestScore, builds, measured);
    }

    /** True where one was asked for and is found. */
    private boolean enough() {
        return keep == 1 && !legal.isEmpty();
    }

    private List<Table> tables() {
        List<Table> tables = new ArrayList<>();
        for (Blank blank : menu.open(PartKind.BLANK, Blank.class)) {
            if (menu.allowed(Station.BLANK, blank)) {
                BlankShape shape = BlankShape.of(blank);
                for (int foot : feet()) {
                    for (HandleForm form : HandleForm.values()) {
                        counts(tables, shape, foot, form);
                    }
                }
            }
        }
        return tables;
    }

    private void counts(List<Table> tables, BlankShape shape, int foot, HandleForm form) {
        for (int count = 3; count <= Station.MOST_GUIDES; count++) {
            Layout layout = new Layout(shape.blank().id(), foot, form, count);
            Setting setting = Setting.of(catalog, brief, shape, layout);
            query.rulebook().onLayout(setting, refusal.reset());
            if (!refusal.refused()) {
                Table table = table(setting);
                if (table.builds() > 0) {
                    tables.add(table);
                }
            }
        }
    }

    private List<Integer> feet() {
        Integer given = query.reelFootMm();
        if (given != null) {
            return List.of(given);
        }
        List<Integer> feet = new ArrayList<>();
        for (int foot = 5; foot <= brief.reachMaxMm(); foot += 5) {
            if (foot >= brief.reachMinMm() - LONGEST_CAP_MM) {
                feet.add(foot);
            }
        }
        return feet;
    }

    private Table table(Setting setting) {
        boolean split = setting.layout().form() == HandleForm.SPLIT;
        Map<Station, List<@Nullable Choice>> handle = new LinkedHashMap<>();
        handle.put(Station.BUTT_CAP, caps(setting));
        handle.put(Station.BUTT_GRIP, menu.buttGrips(setting.layout().form()));
        handle.put(Station.REAR_GRIP, menu.grips(Station.REAR_GRIP, split ? Grip.Place.REAR : Grip.Place.FULL, false));
        handle.put(Station.REAR_CHECK, menu.at(Station.REAR_CHECK, PartKind.CHECK, true));
        handle.put(Station.SEAT, menu.at(Station.SEAT, PartKind.REEL_SEAT, false));
        handle.put(Station.HOOD, menu.at(Station.HOOD, PartKind.HOOD, true));
        handle.put(Station.SEAT_ARBORS, menu.at(Station.SEAT_ARBORS, PartKind.ARBOR, true));
        handle.put(Station.FORE_CHECK, menu.at(Station.FORE_CHECK, PartKind.CHECK, true));
        handle.put(Station.FORE_GRIP, menu.grips(Station.FORE_GRIP, Grip.Place.FORE, true));
        handle.put(Station.WINDING_CHECK, menu.at(Station.WINDING_CHECK, PartKind.CHECK, true));
        handle.put(Station.KEEPER, menu.at(Station.KEEPER, PartKind.KEEPER, true));
        handle.put(Station.DECAL, menu.decals());
        handle.put(Station.FINISH, menu.at(Station.FINISH, PartKind.FINISH, false));
        handle.put(Station.ADHESIVE, menu.at(Station.ADHESIVE, PartKind.ADHESIVE, false));
        boolean empty = handle.values().stream().anyMatch(List::isEmpty);
        long trains = empty ? 0 : trains(setting, 1, null, new HashMap<>());
        return new Table(setting, handle, trains, menu.at(Station.THREAD, PartKind.THREAD, false));
    }

    /** Caps with which this reel position is within reach (and none), on the grid of limits; all of them where the rule that asks for the reach is left out. */
    private List<@Nullable Choice> caps(Setting setting) {
        if (query.rulebook().rules().stream().noneMatch(rule -> rule.code().equals("handle"))) {
            return menu.at(Station.BUTT_CAP, PartKind.BUTT_CAP, true);
        }
        List<@Nullable Choice> within = new ArrayList<>();
        for (Choice choice : menu.at(Station.BUTT_CAP, PartKind.BUTT_CAP, true)) {
            double added =
                    choice == null ? 0 : ((ButtCap) Objects.requireNonNull(catalog.find(choice.partId()))).addedMm();
            long reach = Unit.MM.quantise(setting.footMm() + added);
            if (reach >= Unit.MM.quantise(brief.reachMinMm()) && reach <= Unit.MM.quantise(brief.reachMaxMm())) {
                within.add(choice);
            }
        }
        return within;
    }

    /** How many trains there are from a guide number on. */
    private long trains(Setting setting, int number, @Nullable Guide rear, Map<String, Long> known) {
        if (number > setting.guideCount()) {
            return tips(setting, Objects.requireNonNull(rear)).size();
        }
        String key = number + "/" + (rear == null ? "" : rear.id());
        Long before = known.get(key);
        if (before != null) {
            return before;
        }
        long sum = 0;
        for (Guide guide : following(setting, number, rear)) {
            sum += trains(setting, number + 1, guide, known);
        }
        known.put(key, sum);
        return sum;
    }

    private void guides(Setting setting, List<Guide> soFar, List<List<Choice>> trains) {
        int number = soFar.size() + 1;
        Guide rear = number == 1 ? null : soFar.get(number - 2);
        if (rear != null && number > setting.guideCount()) {
            for (TipTop tip : tips(setting, rear)) {
                List<Choice> train = new ArrayList<>();
                soFar.forEach(guide -> train.add(Choice.of(guide.id())));
                train.add(Choice.of(tip.id()));
                trains.add(train);
            }
            return;
        }
        for (Guide guide : following(setting, number, rear)) {
            soFar.add(guide);
            guides(setting, soFar, trains);
            soFar.remove(number - 1);
        }
    }

    /** Guides that may stand at a number ahead of another. */
    private List<Guide> following(Setting setting, int number, @Nullable Guide rear) {
        Station station = Station.guide(number);
        List<Guide> guides = new ArrayList<>();
        for (Guide guide : menu.open(PartKind.GUIDE, Guide.class)) {
            if (!menu.allowed(station, guide)) {
                continue;
            }
            query.rulebook().onPart(setting, new Placed(station, guide, setting.guideMm(number), 0), refusal.reset());
            if (!refusal.refused() && rear != null) {
                query.rulebook().onGuides(setting, rear, number - 1, guide, refusal.reset());
            }
            if (!refusal.refused()) {
                guides.add(guide);
            }
        }
        return guides;
    }

    private List<TipTop> tips(Setting setting, Guide last) {
        List<TipTop> tips = new ArrayList<>();
        for (TipTop tip : menu.open(PartKind.TIP_TOP, TipTop.class)) {
            query.rulebook().onTip(setting, last, tip, refusal.reset());
            if (!refusal.refused() && menu.allowed(Station.TIP_TOP, tip)) {
                tips.add(tip);
            }
        }
        return tips;
    }

    private void handle(
            Table table, List<List<Choice>> trains, List<Station> stations, int i, SortedMap<Station, Choice> chosen) {
        if (i == stations.size()) {
            trains(table, trains, chosen);
            return;
        }
        Station station = stations.get(i);
        for (Choice choice : Objects.requireNonNull(table.handle.get(station))) {
            if (enough()) {
                return;
            }
            if (choice == null) {
                handle(table, trains, stations, i + 1, chosen);
            } else {
                chosen.put(station, choice);
                handle(table, trains, stations, i + 1, chosen);
                chosen.remove(station);
            }
        }
    }

    private void trains(Table table, List<List<Choice>> trains, SortedMap<Station, Choice> chosen) {
        boolean first = true;
        for (List<Choice> train : trains) {
            for (int n = 0; n + 1 < train.size(); n++) {
                chosen.put(Station.guide(n + 1), train.get(n));
            }
            chosen.put(Station.TIP_TOP, train.get(train.size() - 1));
            for (Choice thread : table.threads) {
                if (enough()) {
                    drop(chosen, table.setting.guideCount());
                    return;
                }
                chosen.put(Station.THREAD, Objects.requireNonNull(thread));
                boolean kept = build(table.setting, new Build(table.setting.layout(), chosen), first && prune);
                if (first && prune && !kept) {
                    drop(chosen, table.setting.guideCount());
                    return;
                }
                first = false;
            }
        }
        drop(chosen, table.setting.guideCount());
    }

    private static void drop(SortedMap<Station, Choice> chosen, int count) {
        chosen.remove(Station.TIP_TOP);
        chosen.remove(Station.THREAD);
        for (int n = 1; n <= count; n++) {
            chosen.remove(Station.guide(n));
        }
    }

    /** Measures one build; false where its handle is refused whatever train it carries. */
    private boolean build(Setting setting, Build build, boolean askHandle) {
        if (!askHandle && !among.test(build)) {
            return true;
        }
        measured++;
        Rod rod = Rod.measure(setting, build);
        if (askHandle) {
            HandleFaults faults = new HandleFaults();
            Judge.ask(rod, query.rulebook(), faults);
            if (faults.found()) {
                return false;
            }
        }
        ObjectiveVector vector = ObjectiveVector.of(rod, style, wishes);
        long score = scoring.score(vector);
        if (legal.size() < keep && asked(build, vector) && Judge.legal(rod, query.rulebook())) {
            legal.add(new Legal(build, vector));
        }
        ObjLongConsumer<Build> told = visitor;
        if (told != null) {
            if (asked(build, vector) && Judge.legal(rod, query.rulebook())) {
                told.accept(build, score);
            }
            return true;
        }
        if (score < bestScore && among.test(build) && asked(build, vector) && Judge.legal(rod, query.rulebook())) {
            bestScore = score;
            best = build;
        }
        return true;
    }

    private boolean asked(Build build, ObjectiveVector vector) {
        Set<String> used = new HashSet<>(Arrays.asList(build.layout().blankId()));
        build.choices().values().forEach(choice -> used.add(choice.partId()));
        boolean keeps = used.containsAll(forced);
        for (Map.Entry<Objective, Long> ceiling : query.ceilings().entrySet()) {
            keeps &= vector.loss(ceiling.getKey()) <= ceiling.getValue();
        }
        return keeps;
    }
}
