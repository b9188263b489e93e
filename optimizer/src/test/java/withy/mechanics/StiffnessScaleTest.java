package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.List;
import org.junit.jupiter.api.Test;

/** One measured drop sets the stiffness. */
class StiffnessScaleTest {
    private static final double L = 2100.0;

    /**
     * Validates: the even beam drops by a third at α = P·L²/EI = 1.13134276, the thin tube to a fifth at 0.44950553 (computed tables of the
     * project, section 1e; their elliptic integrals after Bisshopp and Drucker 1945).
     */
    @Test
    void theElasticaTableGivesTheStiffness() {
        double[][] cases = {{0, 1, 1.13134276}, {3, 0.2, 0.44950553}, {4, 0.5, 0.59876095}};
        for (double[] c : cases) {
            TaperProfile taper = TaperProfile.straight(L, 12.0, 12.0 * c[1]);
            StiffnessProfile start = StiffnessProfile.OfDiameter.withButt(taper, 5e6, c[0]);
            StiffnessScale.Outcome outcome = StiffnessScale.toDrop(start, 0.0, null, 300.0, L / 3.0);
            StiffnessScale.Outcome.Scaled scaled = assertInstanceOf(StiffnessScale.Outcome.Scaled.class, outcome);
            double expected = 300.0 * 9.80665e-3 * L * L / c[2];
            assertEquals(expected, scaled.stiffness().atNmm2(0.0), 1e-6 * expected, "p = " + c[0]);
            assertEquals(expected / 5e6, scaled.factor(), 1e-6 * scaled.factor());
        }
    }

    @Test
    void aDropBeyondTheLengthIsNone() {
        StiffnessProfile start = StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 12.0, 2.0), 2e7, 3);
        assertInstanceOf(StiffnessScale.Outcome.None.class, StiffnessScale.toDrop(start, 0.0, null, 300.0, L));
        assertInstanceOf(StiffnessScale.Outcome.None.class, StiffnessScale.toDrop(start, 0.0, null, 300.0, -1.0));
    }

    /** The own weight takes part in the drop, so the blank is stiffer than without. */
    @Test
    void theOwnWeightTakesPart() {
        TaperProfile taper = TaperProfile.straight(L, 12.0, 2.0);
        StiffnessProfile start = StiffnessProfile.OfDiameter.withButt(taper, 2e7, 3);
        TubeMass own = TubeMass.of(taper, 60.0, 1.0, List.of());
        StiffnessScale.Outcome.Scaled with = assertInstanceOf(
                StiffnessScale.Outcome.Scaled.class, StiffnessScale.toDrop(start, 0.0, own, 300.0, L / 3.0));
        StiffnessScale.Outcome.Scaled without = assertInstanceOf(
                StiffnessScale.Outcome.Scaled.class, StiffnessScale.toDrop(start, 0.0, null, 300.0, L / 3.0));
        assertEquals(1.0, Math.min(1.0, with.factor() / without.factor() - 1e-3), 0.0);
    }
}
