package withy.search;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicInteger;
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
 *
 * <p>Questions about different jobs do not depend on each other and are worked some at a time; the answers are the same as one after the other.
 */
final class JobOptions {
    /** How often a question may ask whether to go on where its answer is to be proven. Hard ones end here with the best so far and what bounds it. */
    static final long MOST_STEPS = 40_000;

    /** The same of one that only tells more of what is known. */
    static final long FEW_STEPS = 3_000;

    /** Far below the sum of all scores, and far enough from the least number that those of many jobs add up. */
    static final long NO_BOUND = Long.MIN_VALUE >> 8;

    private final List<PlanJob> jobs;
    private final Watch watch;
    private final int threads;
    private final List<Known> known = new ArrayList<>();
    private final AtomicInteger asked = new AtomicInteger();
    private final AtomicLong steps = new AtomicLong();

    /**
     * @param threads questions worked at a time
     */
    JobOptions(List<PlanJob> jobs, Watch watch, int threads) {
        this.jobs = jobs;
        this.watch = watch;
        this.threads = threads;
        jobs.forEach(job -> known.add(new Known(new LinkedHashMap<>(), new LinkedHashMap<>(), new HashMap<>())));
    }

    /**
     * A question.
     *
     * @param job number of the job
     * @param limits pieces it may take at most, by part
     * @param below scores from here on are of no interest
     */
    record Ask(int job, SortedMap<String, Integer> limits, long below) {}

    /**
     * What was answered.
     *
     * @param option the best build, or the best known with a bound
     * @param below scores from here on were of no interest
     */
    private record Answer(PlanOption option, long below) {
        /** True where asking again tells no more. */
        boolean holds(long other) {
            return other <= below || !option.open() || option.served() && option.bound() >= option.score();
        }
    }

    /**
     * What is known of a job.
     *
     * @param answers by limits
     * @param seen all builds met on the way, each once
     * @param floors what bounds it under limits, by what is known so far
     */
    private record Known(
            Map<SortedMap<String, Integer>, Answer> answers,
            Map<Build, PlanOption> seen,
            Map<SortedMap<String, Integer>, Long> floors) {}

    /** Questions put to the search so far. */
    int asked() {
        return asked.get();
    }

    /** Steps of the search so far. */
    long steps() {
        return steps.get();
    }

    /** Every build found for a job so far. */
    Collection<PlanOption> found(int job) {
        return known.get(job).seen().values();
    }

    /**
     * The best build of each job asked about that takes no more than the limits allow. No job may be asked about twice.
     *
     * @param most steps of each question at most
     */
    List<PlanOption> best(List<Ask> asks, long most) {
        List<Callable<PlanOption>> questions = new ArrayList<>();
        asks.forEach(ask -> questions.add(() -> best(ask, most)));
        return Workers.all(questions, threads);
    }

    private PlanOption best(Ask ask, long most) {
        PlanOption before = known(ask);
        if (before != null) {
            return before;
        }
        Answer made = new Answer(solve(ask, most), ask.below());
        known.get(ask.job()).answers().put(new TreeMap<>(ask.limits()), made);
        known.get(ask.job()).floors().clear();
        return made.option();
    }

    /** The answer, where it is known without a search. */
    @Nullable
    PlanOption known(Ask ask) {
        Known of = known.get(ask.job());
        Answer same = of.answers().get(ask.limits());
        if (same != null && same.holds(ask.below())) {
            return same.option();
        }
        for (Map.Entry<SortedMap<String, Integer>, Answer> one : of.answers().entrySet()) {
            Answer answer = one.getValue();
            boolean wider = allowsMore(one.getKey(), ask.limits()) && fits(answer.option(), ask.limits());
            if (wider && answer.holds(ask.below())) {
                return answer.option();
            }
        }
        long bound = floor(ask.job(), ask.limits());
        return bound >= ask.below() ? bounded(fitting(ask), bound) : null;
    }

