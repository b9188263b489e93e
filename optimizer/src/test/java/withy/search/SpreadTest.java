package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The volume a few builds cover, against counting the cells of a grid. */
class SpreadTest {
    private static final int AXES = 5;
    private static final int SIDE = 4;

    /** Whole-number points: every cell lies wholly inside or outside. */
    @Test
    void coversAsManyCellsAsAreCounted() {
        Random random = new Random(6);
        double[] corner = new double[AXES];
        Arrays.fill(corner, SIDE);
        for (int round = 0; round < 60; round++) {
            double[][] points = new double[3][AXES];
            for (double[] point : points) {
                Arrays.setAll(point, axis -> random.nextInt(SIDE + 1));
            }
            assertEquals(cells(points), Spread.volume(points, new int[] {0, 1, 2}, corner), "round " + round);
        }
    }

    private static int cells(double[][] points) {
        int count = 0;
        for (int cell = 0; cell < Math.pow(SIDE, AXES); cell++) {
            boolean covered = false;
            for (double[] point : points) {
                boolean above = true;
                int rest = cell;
                for (int axis = 0; axis < AXES; axis++) {
                    above &= rest % SIDE >= point[axis];
                    rest /= SIDE;
                }
                covered |= above;
            }
            count += covered ? 1 : 0;
        }
        return count;
    }

    /** Worked by hand: two boxes of 2 by 3 and 3 by 2 that share 2 by 2. */
    @Test
    void countsWhatIsSharedOnce() {
        double[][] points = {{2, 1}, {1, 2}};
        assertEquals(8, Spread.volume(points, new int[] {0, 1}, new double[] {4, 4}));
        assertEquals(6, Spread.volume(points, new int[] {1}, new double[] {4, 4}));
    }
}
