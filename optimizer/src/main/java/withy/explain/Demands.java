package withy.explain;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.Handle;
import withy.brief.Brief.Look;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.BriefDraft;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.RodType;
import withy.explain.Demand.Switch;
import withy.objectives.Solver.Query;
import withy.rules.Rulebook;
import withy.units.QuantityText;

/** Everything a brief asks that a build must keep, in the order it is told. Nice wishes are none: they forbid nothing. */
final class Demands {
    private static final String HAND = "hand";
    private static final double SHORTEST_ROD_MM = 900;
    private static final double LONGEST_ROD_MM = 6000;
    private static final double ROD_GRID_MM = 10;
    private static final int MOST_PIECES = 9;
    /** What any reach means: no handle is shorter or longer (ASSUMED); surf rods lie above. */
    private static final double SHORTEST_REACH_MM = 150;

    private static final double LONGEST_REACH_MM = 450;
    private static final double SHORTEST_SURF_REACH_MM = 500;
    private static final double LONGEST_SURF_REACH_MM = 800;
    private static final double REACH_GRID_MM = 5;
    private static final double MOST_BUDGET_TIMES = 20;

    /** One palm in each row of the palm table, mm. */
    private static final double[] PALMS_MM = {75, 85, 95, 105};

    private final Inquiry inquiry;
    private final Brief brief;
    private final QuantityText units;
    private final List<Demand> list = new ArrayList<>();

    private Demands(Inquiry inquiry) {
        this.inquiry = inquiry;
        this.brief = inquiry.brief();
        this.units = inquiry.units();
    }

    static List<Demand> of(Inquiry inquiry) {
        Demands demands = new Demands(inquiry);
        demands.size();
        demands.list.addAll(TackleDemands.of(inquiry.brief(), inquiry.units()));
        demands.classes();
        demands.body();
        demands.handle();
        demands.look();
        demands.trade();
        demands.parts();
        return List.copyOf(demands.list);
    }

    /** The brief without these demands: one, or one for each value that would do where any will do. */
    static Set<Brief> without(Brief brief, List<Demand> dropped) {
        List<Brief> briefs = new ArrayList<>(List.of(brief));
        for (Demand demand : dropped) {
            List<Brief> wider = new ArrayList<>();
            for (Brief so : briefs) {
                for (Consumer<BriefDraft> drop : demand.drops()) {
                    BriefDraft draft = new BriefDraft(so);
                    drop.accept(draft);
                    wider.add(draft.brief());
                }
            }
            briefs = wider;
        }
        return new LinkedHashSet<>(briefs);
    }

    /** A question about the brief without these demands: one, or one for each value that would do; one for all hands. */
    static Set<Query> without(Inquiry inquiry, Query question, List<Demand> dropped) {
        List<Demand> others =
                dropped.stream().filter(demand -> !demand.key().equals(HAND)).toList();
        Rulebook rules = others.size() < dropped.size() ? inquiry.anyHand(question.rulebook()) : question.rulebook();
        Set<Query> questions = new LinkedHashSet<>();
        without(inquiry.brief(), others)
                .forEach(brief -> questions.add(question.withBrief(brief).withRulebook(rules)));
        return questions;
    }

    private void size() {
        add(
                "lengthMm",
                Phrases.of(
                        "demand.lengthMm", units.rodLength(brief.lengthMinMm()), units.rodLength(brief.lengthMaxMm())),
                draft -> draft.length(SHORTEST_ROD_MM, LONGEST_ROD_MM),
                dial(
                        "lengthMm.min",
                        brief.lengthMinMm(),
                        SHORTEST_ROD_MM,
                        ROD_GRID_MM,
                        (draft, mm) -> draft.length(mm, draft.brief().lengthMaxMm())),
                dial(
                        "lengthMm.max",
                        brief.lengthMaxMm(),
                        LONGEST_ROD_MM,
                        ROD_GRID_MM,
                        (draft, mm) -> draft.length(draft.brief().lengthMinMm(), mm)));
        String pieces = brief.piecesMin() < brief.piecesMax()
                ? Phrases.of("demand.pieces", brief.piecesMin(), brief.piecesMax())
                : Phrases.of(brief.piecesMax() == 1 ? "demand.pieces.1" : "demand.pieces.one", brief.piecesMax());
        add(
                "pieces",
                pieces,
                draft -> draft.pieces(1, MOST_PIECES),
                count(
                        "pieces.max",
                        brief.piecesMax(),
                        MOST_PIECES,
                        (draft, n) -> draft.pieces(draft.brief().piecesMin(), (int) Math.round(n))),
                count(
                        "pieces.min",
                        brief.piecesMin(),
                        1,
                        (draft, n) ->
                                draft.pieces((int) Math.round(n), draft.brief().piecesMax())));
        Double packed = brief.packedMaxMm();
        if (packed != null) {
            add(
                    "packedMaxMm",
                    Phrases.of("demand.packedMaxMm", units.partLength(packed)),
                    draft -> draft.packed(null),
                    dial("packedMaxMm", packed, LONGEST_ROD_MM, ROD_GRID_MM, BriefDraft::packed));
        }
    }

