package withy.explain;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import withy.brief.Brief;
import withy.brief.Brief.Landing;
import withy.brief.Brief.Leader;
import withy.brief.Brief.LineKind;
import withy.brief.Brief.Lure;
import withy.brief.Brief.MainLine;
import withy.brief.Brief.Reel;
import withy.brief.BriefDraft;
import withy.brief.UsualReels;
import withy.explain.Demand.Switch;
import withy.rules.DeadLoad;
import withy.units.QuantityText;

/**
 * What fish, lures, line and reel ask of a rod. Fish and landing come before line and leader: how strong a leader must be depends on what is lifted
 * on it.
 */
final class TackleDemands {
    private static final double STANDARD_GRAVITY = 9.80665;
    private static final double HEAVIEST_LURE_G = 500;
    private static final double LIGHTEST_LURE_G = 0.1;
    private static final double LURE_GRID_G = 0.5;
    private static final double STRENGTH_GRID_KG = 0.1;
    private static final double WEAKEST_KG = 0.05;
    private static final double FINEST_MM = 0.03;
    private static final double SMALLEST_FISH_KG = 0.1;

    private final Brief brief;
    private final QuantityText units;
    private final List<Demand> list = new ArrayList<>();

    private TackleDemands(Brief brief, QuantityText units) {
        this.brief = brief;
        this.units = units;
    }

    static List<Demand> of(Brief brief, QuantityText units) {
        TackleDemands demands = new TackleDemands(brief, units);
        demands.lures();
        demands.fish();
        demands.line();
        demands.leader();
        demands.reel();
        return demands.list;
    }

    private void lures() {
        Lure lure = brief.lure();
        add(
                "lure.usual",
                Phrases.of("demand.lure.usual", units.lureMass(lure.usualG())),
                draft -> draft.lure(usual(draft.brief().lure(), HEAVIEST_LURE_G)),
                new Dial(
                        "lure.usual",
                        lure.usualG(),
                        HEAVIEST_LURE_G,
                        LURE_GRID_G,
                        (draft, g) -> draft.lure(usual(draft.brief().lure(), g)),
                        units::lureMass,
                        "g"));
        add(
                "lure.heaviest",
                Phrases.of("demand.lure.heaviest", units.lureMass(lure.heaviestG())),
                draft -> draft.lure(heaviest(draft.brief().lure(), LIGHTEST_LURE_G)),
                new Dial(
                        "lure.heaviest",
                        lure.heaviestG(),
                        LIGHTEST_LURE_G,
                        LURE_GRID_G,
                        (draft, g) -> draft.lure(heaviest(draft.brief().lure(), g)),
                        units::lureMass,
                        "g"));
    }

    private void fish() {
        if (brief.landing() != Landing.LIFTED) {
            return;
        }
        list.add(new Demand(
                "landing",
                "",
                Phrases.of("demand.landing"),
                List.of(draft -> draft.fish(draft.brief().largestFishKg(), Landing.NET)),
                List.of(),
                List.of(new Switch(
                        Phrases.of("repair.landing"),
                        draft -> draft.fish(draft.brief().largestFishKg(), Landing.NET)))));
        add(
                "largestFish",
                Phrases.of("demand.largestFish", kilos(brief.largestFishKg())),
                draft -> draft.fish(SMALLEST_FISH_KG, draft.brief().landing()),
                new Dial(
                        "largestFish",
                        brief.largestFishKg(),
                        SMALLEST_FISH_KG,
                        STRENGTH_GRID_KG,
                        (draft, kg) -> draft.fish(kg, draft.brief().landing()),
                        this::kilos,
                        "kg"));
    }

    private void line() {
        MainLine line = brief.line();
        add(
                "line.strength",
                Phrases.of("demand.line.strength", kilos(line.strengthKg())),
                draft -> draft.line(weakened(draft.brief())),
                new Dial(
                        "line.strength",
                        line.strengthKg(),
                        WEAKEST_KG,
                        STRENGTH_GRID_KG,
                        (draft, kg) -> draft.line(thinner(line, kg)),
                        this::kilos,
                        "kg"));
        if (line.kind() == LineKind.BRAID) {
            Consumer<BriefDraft> nylon = draft -> draft.line(nylon(draft.brief().line()));
            list.add(new Demand(
                    "line.kind",
                    "",
                    Phrases.of("demand.line.kind"),
                    List.of(nylon),
                    List.of(),
                    List.of(new Switch(Phrases.of("repair.line.kind"), nylon))));
        }
    }

