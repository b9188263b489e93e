package withy.search;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.search.Prices.Kind;

/**
 * Works one node to the end: finds multipliers that make its linear bound tight ({@link CuttingPlanes}), then walks the builds whose
 * linear cost is still below the best score known. The bound holds whatever the multipliers are; they only decide how long the walk is.
 */
final class Dual {
    /** Rounds of finding multipliers. */
    private static final int ROUNDS = 16;

    /** Builds measured in one walk before it is given up (and said so): rules outside the chain refuse them. */
    private static final int MOST_BUILDS = 20_000;

    /** Handles and builds met depth first before beginnings are compared. */
    static final long FEW_STEPS = 1_000;

    /** The same before multipliers are looked for. */
    private static final long AT_ONCE = 250;

    /** Score within which few builds are left: half a noticeable step. */
    private static final double NEAR = Scoring.SCALE / 2;

    private final Task task;
    private final Completion completion;
    private final BlankShape shape;
    private final long margin;
    private final Watch watch;
    private final long mostSteps;
    private final int mostBuilds;
    private final long fewSteps;
    private long refused;
    private int measured;
    /** True where a build met was not what its sums promised: refused by a rule outside the chain, or dearer. */
    private boolean misled;

    /** True where the first legal build ends it. */
    private boolean firstWillDo;

    private LayoutCeilings ceilings;

    private Task.@Nullable Judged best;
    private long limit;
    private long boundSoFar = Long.MIN_VALUE;
    private Prices pricesSoFar;

    /**
     * @param mostSteps handles and builds met in one walk before it is given up
     */
    Dual(Task task, Completion completion, BlankShape shape, int leastClass, Watch watch, long mostSteps) {
        this(task, completion, shape, leastClass, watch, mostSteps, MOST_BUILDS, FEW_STEPS);
    }

    /** With other numbers of builds that may be measured in one walk, and of steps before beginnings are compared. */
    Dual(
            Task task,
            Completion completion,
            BlankShape shape,
            int leastClass,
            Watch watch,
            long mostSteps,
            int mostBuilds,
            long fewSteps) {
        this.task = task;
        this.completion = completion;
        this.shape = shape;
        this.margin = task.margin(leastClass);
        this.watch = watch;
        this.mostSteps = mostSteps;
        this.mostBuilds = mostBuilds;
        this.fewSteps = fewSteps;
        this.pricesSoFar = Prices.start(task.scoring);
        this.ceilings = new LayoutCeilings(task, completion.threads(), leastClass);
    }

    /**
     * What became of a node.
     *
     * @param best best legal build found here that beats what was known, or null
     * @param bound no build here scores less, unless it is {@code best}
     * @param prices multipliers that made the bound tightest
     * @param whole false where the walk was given up
     */
    record Outcome(Task.@Nullable Judged best, long bound, Prices prices, boolean whole) {}

    /** Any legal build will do: the first ends it, and the outcome's bound says nothing where there is one. */
    void firstWillDo() {
        firstWillDo = true;
    }

    /** What was found of the ceilings of the same builds before. */
    void ceilings(LayoutCeilings known) {
        ceilings = known;
    }

    Outcome solve(Prices start, long known) {
        return solve(start, known, ROUNDS);
    }

    /** The same with multipliers found earlier. */
    Outcome settle(Prices found, long known) {
        return solve(found, known, 1);
    }

    private Outcome solve(Prices start, long known, int rounds) {
        limit = known;
        CuttingPlanes planes = new CuttingPlanes(
                task.bounds, task.scoring, Scoring.even(task.brief, task.ground.catalog.rates()), start);
        Prices prices = start;
        pricesSoFar = start;
        boolean checkedFeasible = false;
        for (int round = 0; round < rounds; round++) {
            if (round > 0 && watch.interrupted().getAsBoolean()) {
                return new Outcome(best, boundSoFar, pricesSoFar, false);
            }
            long bound = completion.price(prices.linear(task.aim, margin), limit);
            if (bound > boundSoFar) {
                boundSoFar = bound;
                pricesSoFar = prices;
            }
            if (bound >= limit || TrainGraph.none(bound)) {
                return new Outcome(best, bound, pricesSoFar, true);
            }
            if (round == 0 && near(bound, start) && walkedAtOnce(bound)) {
                return new Outcome(best, limit, pricesSoFar, true);
            }
            Task.Measured cheapest = cheapest(bound);
            if (cheapest == null) {
                break;
            }
            take(cheapest);
            if (cheapest.legal() && (firstWillDo || cheapest.score() <= bound)) {
                return new Outcome(best, bound, pricesSoFar, true);
            }
            if (!checkedFeasible && !task.bounds.keeps(cheapest.vector())) {
                checkedFeasible = true;
                if (!ceilings.mayBeKept(cheapest, builds())) {
                    return new Outcome(best, Long.MAX_VALUE, pricesSoFar, true);
                }
                if (firstWillDo && leastWillDo()) {
                    return new Outcome(best, bound, pricesSoFar, true);
                }
            }
            planes.met(prices, cheapest.vector(), cheapest.aheadMgMm(), cheapest.behindMgMm(), bound);
            Prices next = planes.next(boundSoFar, limit);
            if (next == null) {
                break;
            }
            prices = next;
        }
        boolean none = checkedFeasible && !ceilings.pairsMayBeKept(builds());
        return none ? new Outcome(best, Long.MAX_VALUE, pricesSoFar, true) : walk();
    }

