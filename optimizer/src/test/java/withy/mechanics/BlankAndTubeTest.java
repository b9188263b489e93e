package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.mechanics.StiffnessFit.Reading;

/** Blanks and tubes by hand, away from the butt at 0 and with steps, so that no term hides behind a nought. */
class BlankAndTubeTest {
    private static final double E = 60_000;

    private static double ring(double outer, double wall) {
        double inner = Math.max(0, outer - 2 * wall);
        return E * Math.PI / 64 * (Math.pow(outer, 4) - Math.pow(inner, 4));
    }

    /** Wall and width each run straight between their own stations, and each of those is a break; solid where the walls meet. */
    @Test
    void stiffnessOfAWallThatVaries() {
        TaperProfile diameter = new TaperProfile(new double[] {100, 500, 500, 1100}, new double[] {12, 10, 8, 2});
        TaperProfile wall =
                new TaperProfile(new double[] {0, 100, 300, 900, 1100, 1400}, new double[] {9, 1.0, 1.4, 1.1, 1.3, 9});
        StiffnessProfile blank = new StiffnessProfile.OfWall(diameter, wall, E);
        assertArrayEquals(new double[] {100, 300, 500, 900, 1100}, blank.breaksMm());
        assertEquals(100, blank.buttMm());
        assertEquals(1100, blank.tipMm());
        assertEquals(ring(12, 1), blank.atNmm2(100), 1e-6);
        assertEquals(ring(11.5, 1.2), blank.atNmm2(200), 1e-6);
        assertEquals(ring(11, 1.4), blank.atNmm2(300), 1e-6);
        assertEquals(ring(10.5, 1.35), blank.atNmm2(400), 1e-6);
        assertEquals(ring(8, 1.3), blank.atNmm2(500), 1e-6, "the tip's side of the step");
        assertEquals(ring(6, 1.2), blank.atNmm2(700), 1e-6);
        assertEquals(ring(3, 1.2), blank.atNmm2(1000), 1e-6);
        assertEquals(ring(2, 1.3), blank.atNmm2(1100), 1e-6, "solid");
        assertEquals(3 * ring(6, 1.2), blank.scaled(3).atNmm2(700), 1e-5);
        assertEquals(1100, blank.scaled(3).tipMm());
    }

    @Test
    void stiffnessOfADiameterThatBeginsLater() {
        TaperProfile diameter = new TaperProfile(new double[] {100, 500, 500, 1100}, new double[] {12, 10, 8, 2});
        StiffnessProfile blank = StiffnessProfile.OfDiameter.withButt(diameter, 1e7, 2.5);
        assertEquals(100, blank.buttMm());
        assertEquals(1100, blank.tipMm());
        assertEquals(1e7, blank.atNmm2(100), 1e-3);
        assertEquals(1e7 * Math.pow(11.0 / 12, 2.5), blank.atNmm2(300), 1e-3);
        assertEquals(1e7 * Math.pow(8.0 / 12, 2.5), blank.atNmm2(500), 1e-3);
        assertEquals(1e7 * Math.pow(2.0 / 12, 2.5), blank.atNmm2(1100), 1e-3);
    }

    /** An even tube is a bar, whatever stations it is told by: length² / 12 about its middle. Two of its thirds moved ahead are two bars. */
    @Test
    void anEvenTubeIsABar() {
        for (double[] stations : new double[][] {{100, 1000}, {100, 400, 1000}, {100, 400, 400, 1000}}) {
            double[] width = new double[stations.length];
            java.util.Arrays.fill(width, 7);
            TubeMass tube = TubeMass.of(new TaperProfile(stations, width), 45, 1.5, List.of());
            assertEquals(45, tube.massG(), 1e-12);
            assertEquals(550, tube.balanceMm(), 1e-9);
            assertEquals(45 * 900.0 * 900 / 12, tube.sum().inertiaGmm2(550), 1e-6);
        }
    }

    /** A cone from 100 mm on, exponent 2, to a point: mass centre a quarter of its length from the wide end, 3/80·m·L² about it along the axis. */
    @Test
    void aConeOfTextbooks() {
        for (double[] stations : new double[][] {{100, 900}, {100, 300, 900}}) {
            double[] width = new double[stations.length];
            for (int i = 0; i < width.length; i++) {
                width[i] = 10 * (900 - stations[i]) / 800;
            }
            TubeMass cone = TubeMass.of(new TaperProfile(stations, width), 30, 2, List.of());
            assertEquals(300, cone.balanceMm(), 1e-9);
            assertEquals(3.0 / 80 * 30 * 800 * 800, cone.sum().inertiaGmm2(300), 1e-6);
        }
    }

