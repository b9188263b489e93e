package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.search.Contention.Conflict;
import withy.search.JobOptions.Ask;
import withy.search.Lookahead.Weighed;

/**
 * Jobs that want the same scarce parts, planned among themselves. Where a part is short, either one of the jobs does with less or the others do with what it
 * leaves; each of these cases is followed up, the best first, and bounded by what is known of all that is still short in it ({@link Lookahead}).
 * A case without a conflict is the best for the group, and until then the best case still open bounds it.
 */
final class PlanGroup {
    /** Questions asked at once. */
    private static final int AT_ONCE = Workers.MOST;

    /** Cases looked at between two rounds of questions at most. */
    private static final int MOST_LOOKED_AT = 16;

    /** Cases looked at between two that are followed down. */
    private static final int FOLLOW_EVERY = 200;

    private final Contention contention;
    private final JobOptions builds;
    private final Lookahead lookahead;
    private final SortedSet<Integer> jobs;
    private final PriorityQueue<PlanCase> open = new PriorityQueue<>(
            Comparator.comparing(PlanCase::bound).thenComparing(PlanCase::order, Comparator.reverseOrder()));
    private List<PlanOption> best;
    private PlanCost cost;
    private @Nullable PlanCost weakest;
    private int order;
    private int lookedAt;
    private @Nullable PlanCase followed;
    private int followAgain;

    /**
     * @param alone what each job of the plan gets if it is alone
     * @param start a plan of all jobs without a conflict
     */
    PlanGroup(
            Contention contention,
            JobOptions builds,
            SortedSet<Integer> jobs,
            List<PlanOption> alone,
            List<PlanOption> start) {
        this.contention = contention;
        this.builds = builds;
        this.lookahead = new Lookahead(builds, jobs);
        this.jobs = jobs;
        this.best = start;
        this.cost = PlanCost.of(of(start));
        add(PlanCase.all(alone, PlanCost.bound(of(alone))));
    }

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

    /** No plan of the group is better. */
    PlanCost bound() {
        PlanCase down = followed;
        PlanCost least = open.isEmpty() ? cost : open.element().bound();
        least = down != null && down.bound().compareTo(least) < 0 ? down.bound() : least;
        PlanCost missed = weakest;
        least = missed != null && missed.compareTo(least) < 0 ? missed : least;
        return least.compareTo(cost) < 0 ? least : cost;
    }

    /** Cases looked at so far. */
    int lookedAt() {
        return lookedAt;
    }

    /** Nothing is left to be asked. */
    boolean done() {
        return open.isEmpty() && followed == null;
    }

