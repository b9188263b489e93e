package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.catalog.Material;
import withy.explain.TradeOffs.Side;
import withy.explain.TradeOffs.TradeOff;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Style;
import withy.rod.Rod;
import withy.rod.Station;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Two rods side by side, figures by hand. */
class TradeOffsTest {
    private static final QuantityText METRIC = new QuantityText(UnitSystem.METRIC);

    private static Side side(int rank, Fixtures fixture) {
        Rod rod = fixture.rod();
        Style style = new Style(fixture.catalog(), fixture.theBrief());
        return new Side(rank, rod, ObjectiveVector.of(rod, style, new NiceWishes(fixture.theBrief())));
    }

    private static TradeOff of(Objective objective, Fixtures mine, Fixtures other) {
        List<TradeOff> all = TradeOffs.between(side(3, mine), side(1, other), METRIC);
        assertEquals(
                List.of(Objective.values()),
                all.stream().map(TradeOff::objective).toList());
        TradeOff one = all.get(objective.ordinal());
        assertEquals(1, one.against());
        assertEquals(objective.unit(), one.unit());
        return one;
    }

    private static Fixtures exact(double capG) {
        return Fixtures.legal().part("cap", "facts.measuredG", capG);
    }

    /** A step is 3 g: 20 g is noticed, 2 g is not, and what lies within both tolerances is told as equal. */
    @Test
    void weight() {
        TradeOff heavy = of(Objective.WEIGHT, exact(24), exact(4));
        assertEquals(20.0, heavy.difference(), 1e-9);
        assertTrue(heavy.noticeable());
        assertFalse(heavy.better());
        assertEquals("20.0 g heavier", heavy.sentence());
        TradeOff light = of(Objective.WEIGHT, exact(4), exact(24));
        assertEquals(-20.0, light.difference(), 1e-9);
        assertTrue(light.better() && light.noticeable());
        assertEquals("20.0 g lighter", light.plain());
        double tolerance = TradeOffs.toleranceG(exact(4).rod(), exact(4).rod());
        double one = exact(4).rod().figures().weightToleranceG();
        assertEquals(one * Math.sqrt(2), tolerance, 1e-9);
        TradeOff within = of(Objective.WEIGHT, exact(4.2), exact(4));
        assertFalse(within.noticeable() || within.better());
        assertEquals(
                "equal in weight, within what scales and makers allow (±" + METRIC.mass(tolerance) + ")",
                within.sentence());
        TradeOff none = of(Objective.WEIGHT, exact(4), exact(4));
        assertEquals("the same weight", none.sentence());
        assertTrue(none.same() && !none.better() && !none.noticeable());
        assertFalse(within.plain().equals(within.sentence()));
    }

    /** 25 EUR of parts more are 30 to the customer with margin and tax: a step is 30. */
    @Test
    void price() {
        Fixtures dear = Fixtures.legal().part("seat", "facts.priceMinor", 7_500);
        TradeOff more = of(Objective.PRICE, dear, Fixtures.legal());
        long difference = dear.rod().figures().priceMinor()
                - Fixtures.legal().rod().figures().priceMinor();
        assertEquals(difference, more.difference());
        assertTrue(difference > 5_000 && more.noticeable() && !more.better());
        assertTrue(more.sentence().endsWith(" dearer"), more.sentence());
        TradeOff less = of(Objective.PRICE, Fixtures.legal(), dear);
        assertEquals(-difference, less.difference());
        assertTrue(less.better() && less.sentence().endsWith(" cheaper"), less.sentence());
        TradeOff little = of(Objective.PRICE, Fixtures.legal().part("cap", "facts.priceMinor", 300), Fixtures.legal());
        assertFalse(little.noticeable());
        assertTrue(little.sentence().endsWith(" dearer (too little to notice)"), little.sentence());
        assertFalse(little.same());
    }

    /** The zone is 40 to 110 mm ahead of the foot: a heavy tip tips it further, a heavy cap the other way. */
    @Test
    void balanceAndSwing() {
        Fixtures tip = Fixtures.legal().part("tip-top", "facts.measuredG", 8.0);
        TradeOff ahead = of(Objective.BALANCE, tip, Fixtures.legal());
        double moment = 7.7 * 9.80665e-3 * (2100 - 240 - 110);
        assertEquals(moment, ahead.difference(), 0.02 * moment, "grams at the tip times their lever beyond the zone");
        assertTrue(ahead.noticeable() && !ahead.better());
        assertTrue(ahead.sentence().startsWith("further ahead of the wanted balance by "), ahead.sentence());
        TradeOff back = of(Objective.BALANCE, Fixtures.legal(), tip);
        assertTrue(back.sentence().startsWith("nearer the wanted balance by "), back.sentence());
        TradeOff swing = of(Objective.SWING_WEIGHT, tip, Fixtures.legal());
        assertEquals(7.7e-3 * 1.86 * 1.86, swing.difference(), 0.02 * 7.7e-3 * 1.86 * 1.86, "m·r² about the hand");
        assertTrue(swing.sentence().startsWith("heavier to swing by "), swing.sentence());
        assertTrue(of(Objective.SWING_WEIGHT, Fixtures.legal(), tip).sentence().startsWith("lighter to swing by "));
        Fixtures butt = Fixtures.legal().part("cap", "facts.measuredG", 400.0);
        TradeOff behind = of(Objective.BALANCE, butt, Fixtures.legal());
        assertTrue(behind.sentence().contains(" the wanted balance by "), behind.sentence());
        Fixtures heavier = Fixtures.legal().part("cap", "facts.measuredG", 500.0);
        assertTrue(of(Objective.BALANCE, heavier, butt).sentence().startsWith("further behind the wanted balance by "));
        assertTrue(of(Objective.BALANCE, butt, heavier).sentence().startsWith("nearer the wanted balance by "));
        assertTrue(of(Objective.BALANCE, heavier, tip).sentence().startsWith("further from the wanted balance by "));
    }

