package withy.search;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.PartKind;
import withy.objectives.Solver.Watch;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.search.planning.Assignment;

/**
 * Chooses the builds of all open jobs at once from shared stock.
 *
 * <p>First every job gets its own best build, as if it were alone. Where a part is wanted more often than it is there, one of the jobs must do
 * with a piece less; each of these cases is followed up, the best first. A case without a conflict is the best plan there is, and until then the
 * best case still open bounds all plans. When the steps run out, the planning engine picks among all builds found, starting from the better of
 * what was found and of taking the jobs one by one in order of date; it also picks among equal plans the one with fewest orders.
 */
public final class JobPlanner {
    /** Questions asked at most. */
    private static final int STANDARD_QUESTIONS = 120;

    /** Cases followed up at most. */
    private static final int MOST_CASES = 4_000;

    private final List<PlanJob> jobs;
    private final Supplies supplies;
    private final Watch watch;
    private final int questions;
    private final JobOptions builds;

    private JobPlanner(List<PlanJob> jobs, Supplies supplies, Watch watch, int questions) {
        this.jobs = List.copyOf(jobs);
        this.supplies = supplies;
        this.watch = watch;
        this.questions = questions;
        this.builds = new JobOptions(this.jobs, watch);
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
    }

    /** A case: how many pieces of scarce parts each job may take at most. */
    private record Case(List<SortedMap<String, Integer>> limits, List<PlanOption> options, PlanCost bound, int order) {}

    /** Plans. */
    public static Plan plan(List<PlanJob> jobs, Supplies supplies, Watch watch) {
        return new JobPlanner(jobs, supplies, watch, STANDARD_QUESTIONS).plan();
    }

    /** The same with another number of questions. */
    public static Plan plan(List<PlanJob> jobs, Supplies supplies, Watch watch, int questions) {
        return new JobPlanner(jobs, supplies, watch, questions).plan();
    }

    private Plan plan() {
        Case root = root();
        List<PlanOption> oneByOne = oneByOne();
        List<PlanOption> best = oneByOne;
        PriorityQueue<Case> open =
                new PriorityQueue<>(Comparator.comparing(Case::bound).thenComparingInt(Case::order));
        open.add(root);
        int order = 1;
        int cases = 0;
        while (!open.isEmpty()
                && builds.asked() < questions
                && cases++ < MOST_CASES
                && !watch.interrupted().getAsBoolean()) {
            Case next = open.poll();
            if (next.bound().compareTo(PlanCost.of(best)) >= 0) {
                open.clear();
                break;
            }
            Conflict conflict = conflict(next.options());
            if (conflict == null) {
                if (PlanCost.of(next.options()).compareTo(PlanCost.of(best)) < 0) {
                    best = next.options();
                }
                continue;
            }
            for (int job : conflict.jobs()) {
                Case child = child(next, job, conflict.part(), order++);
                if (child.bound().compareTo(PlanCost.of(best)) < 0) {
                    open.add(child);
                }
            }
        }
        Case first = open.peek();
        return finished(best, oneByOne, root.options(), first == null ? PlanCost.of(best) : first.bound());
    }

    private Plan finished(List<PlanOption> found, List<PlanOption> oneByOne, List<PlanOption> alone, PlanCost reached) {
        List<List<PlanOption>> pool = pool(found, oneByOne);
        SharedShelf shelf = new SharedShelf(jobs, supplies, pool);
        List<PlanOption> best = Assignment.pick(pool, found, shelf::excess, shelf::orders);
        PlanCost cost = PlanCost.of(best);
        PlanCost bound = reached.compareTo(cost) < 0 ? reached : cost;
        return new Plan(
                best, cost, oneByOne, PlanCost.of(oneByOne), alone, bound, bound.compareTo(cost) == 0, builds.asked());
    }

