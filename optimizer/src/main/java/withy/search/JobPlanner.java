package withy.search;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.PartKind;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.search.Contention.Conflict;
import withy.search.JobOptions.Ask;
import withy.search.planning.Assignment;

/**
 * Chooses the builds of all open jobs at once from shared stock.
 *
 * <p>First every job gets its own best build, as if it were alone. Jobs that want the same scarce parts are planned together as a group
 * ({@link PlanGroup}), all others by themselves; groups whose plans want the same pieces are joined and planned anew. Groups that want nothing of each other
 * make the best plan there is, and until then what bounds each of them bounds all plans. When the questions run out, the planning engine picks among
 * all builds met, starting from the better of what was found and of taking the jobs one by one in order of date; it also picks among equal plans the
 * one with fewest orders.
 */
public final class JobPlanner {
    /** Jobs asked about at once when they are taken one by one. */
    private static final int GUESSED = 3;

    private final List<PlanJob> jobs;
    private final Supplies supplies;
    private final Watch watch;
    private final Effort effort;
    private final JobOptions builds;
    private final Contention contention;
    private Effort begun = new Effort(0, 0, 0);

    private JobPlanner(List<PlanJob> jobs, Supplies supplies, Watch watch, Effort effort, int threads) {
        this.jobs = List.copyOf(jobs);
        this.supplies = supplies;
        this.watch = watch;
        this.effort = effort;
        this.builds = new JobOptions(this.jobs, watch, threads);
        this.contention = new Contention(this.jobs, supplies);
    }

    /**
     * What is asked at most once every job has its best and they were taken one by one, which is always asked to the end. Counted and not timed, so that
     * equal jobs get equal plans.
     *
     * @param questions questions
     * @param steps steps of the search
     * @param cases cases looked at
     */
    public record Effort(int questions, long steps, int cases) {
        /** Some seconds for thirty jobs on a large list. */
        public static final Effort STANDARD = new Effort(150, 40_000, 1_000);

        /** Some minutes. */
        public static final Effort LONGER = new Effort(3_000, 1_500_000, 30_000);
    }

    /**
     * A plan.
     *
     * @param options what each job gets, in the order of the jobs
     * @param cost how good that is
     * @param oneByOne what each job gets when they are taken one by one in order of date
     * @param oneByOneCost how good that is
     * @param alone what each job would get if it were alone
     * @param bound no plan is better
     * @param proven true where the plan is as good as the bound
     * @param questions questions asked
     */
    public record Plan(
            List<PlanOption> options,
            PlanCost cost,
            List<PlanOption> oneByOne,
            PlanCost oneByOneCost,
            List<PlanOption> alone,
            PlanCost bound,
            boolean proven,
            int questions) {
        public Plan {
            options = List.copyOf(options);
            oneByOne = List.copyOf(oneByOne);
            alone = List.copyOf(alone);
        }

        /** How much better in score a plan that leaves as few jobs without a rod could be at most; null where nothing is known of that. */
        public @Nullable Long gap() {
            boolean known = bound.unserved() == cost.unserved() && bound.score() > JobOptions.NO_BOUND / 2;
            return known ? cost.score() - bound.score() : null;
        }
    }

    /** Plans. Once it is interrupted nothing more is asked, and the best plan of what is known by then comes back. */
    public static Plan plan(List<PlanJob> jobs, Supplies supplies, Watch watch) {
        return plan(jobs, supplies, watch, Effort.STANDARD, Workers.MOST);
    }

    /** The same with another effort. */
    public static Plan plan(List<PlanJob> jobs, Supplies supplies, Watch watch, Effort effort) {
        return plan(jobs, supplies, watch, effort, Workers.MOST);
    }

    /** The same with another number of threads, which changes nothing but the time it takes. */
    public static Plan plan(List<PlanJob> jobs, Supplies supplies, Watch watch, Effort effort, int threads) {
        return new JobPlanner(jobs, supplies, watch, effort, threads).plan();
    }

