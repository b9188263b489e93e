package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.search.Contention.Conflict;

/** What a case of a plan costs at least, by what is known of its jobs so far: where parts are short somebody will have to do with less. */
final class Lookahead {
    private final JobOptions builds;
    private final SortedSet<Integer> jobs;

    Lookahead(JobOptions builds, SortedSet<Integer> jobs) {
        this.builds = builds;
        this.jobs = jobs;
    }

    /**
     * A conflict with what it will cost at least.
     *
     * @param more what is added to the bounds of the jobs
     */
    record Weighed(Conflict conflict, PlanCost more) {}

    /** The conflicts, those that cost most first. */
    List<Weighed> weighed(PlanCase of, List<Conflict> conflicts) {
        List<Weighed> weighed = new ArrayList<>();
        for (Conflict conflict : conflicts) {
            weighed.add(new Weighed(conflict, least(of, conflict, Set.of())));
        }
        weighed.sort(Comparator.comparing(Weighed::more, Comparator.reverseOrder())
                .thenComparing(one -> one.conflict().jobs().size()));
        return weighed;
    }

    /** No plan of the case is better: the jobs' own bounds, and what conflicts between different jobs add. */
    PlanCost bound(PlanCase of, List<Weighed> weighed) {
        PlanCost sum = PlanCost.NONE;
        for (int job : jobs) {
            sum = sum.plus(PlanCost.floor(builds.floor(job, of.limits().get(job))));
        }
        Set<Integer> used = new HashSet<>();
        for (Weighed one : weighed) {
            Conflict conflict = one.conflict();
            boolean apart = conflict.jobs().stream().noneMatch(used::contains);
            sum = sum.plus(apart ? one.more() : least(of, conflict, used));
            used.addAll(conflict.jobs());
        }
        return sum;
    }

    /** What it costs at least that jobs take no more of a part than there is; those left out may take nothing of it for nothing. */
    private PlanCost least(PlanCase of, Conflict conflict, Set<Integer> leftOut) {
        @Nullable PlanCost[] by = new PlanCost[conflict.there() + 1];
        by[conflict.there()] = PlanCost.NONE;
        for (int job : conflict.jobs()) {
            if (!leftOut.contains(job)) {
                by = with(job, of, conflict, by);
            }
        }
        return Arrays.stream(by)
                .filter(cost -> cost != null)
                .min(Comparator.naturalOrder())
                .orElse(PlanCost.NONE);
    }

    /** The least by pieces left after a job more. */
    private @Nullable PlanCost[] with(int job, PlanCase of, Conflict conflict, @Nullable PlanCost[] by) {
        int takes = of.options().get(job).of(conflict.part());
        int kept = of.kept(job, conflict.part());
        @Nullable PlanCost[] after = new PlanCost[by.length];
        for (int most = kept; most <= Math.max(takes, kept); most++) {
            PlanCost more = most >= takes ? PlanCost.NONE : more(of, job, conflict.part(), most);
            for (int left = most; left < by.length; left++) {
                PlanCost before = by[left];
                PlanCost known = after[left - most];
                if (before != null && (known == null || before.plus(more).compareTo(known) < 0)) {
                    after[left - most] = before.plus(more);
                }
            }
        }
        return after;
    }

    /** What it costs a job at least, beyond its bound, to take no more pieces of a part than this. */
    PlanCost more(PlanCase of, int job, String part, int most) {
        SortedMap<String, Integer> limits = of.limits().get(job);
        SortedMap<String, Integer> tighter = new TreeMap<>(limits);
        tighter.merge(part, most, Math::min);
        PlanCost with = PlanCost.floor(builds.floor(job, tighter));
        return with.minus(PlanCost.floor(builds.floor(job, limits)));
    }
}
