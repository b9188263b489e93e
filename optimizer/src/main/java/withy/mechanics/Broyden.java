package withy.mechanics;

import java.util.function.BiFunction;
import java.util.function.Function;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.QRDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * Newton's steps from a good guess, whose slopes are mended by what each step brought instead of being worked out again; in one unknown the
 * secant. C. G. Broyden, Mathematics of Computation 19 (1965) 577–593. Slopes are renewed once a step gains
 * nothing, and shorter steps tried with them.
 */
final class Broyden {
    /** Least share of a step that is tried where the whole gains nothing. */
    private static final double LEAST_SHARE = 0.2;

    private Broyden() {}

    /**
     * Where the steps ended.
     *
     * @param at the unknowns
     * @param miss largest of what is left to nought, without sign
     */
    @SuppressWarnings("ArrayRecordComponent") // handed straight on
    record Root(double[] at, double miss) {}

    /**
     * Steps until nothing misses by more than enough, or no step gains any more, or there were too many. Fails with the library's exception where
     * slopes have no inverse.
     *
     * @param start a good guess
     * @param misses what should be nought, one for each unknown
     * @param slopes of the misses, a row a miss, at unknowns with known misses
     */
    static Root root(
            double[] start,
            Function<double[], double[]> misses,
            BiFunction<double[], double[], double[][]> slopes,
            double enough,
            int mostSteps) {
        double[] at = start;
        double[] miss = misses.apply(at);
        RealMatrix inverse = null;
        double share = 1.0;
        boolean mended = false;
        for (int step = 0; step < mostSteps && largest(miss) > enough; step++) {
            if (inverse == null) {
                inverse = inverse(slopes.apply(at, miss));
                mended = false;
            }
            RealVector change =
                    inverse.operate(new ArrayRealVector(miss, false)).mapMultiply(-share);
            double[] next = new ArrayRealVector(at, false).add(change).toArray();
            double[] missNext = misses.apply(next);
            if (largest(missNext) < largest(miss)) {
                inverse = mended(inverse, change, new ArrayRealVector(missNext).subtract(new ArrayRealVector(miss)));
                mended = true;
                at = next;
                miss = missNext;
                share = 1.0;
            } else if (mended) {
                inverse = null;
            } else if (share > LEAST_SHARE) {
                share /= 2.0;
            } else {
                break;
            }
        }
        return new Root(at, largest(miss));
    }

    private static RealMatrix inverse(double[][] slopes) {
        return new QRDecomposition(new Array2DRowRealMatrix(slopes, false))
                .getSolver()
                .getInverse();
    }

    /** H + (Δx − H·Δf)·Δxᵀ·H / (Δxᵀ·H·Δf), or null where that has no value. */
    private static @Nullable RealMatrix mended(RealMatrix inverse, RealVector change, RealVector gain) {
        RealVector brought = inverse.operate(gain);
        double share = change.dotProduct(brought);
        return share == 0.0
                ? null
                : inverse.add(change.subtract(brought)
                        .outerProduct(inverse.preMultiply(change))
                        .scalarMultiply(1.0 / share));
    }

    private static double largest(double[] misses) {
        double largest = 0.0;
        for (double miss : misses) {
            largest = Math.max(largest, Double.isNaN(miss) ? Double.POSITIVE_INFINITY : Math.abs(miss));
        }
        return largest;
    }
}
