package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.hipparchus.exception.MathRuntimeException;
import org.junit.jupiter.api.Test;

/** Steps that are worked out again here by the formulas of the papers, and every place that is tried written down. */
class BroydenTest {
    private final List<double[]> tried = new ArrayList<>();
    private int slopesAsked;

    private Broyden.Root root(
            double[] start, Function<double[], double[]> misses, double[][] slopes, double enough, int most) {
        BiFunction<double[], double[], double[][]> given = (at, miss) -> {
            slopesAsked++;
            return slopes;
        };
        return Broyden.root(
                start,
                at -> {
                    tried.add(at.clone());
                    return misses.apply(at);
                },
                given,
                enough,
                most);
    }

    private double[] triedAt(int unknown) {
        return tried.stream().mapToDouble(at -> at[unknown]).toArray();
    }

    /** Validates: in one unknown the method is the secant, x − f·Δx/Δf; C. G. Broyden 1965, section 4. x² = 2 from 1. */
    @Test
    void inOneUnknownItIsTheSecant() {
        Broyden.Root found =
                root(new double[] {1.0}, x -> new double[] {x[0] * x[0] - 2.0}, new double[][] {{2.0}}, 1e-14, 20);
        List<Double> expected = new ArrayList<>(List.of(1.0, 1.5));
        while (expected.size() < tried.size()) {
            double a = expected.get(expected.size() - 2);
            double b = expected.get(expected.size() - 1);
            double fa = a * a - 2.0;
            double fb = b * b - 2.0;
            expected.add(b - fb * (b - a) / (fb - fa));
        }
        assertArrayEquals(expected.stream().mapToDouble(Double::doubleValue).toArray(), triedAt(0), 1e-13);
        assertEquals(Math.sqrt(2.0), found.at()[0], 1e-14);
        assertTrue(found.miss() <= 1e-14, "misses by " + found.miss());
        assertEquals(1, slopesAsked, "slopes are mended, not asked again");
        assertEquals(7, tried.size(), "the secant needs that many");
    }

    private static double[] curves(double[] at) {
        return new double[] {at[0] * at[0] + at[1] * at[1] - 4.0, at[0] - at[1] * at[1] * 0.25 - 1.0};
    }

    /** Validates: B' = B + (Δf − B·Δx)·Δxᵀ/(Δxᵀ·Δx), Broyden 1965, solved here by Cramer's rule: the same places one after the other. */
    @Test
    void inTwoUnknownsItIsBroydensUpdate() {
        double[] at = {1.6, 1.3};
        double[][] b = {{2 * at[0], 2 * at[1]}, {1.0, -0.5 * at[1]}};
        double[][] given = {b[0].clone(), b[1].clone()};
        Broyden.Root found = root(at.clone(), BroydenTest::curves, given, 1e-13, 20);
        double[] f = curves(at);
        for (int step = 1; step < tried.size(); step++) {
            double determinant = b[0][0] * b[1][1] - b[0][1] * b[1][0];
            double[] change = {
                -(f[0] * b[1][1] - f[1] * b[0][1]) / determinant, -(f[1] * b[0][0] - f[0] * b[1][0]) / determinant
            };
            at = new double[] {at[0] + change[0], at[1] + change[1]};
            assertArrayEquals(at, tried.get(step), 1e-10, "step " + step);
            double[] next = curves(at);
            double length = change[0] * change[0] + change[1] * change[1];
            for (int i = 0; i < 2; i++) {
                double off = next[i] - f[i] - b[i][0] * change[0] - b[i][1] * change[1];
                b[i][0] += off * change[0] / length;
                b[i][1] += off * change[1] / length;
            }
            f = next;
        }
        assertTrue(tried.size() >= 5 && tried.size() <= 10, tried.size() + " tried");
        assertTrue(found.miss() <= 1e-13);
        assertEquals(4.0, found.at()[0] * found.at()[0] + found.at()[1] * found.at()[1], 1e-12);
        assertEquals(1, slopesAsked);
    }

    /** Slopes of the wrong sign gain nothing: the whole step, a half, a quarter and an eighth, then it stays where it began. */
    @Test
    void shorterStepsAreTriedWhereTheWholeGainsNothing() {
        Broyden.Root found =
                root(new double[] {1.0}, x -> new double[] {8.0 * x[0]}, new double[][] {{-4.0}}, 1e-9, 20);
        assertArrayEquals(new double[] {1.0, 3.0, 2.0, 1.5, 1.25}, triedAt(0), 1e-12);
        assertEquals(1.0, found.at()[0]);
        assertEquals(8.0, found.miss());
        assertEquals(1, slopesAsked);
    }

