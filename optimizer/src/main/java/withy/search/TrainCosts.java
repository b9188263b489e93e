package withy.search;

import java.util.Arrays;
import java.util.Objects;
import withy.catalog.TipTop;

/** The guide trains of one layout under one set of prices: from each guide the cheapest way on to the tip. */
final class TrainCosts {
    private static final long NONE = TrainGraph.NONE;

    private final OfTrain[] trains;
    private final long best;

    TrainCosts(TrainGraph graph, Linear k, int leastClass) {
        long[][] wraps = new long[graph.count()][graph.feet().size()];
        for (long[] at : wraps) {
            Arrays.fill(at, NONE);
        }
        this.trains = new OfTrain[graph.trains().size()];
        long least = NONE;
        for (int t = 0; t < trains.length; t++) {
            trains[t] = new OfTrain(graph.trains().get(t), k, leastClass, wraps);
            least = Math.min(least, trains[t].best);
        }
        this.best = least;
    }

    /** Cost of the cheapest train; {@link TrainGraph#NONE} where there is none. */
    long best() {
        return best;
    }

    /** Of one group. */
    OfTrain of(int train) {
        return trains[train];
    }

    /** One group's under each prices. */
    static OfTrain[] of(TrainCosts[] costs, int train) {
        OfTrain[] of = new OfTrain[costs.length];
        for (int f = 0; f < of.length; f++) {
            of[f] = costs[f].of(train);
        }
        return of;
    }

    /** Costs of one group's train. */
    static final class OfTrain {
        /** Cost of each guide that may stand at each number; {@link TrainGraph#NONE} where it is of too low a class. */
        final long[][] cost;

        /** Cost of each tip-top. */
        final long[] tips;

        private final TrainGraph.Train train;
        private final long[][] onward;
        private final long best;

        OfTrain(TrainGraph.Train train, Linear k, int leastClass, long[][] wraps) {
            this.train = train;
            int count = train.at.length;
            this.cost = new long[count][];
            this.onward = new long[count][train.group.rings];
            this.tips = new long[train.tips.size()];
            long[] least = new long[train.group.tipRings];
            Arrays.fill(least, NONE);
            for (int t = 0; t < tips.length; t++) {
                Option<TipTop> tip = train.tips.get(t);
                boolean strong = Objects.requireNonNull(tip.part).facts().durabilityClass() >= leastClass;
                tips[t] = strong ? tip.cost(k) : NONE;
                least[train.tipRing(t)] = Math.min(least[train.tipRing(t)], tips[t]);
            }
            boolean[][] may = train.tipFollows();
            for (int i = count - 1; i >= 0; i--) {
                for (int r = 0; r < train.group.rings; r++) {
                    onward[i][r] = least(may[r], least);
                }
                cost[i] = costs(i, k, leastClass, wraps[i]);
                least = through(i);
                may = i > 0 ? train.follows(i) : may;
            }
            this.best = TrainGraph.least(least);
        }

        /** Cost of the cheapest train. */
        long best() {
            return best;
        }

        /** Cost of the cheapest way on to the tip from a guide at a number (counted from 0). */
        long toGo(int i, int guide) {
            return onward[i][train.ring(guide)];
        }

        private static long least(boolean[] may, long[] of) {
            long least = NONE;
            for (int r = 0; r < of.length; r++) {
                if (may[r] && of[r] < least) {
                    least = of[r];
                }
            }
            return least;
        }

        /** Cheapest guide of each ring at a number with the way on. */
        private long[] through(int i) {
            long[] through = new long[train.group.rings];
            Arrays.fill(through, NONE);
            for (int j = 0; j < cost[i].length; j++) {
                int ring = train.ring(train.at[i][j]);
                long on = onward[i][ring];
                if (!TrainGraph.none(on) && !TrainGraph.none(cost[i][j]) && cost[i][j] + on < through[ring]) {
                    through[ring] = cost[i][j] + on;
                }
            }
            return through;
        }

        private long[] costs(int i, Linear k, int leastClass, long[] wraps) {
            long[] costs = new long[train.at[i].length];
            for (int j = 0; j < costs.length; j++) {
                int g = train.at[i][j];
                if (train.group.durabilityClass[g] < leastClass) {
                    costs[j] = NONE;
                    continue;
                }
                int shape = train.group.footShape[g];
                if (wraps[shape] == NONE) {
                    wraps[shape] = train.wraps(i, g, k);
                }
                costs[j] = train.bare(i, g, k) + wraps[shape];
            }
            return costs;
        }
    }
}
