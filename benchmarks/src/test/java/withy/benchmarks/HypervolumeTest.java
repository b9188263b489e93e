package withy.benchmarks;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Point sets with known volumes. Sources beside each; values marked computed are exact sums worked out for this project. */
class HypervolumeTest {
    private static final double EXACT = 1e-9;

    /** pagmo2, tests/hypervolume.cpp. */
    @Test
    void setsOfPagmo() {
        check(3, ref(2, 3), p(1, 2), p(2, 1));
        check(17.91, ref(2, 7), p(2.3, 4.5), p(3.4, 3.4), p(6, 1.2));
        check(66.386, ref(3, 7), p(2.3, 4.5, 3.2), p(3.4, 3.4, 3.4), p(6, 1.2, 3.6));
        check(373.21228, ref(5, 7), p(2.3, 4.5, 3.2, 1.9, 6), p(3.4, 3.4, 3.4, 2.1, 5.8), p(6, 1.2, 3.6, 3, 6));
        check(8, ref(3, 3), p(1, 1, 1), p(2, 2, 2));
        check(16, ref(4, 2), p(1, 1, 1, 1), p(1, 1, 1, 1), p(0, 0, 0, 0));
        check(0, ref(3, 2), p(1, 2, 1), p(2, 1, 1));
    }

    /** Contributions by pagmo2, tests/hypervolume.cpp; the whole volume is computed. */
    @Test
    void contributionsOfPagmo() {
        double[][] all = {p(-6, -1, -6), p(-1, -3, -5), p(-3, -4, -4), p(-4, -2, -3), p(-5, -5, -2), p(-2, -6, -1)};
        double[] contributions = {18, 2, 12, 1, 18, 2};
        check(99, ref(3, 0), all);
        for (int i = 0; i < all.length; i++) {
            List<double[]> rest = new ArrayList<>(List.of(all));
            rest.remove(i);
            assertEquals(99 - contributions[i], Hypervolume.of(rest, ref(3, 0)), EXACT, "without point " + i);
        }
    }

    /** jMetalPy; CMA-ES/moarchiving; pymoo issue 188 (the asker's own value by hand, 17, is wrong). */
    @Test
    void setsOfOthers() {
        check(5, ref(3, 2), p(1, 0, 1), p(0, 1, 0));
        check(13, ref(3, 4), p(1, 2, 3), p(2, 3, 1), p(3, 1, 2));
        check(8, p(7, 8.5), p(6, 6.5), p(5, 7), p(4, 6.5), p(3, 7.5), p(2, 7.5));
    }

    /** ZDT1's front f2 = 1 − √f1 sampled evenly, reference (1.1, 1.1); values computed. */
    @Test
    void sampledFront() {
        assertEquals(0.820509341707, Hypervolume.of(zdt1(11), ref(2, 1.1)), 1e-11);
        assertEquals(0.871462947103, Hypervolume.of(zdt1(101), ref(2, 1.1)), 1e-11);
    }

    private static List<double[]> zdt1(int n) {
        List<double[]> points = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            double f = (double) i / (n - 1);
            points.add(p(f, 1 - Math.sqrt(f)));
        }
        return points;
    }

    private static void check(double volume, double[] reference, double[]... points) {
        assertEquals(volume, Hypervolume.of(List.of(points), reference), EXACT);
    }

    private static double[] ref(int objectives, double value) {
        double[] reference = new double[objectives];
        java.util.Arrays.fill(reference, value);
        return reference;
    }

    private static double[] p(double... values) {
        return values;
    }
}