    /** Weight between hand and zone makes a rod tip-heavier in the hand and brings its balance nearer all the same: only that is compared. */
    @Test
    void nearerTheZoneAndYetTipHeavier() {
        Fixtures tip = Fixtures.legal().part("tip-top", "facts.measuredG", 8.0);
        Fixtures fore = Fixtures.legal().part("tip-top", "facts.measuredG", 8.0).part("check", "facts.measuredG", 60.0);
        Rod one = fore.rod();
        Rod other = tip.rod();
        assertTrue(one.figures().tipHeavyNmm() > other.figures().tipHeavyNmm() + 5, "further down in the hand");
        double outside = other.figures().balanceOutsideZoneNmm() - one.figures().balanceOutsideZoneNmm();
        TradeOff nearer = of(Objective.BALANCE, fore, tip);
        assertTrue(nearer.better());
        assertEquals(
                "nearer the wanted balance by "
                        + METRIC.momentBetween(
                                one.figures().balanceOutsideZoneNmm(),
                                other.figures().balanceOutsideZoneNmm())
                        + (outside < 15 ? " (too little to notice)" : ""),
                nearer.sentence());
    }

    /** Classes and points are whole; one is told in the singular. */
    @Test
    void sturdinessAndLooks() {
        Fixtures weak = Fixtures.legal();
        Fixtures cork =
                Fixtures.legal().brief("look", new Brief.Look("", Set.of(Material.CORK), Set.of(), List.of(), ""));
        TradeOff same = of(Objective.DURABILITY, weak, weak);
        assertEquals("as sturdy", same.sentence());
        ObjectiveVector v = side(1, cork).objectives();
        assertClasses("2 classes sturdier", v, 2, 0);
        assertClasses("one class sturdier", v, 1, 0);
        assertClasses("one class less sturdy", v, 0, 1);
        assertClasses("3 classes less sturdy", v, 0, 3);
        assertStyle("12 points higher in looks", v, 2_000, 800);
        assertStyle("1 point higher in looks (too little to notice)", v, 900, 800);
        assertStyle("1 point lower in looks (too little to notice)", v, 800, 900);
        assertStyle("10 points lower in looks", v, 0, 1_000);
        assertStyle("the same look", v, 820, 800);
    }

    private static void assertClasses(String words, ObjectiveVector v, long mine, long other) {
        TradeOff one = made(
                Objective.DURABILITY,
                Changed.with(v, "durabilityClasses", mine),
                Changed.with(v, "durabilityClasses", other));
        assertEquals(words, one.sentence());
        assertTrue(one.noticeable());
        assertEquals(mine > other, one.better());
        assertEquals(mine - other, one.difference());
    }

    private static void assertStyle(String words, ObjectiveVector v, long mine, long other) {
        TradeOff one = made(Objective.STYLE, Changed.with(v, "styleCenti", mine), Changed.with(v, "styleCenti", other));
        assertEquals(words, one.sentence());
        assertEquals(Math.abs(mine - other) >= 1_000, one.noticeable());
        assertEquals((mine - other) / 100.0, one.difference(), 1e-12);
    }

    private static TradeOff made(Objective objective, ObjectiveVector mine, ObjectiveVector other) {
        Rod rod = Fixtures.legal().rod();
        return TradeOffs.between(new Side(2, rod, mine), new Side(1, rod, other), METRIC)
                .get(objective.ordinal());
    }

    @Test
    void theGistTellsGainsFirst() {
        List<TradeOff> all = TradeOffs.between(
                side(2, exact(24)), side(1, exact(4).part("seat", "facts.priceMinor", 9_000)), METRIC);
        String gist = TradeOffs.gist(all);
        assertTrue(gist.indexOf("cheaper") < gist.indexOf("20.0 g heavier") && gist.contains("cheaper"), gist);
        assertEquals(
                "nothing a hand or a purse would notice",
                TradeOffs.gist(TradeOffs.between(side(2, exact(4)), side(1, exact(4)), METRIC)));
    }