    /** True where the build that has least of what has a ceiling is one. */
    private boolean leastWillDo() {
        for (Kind kind : Kind.values()) {
            if (Prices.bounded(task.bounds, kind)) {
                long most = Prices.ceiling(task.bounds, kind);
                long least = completion.least(Prices.only(kind), most + 1);
                Task.Measured met = least > most ? null : cheapest(least);
                if (met != null) {
                    take(met);
                }
            }
        }
        return best != null;
    }

    private TwoCeilings.Builds builds() {
        return new TwoCeilings.Builds() {
            @Override
            public long least(Linear k, long under) {
                return completion.least(k, under);
            }

            @Override
            public boolean any(Linear k, long most) {
                return completion.any(k, most + 1);
            }

            @Override
            public @Nullable ObjectiveVector cheapest(long least) {
                Task.Measured met = TrainGraph.none(least) ? null : Dual.this.cheapest(least);
                return met == null ? null : met.vector();
            }
        };
    }

    private Task.@Nullable Measured cheapest(long bound) {
        Task.Measured[] first = new Task.Measured[1];
        completion.builds(new BuildWalk(
                        task.aim,
                        List.of(new Walk.Test(completion.prices(), Long.MAX_VALUE)),
                        bound + 1,
                        Long.MAX_VALUE,
                        () -> false,
                        met -> {
                            first[0] = task.measure(met.build(), shape);
                            return Long.MIN_VALUE;
                        })
                .withAnyPieces());
        return first[0];
    }

    /** Builds so far that keep every sum and fit together link by link, and were refused by a rule outside the chain all the same. */
    long refused() {
        return refused;
    }

    private void take(Task.Measured measured) {
        if (!measured.legal() && task.bounds.keeps(measured.vector())) {
            refused++;
        }
        if (measured.legal() && measured.score() < limit) {
            limit = measured.score();
            best = new Task.Judged(measured.build(), measured.vector(), measured.score());
        }
    }

    /** Walks the builds that cost less than a limit under these prices, without looking for tighter ones. */
    Outcome walk(Prices prices, long known) {
        limit = known;
        pricesSoFar = prices;
        return walk();
    }

    /** True where multipliers learnt elsewhere bring the bound so near the best build known that few builds are left. */
    private boolean near(long bound, Prices start) {
        return limit - bound < NEAR && !firstWillDo && !start.equals(Prices.start(task.scoring));
    }

    /** True where every build below the limit was met in a few steps, sooner than better multipliers are found. What is found lowers the limit either way. */
    private boolean walkedAtOnce(long bound) {
        misled = false;
        measured = 0;
        boolean whole =
                completion.builds(depthFirst(tests().plain(), Math.min(AT_ONCE, fewSteps))) && measured < mostBuilds;
        return whole || bound >= limit;
    }

    private WalkTests tests() {
        return new WalkTests(task, pricesSoFar.linear(task.aim, margin), margin, ceilings);
    }

    /** Depth first where few builds are left, which finds good ones at once; else of all beginnings only those no other beats. */
    private Outcome walk() {
        WalkTests told = tests();
        List<Walk.Test> tests = told.narrowestFirst(limit - boundSoFar);
        misled = false;
        boolean whole = walked(depthFirst(tests, Math.min(mostSteps, fewSteps)), tests);
        if (!whole && !misled) {
            List<Walk.Test> all = told.withSums(tests);
            boolean[] decides = told.decides(tests, all.size());
            Walk walk = new LabelWalk(task.aim, limit, all, decides, mostSteps, watch.interrupted(), this::measured);
            whole = walked(walk, tests) && !misled;
        }
        if (!whole && misled) {
            whole = walked(depthFirst(tests, mostSteps), tests);
        }
        return new Outcome(best, whole ? limit : boundSoFar, pricesSoFar, whole);
    }

    private Walk depthFirst(List<Walk.Test> tests, long most) {
        return new BuildWalk(task.aim, tests, limit, most, watch.interrupted(), this::measured);
    }

    private boolean walked(Walk walk, List<Walk.Test> tests) {
        completion.least(tests.get(0).k(), tests.get(0).under(limit));
        measured = 0;
        return completion.builds(walk) && measured < mostBuilds;
    }

    private long measured(Walk.Met met) {
        if (met.score() < limit) {
            measured++;
            Task.Measured build = task.measure(met.build(), shape);
            misled |= build.score() > met.score() || !build.legal() && task.bounds.keeps(build.vector());
            take(build);
        }
        boolean enough = measured >= mostBuilds || firstWillDo && best != null;
        return enough ? Long.MIN_VALUE : limit;
    }
}