    /** The ends of what can be are fitted too; an even tube balances in its middle under every law, so none is told. */
    @Test
    void theEdgesOfWhatCanBalance() {
        TaperProfile taper = TaperProfile.straight(1000, 10, 4);
        double flat = TubeMass.of(taper, 40, 0, List.of()).balanceMm();
        double steep =
                TubeMass.of(taper, 40, TubeMass.LARGEST_EXPONENT, List.of()).balanceMm();
        assertEquals(500, flat, 1e-9);
        for (double at : new double[] {flat, steep}) {
            TubeMass.BalanceFit.Fitted fitted =
                    assertInstanceOf(TubeMass.BalanceFit.Fitted.class, TubeMass.balancedAt(taper, 40, at, List.of()));
            assertEquals(at, fitted.tube().balanceMm(), 1e-8);
        }
        TubeMass.BalanceFit.Impossible beyond = assertInstanceOf(
                TubeMass.BalanceFit.Impossible.class, TubeMass.balancedAt(taper, 40, 500.1, List.of()));
        assertEquals(steep, beyond.lowestMm(), 1e-9);
        assertEquals(flat, beyond.highestMm(), 1e-9);
        assertInstanceOf(
                TubeMass.BalanceFit.Impossible.class,
                TubeMass.balancedAt(TaperProfile.straight(1000, 8, 8), 40, 500, List.of()));
    }

    private static StiffnessFit.Wall wall(TaperProfile diameter, double clampMm) {
        return new StiffnessFit.Wall(diameter, clampMm, null, StiffnessFit.DropFrom.STRAIGHT_LINE);
    }

    /**
     * The start from small bends: P·L³/(3·δ) for the even rod, [a³/I₁ + (L³ − a³)/I₂]/3 for a stepped one, the free length L, by the least weight
     * whose drop can be; and a taper of the 4th power to r: L³/(3·r).
     */
    @Test
    void theStartOfAFit() {
        double free = 1700;
        List<Reading> readings =
                List.of(new Reading(80, 175), new Reading(50, 100), new Reading(20, 1700), new Reading(60, 90));
        double newtons = 50 * 9.80665e-3;
        double cube = Math.pow(free, 3);
        TaperProfile even = TaperProfile.straight(2000, 10, 10);
        assertEquals(newtons * cube / 300, start(even, 300, 0, readings).scale(), 1e-3);
        TaperProfile stepped = new TaperProfile(new double[] {0, 1200, 1200, 2000}, new double[] {10, 10, 5, 5});
        double a = Math.pow(800, 3);
        StiffnessFit.Law law = start(stepped, 300, 4, readings);
        assertEquals(newtons / 300 * (a / 625 + (cube - a) / 10_000), law.scale(), 1e-6 * law.scale());
        assertEquals(4.0, law.exponent());
        TaperProfile taper = TaperProfile.straight(2000, 10, 4);
        StiffnessFit.Law tapered = start(taper, 0, 4, List.of(new Reading(50, 100)));
        assertEquals(newtons * 8e9 / (300 * 0.4) / 1e4, tapered.scale(), 1e-5 * tapered.scale());
        assertNull(StiffnessFit.start(wall(even, 300), 0, List.of(new Reading(20, 1700))));
    }

    private static StiffnessFit.Law start(
            TaperProfile diameter, double clampMm, double exponent, List<Reading> readings) {
        StiffnessFit.Law law = StiffnessFit.start(wall(diameter, clampMm), exponent, readings);
        assertNotNull(law);
        return law;
    }

    /** Three readings are enough for the exponent: small-bend drops alone leave it open, large ones don't. */
    @Test
    void threeReadingsAreEnough() {
        TaperProfile taper = TaperProfile.straight(2000, 12, 3);
        StiffnessProfile truth = StiffnessProfile.OfDiameter.withButt(taper, 2e7, 3.5);
        List<Reading> readings = List.of(reading(truth, 60), reading(truth, 250), reading(truth, 900));
        StiffnessFit.Outcome.Fitted fitted = assertInstanceOf(
                StiffnessFit.Outcome.Fitted.class, StiffnessFit.scaleAndExponent(wall(taper, 200), 3, readings));
        assertEquals(3.5, fitted.stiffness().exponent(), 1e-3);
    }

