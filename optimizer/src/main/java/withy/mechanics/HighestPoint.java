package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.exception.MathIllegalStateException;
import org.hipparchus.optim.linear.LinearConstraint;
import org.hipparchus.optim.linear.LinearConstraintSet;
import org.hipparchus.optim.linear.LinearObjectiveFunction;
import org.hipparchus.optim.linear.NonNegativeConstraint;
import org.hipparchus.optim.linear.Relationship;
import org.hipparchus.optim.linear.SimplexSolver;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.jspecify.annotations.Nullable;

/**
 * Where the least of several planes is highest inside a box: the top of a concave function of which only planes above it are known. A plane is an
 * array: its height at the origin, then its slope along each axis.
 */
public final class HighestPoint {
    private final List<double[]> planes;
    private final double[] from;
    private final double[] to;

    private HighestPoint(List<double[]> planes, double[] from, double[] to) {
        this.planes = planes;
        this.from = from;
        this.to = to;
    }

    /**
     * The point, one number an axis; null where rounding keeps the linear programme from an end.
     *
     * @param planes at least one, each with one number more than there are axes
     * @param from where the box begins on each axis
     * @param to where it ends, not before it begins; an axis on which it ends where it begins stays there
     */
    public static double @Nullable [] of(List<double[]> planes, double[] from, double[] to) {
        return new HighestPoint(planes, from, to).find();
    }

    /** The least of the planes at a point. */
    public static double height(List<double[]> planes, double[] point) {
        double least = Double.POSITIVE_INFINITY;
        for (double[] plane : planes) {
            double height = plane[0];
            for (int axis = 0; axis < point.length; axis++) {
                height += plane[axis + 1] * point[axis];
            }
            least = Math.min(least, height);
        }
        return least;
    }

    private double @Nullable [] find() {
        List<Integer> free = new ArrayList<>();
        for (int axis = 0; axis < from.length; axis++) {
            if (to[axis] > from[axis]) {
                free.add(axis);
            }
        }
        return switch (free.size()) {
            case 0 -> from.clone();
            case 1 -> along(free.get(0));
            default -> programme(free);
        };
    }

    /** On one axis: at an end, or where two lines cross. */
    private double[] along(int axis) {
        double[] best = from.clone();
        double highest = height(planes, best);
        List<Double> candidates = new ArrayList<>(List.of(to[axis]));
        for (double[] one : planes) {
            for (double[] other : planes) {
                double x =
                        (other[0] - one[0] + rest(other, axis) - rest(one, axis)) / (one[axis + 1] - other[axis + 1]);
                if (x > from[axis] && x < to[axis]) {
                    candidates.add(x);
                }
            }
        }
        for (double x : candidates) {
            double[] point = from.clone();
            point[axis] = x;
            double height = height(planes, point);
            if (height > highest) {
                highest = height;
                best = point;
            }
        }
        return best;
    }

    /** What the axes that are not free add to a plane. */
    private double rest(double[] plane, int axis) {
        double rest = 0;
        for (int other = 0; other < from.length; other++) {
            rest += other == axis ? 0 : plane[other + 1] * from[other];
        }
        return rest;
    }

    /** On several: height above the origin, height below it, then how far into the box on each free axis. */
    private double @Nullable [] programme(List<Integer> free) {
        int n = 2 + free.size();
        List<LinearConstraint> constraints = new ArrayList<>();
        for (double[] plane : planes) {
            double[] row = new double[n];
            row[0] = 1;
            row[1] = -1;
            for (int i = 0; i < free.size(); i++) {
                row[2 + i] = -plane[free.get(i) + 1];
            }
            constraints.add(new LinearConstraint(row, Relationship.LEQ, height(List.of(plane), from)));
        }
        for (int i = 0; i < free.size(); i++) {
            double[] row = new double[n];
            row[2 + i] = 1;
            constraints.add(new LinearConstraint(row, Relationship.LEQ, to[free.get(i)] - from[free.get(i)]));
        }
        double[] goal = new double[n];
        goal[0] = 1;
        goal[1] = -1;
        try {
            double[] found = new SimplexSolver()
                    .optimize(
                            new LinearObjectiveFunction(goal, 0),
                            new LinearConstraintSet(constraints),
                            GoalType.MAXIMIZE,
                            new NonNegativeConstraint(true))
                    .getPoint();
            double[] point = from.clone();
            for (int i = 0; i < free.size(); i++) {
                point[free.get(i)] += found[2 + i];
            }
            return point;
        } catch (MathIllegalStateException tooManySteps) {
            return null;
        }
    }
}
