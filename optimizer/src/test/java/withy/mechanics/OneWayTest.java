package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** A rod pulled one way: guess and scan each alone, against closed forms, so that one doesn't hide a fault of the other. */
class OneWayTest {
    private static final double L = 2100.0;
    private static final double EI = 4.0e6;

    private static StiffnessProfile tapered(double p, double r) {
        return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10.0, 10.0 * r), EI, p);
    }

    private static BendCase tipLoad(StiffnessProfile stiffness, double alpha, double clampRad) {
        PointLoad load = new PointLoad(L, 0.0, -alpha * EI / (L * L), 0.0);
        return new BendCase(stiffness, 0.0, clampRad, null, List.of(load));
    }

    private record Parts(BendCase held, TipShooter shooter, OneWay way, double turn) {
        static Parts of(BendCase held) {
            double turn = BendUnderLoad.turn(held);
            double reference = held.clampAngleRad() - turn;
            LoadedStretches stretches = new LoadedStretches(held, reference);
            TipShooter shooter = new TipShooter(held, stretches, reference);
            return new Parts(held, shooter, new OneWay(held, stretches, shooter, turn), turn);
        }
    }

    private static BendResult.Bent present(BendResult.Bent bent) {
        assertNotNull(bent);
        return bent;
    }

    @Test
    void whatPullsOneWay() {
        StiffnessProfile even = tapered(0, 1);
        TubeMass own = TubeMass.of(TaperProfile.straight(L, 10, 10), 50, 1, List.of(new TubeMass.Lump(900, 5)));
        PointLoad hung = PointLoad.hung(L, 100);
        PointLoad pull = PointLoad.pull(L, 2, -0.4);
        assertTrue(OneWay.is(new BendCase(even, 0, 0, null, List.of(hung, PointLoad.hung(900, 3)))));
        assertTrue(OneWay.is(new BendCase(even, 0, 0, own, List.of(hung))));
        assertTrue(OneWay.is(new BendCase(even, 0, 0, own, List.of())));
        assertTrue(OneWay.is(new BendCase(even, 0, 0, null, List.of(pull, PointLoad.pull(800, 5, -0.4)))));
        assertFalse(OneWay.is(new BendCase(even, 0, 0, own, List.of(pull))));
        assertFalse(OneWay.is(new BendCase(even, 0, 0, null, List.of(pull, PointLoad.pull(800, 5, -0.401)))));
        assertFalse(OneWay.is(new BendCase(even, 0, 0, null, List.of(hung, new PointLoad(900, 0, 0.1, 0)))));
        assertFalse(OneWay.is(new BendCase(even, 0, 0, null, List.of(hung, new PointLoad(900, 0, 0, 1e-3)))));
        assertFalse(OneWay.is(new BendCase(even, 0, 0, own, List.of(new PointLoad(L, 0, 1, 0)))));
    }

    /** Small bend of an even rod: the tip's angle is the clamp's over cosh(L·√(P/EI)); linear beam column, exact for small angles. */
    @ParameterizedTest
    @CsvSource({"0.5", "2", "9", "30"})
    void theGuessIsExactForSmallAngles(double alpha) {
        for (double small : new double[] {1e-3, -1e-3}) {
            PointLoad pull = PointLoad.pull(L, alpha * EI / (L * L), -small);
            OneWay way = Parts.of(new BendCase(tapered(0, 1), 0, 0, null, List.of(pull)))
                    .way();
            double expected = -Math.log(Math.cosh(Math.sqrt(alpha)));
            assertEquals(expected, way.guessLn(), 1e-6);
            double tip = present(way.guessed()).tip().angleRad() + small;
            assertEquals(expected, Math.log(tip / small), 1e-6);
        }
    }

    /** A long even rod is a pendulum on its separatrix, tan(θ/4) = tan(β/4)·e^(−x): so θ of the tip → 8·tan(β/4)·e^(−g). */
    @ParameterizedTest
    @CsvSource({"0.4", "1.0", "1.5707963", "2.3"})
    void theGuessIsThePendulumsSeparatrixForLongRods(double beta) {
        double g = 9.0;
        OneWay way = Parts.of(tipLoad(tapered(0, 1), g * g, beta - Math.PI / 2)).way();
        double expected = Math.log(8.0 * Math.tan(beta / 4.0) / beta) - g;
        assertEquals(expected, way.guessLn(), 1e-3);
        double tip = present(way.guessed()).tip().angleRad() + Math.PI / 2;
        assertEquals(expected, Math.log(tip / beta), 1e-3);
    }

    /** On tapers the guess is near what comes out: within a factor of two from light to heavy loads, tip to 0.4 of the butt. */
    @Test
    void theGuessIsNearOnTapers() {
        for (double p : new double[] {3, 4}) {
            for (double r : new double[] {0.4, 0.5, 0.7}) {
                for (double alpha : new double[] {0.3, 1, 3, 10}) {
                    Parts rod = Parts.of(tipLoad(tapered(p, r), alpha, 0));
                    double tip = present(rod.way().guessed()).tip().angleRad() + Math.PI / 2;
                    double off = Math.abs(rod.way().guessLn() - Math.log(tip / rod.turn()));
                    assertTrue(
                            off < (alpha < 1 ? 0.2 : Math.log(2.0)),
                            "p " + p + ", r " + r + ", load " + alpha + ": off by " + off);
                }
            }
        }
    }

    /** None along the load, and none for a rod nearly pressed along itself, 2.8 radians from its load. */
    @Test
    void whereAGuessIsOfNoUse() {
        StiffnessProfile even = tapered(0, 1);
        BendCase along = new BendCase(even, 0, 0, null, List.of(new PointLoad(L, 5, 0, 0)));
        assertTrue(Double.isNaN(Parts.of(along).way().guessLn()));
        assertNull(Parts.of(along).way().guessed());
        assertEquals(List.of(0.0), Parts.of(along).way().scanned());
        for (double[] upTo : new double[][] {{2.79, 1}, {2.81, 0}, {-2.79, 1}, {-2.81, 0}}) {
            PointLoad back = PointLoad.pull(L, 1, upTo[0]);
            OneWay way = Parts.of(new BendCase(even, 0, 0, null, List.of(back))).way();
            assertEquals(upTo[1] == 0, Double.isNaN(way.guessLn()), "at " + upTo[0]);
        }
    }

    /** Validates: even cantilever, closed form of Bisshopp and Drucker (1945), by the guess alone and by the scan alone. */
    @ParameterizedTest
    @CsvFileSource(resources = "elastica.csv", numLinesToSkip = 1)
    void guessAndScanAreTheElastica(
            double alpha, double tipRad, double tipDeg, double drop, double shortening, double kappa) {
        Parts rod = Parts.of(tipLoad(tapered(0, 1), alpha, 0));
        BendResult.Bent guessed = present(rod.way().guessed());
        assertEquals(-tipRad, guessed.tip().angleRad(), 1e-9);
        assertEquals(drop, guessed.dropMm() / L, 1e-9);
        List<Double> scanned = rod.way().scanned();
        assertEquals(1, scanned.size());
        assertEquals(Math.PI / 2 - tipRad, scanned.get(0), 1e-9);
        double[] misses = rod.way().misses(Math.log(scanned.get(0) / rod.turn()), drop * L + 21);
        assertEquals(0.0, misses[0], 1e-9);
        assertEquals(-0.01, misses[1], 1e-9);
        TipShooter.Reached half = rod.shooter().reached(scanned.get(0) / 2);
        assertEquals(
                half.clampRad() - rod.turn(), rod.way().misses(Math.log(scanned.get(0) / rod.turn() / 2), 0)[0], 1e-9);
    }

    /** Clamp raised, lowered and turned behind the load: scan and guess find the same, of one sign of bend; where the tip stands is told in one way. */
    @ParameterizedTest
    @CsvSource({"0.9,0.3", "-0.8,2.0", "1.2,8.0", "0.0,25.0", "0.4,60.0"})
    void guessAndScanAgree(double clampRad, double alpha) {
        for (double[] blank : new double[][] {{0, 1}, {3, 0.3}, {4, 0.4}}) {
            Parts rod = Parts.of(tipLoad(tapered(blank[0], blank[1]), alpha, clampRad));
            List<Double> scanned = rod.way().scanned();
            assertEquals(1, scanned.size());
            double ln = Math.log(scanned.get(0) / rod.turn());
            BendResult.Bent shape = present(rod.way().shape(ln));
            BendResult.Bent guessed = present(rod.way().guessed());
            assertEquals(guessed.dropMm(), shape.dropMm(), 1e-6);
            TipShooter.Reached reached = rod.shooter().reached(scanned.get(0));
            assertEquals(shape.dropMm(), reached.dropMm(), 1e-9 * L);
            assertEquals(rod.turn(), reached.clampRad(), 1e-9);
            assertTrue(shape.nodes().stream().allMatch(node -> node.momentNmm() * rod.turn() <= 0));
        }
    }

    /** A rod ten times as thick at its tip needs a far smaller angle there than its growth tells: the scan goes down to it. */
    @Test
    void theScanGoesBelowItsFirstPlace() {
        BendCase held = tipLoad(tapered(4, 10), 900, 0);
        Parts rod = Parts.of(held);
        List<Double> scanned = rod.way().scanned();
        assertEquals(1, scanned.size());
        double ln = Math.log(scanned.get(0) / rod.turn());
        double growth = new LoadedStretches(held, held.clampAngleRad() - rod.turn()).growth();
        assertTrue(ln < -growth - 0.6, ln + " below " + -growth);
        assertEquals(rod.turn(), rod.shooter().clampAngle(scanned.get(0)), 1e-9);
        present(rod.way().shape(ln));
    }

    /** A long rod can be held in other ways, bent to and fro: in equilibrium, of more energy, and not handed out as one way. */
    @Test
    void aShapeThatBendsBothWaysIsNotHandedOut() {
        Parts rod = Parts.of(tipLoad(tapered(0, 1), 100, 0));
        double first = Math.log(rod.way().scanned().get(0) / rod.turn());
        double low = first + 0.01;
        while (Math.signum(rod.shooter().clampAngle(rod.turn() * Math.exp(low)) - rod.turn())
                == Math.signum(rod.shooter().clampAngle(rod.turn() * Math.exp(low + 0.05)) - rod.turn())) {
            low += 0.05;
            assertTrue(low < 0.0, "no second root");
        }
        double from = low;
        double second = BendUnderLoad.root(
                        ln -> rod.shooter().clampAngle(rod.turn() * Math.exp(ln)) - rod.turn(), from, from + 0.05)
                .orElseThrow();
        BendResult.Bent wound = rod.shooter().shape(rod.turn() * Math.exp(second));
        assertInstanceOf(BendResult.Bent.class, BendUnderLoad.believed(rod.held(), wound));
        assertTrue(wound.energyNmm() > present(rod.way().shape(first)).energyNmm());
        assertNull(rod.way().shape(second));
        assertNull(rod.way().shape(first + 0.01), "one that misses the clamp");
    }

    /** Under a load a million times too large the tip would have to lie nearer its load than is followed: no root. */
    @Test
    void tooLargeALoadHasNoRoot() {
        assertTrue(Parts.of(tipLoad(tapered(0, 1), 1e5, 0)).way().scanned().isEmpty());
    }
}