    private Plan plan() {
        List<Ask> asks = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            asks.add(new Ask(job, new TreeMap<>(), Long.MAX_VALUE));
        }
        List<PlanOption> alone = builds.best(asks, JobOptions.MOST_STEPS);
        List<PlanOption> oneByOne = oneByOne();
        List<PlanGroup> groups = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            groups.add(new PlanGroup(contention, builds, new TreeSet<>(Set.of(job)), alone, oneByOne));
        }
        begun = new Effort(builds.asked(), builds.steps(), 0);
        int cases = 0;
        boolean apart = true;
        while (apart && cases < effort.cases() && goesOn()) {
            List<PlanGroup> unsettled =
                    groups.stream().filter(group -> !group.done()).toList();
            if (unsettled.isEmpty()) {
                apart = join(groups, alone, oneByOne);
                probe(groups);
            } else {
                int before = lookedAt(unsettled);
                follow(unsettled);
                cases += lookedAt(unsettled) - before;
            }
        }
        return finished(together(groups), oneByOne, alone, bound(groups));
    }

    /** Follows up cases of each group: groups share no job, so that all they ask can be asked at once. */
    private void follow(List<PlanGroup> groups) {
        builds.best(groups.stream().flatMap(group -> group.next().stream()).toList(), JobOptions.FEW_STEPS);
    }

    /** What jobs of new groups lose by a piece less, a question of each job at a time. */
    private void probe(List<PlanGroup> groups) {
        List<Ask> probes = new ArrayList<>();
        groups.stream().filter(group -> !group.done()).forEach(group -> probes.addAll(group.probes()));
        while (!probes.isEmpty() && goesOn() && builds.steps() - begun.steps() < effort.steps() / 2) {
            Set<Integer> asked = new TreeSet<>();
            List<Ask> now = probes.stream()
                    .filter(ask -> asked.size() < Workers.MOST && asked.add(ask.job()))
                    .toList();
            builds.best(now, JobOptions.FEW_STEPS / 3);
            probes.removeAll(now);
        }
    }

    private static int lookedAt(List<PlanGroup> groups) {
        return groups.stream().mapToInt(PlanGroup::lookedAt).sum();
    }

    private boolean goesOn() {
        return builds.asked() - begun.questions() < effort.questions()
                && builds.steps() - begun.steps() < effort.steps()
                && !watch.interrupted().getAsBoolean();
    }

    /** Joins groups whose plans want the same pieces; false where none do. */
    private boolean join(List<PlanGroup> groups, List<PlanOption> alone, List<PlanOption> oneByOne) {
        List<Conflict> conflicts = contention.all(together(groups), all());
        for (Conflict conflict : conflicts) {
            SortedSet<Integer> joined = new TreeSet<>();
            groups.removeIf(group -> {
                boolean concerned = conflict.jobs().stream().anyMatch(group.jobs()::contains);
                joined.addAll(concerned ? group.jobs() : Set.of());
                return concerned;
            });
            groups.add(new PlanGroup(contention, builds, joined, alone, oneByOne));
        }
        return !conflicts.isEmpty();
    }

    private List<Integer> all() {
        List<Integer> all = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            all.add(job);
        }
        return all;
    }

    /** The plans of all groups side by side. */
    private static List<PlanOption> together(List<PlanGroup> groups) {
        SortedMap<Integer, PlanOption> options = new TreeMap<>();
        groups.forEach(group -> group.jobs().forEach(job -> options.put(job, group.option(job))));
        return List.copyOf(options.values());
    }

    private static PlanCost bound(List<PlanGroup> groups) {
        int unserved = 0;
        long score = 0;
        for (PlanGroup group : groups) {
            unserved += group.bound().unserved();
            score += group.bound().score();
        }
        return new PlanCost(unserved, score);
    }

    private Plan finished(
            List<PlanOption> together, List<PlanOption> oneByOne, List<PlanOption> alone, PlanCost reached) {
        boolean keeps = contention.all(together, all()).isEmpty();
        List<PlanOption> found =
                keeps && PlanCost.of(together).compareTo(PlanCost.of(oneByOne)) < 0 ? together : oneByOne;
        List<List<PlanOption>> pool = pool(found, oneByOne);
        List<PlanOption> best = found;
        if (!watch.interrupted().getAsBoolean()) {
            SharedShelf shelf = new SharedShelf(jobs, supplies, pool);
            best = Assignment.pick(pool, found, shelf::excess, shelf::orders);
        }
        PlanCost cost = PlanCost.of(best);
        PlanCost bound = reached.compareTo(cost) < 0 ? reached : cost;
        return new Plan(
                best, cost, oneByOne, PlanCost.of(oneByOne), alone, bound, bound.compareTo(cost) == 0, builds.asked());
    }

    /** What each job gets in the plan begun with and one by one, every other build found for it, and none. */
    private List<List<PlanOption>> pool(List<PlanOption> found, List<PlanOption> oneByOne) {
        List<List<PlanOption>> pool = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            Map<Optional<Build>, PlanOption> ways = new LinkedHashMap<>();
            for (PlanOption option : List.of(found.get(job), oneByOne.get(job))) {
                ways.putIfAbsent(Optional.ofNullable(option.build()), option);
            }
            for (PlanOption option : builds.found(job)) {
                ways.putIfAbsent(Optional.ofNullable(option.build()), option);
            }
            ways.putIfAbsent(Optional.empty(), PlanOption.UNSERVED);
            pool.add(List.copyOf(ways.values()));
        }
        return pool;
    }

    /**
     * Jobs in order of date, each with its best build from what the ones before left. What jobs later in the row will be asked is guessed and asked
     * along; a wrong guess costs a question and changes no answer.
     */
    private List<PlanOption> oneByOne() {
        List<Integer> order = new ArrayList<>(all());
        order.sort(Comparator.<Integer, Boolean>comparing(job -> jobs.get(job).kept() == null)
                .thenComparing(job -> jobs.get(job).wanted())
                .thenComparing(job -> jobs.get(job).id()));
        while (true) {
            List<PlanOption> taken = new ArrayList<>(Collections.nCopies(jobs.size(), PlanOption.UNSERVED));
            List<Ask> unknown = new ArrayList<>();
            for (int job : order) {
                Ask ask = new Ask(job, contention.left(job, taken), Long.MAX_VALUE);
                PlanOption known = builds.known(ask);
                if (known == null) {
                    unknown.add(ask);
                    known = builds.fitting(ask);
                }
                taken.set(job, known == null ? PlanOption.UNSERVED : known);
                if (unknown.size() == GUESSED) {
                    break;
                }
            }
            if (unknown.isEmpty()) {
                return List.copyOf(taken);
            }
            builds.best(unknown, JobOptions.MOST_STEPS);
        }
    }

    /** Pieces a rod takes of the shop's: not what is used by amount, nor what the customer brings. */
    public static SortedMap<String, Integer> pieces(Rod rod) {
        SortedMap<String, Integer> pieces = new TreeMap<>();
        for (Placed placed : rod.placed().values()) {
            PartKind kind = placed.part().kind();
            boolean shared = kind == PartKind.THREAD || kind == PartKind.FINISH || kind == PartKind.ADHESIVE;
            if (!shared && !rod.brief().owned().contains(placed.part().id())) {
                pieces.merge(placed.part().id(), rod.pieces(placed.station()), Integer::sum);
            }
        }
        return pieces;
    }
}
