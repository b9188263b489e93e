package withy.rules;

import static withy.rules.Cases.after;
import static withy.rules.Cases.brief;
import static withy.rules.Cases.part;

import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.catalog.Material;
import withy.catalog.SeatEnd;
import withy.fixture.Fixtures;
import withy.rod.Station;

/**
 * Cases of the rules about tackle, water, price and wishes. Limits are the handbook's, common practice; the knot's bulk is from memory; none has a
 * published source.
 */
final class TackleCases {
    private static final Consumer<Fixtures> BY_STRENGTH = f -> f.brief("line.gauge", null);
    private static final Consumer<Fixtures> BY_GAUGE_ALONE = f -> f.brief("leader", null);
    private static final Consumer<Fixtures> LIFTED = f -> f.brief("landing", Brief.Landing.LIFTED);

    private TackleCases() {}

    static void lureAndLine(Cases c) {
        c.rule("lure-range")
                .always("usual", "heaviest", "lightest")
                .number("usual", brief("lure.usualG"), 8, 3, 2.999)
                .number("heaviest", brief("lure.heaviestG"), 14, 15, 15.001)
                .soft("lightest", brief("lure.lightestG"), 4, 2.1, 2.099);
        c.rule("line-class")
                .number("weakest", after(BY_STRENGTH, part("blank", "lineMaxKg")), 5.4, 4.32, 4.319)
                .not("weakest", BY_GAUGE_ALONE)
                .number("main-line", after(BY_STRENGTH, brief("line.strengthKg")), 6.8, 8.1, 8.101)
                .not("main-line", Cases::legal)
                .not("main-line", BY_STRENGTH.andThen(f -> f.brief("line.kind", Brief.LineKind.NYLON)))
                .not("main-line", BY_STRENGTH.andThen(f -> f.brief("leader", null)))
                .soft("light-line", after(BY_STRENGTH, part("blank", "lineMinKg")), 2, 4.32, 4.321)
                .not("light-line", BY_GAUGE_ALONE)
                .number("gauge", brief("line.gauge"), 0.8, 1.2, 1.21)
                .not("gauge", BY_STRENGTH)
                .not("gauge", f -> f.part("blank", "gaugeMax", null))
                .soft("light-gauge", brief("line.gauge"), 0.8, 0.5, 0.49)
                .not("light-gauge", BY_STRENGTH)
                .not("light-gauge", f -> f.part("blank", "gaugeMin", null));
    }

    static void length(Cases c) {
        c.rule("length")
                .always("fewest-pieces", "most-pieces", "blank-longest", "finished-shortest")
                .number("fewest-pieces", brief("piecesMin"), 1, 2, 3)
                .number("most-pieces", brief("piecesMax"), 3, 2, 1)
                .number("blank-longest", brief("lengthMaxMm"), 2150, 2100, 2099.99)
                .number("section-longest", brief("packedMaxMm"), 1200, 1080, 1079.99)
                .not("section-longest", f -> f.brief("packedMaxMm", null))
                // 2100 of blank, 6 of tip-top, 5 of cap
                .number("finished-shortest", brief("lengthMinMm"), 2050, 2111, 2111.01)
                .number("finished-longest", brief("lengthMaxMm"), 2150, 2111, 2110.99)
                .not("finished-longest", f -> f.brief("lengthMaxMm", 2099))
                .number("packed", brief("packedMaxMm"), 1200, 1086, 1085.99)
                .not("packed", f -> f.brief("packedMaxMm", null))
                .not("packed", f -> f.brief("packedMaxMm", 1079));
    }

    static void strength(Cases c) {
        c.rule("durability")
                .always("class")
                .number("class", part("seat", "facts.durabilityClass"), 4, 3, 2)
                .number("class", part("blank", "facts.durabilityClass"), 4, 3, 2)
                .flag("through-blank", asked(5).andThen(f -> f.part("seat", "throughBlank", true)), asked(5))
                .not("through-blank", asked(4))
                .flag("double-lock", asked(4).andThen(f -> f.part("seat", "doubleLock", true)), asked(4))
                .add("double-lock", Cases.Kind.KEPT, asked(4).andThen(f -> f.put(Station.HOOD, "hood")))
                .not("double-lock", asked(3))
                .flag("stripper-feet", asked(3), asked(3).andThen(f -> f.part("guide-20", "feet", 1)))
                .not("stripper-feet", asked(2))
                .flag(
                        "reducer-feet",
                        asked(4).andThen(twoFeet("guide-10")).andThen(twoFeet("guide-6")),
                        asked(4).andThen(twoFeet("guide-10")))
                .not("reducer-feet", asked(3))
                .flag("runner-feet", asked(5).andThen(twoFeet("guide-5")), asked(5))
                .not("runner-feet", asked(4));
        c.rule("lift")
                .number("rating", after(LIFTED, part("blank", "liftKg")), 3, 2.25, 2.249)
                .number("rating", after(LIFTED, part("blank", "ownLiftKg")), 3, 2.25, 2.249)
                .add("rating", Cases.Kind.UNKNOWN, LIFTED)
                .not("rating", Cases::legal)
                // 2.8125 × 0.8 = 1.5 × 1.5
                .number("leader", after(LIFTED, brief("leader.strengthKg")), 5.4, 2.8125, 2.811)
                .not("leader", Cases::legal);
    }