    private static Reading reading(StiffnessProfile truth, double grams) {
        BendCase held = new BendCase(truth, 200, 0, null, List.of(PointLoad.hung(2000, grams)));
        return new Reading(
                grams,
                assertInstanceOf(BendResult.Bent.class, BendUnderLoad.solve(held))
                        .dropMm());
    }

    /** A step down counts with its thick side, at either end of a part pushed over it. */
    @Test
    void theThickSideOfAStepCountsAtBothEnds() {
        TaperProfile down = new TaperProfile(new double[] {0, 300, 300, 600}, new double[] {9, 8, 5, 4});
        assertEquals(8, down.largestBetween(300, 600));
        assertEquals(9, down.largestBetween(0, 300));
        TaperProfile bulge = new TaperProfile(new double[] {0, 300, 300, 600}, new double[] {4, 8, 5, 4});
        assertEquals(8, bulge.largestBetween(0, 300));
        assertEquals(8, bulge.largestBetween(300, 300));
        assertEquals(4, down.smallestBetween(0, 600));
        assertEquals(5, down.smallestBetween(0, 300));
        assertEquals(8.5, down.smallestBetween(0, 150));
        assertTrue(down.toString().contains("300.0") && down.toString().contains("8.0"), down.toString());
        assertNotEquals(down.hashCode(), bulge.hashCode());
    }

    /** Faulty stations are told by their number, counted from 1. */
    @Test
    void faultyStationsAreNumbered() {
        assertTold("station 2 in mm", new double[] {0, Double.NaN}, new double[] {1, 1});
        assertTold("value at station 2 in mm", new double[] {0, 10}, new double[] {1, -1});
        assertTold("Station 3 at 5.0", new double[] {0, 10, 5}, new double[] {1, 1, 1});
        assertTold("Station 3 at 0.0", new double[] {0, 0, 0, 10}, new double[] {1, 1, 1, 1});
        assertTold("at least two stations", new double[] {0}, new double[] {1});
        assertTold("length above 0", new double[] {5, 5}, new double[] {1, 1});
    }

    private static void assertTold(String told, double[] x, double[] value) {
        String message = assertThrows(IllegalArgumentException.class, () -> new TaperProfile(x, value))
                .getMessage();
        assertTrue(message.contains(told), message);
    }

    /** Bundles of 1 to 7 strands by circle packing (Graham 1968): 1 + 2/√3 strands for three; slim knots asked 1.5 times, others twice. */
    @Test
    void knotsAndBundles() {
        assertEquals(0.3, KnotBulk.bundleMm(1, 0.3), 1e-12);
        assertEquals(0.3 * (1 + 2 / Math.sqrt(3)), KnotBulk.bundleMm(3, 0.3), 1e-7);
        assertEquals(0.9, KnotBulk.bundleMm(7, 0.3), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> KnotBulk.bundleMm(0, 0.3));
        assertThrows(IllegalArgumentException.class, () -> KnotBulk.bundleMm(8, 0.3));
        assertTrue(KnotBulk.FG.slim());
        assertFalse(KnotBulk.ALBRIGHT.slim());
        assertEquals(1.5 * (0.4 + 4 * 0.15), KnotBulk.FG.ringNeededMm(0.4, 0.15), 1e-12);
        assertEquals(2 * (2.5 * 0.4 + 2 * 0.15), KnotBulk.ALBRIGHT.ringNeededMm(0.4, 0.15), 1e-12);
    }

