package withy.search;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicLong;
import org.jspecify.annotations.Nullable;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Build;
import withy.rod.Rod;

/**
 * The best build of each job under limits on how many pieces it may take. What is known of a job answers later questions: a build that was best with
 * more to take from is still best where it fits, and any build that fits tells what scores are of no interest.
 */
final class JobOptions {
    /** How often a question may ask whether to go on. Hard ones end here with the best so far and what bounds it. */
    private static final long MOST_STEPS = 3_000;

    private final List<PlanJob> jobs;
    private final Watch watch;
    private final List<Map<SortedMap<String, Integer>, PlanOption>> known = new ArrayList<>();
    private int asked;

    JobOptions(List<PlanJob> jobs, Watch watch) {
        this.jobs = jobs;
        this.watch = watch;
        jobs.forEach(job -> known.add(new LinkedHashMap<>()));
    }

    /** Questions put to the search so far. */
    int asked() {
        return asked;
    }

    /** Everything found for a job so far. */
    Collection<PlanOption> found(int job) {
        return known.get(job).values();
    }

    /** The best build of a job that takes no more than the limits allow. */
    PlanOption best(int job, SortedMap<String, Integer> limits) {
        PlanOption before = known.get(job).get(limits);
        if (before != null) {
            return before;
        }
        PlanOption made = inherited(job, limits);
        if (made == null) {
            made = solve(job, limits);
        }
        known.get(job).put(new TreeMap<>(limits), made);
        return made;
    }

    /** What was best with more to take from, where it fits. */
    private @Nullable PlanOption inherited(int job, SortedMap<String, Integer> limits) {
        for (Map.Entry<SortedMap<String, Integer>, PlanOption> one :
                known.get(job).entrySet()) {
            if (allowsMore(one.getKey(), limits) && fits(one.getValue(), limits)) {
                return one.getValue();
            }
        }
        return null;
    }

    private static boolean allowsMore(SortedMap<String, Integer> loose, SortedMap<String, Integer> tight) {
        return loose.entrySet().stream().allMatch(limit -> {
            Integer most = tight.get(limit.getKey());
            return most != null && most <= limit.getValue();
        });
    }

    private static boolean fits(PlanOption option, SortedMap<String, Integer> limits) {
        return limits.entrySet().stream().allMatch(limit -> option.of(limit.getKey()) <= limit.getValue());
    }

    private PlanOption solve(int number, SortedMap<String, Integer> limits) {
        PlanJob job = jobs.get(number);
        Build kept = job.kept();
        if (kept != null) {
            PlanOption keeps = measured(job, kept);
            return fits(keeps, limits) ? keeps : PlanOption.UNSERVED;
        }
        asked++;
        Search search = new Search(limits.isEmpty() ? job.catalog() : limited(job.catalog(), limits));
        PlanOption fitting = fitting(number, limits);
        if (fitting == null) {
            return option(job, search.solve(job.query(), counted()));
        }
        Solution better = search.below(fitting.score(), job.query(), counted());
        if (better.build() != null) {
            return option(job, better);
        }
        long bound = Math.min(better.bound(), fitting.score());
        return new PlanOption(fitting.build(), fitting.objectives(), fitting.score(), bound, fitting.pieces());
    }

    /** Ends a question by its steps, not by the clock, so that equal jobs get equal plans. */
    private Watch counted() {
        AtomicLong steps = new AtomicLong();
        return new Watch(
                () -> steps.incrementAndGet() > MOST_STEPS
                        || watch.interrupted().getAsBoolean(),
                watch.better());
    }

    /** The best known build that keeps the limits, or null. */
    private @Nullable PlanOption fitting(int job, SortedMap<String, Integer> limits) {
        PlanOption best = null;
        for (PlanOption option : known.get(job).values()) {
            if (option.served() && fits(option, limits) && (best == null || option.score() < best.score())) {
                best = option;
            }
        }
        return best;
    }

    private static PlanOption option(PlanJob job, Solution solution) {
        Build build = solution.build();
        if (build == null) {
            return solution.proven() ? PlanOption.UNSERVED : PlanOption.unserved(solution.bound());
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
        return new PlanOption(build, vector, score, score, JobPlanner.pieces(rod));
    }
}
