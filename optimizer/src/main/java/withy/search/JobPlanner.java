package withy.search;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
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
    private static final int STANDARD_QUESTIONS = 400;

    private final List<PlanJob> jobs;
    private final Supplies supplies;
    private final Watch watch;
    private final int questions;
    private final List<Map<SortedMap<String, Integer>, PlanOption>> known = new ArrayList<>();
    private final Map<Long, Search> searches = new LinkedHashMap<>();
    private int asked;

    private JobPlanner(List<PlanJob> jobs, Supplies supplies, Watch watch, int questions) {
        this.jobs = List.copyOf(jobs);
        this.supplies = supplies;
        this.watch = watch;
        this.questions = questions;
        jobs.forEach(job -> known.add(new LinkedHashMap<>()));
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
        List<PlanOption> oneByOne = oneByOne();
        Case root = root();
        List<PlanOption> best = oneByOne;
        PriorityQueue<Case> open =
                new PriorityQueue<>(Comparator.comparing(Case::bound).thenComparingInt(Case::order));
        open.add(root);
        int order = 1;
        while (!open.isEmpty() && asked < questions && !watch.interrupted().getAsBoolean()) {
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
        List<PlanOption> best = Assignment.pick(pool(found, oneByOne), found, this::excess, this::orders);
        PlanCost cost = PlanCost.of(best);
        PlanCost bound = reached.compareTo(cost) < 0 ? reached : cost;
        return new Plan(best, cost, oneByOne, PlanCost.of(oneByOne), alone, bound, bound.compareTo(cost) == 0, asked);
    }

    /** All builds found for each job, and none. */
    private List<List<PlanOption>> pool(List<PlanOption> found, List<PlanOption> oneByOne) {
        List<List<PlanOption>> pool = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            Set<PlanOption> options = new LinkedHashSet<>();
            options.add(found.get(job));
            options.add(oneByOne.get(job));
            options.addAll(known.get(job).values());
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
            taken[job] = option(job, limits);
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

    private Set<LocalDate> days() {
        return supplies.days(jobs.stream().map(PlanJob::wanted).toList());
    }

    private Case root() {
        List<SortedMap<String, Integer>> limits = new ArrayList<>();
        List<PlanOption> options = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            limits.add(new TreeMap<>());
            options.add(option(job, new TreeMap<>()));
        }
        return new Case(limits, options, PlanCost.bound(options), 0);
    }

    private Case child(Case parent, int job, String part, int order) {
        List<SortedMap<String, Integer>> limits = new ArrayList<>(parent.limits());
        SortedMap<String, Integer> own = new TreeMap<>(limits.get(job));
        own.put(part, parent.options().get(job).of(part) - 1);
        limits.set(job, own);
        List<PlanOption> options = new ArrayList<>(parent.options());
        options.set(job, option(job, own));
        return new Case(limits, options, PlanCost.bound(options), order);
    }

    /** Jobs that together want more of a part by a day than there is. */
    private record Conflict(String part, List<Integer> jobs) {}

    private @Nullable Conflict conflict(List<PlanOption> options) {
        Conflict smallest = null;
        for (String part : usedBy(options.toArray(new PlanOption[0]))) {
            for (LocalDate day : days()) {
                List<Integer> using = using(part, day, options);
                int used = using.stream()
                        .mapToInt(job -> options.get(job).of(part))
                        .sum();
                boolean tooMany = used > supplies.by(part, day);
                if (tooMany
                        && (smallest == null || using.size() < smallest.jobs().size())) {
                    smallest = new Conflict(part, using);
                }
            }
        }
        return smallest;
    }

    /** Jobs wanted by a day that use a part no order brings in time. */
    private List<Integer> using(String part, LocalDate day, List<PlanOption> options) {
        List<Integer> using = new ArrayList<>();
        for (int job = 0; job < jobs.size(); job++) {
            LocalDate wanted = jobs.get(job).wanted();
            if (!wanted.isAfter(day) && options.get(job).of(part) > 0 && supplies.scarce(part, wanted)) {
                using.add(job);
            }
        }
        return using;
    }

    /** Pieces wanted beyond what there is. */
    private long excess(List<PlanOption> options) {
        long excess = 0;
        for (String part : usedBy(options.toArray(new PlanOption[0]))) {
            long worst = 0;
            for (LocalDate day : days()) {
                long used = using(part, day, options).stream()
                        .mapToLong(job -> options.get(job).of(part))
                        .sum();
                worst = Math.max(worst, used - supplies.by(part, day));
            }
            excess += worst;
        }
        return excess;
    }

    /** Suppliers that something must be ordered from. */
    private long orders(List<PlanOption> options) {
        SortedMap<String, Integer> all = new TreeMap<>();
        options.forEach(option -> option.pieces().forEach((part, count) -> all.merge(part, count, Integer::sum)));
        Set<String> suppliers = new TreeSet<>();
        all.forEach((part, count) -> {
            Part known = jobs.get(0).catalog().find(part);
            if (known != null && count > supplies.by(part, Supplies.NO_HURRY)) {
                suppliers.add(known.facts().supplier());
            }
        });
        return suppliers.size();
    }

    /** The best build of a job that takes no more than the limits allow. */
    private PlanOption option(int job, SortedMap<String, Integer> limits) {
        PlanOption before = known.get(job).get(limits);
        if (before != null) {
            return before;
        }
        PlanOption made = solve(jobs.get(job), limits);
        known.get(job).put(limits, made);
        return made;
    }

    private PlanOption solve(PlanJob job, SortedMap<String, Integer> limits) {
        Build kept = job.kept();
        if (kept != null) {
            PlanOption keeps = measured(job, kept);
            boolean within = limits.entrySet().stream().allMatch(limit -> keeps.of(limit.getKey()) <= limit.getValue());
            return within ? keeps : PlanOption.UNSERVED;
        }
        asked++;
        Search search = limits.isEmpty()
                ? searches.computeIfAbsent(job.id(), id -> new Search(job.catalog()))
                : new Search(limited(job.catalog(), limits));
        Solution solution = search.solve(job.query(), watch);
        Build build = solution.build();
        if (build == null) {
            return PlanOption.UNSERVED;
        }
        PlanOption option = measured(job, build);
        return new PlanOption(build, option.objectives(), option.score(), solution.bound(), option.pieces());
    }

    private static Catalog limited(Catalog catalog, SortedMap<String, Integer> limits) {
        Map<String, PartFacts> facts = new LinkedHashMap<>();
        limits.forEach((id, most) -> {
            Part part = catalog.find(id);
            if (part != null) {
                int pieces = Math.min(part.facts().stock(), most);
                facts.put(id, part.facts().withStock(pieces).notOrdered());
            }
        });
        return catalog.changed(facts, catalog.hash());
    }

    private static PlanOption measured(PlanJob job, Build build) {
        Catalog catalog = job.catalog();
        var brief = job.query().brief();
        Blank blank = (Blank) Objects.requireNonNull(catalog.find(build.layout().blankId()));
        Rod rod = Rod.measure(catalog, brief, build, BlankShape.of(blank));
        ObjectiveVector vector = ObjectiveVector.of(rod, new Style(catalog, brief), new NiceWishes(brief));
        long score =
                Scoring.of(brief, catalog.rates(), job.query().priorities()).score(vector);
        return new PlanOption(build, vector, score, score, pieces(rod));
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
