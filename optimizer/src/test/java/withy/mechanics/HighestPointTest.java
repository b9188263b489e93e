package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The highest point under planes: by hand, and against every corner that three planes or sides of the box make (Cramer's rule). */
class HighestPointTest {
    private static final double CLOSE = 1e-7;

    private static double[] plane(double... heightAndSlopes) {
        return heightAndSlopes;
    }

    private static double[] point(List<double[]> planes, double[] from, double[] to) {
        double[] point = HighestPoint.of(planes, from, to);
        assertNotNull(point);
        return point;
    }

    /** A roof over one axis has its ridge where its sides meet; where it only rises, the end of the box is highest. */
    @Test
    void ridgeAndEnd() {
        List<double[]> roof = List.of(plane(0, 2), plane(6, -1));
        assertArrayEquals(new double[] {2}, point(roof, new double[] {-5}, new double[] {5}), CLOSE);
        assertArrayEquals(new double[] {1}, point(roof, new double[] {-5}, new double[] {1}), CLOSE);
        assertArrayEquals(new double[] {3}, point(roof, new double[] {3}, new double[] {3}), CLOSE);
        assertEquals(4, HighestPoint.height(roof, new double[] {2}), CLOSE);
    }

    /** A ridge that runs aslant: on either axis by itself the origin is highest, on both together it is not. */
    @Test
    void aslant() {
        List<double[]> aslant = List.of(plane(0, 3, -2), plane(0, -2, 3));
        assertArrayEquals(new double[] {4, 4}, point(aslant, new double[] {-4, -4}, new double[] {4, 4}), CLOSE);
        assertArrayEquals(new double[] {0, 0}, point(aslant, new double[] {-4, 0}, new double[] {4, 0}), CLOSE);
    }

    @Test
    void everyCorner() {
        Random random = new Random(20261128);
        int inside = 0;
        for (int draw = 0; draw < 300; draw++) {
            List<double[]> planes = new ArrayList<>();
            for (int i = 2 + random.nextInt(10); i > 0; i--) {
                planes.add(plane(random.nextGaussian(), random.nextGaussian(), random.nextGaussian()));
            }
            double[] from = {-random.nextDouble() * 3, -random.nextDouble() * 3};
            double[] to = {random.nextDouble() * 3, random.nextDouble() * 3};
            double[] found = point(planes, from, to);
            assertTrue(in(found, from, to));
            assertEquals(highest(planes, from, to), HighestPoint.height(planes, found), CLOSE, "draw " + draw);
            inside += found[0] > from[0] && found[0] < to[0] && found[1] > from[1] && found[1] < to[1] ? 1 : 0;
        }
        assertTrue(inside > 50, "inside the box: " + inside);
    }

    private static boolean in(double[] point, double[] from, double[] to) {
        boolean in = true;
        for (int axis = 0; axis < point.length; axis++) {
            in &= point[axis] >= from[axis] - CLOSE && point[axis] <= to[axis] + CLOSE;
        }
        return in;
    }

    /** Of all corners: where three planes meet, two on a side, or one in a corner of the box. */
    private static double highest(List<double[]> planes, double[] from, double[] to) {
        List<double[]> edges = new ArrayList<>(); // a·x + b·y = c
        for (int i = 0; i < planes.size(); i++) {
            for (int j = 0; j < i; j++) {
                double[] one = planes.get(i);
                double[] other = planes.get(j);
                edges.add(new double[] {one[1] - other[1], one[2] - other[2], other[0] - one[0]});
            }
        }
        edges.add(new double[] {1, 0, from[0]});
        edges.add(new double[] {1, 0, to[0]});
        edges.add(new double[] {0, 1, from[1]});
        edges.add(new double[] {0, 1, to[1]});
        double highest = Double.NEGATIVE_INFINITY;
        for (double[] p : edges) {
            for (double[] q : edges) {
                double det = p[0] * q[1] - p[1] * q[0];
                double[] corner = {(p[2] * q[1] - p[1] * q[2]) / det, (p[0] * q[2] - p[2] * q[0]) / det};
                if (Math.abs(det) > 1e-12 && in(corner, from, to)) {
                    highest = Math.max(highest, HighestPoint.height(planes, corner));
                }
            }
        }
        return highest;
    }
}
