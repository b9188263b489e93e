package withy.search;

import java.util.List;

/**
 * How good a plan is: jobs without a rod count first, then the sum of all scores.
 *
 * @param unserved jobs without a rod
 * @param score sum of the scores; less is better
 */
public record PlanCost(int unserved, long score) implements Comparable<PlanCost> {

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
