package withy.search;

import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.search.Prices.Kind;

/**
 * Prices under which two sums that have a ceiling are hardest to keep together, looked for along the lower edge of what the builds of a layout have of
 * both: from the build that has least of one and the build that has least of the other towards the corner of the two ceilings.
 */
final class TwoCeilings {
    /** Builds looked at on the way. */
    private static final int MOST_LOOKS = 12;

    /** Largest that the ceilings may cost together, so that the cost of no build overflows. */
    private static final double LARGEST = 1e16;

    private final Bounds bounds;
    private final Kind one;
    private final Kind other;

    TwoCeilings(Bounds bounds, Kind one, Kind other) {
        this.bounds = bounds;
        this.one = one;
        this.other = other;
    }

    /** Two sums. */
    record Pair(Kind one, Kind other) {}

    /**
     * Prices, and what builds cost under them.
     *
     * @param of the sums that have a price
     * @param k prices
     * @param most a build within its ceilings costs at most so much
     * @param least no build costs less
     */
    record Edge(Pair of, Linear k, long most, long least) {
        /** True where no build keeps its ceilings. */
        boolean rulesOut() {
            return least > most;
        }
    }

    /** The builds of a layout, the cheapest under any prices. */
    interface Builds {
        /** Least cost of a build where it is below a limit; else some number that is not below the limit and not above it. */
        long least(Linear k, long limit);

        /** True where some build costs at most so much. */
        default boolean any(Linear k, long most) {
            return least(k, most + 1) <= most;
        }

        /** The build that costs as little as was last told, or null. */
        @Nullable
        ObjectiveVector cheapest(long least);

        /** The build that has least of one sum, or null. */
        default @Nullable ObjectiveVector least(Kind kind) {
            return cheapest(least(Prices.only(kind), Long.MAX_VALUE));
        }
    }

    /** How far over the two ceilings a build is. */
    private record Over(long one, long other) {}

    /**
     * The edge that passes the corner, or null where a build was met that keeps both ceilings or the way was too long.
     *
     * @param leastOfOne the build that has least of the one sum, or null
     * @param leastOfOther the build that has least of the other, or null
     */
    @Nullable
    Edge edge(Builds builds, @Nullable ObjectiveVector leastOfOne, @Nullable ObjectiveVector leastOfOther) {
        Over left = over(leastOfOne);
        Over right = over(leastOfOther);
        for (int look = 0; look < MOST_LOOKS && left != null && right != null; look++) {
            if (left.one > 0 || left.other <= 0 || right.one <= 0 || right.other > 0) {
                return null;
            }
            double perOne = (double) left.other - right.other;
            double perOther = (double) right.one - left.one;
            double scale = Math.min(1, LARGEST / (perOne * size(one) + perOther * size(other)));
            long a = Math.max(1, Math.round(perOne * scale));
            long b = Math.max(1, Math.round(perOther * scale));
            Linear k = Prices.only(one).times(a).plus(Prices.only(other).times(b));
            long most = a * Prices.ceiling(bounds, one) + b * Prices.ceiling(bounds, other);
            long least = builds.least(k, most + 1);
            long known = most + Math.min(a * left.one + b * left.other, a * right.one + b * right.other);
            if (least > most || least >= known) {
                return new Edge(new Pair(one, other), k, most, least);
            }
            Over seen = over(builds.cheapest(least));
            left = seen == null || seen.one <= 0 ? seen : left;
            right = seen == null || seen.one <= 0 ? right : seen;
        }
        return null;
    }

    private double size(Kind kind) {
        return Math.abs((double) Prices.ceiling(bounds, kind));
    }

    private @Nullable Over over(@Nullable ObjectiveVector v) {
        return v == null ? null : new Over(Prices.over(v, bounds, one), Prices.over(v, bounds, other));
    }
}
