package withy.explain;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The first wish, in the order they were said, with which nothing can be built any more. More wishes never let more be built, so it is found by
 * halving.
 */
public final class FirstTooMuch {
    private FirstTooMuch() {}

    /**
     * Of a brief for which no build is legal.
     *
     * @param inquiry to ask
     * @param turn when a wish was said, by its field of the brief; of equal ones as the brief has them
     * @return that wish; null where nothing can be built without any wish either, or the question was stopped
     */
    public static Conflict.@Nullable Asked of(Inquiry inquiry, Comparator<String> turn) {
        List<Demand> demands = Demands.of(inquiry).stream()
                .sorted((a, b) -> turn.compare(a.key(), b.key()))
                .toList();
        Conflicts conflicts = new Conflicts(inquiry, inquiry.query(), demands);
        if (!conflicts.possibleKeeping(Set.of())) {
            return null;
        }
        int enough = 0;
        int tooMuch = demands.size();
        while (tooMuch - enough > 1) {
            int middle = (enough + tooMuch) >>> 1;
            if (conflicts.possibleKeeping(first(middle))) {
                enough = middle;
            } else {
                tooMuch = middle;
            }
        }
        return inquiry.stopped() || demands.isEmpty() ? null : Conflict.Asked.of(demands.get(tooMuch - 1));
    }

    private static Set<Integer> first(int many) {
        Set<Integer> first = new TreeSet<>();
        for (int i = 0; i < many; i++) {
            first.add(i);
        }
        return first;
    }
}
