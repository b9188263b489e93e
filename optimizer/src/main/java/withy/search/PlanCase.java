package withy.search;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import withy.search.Contention.Conflict;

/**
 * Some of the plans of a group: those in which no job takes more of scarce parts than this, and some take no fewer.
 *
 * @param limits how many pieces of a part each job of the plan takes at most
 * @param least how many pieces of a part each job of the plan takes at least; only told where another has to do with the rest
 * @param options what each job gets under its limits, or got before they changed; jobs of other groups are as they were
 * @param changed jobs whose limits changed
 * @param bound no such plan is better
 * @param order number of the case
 */
record PlanCase(
        List<SortedMap<String, Integer>> limits,
        List<SortedMap<String, Integer>> least,
        List<PlanOption> options,
        Set<Integer> changed,
        PlanCost bound,
        int order) {

    /** The plans of jobs in which each has what it would have if it were alone. */
    static PlanCase all(List<PlanOption> alone, PlanCost bound) {
        List<SortedMap<String, Integer>> none = new ArrayList<>();
        alone.forEach(any -> none.add(new TreeMap<>()));
        return new PlanCase(none, none, alone, Set.of(), bound, 0);
    }

    /** The same with what jobs get under the limits, and what that tells of the bound. */
    PlanCase with(List<PlanOption> other, PlanCost atLeast) {
        return new PlanCase(limits, least, other, Set.of(), atLeast.compareTo(bound) > 0 ? atLeast : bound, order);
    }

    /** The same where more is known of the bound. */
    PlanCase bounded(PlanCost atLeast) {
        return new PlanCase(limits, least, options, changed, atLeast.compareTo(bound) > 0 ? atLeast : bound, order);
    }

    /** Those of them in which a job takes fewer pieces of a part than it would. */
    PlanCase without(int job, String part, int most, int number) {
        return limited(least, limited(limits, job, part, most), number);
    }

    /** The others: a job takes as many pieces of the part that is short as it would, and the rest must do for those that want it besides. */
    PlanCase keeping(int job, Conflict conflict, int pieces, int number) {
        List<SortedMap<String, Integer>> kept = new ArrayList<>(least);
        SortedMap<String, Integer> own = new TreeMap<>(kept.get(job));
        own.put(conflict.part(), pieces);
        kept.set(job, own);
        PlanCase keeping = limited(kept, limits, number);
        List<SortedMap<String, Integer>> rest = limits;
        for (int other : conflict.jobs()) {
            if (other != job) {
                int most = conflict.there() - keeping.kept(conflict, other);
                rest = limited(rest, other, conflict.part(), Math.max(0, most));
            }
        }
        return limited(kept, rest, number);
    }

    private PlanCase limited(
            List<SortedMap<String, Integer>> atLeast, List<SortedMap<String, Integer>> atMost, int number) {
        Set<Integer> other = new TreeSet<>(changed);
        for (int job = 0; job < limits.size(); job++) {
            if (!limits.get(job).equals(atMost.get(job))) {
                other.add(job);
            }
        }
        return new PlanCase(atMost, atLeast, options, other, bound, number);
    }

    private static List<SortedMap<String, Integer>> limited(
            List<SortedMap<String, Integer>> limits, int job, String part, int most) {
        List<SortedMap<String, Integer>> more = new ArrayList<>(limits);
        SortedMap<String, Integer> own = new TreeMap<>(limits.get(job));
        own.merge(part, most, Math::min);
        more.set(job, own);
        return more;
    }

    /** Pieces of a part a job is known to take. */
    int kept(int job, String part) {
        Integer pieces = least.get(job).get(part);
        return pieces == null ? 0 : pieces;
    }

    /** Pieces of a part that is short which jobs other than one are known to take. */
    int kept(Conflict conflict, int but) {
        int kept = 0;
        for (int job : conflict.jobs()) {
            kept += job == but ? 0 : kept(job, conflict.part());
        }
        return kept;
    }

    /** True where a job is known to take more than it may. */
    boolean contradicts() {
        for (int job = 0; job < least.size(); job++) {
            for (Map.Entry<String, Integer> one : least.get(job).entrySet()) {
                Integer most = limits.get(job).get(one.getKey());
                if (most != null && most < one.getValue()) {
                    return true;
                }
            }
        }
        return false;
    }
}