    /** A step that gains exactly nothing is none. */
    @Test
    void aStepThatOnlyMirrorsIsHalved() {
        root(new double[] {1.0}, x -> new double[] {x[0]}, new double[][] {{0.5}}, 1e-9, 20);
        assertArrayEquals(new double[] {1.0, -1.0, 0.0}, triedAt(0), 1e-12);
    }

    /** After a short step that gained, the next is whole again: on a line the secant then hits at once. */
    @Test
    void aGainMakesStepsWholeAgain() {
        Broyden.Root found = root(new double[] {1.0}, x -> new double[] {3.0 * x[0]}, new double[][] {{1.0}}, 1e-9, 20);
        assertArrayEquals(new double[] {1.0, -2.0, -0.5, 0.0}, triedAt(0), 1e-12);
        assertEquals(0.0, found.at()[0], 1e-12);
    }

    /** Where mended slopes gain nothing, they are asked again at the best place so far. */
    @Test
    void slopesAreRenewedWhereMendedOnesFail() {
        List<Double> asked = new ArrayList<>();
        Function<double[], double[]> cusp = x -> new double[] {x[0] > 0.4 ? x[0] - 0.1 : 2.0 - 5.0 * x[0]};
        Broyden.Root found = Broyden.root(
                new double[] {1.0},
                x -> {
                    tried.add(x.clone());
                    return cusp.apply(x);
                },
                (x, miss) -> {
                    asked.add(x[0]);
                    assertEquals(cusp.apply(x)[0], miss[0], "the misses there are handed on");
                    return new double[][] {{2.0}};
                },
                1e-9,
                20);
        double[] places = triedAt(0);
        assertArrayEquals(new double[] {1.0, 0.55, 0.1, 0.325}, Arrays.copyOf(places, 4), 1e-12);
        assertEquals(List.of(1.0, 0.55), asked.subList(0, 2));
        assertTrue(found.miss() < 0.45, "misses by " + found.miss());
    }

    /** What is not a number misses by more than anything. */
    @Test
    void notANumberIsNoGain() {
        Broyden.Root found = root(
                new double[] {1.0},
                x -> new double[] {x[0] < 0.6 ? Double.NaN : x[0]},
                new double[][] {{1.0}},
                1e-9,
                2);
        assertArrayEquals(new double[] {1.0, 0.0, 0.5}, triedAt(0), 1e-12);
        assertEquals(1.0, found.miss());
        assertEquals(
                Double.POSITIVE_INFINITY,
                root(new double[] {0.0}, x -> new double[] {Double.NaN}, new double[][] {{1.0}}, 1e-9, 0)
                        .miss());
    }

    @Test
    void whatIsGoodEnoughIsLeftAlone() {
        Broyden.Root found = root(new double[] {0.25}, x -> new double[] {x[0]}, new double[][] {{1.0}}, 0.25, 20);
        assertEquals(1, tried.size());
        assertEquals(0, slopesAsked);
        assertEquals(0.25, found.miss());
    }

    @Test
    void stepsAreCounted() {
        root(new double[] {1.0}, x -> new double[] {x[0] * x[0] - 2.0}, new double[][] {{2.0}}, 0.0, 3);
        assertEquals(4, tried.size());
    }

    /** The largest of several misses counts, whichever it is and whatever its sign. */
    @Test
    void theLargestMissCounts() {
        double[][] unit = {{1.0, 0.0}, {0.0, 1.0}};
        assertEquals(
                3.0,
                root(new double[] {1.0, -3.0}, double[]::clone, unit, 10.0, 5).miss());
        assertEquals(
                2.0,
                root(new double[] {-2.0, 1.0}, double[]::clone, unit, 10.0, 5).miss());
    }

    @Test
    void slopesWithoutAnInverseFail() {
        assertThrows(
                MathRuntimeException.class,
                () -> root(new double[] {1.0}, double[]::clone, new double[][] {{0.0}}, 1e-9, 5));
    }

    /** Where the mended slopes would have no value, they are asked anew: a gain square to the step. */
    @Test
    void slopesAreRenewedWhereTheyCantBeMended() {
        double[][] unit = {{1.0, 0.0}, {0.0, 1.0}};
        double[][] misses = {{1.0, 0.5}, {0.875, 0.75}, {0.0, 0.0}};
        Broyden.Root found = root(new double[] {2.0, 2.0}, at -> misses[tried.size() - 1], unit, 1e-9, 5);
        assertArrayEquals(new double[] {2.0, 1.0, 0.125}, triedAt(0), 1e-12);
        assertArrayEquals(new double[] {2.0, 1.5, 0.75}, triedAt(1), 1e-12);
        assertEquals(2, slopesAsked);
        assertEquals(0.0, found.miss());
    }
}
