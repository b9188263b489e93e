package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Guards: what a known blank would show on the wall is fitted back to that blank; no published measurements exist. */
class StiffnessFitTest {
    private static final TaperProfile BLANK =
            new TaperProfile(new double[] {0, 700, 1500, 2100}, new double[] {11.5, 8.6, 5.0, 1.9});

    private static List<StiffnessFit.Reading> hang(StiffnessFit.Wall wall, StiffnessProfile truth, double... grams) {
        List<StiffnessFit.Reading> readings = new ArrayList<>();
        double droop = wall.from() == StiffnessFit.DropFrom.OWN_DROOP ? drop(wall, truth, List.of()) : 0.0;
        for (double g : grams) {
            readings.add(new StiffnessFit.Reading(g, drop(wall, truth, List.of(PointLoad.hung(2100, g))) - droop));
        }
        return readings;
    }

    private static double drop(StiffnessFit.Wall wall, StiffnessProfile truth, List<PointLoad> loads) {
        BendResult result = BendUnderLoad.solve(new BendCase(truth, wall.clampMm(), 0.0, wall.own(), loads));
        return ((BendResult.Bent) result).dropMm();
    }

    private static StiffnessFit.Wall wall(StiffnessFit.DropFrom from) {
        return new StiffnessFit.Wall(BLANK, 100.0, TubeMass.of(BLANK, 52.0, 1.2, List.of()), from);
    }

    @Test
    void oneReadingGivesTheScale() {
        for (StiffnessFit.DropFrom from : StiffnessFit.DropFrom.values()) {
            StiffnessProfile.OfDiameter truth = StiffnessProfile.OfDiameter.withButt(BLANK, 2.2e7, 3.2);
            StiffnessFit.Outcome outcome = StiffnessFit.scale(wall(from), 3.2, hang(wall(from), truth, 150.0));
            StiffnessFit.Outcome.Fitted fitted = assertInstanceOf(StiffnessFit.Outcome.Fitted.class, outcome);
            assertEquals(truth.scale(), fitted.stiffness().scale(), 1e-6 * truth.scale(), from.name());
            assertTrue(fitted.rmsMm() < 1e-4);
        }
    }

    @Test
    void readingsOfManyLoadsGiveTheExponentToo() {
        StiffnessProfile.OfDiameter truth = StiffnessProfile.OfDiameter.withButt(BLANK, 2.2e7, 3.4);
        StiffnessFit.Wall wall = wall(StiffnessFit.DropFrom.STRAIGHT_LINE);
        StiffnessFit.Outcome outcome =
                StiffnessFit.scaleAndExponent(wall, 3.0, hang(wall, truth, 50.0, 120.0, 250.0, 500.0, 900.0));
        StiffnessFit.Outcome.Fitted fitted = assertInstanceOf(StiffnessFit.Outcome.Fitted.class, outcome);
        assertEquals(3.4, fitted.stiffness().exponent(), 1e-3);
        assertEquals(truth.atNmm2(300.0), fitted.stiffness().atNmm2(300.0), 1e-3 * truth.atNmm2(300.0));
    }

    /** Property, seed 9: readings off by up to 2 mm leave a residual of that size and a stiffness within 3 %. */
    @Test
    void coarseReadingsLeaveTheirResidual() {
        SplittableRandom random = new SplittableRandom(9L);
        StiffnessProfile.OfDiameter truth = StiffnessProfile.OfDiameter.withButt(BLANK, 2.2e7, 3.0);
        StiffnessFit.Wall wall = wall(StiffnessFit.DropFrom.STRAIGHT_LINE);
        List<StiffnessFit.Reading> rough = new ArrayList<>();
        for (StiffnessFit.Reading reading : hang(wall, truth, 60.0, 120.0, 240.0, 480.0)) {
            rough.add(new StiffnessFit.Reading(reading.loadG(), reading.dropMm() + random.nextDouble(-2.0, 2.0)));
        }
        StiffnessFit.Outcome.Fitted fitted =
                assertInstanceOf(StiffnessFit.Outcome.Fitted.class, StiffnessFit.scale(wall, 3.0, rough));
        assertTrue(fitted.rmsMm() > 0.01 && fitted.rmsMm() < 2.0, "rms " + fitted.rmsMm());
        assertEquals(4, fitted.residualsMm().size());
        assertEquals(truth.scale(), fitted.stiffness().scale(), 0.03 * truth.scale());
    }

    @Test
    void saysWhenReadingsAreTooFewOrImpossible() {
        StiffnessFit.Wall wall = wall(StiffnessFit.DropFrom.STRAIGHT_LINE);
        List<StiffnessFit.Reading> two =
                List.of(new StiffnessFit.Reading(100, 200), new StiffnessFit.Reading(200, 350));
        assertInstanceOf(StiffnessFit.Outcome.None.class, StiffnessFit.scaleAndExponent(wall, 3.0, two));
        assertInstanceOf(
                StiffnessFit.Outcome.None.class,
                StiffnessFit.scale(wall, 3.0, List.of(new StiffnessFit.Reading(100, 2500))));
    }
}
