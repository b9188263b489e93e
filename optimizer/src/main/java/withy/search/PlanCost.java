package withy.search;

import java.util.List;

/**
 * How good a plan is: jobs without a rod count first, then the sum of all scores.
 *
 * @param unserved jobs without a rod
 * @param score sum of the scores; less is better
 */
public record PlanCost(int unserved, long score) implements Comparable<PlanCost> {
    static final PlanCost NONE = new PlanCost(0, 0);

    /** Of one job of which no build scores less; the largest number where there is none. */
    static PlanCost floor(long bound) {
        return bound == Long.MAX_VALUE ? new PlanCost(1, 0) : new PlanCost(0, bound);
    }

    PlanCost plus(PlanCost other) {
        return new PlanCost(unserved + other.unserved, score + other.score);
    }

    PlanCost minus(PlanCost other) {
        return new PlanCost(unserved - other.unserved, score - other.score);
    }

    static PlanCost of(List<PlanOption> options) {
        int unserved = 0;
        long score = 0;
        for (PlanOption option : options) {
            unserved += option.served() ? 0 : 1;
            score += option.score();
        }
        return new PlanCost(unserved, score);
    }

    static PlanCost bound(List<PlanOption> options) {
        int unserved = 0;
        long score = 0;
        for (PlanOption option : options) {
            unserved += option.open() ? 0 : 1;
            score += option.open() ? option.bound() : 0;
        }
        return new PlanCost(unserved, score);
    }

    @Override
    public int compareTo(PlanCost other) {
        int byUnserved = Integer.compare(unserved, other.unserved);
        return byUnserved != 0 ? byUnserved : Long.compare(score, other.score);
    }
}