    /** No build of a job under these limits scores less, as far as is known; the largest number where there is none. */
    long floor(int job, SortedMap<String, Integer> limits) {
        Known of = known.get(job);
        return of.floors().computeIfAbsent(limits, key -> {
            long bound = NO_BOUND;
            for (Map.Entry<SortedMap<String, Integer>, Answer> one :
                    of.answers().entrySet()) {
                if (allowsMore(one.getKey(), key)) {
                    bound = Math.max(bound, one.getValue().option().bound());
                }
            }
            return bound;
        });
    }

    private static PlanOption bounded(@Nullable PlanOption option, long bound) {
        return option == null
                ? PlanOption.unserved(bound)
                : new PlanOption(
                        option.build(),
                        option.objectives(),
                        option.score(),
                        Math.min(bound, option.score()),
                        option.pieces());
    }

    private static boolean allowsMore(SortedMap<String, Integer> loose, SortedMap<String, Integer> tight) {
        if (loose.size() > tight.size()) {
            return false;
        }
        for (Map.Entry<String, Integer> limit : loose.entrySet()) {
            Integer most = tight.get(limit.getKey());
            if (most == null || most > limit.getValue()) {
                return false;
            }
        }
        return true;
    }

    private static boolean fits(PlanOption option, SortedMap<String, Integer> limits) {
        return limits.entrySet().stream().allMatch(limit -> option.of(limit.getKey()) <= limit.getValue());
    }

    private PlanOption solve(Ask ask, long most) {
        PlanJob job = jobs.get(ask.job());
        Build kept = job.kept();
        if (kept != null) {
            PlanOption keeps = measured(job, kept);
            see(ask.job(), keeps);
            return fits(keeps, ask.limits()) ? keeps : PlanOption.UNSERVED;
        }
        if (watch.interrupted().getAsBoolean()) {
            return bounded(fitting(ask), floor(ask.job(), ask.limits()));
        }
        asked.incrementAndGet();
        Search search = new Search(ask.limits().isEmpty() ? job.catalog() : limited(job.catalog(), ask.limits()));
        PlanOption fitting = fitting(ask);
        long below = fitting == null ? ask.below() : Math.min(ask.below(), fitting.score());
        AtomicLong own = new AtomicLong();
        Solution solution = search.below(below, job.query(), counted(ask.job(), own, most));
        if (!solution.proven() && below == Long.MAX_VALUE && own.get() <= most) {
            // the proof was given up: a rule outside its chain, which the engine knows to go about
            solution = search.solveAlone(job.query(), counted(ask.job(), new AtomicLong(), FEW_STEPS));
        }
        Build build = solution.build();
        if (build != null) {
            fitting = measured(job, build);
            see(ask.job(), fitting);
        } else if (fitting == null && below == Long.MAX_VALUE && solution.proven()) {
            return PlanOption.UNSERVED;
        }
        return bounded(fitting, Math.max(floor(ask.job(), ask.limits()), solution.bound()));
    }

    private void see(int job, PlanOption option) {
        Build build = option.build();
        if (build != null) {
            known.get(job).seen().putIfAbsent(build, option);
        }
    }

    /** Ends a question by its steps, not by the clock, so that equal jobs get equal plans. Keeps what is met on the way. */
    private Watch counted(int job, AtomicLong own, long most) {
        return new Watch(
                () -> {
                    steps.incrementAndGet();
                    return own.incrementAndGet() > most || watch.interrupted().getAsBoolean();
                },
                (build, objectives, score) -> {
                    see(job, measured(jobs.get(job), build));
                    watch.better().found(build, objectives, score);
                });
    }

    /** The best known build that keeps the limits, or null. */
    @Nullable
    PlanOption fitting(Ask ask) {
        PlanOption best = null;
        for (PlanOption option : known.get(ask.job()).seen().values()) {
            if (fits(option, ask.limits()) && (best == null || option.score() < best.score())) {
                best = option;
            }
        }
        return best;
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