    /** What stands just free of a ferrule stays, the nearer side is taken, and feet may touch but not overlap. */
    @Test
    void guidesAtTheEdgesOfAFerrule() {
        List<GuideSpacing.Zone> ferrule = List.of(new GuideSpacing.Zone(1000, 1070));
        double[] free = {970, 1100};
        assertArrayEquals(free, GuideSpacing.clearOfFerrules(free, 10, ferrule).orElseThrow());
        assertArrayEquals(
                new double[] {970},
                GuideSpacing.clearOfFerrules(new double[] {970.5}, 10, ferrule).orElseThrow());
        assertArrayEquals(
                new double[] {1100},
                GuideSpacing.clearOfFerrules(new double[] {1099.5}, 10, ferrule).orElseThrow());
        assertArrayEquals(
                new double[] {500, 520},
                GuideSpacing.clearOfFerrules(new double[] {500, 520}, 10, List.of())
                        .orElseThrow());
        assertTrue(GuideSpacing.clearOfFerrules(new double[] {500, 519}, 10, List.of())
                .isEmpty());
        assertTrue(GuideSpacing.clearOfFerrules(new double[] {500, 500}, 0, List.of())
                .isEmpty());
        List<GuideSpacing.Zone> two = List.of(new GuideSpacing.Zone(1000, 1070), new GuideSpacing.Zone(940, 975));
        assertArrayEquals(
                new double[] {1100},
                GuideSpacing.clearOfFerrules(new double[] {1010}, 10, two).orElseThrow(),
                1e-9,
                "the nearer side is taken by the other ferrule");
        String message = assertThrows(IllegalArgumentException.class, () -> new GuideSpacing.Zone(20, 10))
                .getMessage();
        assertTrue(message.contains("-10.0"), message);
    }

    /** One guide stands where the stripper does, both ends of the range included; ratios at their bounds are met. */
    @Test
    void spacingsAtTheirBounds() {
        assertEquals(90, GuideSpacing.reach(90, 1, 90, 110).orElseThrow().firstMm());
        assertEquals(110, GuideSpacing.reach(110, 1, 90, 110).orElseThrow().firstMm());
        assertTrue(GuideSpacing.reach(110.1, 1, 90, 110).isEmpty());
        assertEquals(
                1.05,
                GuideSpacing.reach(100 * (1 + 1.05 + 1.1025), 3, 100, 100)
                        .orElseThrow()
                        .ratio(),
                1e-9);
        assertEquals(
                1.25,
                GuideSpacing.reach(100 * (1 + 1.25 + 1.5625), 3, 100, 100)
                        .orElseThrow()
                        .ratio(),
                1e-9);
        assertEquals(1.25, GuideSpacing.reach(420, 3, 100, 200).orElseThrow().ratio(), 0.25);
        assertTrue(GuideSpacing.reach(400, 3, 100, 100).isEmpty());
    }

    /** What has no sense is refused where it is handed in, with what it is. */
    @Test
    void whatHasNoSenseIsRefused() {
        assertRefused(
                "distance from counterweight", () -> MassSum.point(10, 500).counterweightG(200, 200, 0));
        assertRefused(
                "distance from counterweight", () -> MassSum.point(10, 500).counterweightG(200, 300, 0));
        assertRefused("wall at the butt end", () -> new Frustum(100, 20, 24, 21, 10));
        assertRefused("wall at the tip end", () -> new Frustum(100, 20, 24, 10, 25));
        assertRefused("range of the first space", () -> GuideSpacing.reach(1400, 8, 100, 90));
        TaperProfile even = TaperProfile.straight(1000, 8, 8);
        StiffnessProfile stiffness = StiffnessProfile.OfDiameter.withButt(even, 1e6, 0);
        TubeMass tube = TubeMass.of(even, 40, 1, List.of());
        assertRefused("free length", () -> NaturalFrequency.lowest(stiffness, 1000, tube, List.of(), 8, 1));
        assertRefused(
                "gives 1–8 frequencies, not 9", () -> NaturalFrequency.lowest(stiffness, 100, tube, List.of(), 8, 9));
        assertRefused("not 0", () -> NaturalFrequency.lowest(stiffness, 100, tube, List.of(), 8, 0));
        assertInstanceOf(
                NaturalFrequency.Outcome.Modes.class, NaturalFrequency.lowest(stiffness, 100, tube, List.of(), 8, 8));
    }

    private static void assertRefused(String told, org.junit.jupiter.api.function.Executable asked) {
        String message = assertThrows(IllegalArgumentException.class, asked).getMessage();
        assertTrue(message.contains(told), message);
    }

    /** 0.16 mm of nylon, 1,140 kg/m³ of it six tenths fibre: ρ·share·π/4·d² = 13.75 g a km. A grip bored away has its middle for a centre. */
    @Test
    void threadAndHollowGrip() {
        assertEquals(13.752, ThreadWrap.texOf(0.16, 1140, 0.6), 1e-3);
        assertEquals(40, new Frustum(80, 20, 24, 20, 24).centreMm());
    }
}