    /** All builds found for each job, and none. */
    private List<List<PlanOption>> pool(List<PlanOption> found, List<PlanOption> oneByOne) {
        List<List<PlanOption>> pool = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            Set<PlanOption> options = new LinkedHashSet<>();
            options.add(found.get(job));
            options.add(oneByOne.get(job));
            options.addAll(builds.found(job));
            options.add(PlanOption.UNSERVED);
            pool.add(List.copyOf(options));
        }
        return pool;
    }

    /** Jobs in order of date, each with its best build from what the ones before left. */
    private List<PlanOption> oneByOne() {
        List<Integer> order = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            order.add(job);
        }
        order.sort(Comparator.<Integer, Boolean>comparing(job -> jobs.get(job).kept() == null)
                .thenComparing(job -> jobs.get(job).wanted())
                .thenComparing(job -> jobs.get(job).id()));
        PlanOption[] taken = new PlanOption[jobs.size()];
        Arrays.fill(taken, PlanOption.UNSERVED);
        for (int job : order) {
            SortedMap<String, Integer> limits = new TreeMap<>();
            for (String part : usedBy(taken)) {
                if (supplies.scarce(part, jobs.get(job).wanted())) {
                    limits.put(part, left(part, job, taken));
                }
            }
            taken[job] = builds.best(job, limits);
        }
        return List.of(taken);
    }

    private static Set<String> usedBy(PlanOption[] taken) {
        Set<String> parts = new TreeSet<>();
        for (PlanOption option : taken) {
            parts.addAll(option.pieces().keySet());
        }
        return parts;
    }

    /** Pieces of a part a job may take beside what others took. */
    private int left(String part, int job, PlanOption[] taken) {
        LocalDate wanted = jobs.get(job).wanted();
        int left = Integer.MAX_VALUE;
        for (LocalDate day : days()) {
            if (!day.isBefore(wanted)) {
                int used = 0;
                for (int other = 0; other < jobs.size(); other++) {
                    LocalDate of = jobs.get(other).wanted();
                    used += other != job && !of.isAfter(day) && supplies.scarce(part, of) ? taken[other].of(part) : 0;
                }
                left = Math.min(left, supplies.by(part, day) - used);
            }
        }
        return Math.max(0, left);
    }

    private SortedSet<LocalDate> days() {
        return supplies.days(jobs.stream().map(PlanJob::wanted).toList());
    }

    private Case root() {
        List<SortedMap<String, Integer>> limits = new ArrayList<>();
        List<PlanOption> options = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            limits.add(new TreeMap<>());
            options.add(builds.best(job, new TreeMap<>()));
        }
        return new Case(limits, options, PlanCost.bound(options), 0);
    }

    private Case child(Case parent, int job, String part, int order) {
        List<SortedMap<String, Integer>> limits = new ArrayList<>(parent.limits());
        SortedMap<String, Integer> own = new TreeMap<>(limits.get(job));
        own.put(part, parent.options().get(job).of(part) - 1);
        limits.set(job, own);
        List<PlanOption> options = new ArrayList<>(parent.options());
        options.set(job, builds.best(job, own));
        return new Case(limits, options, PlanCost.bound(options), order);
    }

    /** Jobs that together want more of a part by a day than there is. */
    private record Conflict(String part, List<Integer> jobs) {}

    private @Nullable Conflict conflict(List<PlanOption> options) {
        SortedMap<String, List<Integer>> users = new TreeMap<>();
        for (int job = 0; job < jobs.size(); job++) {
            for (String part : options.get(job).pieces().keySet()) {
                if (supplies.scarce(part, jobs.get(job).wanted())) {
                    users.computeIfAbsent(part, any -> new ArrayList<>()).add(job);
                }
            }
        }
        SortedSet<LocalDate> days = days();
        Conflict smallest = null;
        for (Map.Entry<String, List<Integer>> one : users.entrySet()) {
            String part = one.getKey();
            for (LocalDate day : days) {
                List<Integer> using = one.getValue().stream()
                        .filter(job -> !jobs.get(job).wanted().isAfter(day))
                        .toList();
                int used = using.stream()
                        .mapToInt(job -> options.get(job).of(part))
                        .sum();
                boolean fewer =
                        smallest == null || using.size() < smallest.jobs().size();
                if (fewer && used > supplies.by(part, day)) {
                    smallest = new Conflict(part, using);
                }
            }
        }
        return smallest;
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