    private void leader() {
        Leader leader = brief.leader();
        if (leader == null) {
            return;
        }
        double needed = DeadLoad.leaderNeedsKg(brief);
        List<Switch> stronger = new ArrayList<>();
        if (needed > leader.strengthKg()) {
            double told = Math.ceil(needed / STRENGTH_GRID_KG - 1e-9) * STRENGTH_GRID_KG;
            stronger.add(new Switch(
                    Phrases.of("repair.leader.stronger", kilos(told)), draft -> draft.leader(l -> strength(l, told))));
        }
        list.add(new Demand(
                "leader.strength",
                "",
                Phrases.of("demand.leader.strength", kilos(leader.strengthKg())),
                List.of(draft -> {
                    double least = Math.max(WEAKEST_KG, DeadLoad.leaderNeedsKg(draft.brief()));
                    draft.leader(l -> strength(l, least));
                }),
                List.of(new Dial(
                        "leader.strength",
                        leader.strengthKg(),
                        WEAKEST_KG,
                        STRENGTH_GRID_KG,
                        (draft, kg) -> draft.leader(l -> strength(l, kg)),
                        this::kilos,
                        "kg")),
                stronger));
        if (leader.castThroughRings()) {
            Consumer<BriefDraft> outside =
                    draft -> draft.leader(l -> new Leader(l.strengthKg(), l.diameterMm(), l.knot(), false));
            list.add(new Demand(
                    "leader.knot",
                    "",
                    Phrases.of("demand.leader.knot"),
                    List.of(outside),
                    List.of(),
                    List.of(new Switch(Phrases.of("repair.leader.knot"), outside))));
        }
    }

    private void reel() {
        List<Consumer<BriefDraft>> any = new ArrayList<>();
        any.add(draft -> {});
        List<Switch> others = new ArrayList<>();
        for (Reel reel : UsualReels.of(brief.rodType())) {
            any.add(draft -> draft.reel(reel));
            others.add(new Switch(Phrases.of("repair.reel", reel.sizeClass()), draft -> draft.reel(reel)));
        }
        String words = brief.reel().sizeClass() > 0
                ? Phrases.of("demand.reel", brief.reel().sizeClass())
                : Phrases.of("demand.reel.foot", units.partLength(brief.reel().footLengthMm()));
        list.add(new Demand("reel", "", words, any, List.of(), others));
    }

    private static MainLine weakened(Brief now) {
        double kg = Math.max(WEAKEST_KG, now.leader() == null ? DeadLoad.leaderNeedsKg(now) : 0);
        MainLine line = now.line();
        return new MainLine(
                line.kind(), FINEST_MM, Math.min(line.strengthKg(), kg), line.gauge() == null ? null : 0.01);
    }

    /** A line of less strength is as much thinner as the standard numbers have it: strength goes with the square of the diameter. */
    private static MainLine thinner(MainLine line, double kg) {
        double share = kg / line.strengthKg();
        Double gauge = line.gauge();
        return new MainLine(
                line.kind(), line.diameterMm() * Math.sqrt(share), kg, gauge == null ? null : gauge * share);
    }

    private static MainLine nylon(MainLine line) {
        return new MainLine(LineKind.NYLON, line.diameterMm(), line.strengthKg(), line.gauge());
    }

    /** As much thicker or thinner as a line is: strength goes with the square of the diameter. */
    private static Leader strength(Leader leader, double kg) {
        double mm = leader.diameterMm() * Math.sqrt(kg / leader.strengthKg());
        return new Leader(kg, mm, leader.knot(), leader.castThroughRings());
    }

    private static Lure usual(Lure lure, double g) {
        return new Lure(lure.lightestG(), g, lure.heaviestG());
    }

    private static Lure heaviest(Lure lure, double g) {
        return new Lure(lure.lightestG(), lure.usualG(), g);
    }

    private String kilos(double kg) {
        return units.strength(kg * STANDARD_GRAVITY);
    }

    private void add(String key, String words, Consumer<BriefDraft> drop, Dial... dials) {
        list.add(new Demand(key, "", words, List.of(drop), List.of(dials), List.of()));
    }
}
