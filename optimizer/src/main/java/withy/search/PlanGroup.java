package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.search.Contention.Conflict;
import withy.search.Contention.Least;
import withy.search.JobOptions.Ask;

/**
 * Jobs that want the same scarce parts, planned among themselves. Where a part is short one of the jobs must do with less; each of these cases is followed
 * up, the best first. A case without a conflict is the best for the group, and until then the best case still open bounds it.
 */
final class PlanGroup {
    private final Contention contention;
    private final SortedSet<Integer> jobs;
    private final PriorityQueue<Case> open = new PriorityQueue<>(
            Comparator.comparing(Case::bound).thenComparing(Case::order, Comparator.reverseOrder()));
    private List<PlanOption> best;
    private PlanCost cost;
    private @Nullable PlanCost weakest;
    private List<Case> asked = List.of();
    private int order;

    /**
     * @param alone what each job of the plan gets if it is alone
     * @param start a plan of all jobs without a conflict
     */
    PlanGroup(Contention contention, SortedSet<Integer> jobs, List<PlanOption> alone, List<PlanOption> start) {
        this.contention = contention;
        this.jobs = jobs;
        this.best = start;
        this.cost = PlanCost.of(of(start));
        List<SortedMap<String, Integer>> limits = new ArrayList<>();
        alone.forEach(any -> limits.add(new TreeMap<>()));
        add(new Case(limits, alone, PlanCost.bound(of(alone)), order++));
    }

    /** A case: how many pieces of scarce parts each job may take at most. Jobs of other groups are as they were. */
    private record Case(List<SortedMap<String, Integer>> limits, List<PlanOption> options, PlanCost bound, int order) {}

    SortedSet<Integer> jobs() {
        return jobs;
    }

    /** The options of this group's jobs. */
    private List<PlanOption> of(List<PlanOption> options) {
        return jobs.stream().map(options::get).toList();
    }

    /** What a job of the group gets in the best plan found. */
    PlanOption option(int job) {
        return best.get(job);
    }

    /** How good the best plan found is. */
    PlanCost cost() {
        return cost;
    }

    /** No plan of the group is better. */
    PlanCost bound() {
        PlanCost least = open.isEmpty() ? cost : open.element().bound();
        PlanCost missed = weakest;
        least = missed != null && missed.compareTo(least) < 0 ? missed : least;
        return least.compareTo(cost) < 0 ? least : cost;
    }

    /** Nothing is left to be asked. */
    boolean done() {
        return open.isEmpty();
    }

    private void add(Case one) {
        if (one.bound().compareTo(cost) < 0) {
            open.add(one);
        }
    }

    /** Cases that are no better than the best plan found are of no interest. */
    private void trim() {
        if (!open.isEmpty() && open.element().bound().compareTo(cost) >= 0) {
            open.clear();
        }
    }

    /** Takes the best open case; what must be known to follow it up, each job at most once. */
    List<Ask> next() {
        Case now = open.remove();
        asked = new ArrayList<>();
        Conflict conflict = contention.smallest(now.options(), jobs);
        if (conflict == null) {
            take(now);
            return List.of();
        }
        List<Ask> asks = new ArrayList<>();
        for (Least one : Contention.oneOf(conflict, now.options())) {
            List<SortedMap<String, Integer>> limits = new ArrayList<>(now.limits());
            SortedMap<String, Integer> own = new TreeMap<>(limits.get(one.job()));
            own.merge(conflict.part(), one.most(), Math::min);
            limits.set(one.job(), own);
            long below = below(now, one.job());
            if (below != Long.MIN_VALUE) {
                asked.add(new Case(limits, now.options(), now.bound(), order++));
                asks.add(new Ask(one.job(), own, below));
            }
        }
        return asks;
    }

    /** What is known now, in the order of what was asked. */
    void answered(List<Ask> asks, List<PlanOption> answers) {
        for (int i = 0; i < asks.size(); i++) {
            Case before = asked.get(i);
            List<PlanOption> options = new ArrayList<>(before.options());
            options.set(asks.get(i).job(), answers.get(i));
            add(new Case(before.limits(), options, PlanCost.bound(of(options)), before.order()));
        }
    }

    /** Scores from here on of one job make a case no better than the best plan found; the least number where none does. */
    private long below(Case now, int job) {
        List<PlanOption> others = new ArrayList<>();
        jobs.stream()
                .filter(other -> other != job)
                .forEach(other -> others.add(now.options().get(other)));
        PlanCost rest = PlanCost.bound(others);
        if (rest.unserved() > cost.unserved()) {
            return Long.MIN_VALUE;
        }
        return rest.unserved() < cost.unserved() ? Long.MAX_VALUE : cost.score() - rest.score();
    }

    private void take(Case now) {
        PlanCost found = PlanCost.of(of(now.options()));
        if (found.compareTo(cost) < 0) {
            best = now.options();
            cost = found;
        }
        if (found.compareTo(now.bound()) > 0) {
            PlanCost missed = weakest;
            weakest = missed == null || now.bound().compareTo(missed) < 0 ? now.bound() : missed;
        }
        trim();
    }
}