    /** Dearer parts that weigh a little less gain nothing on the scale; who reads only of money would take it for all there is to say. */
    @Test
    void theGistSaysWhatIsEqualWithinTheTolerance() {
        String gist = TradeOffs.gist(TradeOffs.between(
                side(2, exact(4.2)), side(1, exact(4).part("seat", "facts.priceMinor", 9_000)), METRIC));
        assertTrue(gist.contains(" cheaper; equal in weight, within what scales and makers allow (±"), gist);
    }

    /** What is worse and what is better, each in the order of what the customer ranks first; what is the same goes unsaid. */
    @Test
    void whatAnotherRodCosts() {
        Fixtures wished = Fixtures.legal().brief("handle.keeper", new Wish<>(true, false, 1));
        Inquiry inquiry = FewBuilds.of(wished).inquiry(wished.theBrief());
        assertEquals("the same in every figure", costs(inquiry, wished, wished));
        Fixtures tip = Fixtures.legal().part("tip-top", "facts.measuredG", 8.0).part("cap", "facts.priceMinor", 5_000);
        String worse = costs(inquiry, tip, Fixtures.legal());
        assertTrue(
                worse.contains("heavier")
                        && worse.contains("dearer")
                        && worse.contains("further ahead of the wanted balance"),
                worse);
        assertFalse(worse.contains("but") || worse.contains("sturdy") || worse.contains("looks"), worse);
        String better = costs(inquiry, Fixtures.legal(), tip);
        assertTrue(better.contains("lighter") && better.contains("cheaper") && !better.contains("but"), better);
        Fixtures dear = Fixtures.legal().part("cap", "facts.priceMinor", 9_000);
        String both = costs(inquiry, dear, tip);
        assertTrue(
                both.indexOf("lighter") < both.indexOf(", but ") && both.indexOf(", but ") < both.indexOf("dearer"),
                both);
        Brief purse = FewBuilds.weighing(wished.theBrief(), java.util.Map.of(Objective.PRICE, 3.0));
        String first = costs(FewBuilds.of(wished).inquiry(purse), tip, Fixtures.legal());
        assertTrue(first.indexOf("dearer") < first.indexOf("heavier"), first);
        assertTrue(worse.indexOf("heavier") < worse.indexOf("dearer"), worse);
        Fixtures kept = Fixtures.legal()
                .brief("handle.keeper", new Wish<>(true, false, 1))
                .put(Station.KEEPER, "keeper");
        assertTrue(
                costs(inquiry, kept, wished).contains("with a hook keeper, which would be nice"),
                costs(inquiry, kept, wished));
        assertTrue(costs(inquiry, wished, kept).contains("without a hook keeper, which would be nice"));
    }

    private static String costs(Inquiry inquiry, Fixtures found, Fixtures build) {
        return Ledger.costs(
                inquiry, found(build), found(found), TradeOffs.between(side(0, found), side(1, build), METRIC));
    }

    private static Found found(Fixtures fixture) {
        return new Found(fixture.build(), fixture.rod(), side(0, fixture).objectives(), true, 0);
    }

    /** Nice wishes a rod misses, told field by field; hard ones and those met are none. */
    @Test
    void nobodyMissesWhatIsThere() {
        Fixtures wished = Fixtures.legal()
                .brief("handle.keeper", new Wish<>(true, false, 1))
                .brief("handle.form", new Wish<>(HandleForm.FULL, false, 1))
                .brief("handle.foreGrip", new Wish<>(false, false, 1))
                .brief("handle.trigger", new Wish<>(true, false, 1))
                .brief("handle.action", new Wish<>(withy.catalog.Action.SLOW, true, 1))
                .brief(
                        "insisted",
                        List.of(
                                new PartWish("hood", false, 1),
                                new PartWish("cap", false, 1),
                                new PartWish("nowhere", false, 1)))
                .brief("refused", List.of(new PartWish("seat", false, 1), new PartWish("decal", false, 1)));
        List<Missed> missed = Missed.of(wished.rod());
        assertEquals(
                List.of("handle.form", "handle.trigger", "handle.keeper", "insisted", "insisted", "refused"),
                missed.stream().map(Missed::field).toList());
        assertEquals(
                List.of("a full handle", "a trigger", "a hook keeper", "the Tarn hood", "the nowhere", "no Tarn seat"),
                missed.stream().map(Missed::words).toList());
        Fixtures other = Fixtures.legal()
                .brief("handle.action", new Wish<>(withy.catalog.Action.SLOW, false, 1))
                .brief("handle.movingHood", new Wish<>(withy.catalog.SeatEnd.FRONT, false, 1))
                .brief("handle.foreGrip", new Wish<>(true, false, 1));
        assertEquals(
                List.of("a slow blank", "a moving hood at the front", "a fore grip"),
                Missed.of(other.rod()).stream().map(Missed::words).toList());
        Rod kept = wished.put(Station.KEEPER, "keeper").rod();
        Rod bare = wished.empty(Station.KEEPER).rod();
        assertEquals(
                List.of("handle.keeper"),
                Missed.of(bare, kept).stream().map(Missed::field).toList());
        assertEquals(List.of(), Missed.of(kept, bare));
    }
}
