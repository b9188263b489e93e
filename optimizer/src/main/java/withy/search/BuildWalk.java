package withy.search;

import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * One walk over the builds of a layout that cost less than a limit under some prices: handle by handle, then guide by guide out to the tip. Other
 * prices may be looked at besides: a part of a build is left as soon as it cannot stay below the limit under any one of them.
 */
final class BuildWalk implements Walk {
    /** Steps between two looks for an interruption. */
    private static final long STEPS_BETWEEN_LOOKS = 256;

    private final Aim aim;
    private final List<Test> tests;
    private final TestTrains trains;
    private final Leaf leaf;
    private final long mostSteps;
    private final BooleanSupplier interrupted;
    private boolean anyPieces;
    private long limit;
    private long steps;
    private boolean gaveUp;

    /**
     * @param aim what a build is scored by
     * @param tests prices, the first those last set
     * @param limit the limit of the walk; may fall as builds come
     * @param mostSteps handles and builds met before it is given up
     * @param interrupted asked now and then
     */
    BuildWalk(Aim aim, List<Test> tests, long limit, long mostSteps, BooleanSupplier interrupted, Leaf leaf) {
        this.aim = aim;
        this.tests = tests;
        this.trains = new TestTrains(tests);
        this.leaf = leaf;
        this.mostSteps = mostSteps;
        this.interrupted = interrupted;
        // room is left to subtract costs below nought from it
        this.limit = Math.min(limit, TrainGraph.NONE);
    }

    /** Meets builds that take too many of a guide too, where the costs don't tell. */
    BuildWalk withAnyPieces() {
        anyPieces = true;
        return this;
    }

    @Override
    public long under() {
        return tests.get(0).under(limit);
    }

    @Override
    public boolean whole() {
        return !gaveUp;
    }

    private void step() {
        steps++;
        if (steps > mostSteps || steps % STEPS_BETWEEN_LOOKS == 0 && interrupted.getAsBoolean()) {
            gaveUp = true;
            limit = Long.MIN_VALUE;
        }
    }

    @Override
    public void thread(Dressing with) {
        TrainCosts[] costs = trains.of(with);
        Handle handles = with.stand.priced(tests.get(0).k());
        handles.below(with.stand.dress(with.with), with.leastClass, under() - with.rest(), (handle, cost) -> {
            step();
            trains(with, costs, handle);
            return limit == Long.MIN_VALUE ? Long.MIN_VALUE : under() - with.rest();
        });
    }

    private void trains(Dressing with, TrainCosts[] costs, Chosen handle) {
        Tally tally = handle.tally(with.tally(), with.stand.ground.style);
        long[] base = new long[costs.length];
        for (int f = 0; f < base.length; f++) {
            base[f] = tally.cost(tests.get(f).k());
        }
        List<TrainGraph.Train> trains = with.graph().trains();
        for (int t = 0; t < trains.size(); t++) {
            boolean may = true;
            for (int f = 0; f < costs.length && may; f++) {
                may = tests.get(f).may(base[f], costs[f].best(t), limit);
            }
            if (may) {
                GroupCosts[] of = TrainCosts.of(costs, t);
                new Guides(new Draft(aim, with, handle, trains.get(t), tally), of).from(0, base);
            }
        }
    }

    /** Guide by guide along one handle's train. */
    private final class Guides {
        private final Draft draft;
        private final TrainGraph.Train train;
        private final GroupCosts[] of;
        private final long[][] sums;
        /** Pieces taken so far, by guide of the group. */
        private final int[] used;

        Guides(Draft draft, GroupCosts[] of) {
            this.draft = draft;
            this.train = draft.train;
            this.of = of;
            this.sums = new long[train.at.length][of.length];
            this.used = new int[train.group.guides.length];
        }

        void from(int i, long[] soFar) {
            int before = i == 0 ? -1 : train.at[i - 1][draft.picked[i - 1]];
            int[] standing = train.at[i];
            for (int j = 0; j < standing.length; j++) {
                int guide = standing[j];
                boolean there = used[guide] < train.pieces(guide) || anyPieces && !of[0].counts(guide);
                if (!there) {
                    step();
                }
                used[guide]++;
                if (there && (before < 0 || train.mayFollow(i - 1, before, guide)) && mayStay(i, j, soFar)) {
                    draft.picked[i] = j;
                    if (i + 1 < train.at.length) {
                        from(i + 1, sums[i]);
                    } else {
                        tips(sums[i]);
                    }
                }
                used[guide]--;
            }
        }

        private boolean mayStay(int i, int j, long[] soFar) {
            long[] sum = sums[i];
            if (TrainGraph.none(of[0].cost[i][j])) {
                return false;
            }
            for (int f = 0; f < of.length; f++) {
                sum[f] = soFar[f] + of[f].cost[i][j];
                if (!tests.get(f).may(sum[f], of[f].toGo(i, train.at[i][j], used), limit)) {
                    return false;
                }
            }
            return true;
        }

        private void tips(long[] soFar) {
            int last = train.at.length - 1;
            int before = train.at[last][draft.picked[last]];
            for (int t = 0; t < train.tips.size(); t++) {
                if (train.mayEnd(before, t) && mayEnd(t, soFar)) {
                    draft.tip = train.tips.get(t);
                    step();
                    limit = Math.min(limit, gaveUp ? limit : leaf.build(draft));
                }
            }
        }

        private boolean mayEnd(int tip, long[] soFar) {
            for (int f = 0; f < of.length; f++) {
                if (!tests.get(f).may(soFar[f], of[f].tips[tip], limit)) {
                    return false;
                }
            }
            return true;
        }
    }
}