    private void add(PlanCase one) {
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

    /** What each job that wants a part that is short would lose by taking a piece less, which tells most of how cases are bounded. */
    List<Ask> probes() {
        PlanCase all = open.element();
        List<Ask> probes = new ArrayList<>();
        for (Conflict conflict : contention.all(all.options(), jobs)) {
            for (int job : conflict.jobs()) {
                SortedMap<String, Integer> limits = new TreeMap<>();
                limits.put(conflict.part(), all.options().get(job).of(conflict.part()) - 1);
                Ask ask = new Ask(job, limits, below(all, job));
                if (builds.known(ask) == null && !probes.contains(ask)) {
                    probes.add(ask);
                }
            }
        }
        return probes;
    }

    /**
     * Looks at cases: one is followed down by the better of its two, now and then, so that whole plans are met early; else the best open ones.
     *
     * @return what must be known to go on, each job at most once
     */
    List<Ask> next() {
        List<Ask> asks = new ArrayList<>();
        Set<Integer> asked = new HashSet<>();
        List<PlanCase> waiting = new ArrayList<>();
        if (followed == null && lookedAt >= followAgain && !open.isEmpty()) {
            followAgain = lookedAt + FOLLOW_EVERY;
            followed = open.remove();
        }
        for (int n = 0; n < MOST_LOOKED_AT && asks.size() < AT_ONCE; n++) {
            PlanCase down = followed;
            if (down == null && open.isEmpty()) {
                break;
            }
            lookedAt++;
            PlanCase now = down == null ? open.remove() : down;
            PlanCase known = known(now, asks, asked);
            if (known != null) {
                followed = null;
                look(known, down != null);
            } else if (down == null) {
                waiting.add(now);
            } else {
                break;
            }
        }
        waiting.forEach(this::add);
        return asks;
    }

    /** A case with what its jobs get; null where that must be asked first. */
    private @Nullable PlanCase known(PlanCase now, List<Ask> asks, Set<Integer> asked) {
        List<PlanOption> options = new ArrayList<>(now.options());
        boolean known = true;
        for (int job : now.changed()) {
            Ask ask = new Ask(job, now.limits().get(job), below(now, job));
            PlanOption option = builds.known(ask);
            known &= option != null;
            if (option != null) {
                options.set(job, option);
            } else if (asked.add(job)) {
                asks.add(ask);
            }
        }
        return known ? now.with(options, PlanCost.bound(of(options))) : null;
    }

    /** Scores from here on of one job make a case no better than the best plan found; the least number where none does. */
    private long below(PlanCase now, int job) {
        PlanCost rest = PlanCost.NONE;
        for (int other : jobs) {
            if (other != job) {
                rest = rest.plus(PlanCost.floor(builds.floor(other, now.limits().get(other))));
            }
        }
        if (rest.unserved() > cost.unserved()) {
            return Long.MIN_VALUE;
        }
        return rest.unserved() < cost.unserved() ? Long.MAX_VALUE : cost.score() - rest.score();
    }

    private void look(PlanCase of, boolean follow) {
        List<Conflict> conflicts = contention.all(of.options(), jobs);
        List<Weighed> weighed = lookahead.weighed(of, conflicts);
        PlanCase now = of.with(of.options(), lookahead.bound(of, weighed));
        if (now.bound().compareTo(cost) >= 0) {
            return;
        }
        if (conflicts.isEmpty()) {
            take(now);
            return;
        }
        if (!follow && !open.isEmpty() && now.bound().compareTo(open.element().bound()) > 0) {
            open.add(now);
            return;
        }
        for (Weighed one : weighed) {
            int job = reluctant(now, one.conflict());
            if (job >= 0) {
                branch(now, one.conflict(), job, follow);
                return;
            }
        }
    }

    /** The job that would lose most by doing with less, of those not known to take what they would; less than nought where all are. */
    private int reluctant(PlanCase of, Conflict conflict) {
        int most = -1;
        PlanCost loses = PlanCost.NONE;
        for (int job : conflict.jobs()) {
            int takes = of.options().get(job).of(conflict.part());
            if (takes > of.kept(job, conflict.part())) {
                PlanCost more = lookahead.more(of, job, conflict.part(), takes - 1);
                if (most < 0 || more.compareTo(loses) > 0) {
                    most = job;
                    loses = more;
                }
            }
        }
        return most;
    }

    private void branch(PlanCase now, Conflict conflict, int job, boolean follow) {
        int takes = now.options().get(job).of(conflict.part());
        List<PlanCase> two = new ArrayList<>();
        two.add(glanced(now.without(job, conflict.part(), takes - 1, ++order)));
        PlanCase keeping = now.keeping(job, conflict, takes, ++order);
        if (keeping.kept(conflict, -1) <= conflict.there() && !keeping.contradicts()) {
            two.add(glanced(keeping));
        }
        two.sort(Comparator.comparing(PlanCase::bound));
        if (follow && two.get(0).bound().compareTo(cost) < 0) {
            followed = two.remove(0);
        }
        two.forEach(this::add);
    }

    /** With what is known of its bound before anything more is asked. */
    private PlanCase glanced(PlanCase one) {
        return one.bounded(lookahead.bound(one, List.of()));
    }

    private void take(PlanCase now) {
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
