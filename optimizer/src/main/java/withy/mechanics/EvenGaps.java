package withy.mechanics;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;

/**
 * Guides beside one that had to move, following it so that the growth from gap to gap changes as little as can be: the sum of the squares by which the
 * logarithms of the ratios of neighbouring gaps change is least. Stripper, moved guides and tip-top stay where they are.
 *
 * <pre>
 *   change of ln(ratio)      h
 *                           /  \___
 *                         /        \___
 *   tip-top  0 ---------/--------------\--- 0  stripper
 *                     moved
 * </pre>
 *
 * Least is (by Lagrange's multipliers) where the change of a ratio is linear in the place of its guide between the fixed ones, with one height h a moved
 * guide: as many unknowns as places to be kept, found by Newton's steps.
 */
final class EvenGaps {
    private static final double TOLERANCE_MM = 1e-9;
    private static final int MOST_STEPS = 60;

    /** Unmoved gaps from tip to stripper, as logarithms. */
    private final double[] logGaps;

    /** Fixed guides by their number from the tip, and where they are, mm from it; the stripper last. */
    private final int[] fixed;

    private final double[] fixedMm;

    private EvenGaps(double[] fromTipMm, double[] movedFromTipMm) {
        int n = fromTipMm.length;
        logGaps = new double[n];
        int[] numbers = new int[n];
        int many = 0;
        for (int i = 0; i < n; i++) {
            logGaps[i] = Math.log(fromTipMm[i] - (i == 0 ? 0 : fromTipMm[i - 1]));
            if (i == n - 1 || movedFromTipMm[i] != fromTipMm[i]) {
                numbers[many++] = i;
            }
        }
        fixed = Arrays.copyOf(numbers, many);
        fixedMm = Arrays.stream(fixed).mapToDouble(i -> movedFromTipMm[i]).toArray();
    }

    /**
     * The guides as they follow; empty where they cannot.
     *
     * @param xMm before any was moved, mm from the butt, rising, stripper first
     * @param movedMm after that: those that are elsewhere stay there
     * @param tipMm the tip-top, mm from the butt
     */
    static Optional<double[]> of(double[] xMm, double[] movedMm, double tipMm) {
        double[] moved = fromTip(movedMm, tipMm);
        EvenGaps gaps = new EvenGaps(fromTip(xMm, tipMm), moved);
        return gaps.follow(moved).map(places -> {
            double[] even = fromTip(places, tipMm);
            for (int i : gaps.fixed) {
                even[even.length - 1 - i] = movedMm[even.length - 1 - i]; // to the last bit
            }
            return even;
        });
    }

    /** From the butt, stripper first, or from the tip, stripper last: the same one way and the other. */
    private static double[] fromTip(double[] mm, double tipMm) {
        double[] turned = new double[mm.length];
        for (int i = 0; i < mm.length; i++) {
            turned[i] = tipMm - mm[mm.length - 1 - i];
        }
        return turned;
    }

    private Optional<double[]> follow(double[] start) {
        double[] heights = new double[fixed.length - 1];
        double[] places = start;
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] now = places(places, heights);
            double off = 0;
            for (int i = 0; i < places.length; i++) {
                off = Math.max(off, Math.abs(now[i] - places[i]));
            }
            for (int a = 0; a < fixed.length; a++) {
                off = Math.max(off, Math.abs(now[fixed[a]] - fixedMm[a]));
            }
            if (off < TOLERANCE_MM) {
                return Optional.of(now);
            }
            if (!(off < Double.MAX_VALUE) || !newton(places, heights, now)) {
                return Optional.empty();
            }
            places = places(places, heights);
        }
        return Optional.empty();
    }

    /** Betters the heights, with the changes of ratios laid over some places; false where it cannot. */
    private boolean newton(double[] places, double[] heights, double[] now) {
        int m = heights.length;
        if (m == 0) {
            return true;
        }
        double small = 1e-6;
        double[][] slopes = new double[m][m];
        double[] misses = new double[m];
        for (int b = 0; b < m; b++) {
            heights[b] += small;
            double[] other = places(places, heights);
            heights[b] -= small;
            for (int a = 0; a < m; a++) {
                slopes[a][b] = (other[fixed[a]] - now[fixed[a]]) / small;
            }
        }
        for (int a = 0; a < m; a++) {
            misses[a] = fixedMm[a] - now[fixed[a]];
        }
        try {
            double[] change = new LUDecomposition(new Array2DRowRealMatrix(slopes, false))
                    .getSolver()
                    .solve(new ArrayRealVector(misses, false))
                    .toArray();
            for (int a = 0; a < m; a++) {
                heights[a] += change[a];
            }
            return true;
        } catch (MathRuntimeException singular) {
            return false;
        }
    }

    /** Guides from the tip with ratios changed by these heights, linear between the fixed ones in some places, and all gaps scaled to end at the stripper. */
    private double[] places(double[] over, double[] heights) {
        int n = logGaps.length;
        double[] places = new double[n];
        double change = 0;
        double sum = 0;
        int next = 0;
        for (int k = 0; k < n; k++) {
            sum += Math.exp(logGaps[k] + change);
            places[k] = sum;
            if (k > fixed[next]) {
                next++;
            }
            change += ratioChange(over[k], next, heights);
        }
        double scale = fixedMm[fixedMm.length - 1] / sum;
        for (int k = 0; k < n; k++) {
            places[k] *= scale;
        }
        return places;
    }

    /** At a place before one fixed guide and beyond the one before. */
    private double ratioChange(double mm, int next, double[] heights) {
        double to = fixedMm[next];
        double from = next == 0 ? 0 : fixedMm[next - 1];
        double height = next == heights.length ? 0 : heights[next];
        double before = next == 0 ? 0 : heights[next - 1];
        return before + (height - before) * (mm - from) / (to - from);
    }
}
