package withy.search;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The guide trains of one layout under one set of prices: from each guide the cheapest way on to the tip. */
final class TrainCosts {
    private static final long NONE = TrainGraph.NONE;

    private final TrainGraph graph;
    private final Linear k;
    private final int leastClass;
    private final long[][] wraps;
    private final @Nullable GroupCosts[] trains;
    private final @Nullable BareTrains bare;
    /** What the cheapest train of each group costs, or less while it is not found. */
    private final long[] bests;

    /** What the tip-tops of each group cost at least; empty where weight may be welcome. */
    private final long[][] tipFloors;

    private final boolean[] found;
    private boolean settled;
    private long best;

    /**
     * @param bare what guides and tip-tops cost by themselves, or null where weight may be welcome
     */
    TrainCosts(TrainGraph graph, Linear k, int leastClass, @Nullable BareTrains bare) {
        this.graph = graph;
        this.k = k;
        this.leastClass = leastClass;
        this.bare = bare;
        this.wraps = new long[graph.count()][graph.feet().size()];
        for (long[] at : wraps) {
            Arrays.fill(at, NONE);
        }
        this.trains = new GroupCosts[graph.trains().size()];
        this.bests = new long[trains.length];
        this.found = new boolean[trains.length];
        Arrays.fill(bests, Long.MIN_VALUE);
        this.tipFloors = new long[bare == null ? 0 : trains.length][];
        if (bare != null) {
            long[] dressing = graph.tubes().costs(k)[0];
            for (int t = 0; t < trains.length; t++) {
                tipFloors[t] = graph.tubes().dressed(t, bare.tips(t), dressing);
                bests[t] = TrainGraph.sum(bare.floor(t), TrainGraph.least(tipFloors[t]));
            }
        }
    }

    /** Cost of the cheapest train; {@link TrainGraph#NONE} where there is none. */
    long best() {
        if (!settled) {
            best = bestNow();
            settled = true;
        }
        return best;
    }

    private long bestNow() {
        if (bests.length == 0) {
            return NONE;
        }
        while (true) {
            int cheapest = 0;
            for (int t = 1; t < bests.length; t++) {
                cheapest = bests[t] < bests[cheapest] ? t : cheapest;
            }
            if (found[cheapest]) {
                return bests[cheapest];
            }
            find(cheapest);
        }
    }

    /** Cost of the cheapest train of one group. */
    long best(int train) {
        while (!found[train]) {
            find(train);
        }
        return bests[train];
    }

    /** Comes nearer to the cheapest train of a group: first whatever pieces there are, then, where they do not suffice, with no more than there are. */
    private void find(int t) {
        TrainGraph.Train train = graph.trains().get(t);
        GroupCosts known = trains[t];
        if (known == null && bare != null) {
            GroupCosts quick = GroupCosts.worthIt(train, bare.of(t), tipFloors[t], k, leastClass, wraps);
            found[t] = TrainGraph.none(quick.whateverPieces()) || quick.suffice();
            bests[t] = quick.whateverPieces();
            if (!found[t]) {
                of(t);
            }
        } else {
            bests[t] = of(t).best();
            found[t] = true;
        }
    }

    /** Of one group, worked out when it is first asked for. */
    GroupCosts of(int train) {
        GroupCosts known = trains[train];
        if (known == null) {
            TrainGraph.Train one = graph.trains().get(train);
            known = new GroupCosts(one, k, leastClass, wraps);
            trains[train] = known;
        }
        return known;
    }

    /** One group's under each prices. */
    static GroupCosts[] of(TrainCosts[] costs, int train) {
        GroupCosts[] of = new GroupCosts[costs.length];
        for (int f = 0; f < of.length; f++) {
            of[f] = costs[f].of(train);
        }
        return of;
    }
}