    private void classes() {
        if (brief.durabilityClass() > 1) {
            add(
                    "durabilityClass",
                    Phrases.of("demand.durabilityClass", brief.durabilityClass()),
                    draft -> draft.classes(1, draft.brief().corrosionClass()),
                    count(
                            "durabilityClass",
                            brief.durabilityClass(),
                            1,
                            (draft, n) -> draft.classes(
                                    (int) Math.round(n), draft.brief().corrosionClass())));
        }
        if (brief.corrosionClass() > 1) {
            add(
                    "water",
                    Phrases.of("demand.water", brief.corrosionClass()),
                    draft -> draft.classes(draft.brief().durabilityClass(), 1),
                    count(
                            "water",
                            brief.corrosionClass(),
                            1,
                            (draft, n) -> draft.classes(draft.brief().durabilityClass(), (int) Math.round(n))));
        }
    }

    private void body() {
        boolean surf = brief.rodType() == RodType.SURF_SPINNING;
        if (!surf) {
            hand();
        }
        double shortest = Math.min(brief.reachMinMm(), surf ? SHORTEST_SURF_REACH_MM : SHORTEST_REACH_MM);
        double longest = Math.max(brief.reachMaxMm(), surf ? LONGEST_SURF_REACH_MM : LONGEST_REACH_MM);
        add(
                "reachMm",
                Phrases.of(
                        "demand.reachMm", units.partLength(brief.reachMinMm()), units.partLength(brief.reachMaxMm())),
                draft -> draft.reach(shortest, longest),
                dial(
                        "reachMm.min",
                        brief.reachMinMm(),
                        shortest,
                        REACH_GRID_MM,
                        (draft, mm) -> draft.reach(mm, draft.brief().reachMaxMm())),
                dial(
                        "reachMm.max",
                        brief.reachMaxMm(),
                        longest,
                        REACH_GRID_MM,
                        (draft, mm) -> draft.reach(draft.brief().reachMinMm(), mm)));
    }

    /** Barrels of surf rods follow the blank, whoever's hand it is. */
    private void hand() {
        List<Consumer<BriefDraft>> palms = new ArrayList<>();
        palms.add(draft -> {});
        for (double palm : PALMS_MM) {
            palms.add(draft -> draft.palm(palm));
        }
        list.add(new Demand(
                HAND, "", Phrases.of("demand.hand", units.partLength(brief.palmMm())), palms, List.of(), List.of()));
    }

    private void handle() {
        Handle h = brief.handle();
        hard("handle.form", h.form(), draft -> draft.handle(o -> HandleWithout.form(o)));
        hard("handle.foreGrip", h.foreGrip(), draft -> draft.handle(o -> HandleWithout.foreGrip(o)));
        hard("handle.trigger", h.trigger(), draft -> draft.handle(o -> HandleWithout.trigger(o)));
        hard("handle.movingHood", h.movingHood(), draft -> draft.handle(o -> HandleWithout.movingHood(o)));
        hard("handle.keeper", h.keeper(), draft -> draft.handle(o -> HandleWithout.keeper(o)));
        hard("handle.action", h.action(), draft -> draft.handle(o -> HandleWithout.action(o)));
        if (!h.mixedGrips()) {
            plain(
                    "handle.mixedGrips",
                    "",
                    Phrases.of("demand.handle.mixedGrips"),
                    draft -> draft.handle(HandleWithout::oneMaterial));
        }
    }

