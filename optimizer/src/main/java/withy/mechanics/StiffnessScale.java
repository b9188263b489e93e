package withy.mechanics;

import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathRuntimeException;
import org.jspecify.annotations.Nullable;

/**
 * The factor on a stiffness at which one hung weight drops the tip of the level blank by what was measured.
 *
 * <p>Weight in g at the tip, drop in mm from the straight line of the unbent blank, its own weight acting too. The shape of the stiffness
 * along the blank stays.
 */
public final class StiffnessScale {
    /** Step of the search for a bracket, in ln of the factor. */
    private static final double STEP_LN = 0.35;

    private static final int MOST_STEPS_OUT = 40;
    private static final int MOST_STEPS = 60;

    private StiffnessScale() {}

    /** What came of it. */
    public sealed interface Outcome {
        /** The stiffness that meets the measured drop, and by which factor it differs from the one given. */
        record Scaled(StiffnessProfile stiffness, double factor) implements Outcome {}

        /** No factor does it, and why. */
        record None(String reason) implements Outcome {}
    }

    /** Held level at a clamp, mm from the butt. */
    public static Outcome toDrop(
            StiffnessProfile stiffness, double clampMm, @Nullable TubeMass own, double weightG, double dropMm) {
        double length = stiffness.tipMm() - clampMm;
        if (!(dropMm > 0.0 && dropMm < length)) {
            return new Outcome.None("A drop of " + dropMm + " mm can't be had on " + length + " mm of free length.");
        }
        Drops drops = new Drops(stiffness, clampMm, own, weightG);
        DropMet.Found met = DropMet.of(drops::held, drops.guess(dropMm), dropMm);
        if (met != null) {
            return new Outcome.Scaled(stiffness.scaled(met.value()), met.value());
        }
        try {
            double low = 0.0;
            double atLow = drops.missMm(low, dropMm);
            double step = atLow > 0.0 ? STEP_LN : -STEP_LN;
            for (int i = 0; i < MOST_STEPS_OUT; i++) {
                double high = low + step;
                double atHigh = drops.missMm(high, dropMm);
                if (atLow * atHigh <= 0.0) {
                    double ln = new BracketingNthOrderBrentSolver(1e-9, 1e-9, 1e-8 * length, 5)
                            .solve(
                                    MOST_STEPS,
                                    at -> drops.missMm(at, dropMm),
                                    Math.min(low, high),
                                    Math.max(low, high));
                    return new Outcome.Scaled(stiffness.scaled(Math.exp(ln)), Math.exp(ln));
                }
                low = high;
                atLow = atHigh;
            }
            return new Outcome.None("No stiffness gives a drop of " + dropMm + " mm.");
        } catch (NoBend e) {
            return new Outcome.None(String.valueOf(e.getMessage()));
        } catch (MathRuntimeException e) {
            return new Outcome.None("The search for the stiffness failed: " + e.getMessage());
        }
    }

    private record Drops(
            StiffnessProfile stiffness,
            double clampMm,
            @Nullable TubeMass own,
            double weightG) {

        BendCase held(double factor) {
            List<PointLoad> loads = List.of(PointLoad.hung(stiffness.tipMm(), weightG));
            return new BendCase(stiffness.scaled(factor), clampMm, 0.0, own, loads);
        }

        /** The factor if the weight alone dropped the tip, and drops grew evenly with it. */
        double guess(double wantedMm) {
            double drop = weightG * MassSum.NMM_PER_GMM * new LoadedStretches(held(1.0), 0.0).dropMmPerN();
            return drop / wantedMm;
        }

        double missMm(double ln, double wantedMm) {
            BendResult result = BendUnderLoad.solve(held(Math.exp(ln)));
            if (result instanceof BendResult.Bent bent) {
                return bent.dropMm() - wantedMm;
            }
            throw new NoBend(((BendResult.NotConverged) result).reason());
        }
    }

    private static final class NoBend extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NoBend(String reason) {
            super(reason);
        }
    }
}