    static void ringsAndReel(Cases c) {
        // FG: 1.5 × (0.30 + 4 × 1.2 × 0.148) = 1.5156
        c.rule("knot-clearance")
                .number("ring", part("guide-5", "ringIdMm"), 3.5, 1.52, 1.51)
                .number("ring", part("tip-top", "ringIdMm"), 3.5, 1.52, 1.51)
                .not("ring", f -> f.brief("leader.castThroughRings", false))
                .not("ring", f -> f.brief("leader", null));
        c.rule("ring-for-line")
                .flag("braid", Cases::legal, f -> f.part("tip-top", "braidOk", false))
                .add("braid", Cases.Kind.BROKEN, f -> f.part("guide-6", "braidOk", false))
                .not("braid", f -> f.brief("line.kind", Brief.LineKind.NYLON).part("guide-6", "braidOk", false));
        Consumer<Fixtures> hooded = f -> f.put(Station.HOOD, "hood");
        Consumer<Fixtures> rearHood = f -> f.brief("handle.movingHood", new Wish<>(SeatEnd.REAR, true, 0));
        c.rule("reel-fit")
                .always("seat-kind", "foot-shortest", "foot-longest", "foot-thickness", "foot-width")
                .flag("seat-kind", Cases::legal, f -> f.part("seat", "casting", true))
                .flag("seat-kind", Fixtures::casting, f -> f.casting().part("seat", "casting", false))
                .number("foot-shortest", part("seat", "footLengthMinMm"), 50, 56.5, 56.51)
                .number("foot-longest", part("seat", "footLengthMaxMm"), 62, 56.5, 56.49)
                .number("foot-thickness", part("seat", "footThicknessMaxMm"), 3.2, 2.8, 2.79)
                .number("foot-width", part("seat", "footWidthMaxMm"), 12, 11, 10.99)
                .flag("hood-end", rearHood, rearHood.andThen(f -> f.part("seat", "movingHood", SeatEnd.FRONT)))
                .not("hood-end", f -> f.brief("handle.movingHood", new Wish<>(SeatEnd.FRONT, false, 1)))
                .flag("hood-family", hooded, hooded.andThen(f -> f.part("hood", "family", "m27")))
                .not("hood-family", Cases::legal)
                .flag("hood-size", hooded, hooded.andThen(f -> f.part("hood", "size", 17)))
                .not("hood-size", Cases::legal);
    }

    static void shop(Cases c) {
        c.rule("salt")
                .number("corrosion-class", part("seat", "facts.corrosionClass"), 3, 2, 1)
                .number("corrosion-class", part("check", "facts.corrosionClass"), 3, 2, 1)
                .not("corrosion-class", f -> f.part("blank", "facts.corrosionClass", 1));
        c.rule("budget")
                .number(
                        "price",
                        (f, over) -> f.brief("budgetMinor", f.rod().figures().priceMinor() + over),
                        100,
                        0,
                        -1)
                .not("price", f -> f.brief("budgetMinor", null));
        c.rule("stock")
                .number("one-piece", part("seat", "facts.stock"), 10, 1, 0)
                .not("one-piece", f -> f.part("seat", "facts.stock", 0).part("seat", "facts.leadDays", 30))
                .add(
                        "one-piece",
                        Cases.Kind.BROKEN,
                        f -> f.part("seat", "facts.stock", 0).part("seat", "facts.leadDays", 31))
                .number("all-pieces", part("guide-5", "facts.stock"), 10, 4, 3)
                .add("all-pieces", Cases.Kind.BROKEN, f -> f.brief("owned", Set.of("guide-5")))
                .not("all-pieces", f -> f.part("guide-5", "facts.stock", 0).part("guide-5", "facts.leadDays", 3));
    }

    static void must(Cases c) {
        c.rule("must")
                .flag("refused-part", refuse("hood", true), refuse("seat", true))
                .not("refused-part", refuse("seat", false))
                .flag("refused-material", refuse(Material.EVA), refuse(Material.CORK))
                .add("refused-material", Cases.Kind.BROKEN, refuse(Material.NYLON))
                .not("refused-material", Cases::legal)
                .number("cap-mass", part("cap", "facts.weightG"), 4, 30, 30.001)
                .not("cap-mass", f -> f.brief("counterweightAsked", true))
                .flag("insisted", insist("seat"), insist("hood"))
                .add("insisted", Cases.Kind.KEPT, insist("blank"))
                .add("insisted", Cases.Kind.KEPT, insist("thread"))
                .not("insisted", Cases::legal)
                .number("cap-share", TackleCases::capShare, -1, 0, 0.001)
                .not("cap-share", f -> f.brief("counterweightAsked", true));
    }

    /** Sets the cap to 8 % of the rod that carries it: w = 0.08 (rest + w), on the milligram. */
    private static void capShare(Fixtures f, double overG) {
        double restG = f.rod().figures().weightG() - f.partOf("cap").massMg() / 1000.0;
        double atLimitG = Math.round(restG * 0.08 / 0.92 * 1000) / 1000.0;
        f.part("cap", "facts.weightG", atLimitG + overG);
    }

    private static Consumer<Fixtures> asked(int durabilityClass) {
        return f -> f.brief("durabilityClass", durabilityClass);
    }

    private static Consumer<Fixtures> twoFeet(String guide) {
        return f -> f.part(guide, "feet", 2);
    }

    private static Consumer<Fixtures> refuse(String part, boolean hard) {
        return f -> f.brief("refused", List.of(new PartWish(part, hard, 1)));
    }

    private static Consumer<Fixtures> refuse(Material material) {
        return f -> f.brief("look.refusedMaterials", Set.of(material));
    }

    private static Consumer<Fixtures> insist(String part) {
        return f -> f.brief("insisted", List.of(new PartWish(part, true, 1)));
    }
}
