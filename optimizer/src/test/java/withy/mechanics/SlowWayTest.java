package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A weight or a stiffness looked for step by step, where the quick way is of no use, and what is told where there is none. */
class SlowWayTest {
    private static final double L = 2100.0;
    private static final double CLAMP = 300.0;
    private static final double FREE = L - CLAMP;

    private static StiffnessProfile even(double ei) {
        return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10, 10), ei, 0);
    }

    private static TubeMass own(double grams) {
        return TubeMass.of(TaperProfile.straight(L, 10, 10), grams, 1, List.of());
    }

    /**
     * Guards: own weight alone (q·L³/EI and drop of the table in {@link BendUnderLoadTest}), no weight hung: there is no small-bend guess.
     * From far too stiff and far too limp.
     */
    @ParameterizedTest
    @CsvSource({"2,0.2385065829,7", "5,0.4959050446,9", "5,0.4959050446,0.2", "10,0.7001997155,0.6", "1,0.1234714020,1"
    })
    void theOwnWeightAloneSetsTheStiffness(double q, double drop, double off) {
        double grams = 90;
        double free = grams * FREE / L;
        double expected = free * 9.80665e-3 * FREE * FREE / q;
        StiffnessScale.Outcome outcome =
                StiffnessScale.toDrop(even(off * expected), CLAMP, own(grams), 0.0, drop * FREE);
        StiffnessScale.Outcome.Scaled scaled = assertInstanceOf(StiffnessScale.Outcome.Scaled.class, outcome);
        assertEquals(expected, scaled.stiffness().atNmm2(800), 1e-6 * expected);
        assertEquals(1 / off, scaled.factor(), 1e-6 / off);
    }

    /** The clamp shortens what bends: even, a third of the free length at α = 1.13134276 of it. */
    @Test
    void theFreeLengthCounts() {
        StiffnessScale.Outcome outcome = StiffnessScale.toDrop(even(5e6), CLAMP, null, 250, FREE / 3);
        double expected = 250 * 9.80665e-3 * FREE * FREE / 1.13134276;
        assertEquals(
                expected,
                assertInstanceOf(StiffnessScale.Outcome.Scaled.class, outcome)
                        .stiffness()
                        .atNmm2(L),
                1e-6 * expected);
        OneThirdDrop.Outcome.Found found = assertInstanceOf(
                OneThirdDrop.Outcome.Found.class, OneThirdDrop.of(even(expected), CLAMP, null, List.of()));
        assertEquals(250, found.weightG(), 1e-4);
        assertEquals(29.332434, found.actionAngleDeg(), 2e-6);
    }

    private static String why(StiffnessScale.Outcome outcome) {
        return assertInstanceOf(StiffnessScale.Outcome.None.class, outcome).reason();
    }

    @Test
    void whyNoStiffnessDoesIt() {
        for (double drop : new double[] {FREE, FREE + 1, 0, -3, Double.NaN}) {
            String why = why(StiffnessScale.toDrop(even(5e6), CLAMP, null, 250, drop));
            assertTrue(why.contains("can't be had on 1800.0 mm"), why);
        }
        String still = why(StiffnessScale.toDrop(even(5e6), CLAMP, null, 0, 200));
        assertTrue(still.contains("No stiffness gives a drop of 200.0 mm"), still);
        String coiled = why(StiffnessScale.toDrop(even(50), CLAMP, own(80), 0, 200));
        assertTrue(coiled.contains("load may be too large"), coiled);
    }

    /**
     * Guards: one-third loads of the computed table, the quick way barred by a hair of sideways force. Even, and two tapers; the clamp at the butt,
     * as the table has it.
     */
    @ParameterizedTest
    @CsvSource({"0,1,1.13134276,29.332434", "4,0.3,0.39365317,50.794121", "3,0.2,0.44950553,49.723519"})
    void oneThirdWhereLoadsPullTwoWays(double p, double r, double alpha, double tipDeg) {
        double ei = 4.0e6;
        StiffnessProfile rod = StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10, 10 * r), ei, p);
        List<PointLoad> hair = List.of(new PointLoad(L / 2, 1e-7, 0, 0));
        OneThirdDrop.Outcome.Found found =
                assertInstanceOf(OneThirdDrop.Outcome.Found.class, OneThirdDrop.of(rod, 0, null, hair));
        assertEquals(alpha, found.weightG() * 9.80665e-3 * L * L / ei, 1e-6);
        assertEquals(tipDeg, found.actionAngleDeg(), 1e-4);
        assertEquals(L / 3, found.shape().dropMm(), 1e-5);
    }

    /** Held up by a couple at its tip, an even rod first has to be pulled down past level: the arc's end stands above the clamp. */
    @Test
    void oneThirdAgainstACouple() {
        double ei = 4.0e6;
        double couple = 0.5 * ei / L;
        OneThirdDrop.Outcome.Found found = assertInstanceOf(
                OneThirdDrop.Outcome.Found.class,
                OneThirdDrop.of(even(ei), 0, null, List.of(new PointLoad(L, 0, 0, couple))));
        BendResult.Bent shape = found.shape();
        assertEquals(L / 3, shape.dropMm(), 1e-5);
        double expected = couple - found.weightG() * 9.80665e-3 * shape.tip().xMm();
        assertEquals(expected, shape.rootMomentNmm(), 1e-6 * Math.abs(expected));
        assertEquals(couple, shape.tip().momentNmm() + couple, 1e-9, "the couple joins below the last node");
        assertTrue(found.weightG() * 9.80665e-3 * L * L / ei > 1.5, "more than without");
    }

    private static String whyNot(StiffnessProfile rod, TubeMass own, List<PointLoad> fixed) {
        return assertInstanceOf(OneThirdDrop.Outcome.None.class, OneThirdDrop.of(rod, 0, own, fixed))
                .reason();
    }

    @Test
    void whyNoWeightDropsItByAThird() {
        String sunk = whyNot(even(4e6), own(4000), List.of());
        assertTrue(sunk.contains("under its own weight"), sunk);
        String coiled = whyNot(even(50), own(80), List.of());
        assertTrue(coiled.contains("load may be too large"), coiled);
    }
}
