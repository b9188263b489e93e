package withy.search;

import java.util.Arrays;

/**
 * The cheapest way on to the tip along one group's train with no more pieces of some guides than there are: the dynamic programme of
 * {@link GroupCosts} with the pieces left of some guides as part of where it stands. Other guides may be taken more often than there are pieces,
 * so that no real train is cheaper.
 */
final class FewPieces {
    /** Ways in which pieces of the counted guides may be left. */
    private static final int MOST_STATES = 512;

    private static final long NONE = TrainGraph.NONE;

    private final TrainGraph.Train train;
    private final long[][] cost;
    private final int[] counted;
    private final int[] stride;
    private final int states;
    /** Cost of the way on after a number, by ring of the guide there and pieces left after it. */
    private final long[][][] onward;

    private final long best;

    /**
     * @param cost cost of each guide at each number
     * @param tips cost of the cheapest tip-top of each ring
     * @param counted guides whose pieces are counted
     */
    FewPieces(TrainGraph.Train train, long[][] cost, long[] tips, int[] counted) {
        this.train = train;
        this.cost = cost;
        this.counted = counted.clone();
        this.stride = new int[counted.length];
        int size = 1;
        for (int c = 0; c < counted.length; c++) {
            stride[c] = size;
            size *= train.pieces(counted[c]) + 1;
        }
        this.states = size;
        int rings = train.group.rings;
        this.onward = new long[cost.length][rings][];
        boolean[][] may = train.tipFollows();
        for (int r = 0; r < rings; r++) {
            long[] all = new long[states];
            Arrays.fill(all, TrainGraph.least(may[r], tips));
            onward[cost.length - 1][r] = all;
        }
        long[][] through = through(cost.length - 1);
        for (int i = cost.length - 2; i >= 0; i--) {
            may = train.follows(i + 1);
            for (int r = 0; r < rings; r++) {
                onward[i][r] = least(may[r], through);
            }
            through = through(i);
        }
        long least = NONE;
        for (long[] ofRing : through) {
            least = Math.min(least, ofRing[states - 1]);
        }
        this.best = least;
    }

    /** Of these guides those that can be counted together, the first first. */
    static int[] countable(TrainGraph.Train train, int[] guides) {
        int n = 0;
        for (int states = 1; n < guides.length; n++) {
            states *= train.pieces(guides[n]) + 1;
            if (states > MOST_STATES) {
                break;
            }
        }
        return Arrays.copyOf(guides, n);
    }

    /** Cost of the cheapest train. */
    long best() {
        return best;
    }

    /**
     * Cost of the cheapest way on from a guide at a number (counted from 0).
     *
     * @param used pieces taken so far of each guide of the group, this one among them
     */
    long toGo(int i, int guide, int[] used) {
        int state = 0;
        for (int c = 0; c < counted.length; c++) {
            state += stride[c] * (train.pieces(counted[c]) - used[counted[c]]);
        }
        return onward[i][train.ring(guide)][state];
    }

    /** Pieces of each guide in the cheapest train. */
    int[] used() {
        int[] used = new int[train.group.guides.length];
        int before = -1;
        long left = best;
        for (int i = 0; i < cost.length && !TrainGraph.none(best); i++) {
            int taken = -1;
            for (int j = 0; j < cost[i].length && taken < 0; j++) {
                int g = train.at[i][j];
                boolean may = (before < 0 || train.mayFollow(i - 1, before, g)) && !TrainGraph.none(cost[i][j]);
                used[g]++;
                if (may && keeps(used) && cost[i][j] + toGo(i, g, used) == left) {
                    taken = j;
                } else {
                    used[g]--;
                }
            }
            before = train.at[i][taken];
            left -= cost[i][taken];
        }
        return used;
    }

    /** True where pieces of a guide are counted. */
    boolean counts(int guide) {
        return indexOf(guide) >= 0;
    }

    private boolean keeps(int[] used) {
        for (int g : counted) {
            if (used[g] > train.pieces(g)) {
                return false;
            }
        }
        return true;
    }

    private long[] least(boolean[] may, long[][] of) {
        long[] least = new long[states];
        Arrays.fill(least, NONE);
        for (int r = 0; r < of.length; r++) {
            for (int s = 0; may[r] && s < states; s++) {
                least[s] = Math.min(least[s], of[r][s]);
            }
        }
        return least;
    }

    /** Cheapest guide of each ring at a number with the way on, by the pieces left before it. */
    private long[][] through(int i) {
        long[][] through = new long[train.group.rings][states];
        for (long[] ofRing : through) {
            Arrays.fill(ofRing, NONE);
        }
        for (int j = 0; j < cost[i].length; j++) {
            if (!TrainGraph.none(cost[i][j])) {
                int g = train.at[i][j];
                take(cost[i][j], indexOf(g), onward[i][train.ring(g)], through[train.ring(g)]);
            }
        }
        return through;
    }

    private int indexOf(int guide) {
        for (int c = 0; c < counted.length; c++) {
            if (counted[c] == guide) {
                return c;
            }
        }
        return -1;
    }

    private void take(long cost, int c, long[] on, long[] through) {
        for (int s = 0; s < states; s++) {
            boolean there = c < 0 || s / stride[c] % (train.pieces(counted[c]) + 1) > 0;
            long rest = there ? on[c < 0 ? s : s - stride[c]] : NONE;
            if (!TrainGraph.none(rest)) {
                through[s] = Math.min(through[s], cost + rest);
            }
        }
    }
}
