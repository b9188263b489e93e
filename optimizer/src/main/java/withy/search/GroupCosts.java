package withy.search;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** The guide trains of one group ({@link GuideGroup}) under one set of prices: what each guide costs, and the cheapest way on from it to the tip. */
final class GroupCosts {
    private static final long NONE = TrainGraph.NONE;

    /** Cost of each guide that may stand at each number; {@link TrainGraph#NONE} where it is of too low a class. */
    final long[][] cost;

    /** Cost of each tip-top; empty where only the cheapest of each ring are known. */
    final long[] tips;

    private final TrainGraph.Train train;
    private final int[][] at;
    private final long[][] onward;
    private final long[] cheapestTips;
    private @Nullable FewPieces few;
    private long best;
    private boolean settled;

    /** Of all guides that may stand at each number. */
    GroupCosts(TrainGraph.Train train, Linear k, int leastClass, long[][] wraps) {
        this(train, train.at, null, train.tips.costs(k, leastClass), null, k, leastClass, wraps);
    }

    /**
     * Of the guides that are worth it.
     *
     * @param bare what they cost but for their wraps
     * @param tipFloors a number each tip-top costs no less than; {@link TrainGraph#NONE} where one is of too low a class
     */
    static GroupCosts worthIt(
            TrainGraph.Train train, long[][] bare, long[] tipFloors, Linear k, int leastClass, long[][] wraps) {
        return new GroupCosts(
                train, train.worthIt(), bare, new long[0], train.tips.cheapest(k, tipFloors), k, leastClass, wraps);
    }

    private GroupCosts(
            TrainGraph.Train train,
            int[][] at,
            long @Nullable [][] bare,
            long[] tips,
            long @Nullable [] cheapestTips,
            Linear k,
            int leastClass,
            long[][] wraps) {
        this.train = train;
        this.at = at;
        int count = at.length;
        this.cost = new long[count][];
        this.onward = new long[count][train.group.rings];
        this.tips = tips;
        long[] least = cheapestTips == null ? train.tips.byRing(tips) : cheapestTips;
        this.cheapestTips = least;
        boolean[][] may = train.tipFollows();
        for (int i = count - 1; i >= 0; i--) {
            onward(may, least, onward[i]);
            cost[i] = costs(i, bare == null ? train.bare(i, at[i], k, leastClass) : bare[i], k, wraps[i]);
            least = through(i);
            may = i > 0 ? train.follows(i) : may;
        }
        this.best = TrainGraph.least(least);
        this.settled = !train.mayRunShort || TrainGraph.none(best);
    }

    /** From each ring the cheapest that may follow: those that follow are tried from the cheapest on. */
    private static void onward(boolean[][] may, long[] least, long[] onward) {
        int[] cheapestFirst = cheapestFirst(least);
        for (int r = 0; r < onward.length; r++) {
            if (r > 0 && may[r] == may[r - 1]) {
                onward[r] = onward[r - 1];
                continue;
            }
            onward[r] = NONE;
            for (int next : cheapestFirst) {
                if (may[r][next]) {
                    onward[r] = least[next];
                    break;
                }
            }
        }
    }

    /** Those of some costs that are any, the least first. */
    private static int[] cheapestFirst(long[] costs) {
        int[] order = new int[costs.length];
        int n = 0;
        for (int i = 0; i < costs.length; i++) {
            if (costs[i] < NONE) {
                int place = n++;
                for (; place > 0 && costs[order[place - 1]] > costs[i]; place--) {
                    order[place] = order[place - 1];
                }
                order[place] = i;
            }
        }
        return Arrays.copyOf(order, n);
    }

    /** A number no train costs less than that takes no more pieces of any guide than there are. */
    long best() {
        settle();
        return best;
    }

    /** The same as long as pieces were not counted. */
    long whateverPieces() {
        return best;
    }

    /** True where there are pieces enough of each guide for the cheapest train. */
    boolean suffice() {
        int[] left = train.group.pieces.clone();
        long rest = best;
        int before = -1;
        for (int i = 0; i < at.length && train.mayRunShort; i++) {
            int taken = next(i, before, rest);
            before = at[i][taken];
            rest -= cost[i][taken];
            if (--left[before] < 0) {
                return false;
            }
        }
        return true;
    }

    /** The place among those at a number of the guide with which the way on from the one before costs so much. */
    private int next(int i, int before, long rest) {
        for (int j = 0; j < at[i].length; j++) {
            int guide = at[i][j];
            boolean may = !TrainGraph.none(cost[i][j]) && (before < 0 || train.mayFollow(i - 1, before, guide));
            if (may && cost[i][j] + onward[i][train.ring(guide)] == rest) {
                return j;
            }
        }
        throw new IllegalStateException("no guide leads on from number " + i);
    }

    /**
     * A number no way on to the tip costs less than from a guide at a number (counted from 0).
     *
     * @param used pieces taken so far of each guide of the group, this one among them
     */
    long toGo(int i, int guide, int[] used) {
        FewPieces counted = few;
        return counted == null ? onward[i][train.ring(guide)] : counted.toGo(i, guide, used);
    }

    /** True where a build that takes more pieces of a guide than there are is left out by what it costs to go on. */
    boolean counts(int guide) {
        FewPieces counted = few;
        return counted != null && counted.counts(guide);
    }

    /** Counts the pieces of guides of which the cheapest train would take too many, as far as that can be done at once. */
    private void settle() {
        int[] counted =
                settled ? new int[0] : overdrawn(new FewPieces(train, cost, cheapestTips, new int[0]), new int[0]);
        settled = true;
        for (int[] before = new int[0]; counted.length > before.length; ) {
            FewPieces now = new FewPieces(train, cost, cheapestTips, counted);
            few = now;
            best = now.best();
            before = counted;
            counted = overdrawn(now, counted);
        }
    }

    /** What is counted, and more guides of which too many are taken. */
    private int[] overdrawn(FewPieces cheapest, int[] counted) {
        int[] used = cheapest.used();
        int[] more = Arrays.copyOf(counted, used.length);
        int n = counted.length;
        for (int g = 0; g < used.length; g++) {
            if (used[g] > train.pieces(g)) {
                more[n++] = g;
            }
        }
        return FewPieces.countable(train, Arrays.copyOf(more, n));
    }

    /** Cheapest guide of each ring at a number with the way on. */
    private long[] through(int i) {
        long[] through = new long[train.group.rings];
        Arrays.fill(through, NONE);
        for (int j = 0; j < cost[i].length; j++) {
            int ring = train.ring(at[i][j]);
            long on = onward[i][ring];
            if (!TrainGraph.none(on) && !TrainGraph.none(cost[i][j]) && cost[i][j] + on < through[ring]) {
                through[ring] = cost[i][j] + on;
            }
        }
        return through;
    }

    private long[] costs(int i, long[] bare, Linear k, long[] wraps) {
        long[] costs = new long[bare.length];
        for (int j = 0; j < costs.length; j++) {
            costs[j] = bare[j];
            if (!TrainGraph.none(bare[j])) {
                int shape = train.group.footShape[at[i][j]];
                if (wraps[shape] == NONE) {
                    wraps[shape] = train.wraps(i, at[i][j], k);
                }
                costs[j] += wraps[shape];
            }
        }
        return costs;
    }
}
