package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Guards: a blank of known stiffness, bent, traced and fitted, is found again. */
class TraceFitTest {
    private static final double L = 2060.0;
    private static final double LOAD = 300.0;
    private static final TaperProfile TAPER =
            new TaperProfile(new double[] {0, 1000, 1000, L}, new double[] {11.0, 6.2, 7.8, 1.6});
    private static final TubeMass OWN = TubeMass.of(TAPER, 45.0, 1.0, List.of());

    private static List<TraceFit.Point> traced(double exponent, double held, double unit, double noise, int points) {
        StiffnessProfile stiffness = StiffnessProfile.OfDiameter.withButt(TAPER, 28e6, exponent);
        BendCase bend = new BendCase(stiffness, held, 0.0, OWN, List.of(PointLoad.hung(L, LOAD)));
        BentAxis axis = new BentAxis(assertInstanceOf(BendResult.Bent.class, BendUnderLoad.solve(bend))
                .nodes());
        SplittableRandom random = new SplittableRandom(31L);
        List<TraceFit.Point> list = new ArrayList<>();
        for (int i = 0; i < points; i++) {
            BendResult.Node node = axis.at(held + (L - held) * i / (points - 1));
            double shake = i == 0 || i == points - 1 ? 0.0 : noise;
            list.add(new TraceFit.Point(
                    7.0 + unit * (node.xMm() + shake * random.nextDouble(-1, 1)),
                    -3.0 - unit * (node.yMm() + shake * random.nextDouble(-1, 1))));
        }
        return list;
    }

    @Test
    void aTraceInAnyUnitFindsTheStiffness() {
        for (double unit : new double[] {1.0, 0.37, 12.0}) {
            for (double exponent : new double[] {2.6, 3.0, 3.8}) {
                TraceFit.Outcome outcome = TraceFit.of(
                        new StiffnessFit.Wall(TAPER, 40.0, OWN, StiffnessFit.DropFrom.STRAIGHT_LINE),
                        LOAD,
                        3.0,
                        traced(exponent, 40.0, unit, 0.0, 60));
                TraceFit.Outcome.Fitted fitted = assertInstanceOf(TraceFit.Outcome.Fitted.class, outcome);
                assertEquals(exponent, fitted.stiffness().exponent(), 0.02, "unit " + unit);
                assertEquals(28e6, fitted.stiffness().atNmm2(0.0), 0.01 * 28e6, "unit " + unit);
                assertTrue(fitted.rmsMm() < 0.5, fitted.rmsMm() + " mm");
            }
        }
    }

    /** Seed 31: shaken by up to 2 mm, the residual says so and the stiffness stays near. */
    @Test
    void aShakyTraceSaysSoInItsResidual() {
        TraceFit.Outcome outcome = TraceFit.of(
                new StiffnessFit.Wall(TAPER, 0.0, OWN, StiffnessFit.DropFrom.STRAIGHT_LINE),
                LOAD,
                3.0,
                traced(3.2, 0.0, 1.0, 2.0, 25));
        TraceFit.Outcome.Fitted fitted = assertInstanceOf(TraceFit.Outcome.Fitted.class, outcome);
        assertTrue(fitted.rmsMm() > 0.5 && fitted.rmsMm() < 4.0, fitted.rmsMm() + " mm");
        assertEquals(24, fitted.residualsMm().size());
        assertEquals(3.2, fitted.stiffness().exponent(), 0.3);
    }

    @Test
    void whatIsNoBendIsNone() {
        StiffnessFit.Wall wall = new StiffnessFit.Wall(TAPER, 0.0, OWN, StiffnessFit.DropFrom.STRAIGHT_LINE);
        List<TraceFit.Point> few = traced(3, 0.0, 1.0, 0.0, 3);
        assertInstanceOf(TraceFit.Outcome.None.class, TraceFit.of(wall, LOAD, 3.0, few));
        TraceFit.Point one = new TraceFit.Point(1, 1);
        assertInstanceOf(TraceFit.Outcome.None.class, TraceFit.of(wall, LOAD, 3.0, List.of(one, one, one, one)));
        List<TraceFit.Point> up = new ArrayList<>();
        for (int i = 0; i < 5; i++) {
            up.add(new TraceFit.Point(i * 400.0, -i * 50.0));
        }
        assertInstanceOf(TraceFit.Outcome.None.class, TraceFit.of(wall, LOAD, 3.0, up));
    }
}
