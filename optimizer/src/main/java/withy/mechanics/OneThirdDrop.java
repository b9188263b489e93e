package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathRuntimeException;
import org.jspecify.annotations.Nullable;

/**
 * The weight hung at the tip of a level rod that drops the tip by a third of the free length.
 *
 * <p>The drop counts from the straight line of the unbent rod, not from its own droop: the straight line is the same for every
 * rod, the droop is not. The free length is clamp to tip. Idea of a static rating by one-third deflection: W. Hanneman, 2002
 * and later (from memory).
 */
public final class OneThirdDrop {
    private static final double SHARE = 1.0 / 3.0;

    /** Drop at a load small enough to be linear, as a share of the length, from which the search starts. */
    private static final double START_SHARE = 0.1;

    private static final int MOST_DOUBLINGS = 40;
    private static final int MOST_STEPS = 60;

    private OneThirdDrop() {}

    /** What came of it. */
    public sealed interface Outcome {
        /** The weight in grams and the shape it makes; the tip's angle below level is the action angle. */
        record Found(double weightG, BendResult.Bent shape) implements Outcome {
            public double actionAngleDeg() {
                return -Math.toDegrees(shape.tip().angleRad());
            }
        }

        /** No weight does it, and why. */
        record None(String reason) implements Outcome {}
    }

    /**
     * Finds the weight.
     *
     * @param stiffness EI along the rod
     * @param clampMm where it is held, mm from the butt
     * @param own its own weight, or null to leave that out
     * @param fixed other weights on it, such as guides
     */
    public static Outcome of(
            StiffnessProfile stiffness, double clampMm, @Nullable TubeMass own, List<PointLoad> fixed) {
        double length = stiffness.tipMm() - clampMm;
        double wantedMm = length * SHARE;
        Drops drops = new Drops(stiffness, clampMm, own, fixed);
        DropMet.Found met = DropMet.of(drops::held, drops.guessG(wantedMm), wantedMm);
        if (met != null) {
            return new Outcome.Found(met.value(), met.shape());
        }
        try {
            double low = 0.0;
            if (drops.missMm(low, wantedMm) >= 0.0) {
                return new Outcome.None("The rod sinks by a third under its own weight.");
            }
            double high = 3.0 * START_SHARE * stiffness.atNmm2(clampMm) / (length * length) / MassSum.NMM_PER_GMM;
            int doublings = 0;
            while (drops.missMm(high, wantedMm) < 0.0) {
                low = high;
                high *= 2.0;
                if (++doublings > MOST_DOUBLINGS) {
                    return new Outcome.None("No weight drops the tip by a third.");
                }
            }
            double weight = new BracketingNthOrderBrentSolver(1e-9, 1e-7, 1e-9 * length, 5)
                    .solve(MOST_STEPS, w -> drops.missMm(w, wantedMm), low, high);
            return drops.bend(weight) instanceof BendResult.Bent bent
                    ? new Outcome.Found(weight, bent)
                    : new Outcome.None("The bend at " + weight + " g did not converge.");
        } catch (Drops.NoBend e) {
            return new Outcome.None(e.reason());
        } catch (MathRuntimeException e) {
            return new Outcome.None("The search for the weight failed: " + e.getMessage());
        }
    }

    private record Drops(
            StiffnessProfile stiffness,
            double clampMm,
            @Nullable TubeMass own,
            List<PointLoad> fixed) {

        BendCase held(double weightG) {
            List<PointLoad> loads = new ArrayList<>(fixed);
            loads.add(PointLoad.hung(stiffness.tipMm(), weightG));
            return new BendCase(stiffness, clampMm, 0.0, own, loads);
        }

        BendResult bend(double weightG) {
            return BendUnderLoad.solve(held(weightG));
        }

        /** The weight that alone would drop the tip so far if drops grew evenly with it, g. */
        double guessG(double wantedMm) {
            return wantedMm / new LoadedStretches(held(1.0), 0.0).dropMmPerN() / MassSum.NMM_PER_GMM;
        }

        double missMm(double weightG, double wantedMm) {
            BendResult result = bend(weightG);
            if (result instanceof BendResult.Bent bent) {
                return bent.dropMm() - wantedMm;
            }
            throw new NoBend(((BendResult.NotConverged) result).reason());
        }

        private static final class NoBend extends RuntimeException {
            private static final long serialVersionUID = 1L;
            private final String reason;

            NoBend(String reason) {
                super(reason);
                this.reason = reason;
            }

            String reason() {
                return reason;
            }
        }
    }
}
