package withy.mechanics;

import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.exception.MathRuntimeException;
import org.jspecify.annotations.Nullable;

/**
 * A rod whose loads all pull one way, and its shape without a point of inflection: the first root seen from the loads' direction.
 *
 * <p>Unknown is ln of the tip's angle over the clamp's, both from that direction. It is looked for from a guess first; what that finds counts
 * only where the rod bends one way from tip to clamp. Else the roots are scanned from the loads' direction on. The guess: an even rod of small
 * bend has −ln cosh g, g how many times e-fold a small angle grows from tip to clamp; where the clamp turns by β from the loads, a
 * long rod has ln(4·tan(β/4)/β) more (the pendulum's separatrix); a taper adds a share of ln of clamp's over tip's stiffness, a quarter by
 * WKB, {@value #TAPER_SHARE} by trial on blanks.
 */
final class OneWay {
    private static final double PARALLEL_TOLERANCE = 1e-12;

    /** Clamp's angle from the loads beyond which the guess is of no use: a rod nearly pressed along itself. */
    private static final double FARTHEST_RAD = 2.8;

    private static final double TAPER_SHARE = 0.19;

    private static final double ENOUGH_RAD = 1e-11;
    private static final int MOST_STEPS = 12;

    /** ln of the smallest angle between tip and load that is followed; a rod that needs less lies along its load. */
    private static final double SMALLEST_LN = -60.0;

    private static final double SCAN_STEP_LN = 0.6;

    private final BendCase held;
    private final LoadedStretches stretches;
    private final TipShooter shooter;
    private final double turn;

    OneWay(BendCase held, LoadedStretches stretches, TipShooter shooter, double turn) {
        this.held = held;
        this.stretches = stretches;
        this.shooter = shooter;
        this.turn = turn;
    }

    /** Whether everything that acts pulls in one direction and nothing twists. */
    static boolean is(BendCase held) {
        double forward = 0.0;
        double up = 0.0;
        double sizes = 0.0;
        TubeMass own = held.own();
        if (own != null) {
            up = -own.massG() * MassSum.NMM_PER_GMM;
            sizes = -up;
        }
        for (PointLoad load : held.loadsAhead()) {
            if (load.coupleNmm() != 0.0) {
                return false;
            }
            forward += load.forwardN();
            up += load.upN();
            sizes += load.size();
        }
        return sizes - Math.hypot(forward, up) <= PARALLEL_TOLERANCE * sizes;
    }

    /** Where to begin, or not a number where a guess is of no use. */
    double guessLn() {
        double size = Math.abs(turn);
        if (size < PARALLEL_TOLERANCE || size > FARTHEST_RAD) {
            return Double.NaN;
        }
        double folds = Math.cosh(stretches.growth());
        double more = Math.log(4.0 * Math.tan(size / 4.0) / size) + TAPER_SHARE * Math.log(stretches.stiffer());
        return Math.min(0.0, -Math.log(folds) + (1.0 - 1.0 / folds) * more);
    }

    /** By how much the clamp's direction is missed, radians, and a drop of the tip, the share of the free length. */
    double[] misses(double ln, double dropMm) {
        TipShooter.Reached reached = shooter.reached(turn * Math.exp(ln));
        return new double[] {reached.clampRad() - turn, (reached.dropMm() - dropMm) / held.lengthMm()};
    }

    /** The shape found from the guess, or null. */
    BendResult.@Nullable Bent guessed() {
        double guess = guessLn();
        if (Double.isNaN(guess)) {
            return null;
        }
        try {
            Broyden.Root root = Broyden.root(
                    new double[] {guess},
                    ln -> new double[] {shooter.clampAngle(turn * Math.exp(ln[0])) - turn},
                    (ln, miss) -> new double[][] {{turn}},
                    ENOUGH_RAD,
                    MOST_STEPS);
            return shape(root.at()[0]);
        } catch (MathRuntimeException e) {
            return null;
        }
    }

    /** The shape of a root, or null where it can't be believed or bends both ways. */
    BendResult.@Nullable Bent shape(double ln) {
        BendResult result = BendUnderLoad.believed(held, shooter.shape(turn * Math.exp(ln)));
        return result instanceof BendResult.Bent bent
                        && bent.nodes().stream().allMatch(node -> node.momentNmm() * turn <= 0.0)
                ? bent
                : null;
    }

    /** The first direction of the tip that meets the clamp, by a scan; empty where there is none. */
    List<Double> scanned() {
        if (Math.abs(turn) < PARALLEL_TOLERANCE) {
            return List.of(turn);
        }
        double sign = Math.signum(turn);
        UnivariateFunction miss = ln -> sign * (shooter.clampAngle(turn * Math.exp(ln)) - turn);
        UnivariateFunction side = ln -> sign * (shooter.roughClampAngle(turn * Math.exp(ln)) - turn);
        double low = Math.min(-SCAN_STEP_LN, -stretches.growth() - SCAN_STEP_LN);
        while (low >= SMALLEST_LN && side.value(low) > 0.0) {
            low -= 2.0 * SCAN_STEP_LN;
        }
        if (low < SMALLEST_LN) {
            return List.of();
        }
        while (low < 0.0) {
            double high = Math.min(0.0, low + SCAN_STEP_LN);
            if (side.value(high) >= 0.0) {
                OptionalDouble ln = BendUnderLoad.root(miss, low, high);
                return ln.isPresent() ? List.of(turn * Math.exp(ln.getAsDouble())) : List.of();
            }
            low = high;
        }
        return List.of();
    }
}
