package withy.search;

import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Watch;
import withy.rod.Balance;
import withy.rod.BlankShape;
import withy.rod.Build;

/**
 * Works one node to the end: finds multipliers that make its linear bound tight (one at a time, by bracketing), then walks the builds whose
 * linear cost is still below the best score known. The bound holds whatever the multipliers are; they only decide how long the walk is.
 */
final class Dual {
    /** Rounds of finding multipliers. */
    private static final int ROUNDS = 16;

    /** Builds measured in one walk before it is given up (and said so). */
    private static final int MOST_BUILDS = 20_000;

    private final Task task;
    private final Completion completion;
    private final BlankShape shape;
    private final long margin;
    private final Watch watch;
    private final int mostBuilds;
    private long refused;
    private Task.@Nullable Judged best;
    private long limit;
    private long boundSoFar = Long.MIN_VALUE;
    private Prices pricesSoFar;

    Dual(Task task, Completion completion, BlankShape shape, int leastClass, Watch watch) {
        this(task, completion, shape, leastClass, watch, MOST_BUILDS);
    }

    /** With another number of builds that may be measured in one walk. */
    Dual(Task task, Completion completion, BlankShape shape, int leastClass, Watch watch, int mostBuilds) {
        this.task = task;
        this.completion = completion;
        this.shape = shape;
        this.margin = leastClass - (long) task.brief.durabilityClass();
        this.watch = watch;
        this.mostBuilds = mostBuilds;
        this.pricesSoFar = Prices.start(task.scoring);
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

    Outcome solve(Prices start, long known) {
        limit = known;
        Brackets brackets = new Brackets(task, start);
        Prices prices = start;
        pricesSoFar = start;
        boolean checkedFeasible = false;
        for (int round = 0; round < ROUNDS; round++) {
            long bound = completion.price(prices.linear(task, margin), limit);
            if (bound > boundSoFar) {
                boundSoFar = bound;
                pricesSoFar = prices;
            }
            if (bound >= limit || TrainGraph.none(bound)) {
                return new Outcome(best, bound, pricesSoFar, true);
            }
            Task.Measured cheapest = cheapest(bound);
            if (cheapest == null) {
                break;
            }
            take(cheapest);
            if (cheapest.legal() && cheapest.score() <= bound) {
                return new Outcome(best, bound, pricesSoFar, true);
            }
            if (!checkedFeasible && !task.bounds.keeps(cheapest.vector())) {
                checkedFeasible = true;
                if (!feasible(cheapest.vector())) {
                    return new Outcome(best, Long.MAX_VALUE, pricesSoFar, true);
                }
            }
            Prices next = brackets.next(prices, cheapest);
            if (next == null) {
                break;
            }
            prices = next;
        }
        return walk();
    }

    /** False where some sum cannot be brought under its ceiling here whatever is chosen. */
    private boolean feasible(ObjectiveVector v) {
        for (Prices.Kind kind : Prices.Kind.values()) {
            if (Prices.exceeds(v, task.bounds, kind)
                    && completion.price(Prices.only(kind), Long.MAX_VALUE) > Prices.ceiling(task.bounds, kind)) {
                return false;
            }
        }
        long ceiling = task.bounds.outsideMgMm();
        return v.outsideMgMm() <= ceiling || leastAhead() <= ceiling && leastBehind() <= ceiling;
    }

    /** Least moment ahead of the zone's far edge that any build here has; negative where some hang behind it. */
    private long leastAhead() {
        Balance reel = Balance.of(task.brief, 0, 0);
        Linear ahead = new Linear(-reel.farMm(), 1, 0, 0, 0, 0, 0, reel.aheadMgMm());
        return completion.price(ahead, Long.MAX_VALUE);
    }

    /** Least moment behind the zone's near edge. */
    private long leastBehind() {
        Balance reel = Balance.of(task.brief, 0, 0);
        Linear behind = new Linear(reel.nearMm(), -1, 0, 0, 0, 0, 0, reel.behindMgMm());
        return completion.price(behind, Long.MAX_VALUE);
    }

    private Task.@Nullable Measured cheapest(long bound) {
        Task.Measured[] first = new Task.Measured[1];
        completion.builds(bound + 1, (build, cost) -> {
            if (first[0] == null) {
                first[0] = task.measure(build, shape);
            }
            return Long.MIN_VALUE;
        });
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

    private Outcome walk() {
        completion.price(pricesSoFar.linear(task, margin), limit);
        int[] count = {0};
        boolean[] gaveUp = {false};
        completion.builds(limit, (Build build, long cost) -> {
            if (++count[0] > mostBuilds || watch.interrupted().getAsBoolean()) {
                gaveUp[0] = true;
                return Long.MIN_VALUE;
            }
            take(task.measure(build, shape));
            return limit;
        });
        return new Outcome(best, gaveUp[0] ? boundSoFar : limit, pricesSoFar, !gaveUp[0]);
    }
}
