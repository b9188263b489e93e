package withy.search;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.rod.Build;
import withy.search.planning.Assignment;

/**
 * One way to serve a job, or not to.
 *
 * @param build the build, or null where the job is not served
 * @param objectives its objectives, or null
 * @param score its score by the job's brief; 0 where it is not served
 * @param bound no build under the same limits scores less; the largest number where there is none
 * @param pieces pieces it takes of the shop's
 */
public record PlanOption(
        @Nullable Build build,
        @Nullable ObjectiveVector objectives,
        long score,
        long bound,
        SortedMap<String, Integer> pieces)
        implements Assignment.Way {
    static final PlanOption UNSERVED = unserved(Long.MAX_VALUE);

    /** No build, and none that scores less than a bound. */
    static PlanOption unserved(long bound) {
        return new PlanOption(null, null, 0, bound, new TreeMap<>());
    }

    public PlanOption {
        pieces = Collections.unmodifiableSortedMap(new TreeMap<>(pieces));
    }

    /** True where a build may be found yet. */
    boolean open() {
        return bound != Long.MAX_VALUE;
    }

    /** True where the job gets a rod. */
    @Override
    public boolean served() {
        return build != null;
    }

    int of(String part) {
        Integer count = pieces.get(part);
        return count == null ? 0 : count;
    }
}