    private void hard(String key, @Nullable Wish<?> wish, Consumer<BriefDraft> drop) {
        if (wish != null && wish.hard()) {
            plain(key, "", Phrases.of("demand." + key + "." + word(wish.value())), drop);
        }
    }

    static String word(Object value) {
        return value.toString().toLowerCase(Locale.ROOT);
    }

    private void look() {
        for (Material material : brief.look().refusedMaterials()) {
            String name = Phrases.of("material." + material.word());
            plain(
                    "look.refusedMaterials",
                    material.word(),
                    Phrases.of("demand.look.refusedMaterials", name),
                    draft -> draft.look(look -> without(look, material)));
        }
    }

    private static Look without(Look look, Material material) {
        Set<Material> rest = new TreeSet<>(look.refusedMaterials());
        rest.remove(material);
        return new Look(look.theme(), look.likedMaterials(), rest, look.likedColours(), look.inscription());
    }

    private void trade() {
        Long budget = brief.budgetMinor();
        if (budget != null) {
            add(
                    "budgetMinor",
                    Phrases.of("demand.budgetMinor", inquiry.money(budget)),
                    draft -> draft.budget(null),
                    new Dial(
                            "budgetMinor",
                            budget,
                            budget * MOST_BUDGET_TIMES,
                            1,
                            (draft, minor) -> draft.budget(Math.round(minor)),
                            minor -> inquiry.money(Math.round(minor)),
                            "minor"));
        }
        if (brief.wantedBy() != null) {
            int longest = 0;
            for (Part part : inquiry.catalog().byId().values()) {
                Integer days = part.facts().leadDays();
                longest = days == null ? longest : Math.max(longest, days);
            }
            java.time.LocalDate wanted = brief.wantedBy();
            java.time.LocalDate last = inquiry.catalog().asOf().plusDays(longest);
            long days = Math.max(0, java.time.temporal.ChronoUnit.DAYS.between(wanted, last));
            add(
                    "wantedBy",
                    Phrases.of("demand.wantedBy", wanted),
                    draft -> draft.wantedBy(null),
                    new Dial(
                            "wantedBy",
                            0,
                            days,
                            1,
                            (draft, later) -> draft.wantedBy(wanted.plusDays(Math.round(later))),
                            later -> Long.toString(Math.round(later)),
                            "days"));
        }
    }

    private void parts() {
        for (PartWish wish : brief.insisted()) {
            if (wish.hard()) {
                plain(
                        "insisted",
                        wish.partId(),
                        Phrases.of("demand.insisted", inquiry.name(wish.partId())),
                        draft -> draft.parts(all -> without(all, wish), all -> all));
            }
        }
        for (PartWish wish : brief.refused()) {
            if (wish.hard()) {
                plain(
                        "refused",
                        wish.partId(),
                        Phrases.of("demand.refused", inquiry.name(wish.partId())),
                        draft -> draft.parts(all -> all, all -> without(all, wish)));
            }
        }
    }

    private static List<PartWish> without(List<PartWish> all, PartWish one) {
        return all.stream().filter(wish -> !wish.equals(one)).toList();
    }

    private Dial dial(
            String key, double now, double far, double grid, java.util.function.BiConsumer<BriefDraft, Double> set) {
        boolean rod = key.startsWith("lengthMm");
        return new Dial(key, now, far, grid, set, rod ? units::rodLength : units::partLength, "mm");
    }

    private static Dial count(
            String key, double now, double far, java.util.function.BiConsumer<BriefDraft, Double> set) {
        return new Dial(key, now, far, 1, set, n -> Long.toString(Math.round(n)), "");
    }

    private void add(String key, String words, Consumer<BriefDraft> drop, Dial... dials) {
        list.add(new Demand(key, "", words, List.of(drop), List.of(dials), List.of()));
    }

    /** A demand that is only dropped as a whole. */
    private void plain(String key, String about, String words, Consumer<BriefDraft> drop) {
        String repair = Phrases.of("repair." + key, about.isEmpty() ? "" : inquiry.spoken(about));
        list.add(new Demand(key, about, words, List.of(drop), List.of(), List.of(new Switch(repair, drop))));
    }
}
