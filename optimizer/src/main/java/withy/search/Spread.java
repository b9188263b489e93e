package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.BiPredicate;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Rates;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;

/**
 * How much of what could be wanted a few builds cover between them: the volume, in noticeable steps of the six objectives and of missed nice wishes,
 * of everything that at least one of them is better than, up to a corner one step beyond the worst of all that were found. A build that is better
 * than the others only in what hardly differs adds little to it; so does one that is much like another.
 */
final class Spread {
    /** The corner lies this many steps beyond the worst. */
    private static final double BEYOND = 1;

    /** The objectives in their order, and missed wishes. */
    private static final int AXES = Objective.values().length + 1;

    private final Scoring alike;
    private final double[] corner = new double[AXES];
    private final double[] least = new double[AXES];

    /** Over all builds that were found. */
    Spread(Brief brief, Rates rates, Collection<ObjectiveVector> found) {
        this.alike = Scoring.even(brief, rates);
        Arrays.fill(corner, Double.NEGATIVE_INFINITY);
        Arrays.fill(least, Double.POSITIVE_INFINITY);
        for (ObjectiveVector one : found) {
            double[] point = point(one);
            for (int i = 0; i < AXES; i++) {
                corner[i] = Math.max(corner[i], point[i] + BEYOND);
                least[i] = Math.min(least[i], point[i]);
            }
        }
    }

    private double[] point(ObjectiveVector vector) {
        double[] steps = new double[AXES];
        for (Objective objective : Objective.values()) {
            steps[objective.ordinal()] = Scoring.steps(alike.share(objective, vector));
        }
        steps[AXES - 1] = Scoring.steps(alike.missed(vector));
        return steps;
    }

    /**
     * The first of these with the two that cover most together, or fewer where no more add anything.
     *
     * @param all candidates, that which is always among them first
     * @param sideBySide whether two may be shown together
     */
    List<Proposal> widest(List<Proposal> all, BiPredicate<Proposal, Proposal> sideBySide) {
        double[][] points = all.stream().map(one -> point(one.objectives())).toArray(double[][]::new);
        int[] most = {0};
        double volume = volume(points, most, corner);
        for (int i = 1; i < points.length; i++) {
            if (sideBySide.test(all.get(0), all.get(i))) {
                for (int j = i; j < points.length; j++) {
                    boolean alone = j == i;
                    if (alone || sideBySide.test(all.get(0), all.get(j)) && sideBySide.test(all.get(i), all.get(j))) {
                        int[] of = alone ? new int[] {0, i} : new int[] {0, i, j};
                        double covered = volume(points, of, corner);
                        if (covered > volume) {
                            volume = covered;
                            most = of;
                        }
                    }
                }
            }
        }
        List<Proposal> chosen = new ArrayList<>();
        for (int i : most) {
            chosen.add(all.get(i));
        }
        return chosen;
    }

    /** Of the boxes between some points and the corner, by inclusion and exclusion. */
    static double volume(double[][] points, int[] of, double[] corner) {
        double sum = 0;
        for (int subset = 1; subset < 1 << of.length; subset++) {
            double box = 1;
            for (int axis = 0; axis < corner.length; axis++) {
                double worst = Double.NEGATIVE_INFINITY;
                for (int i = 0; i < of.length; i++) {
                    worst = (subset >> i & 1) == 1 ? Math.max(worst, points[of[i]][axis]) : worst;
                }
                box *= Math.max(0, corner[axis] - worst);
            }
            sum += Integer.bitCount(subset) % 2 == 1 ? box : -box;
        }
        return sum;
    }

    /**
     * Priorities under which a build near this one that covers more scores better: the gradient of the volume it covers alone. What none of those
     * found differs in counts as much as the brief says.
     */
    Map<Objective, Double> wider(ObjectiveVector from, Map<Objective, Double> own) {
        double[] point = point(from);
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        double gradient = 0;
        double asked = 0;
        for (Objective objective : Objective.values()) {
            int axis = objective.ordinal();
            if (corner[axis] - least[axis] > BEYOND) {
                double slope = 1 / (corner[axis] - point[axis]);
                priorities.put(objective, slope);
                gradient += slope;
                asked += own.getOrDefault(objective, 0.0);
            }
        }
        double scale = asked > 0 ? gradient / asked : 1;
        for (Objective objective : Objective.values()) {
            priorities.putIfAbsent(objective, scale * own.getOrDefault(objective, 0.0));
        }
        return priorities;
    }
}
