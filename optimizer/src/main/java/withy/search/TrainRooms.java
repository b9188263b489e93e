package withy.search;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a handle must cost less than in each of some tests, beside one and the same train: what one train leaves room for in one test and another train in
 * another goes with neither. What trains cost is asked no further than it takes to tell.
 */
final class TrainRooms {
    private final Trains trains;
    private final long[] most;
    private final long[] taken;

    /**
     * @param trains what they cost
     * @param most what handle and train must cost less than, by test
     */
    TrainRooms(Trains trains, long[] most) {
        this(trains, most, new long[most.length]);
    }

    private TrainRooms(Trains trains, long[] most, long[] taken) {
        this.trains = trains;
        this.most = most;
        this.taken = taken;
    }

    /** What trains cost at least in each test; {@link TrainGraph#none} where there is none. */
    interface Trains {
        /** How many kinds of train there are. */
        int count();

        /** Of the cheapest. */
        long least(int test);

        /** Of the cheapest of one kind. */
        long least(int test, int train);
    }

    /**
     * The rooms beside the trains of a layout.
     *
     * @param costs the trains under each test
     * @param limit the limit of the walk
     */
    static TrainRooms of(Dressing with, List<Walk.Test> tests, TrainCosts[] costs, long limit) {
        int count = with.graph().trains().size();
        Trains trains = new Trains() {
            @Override
            public int count() {
                return count;
            }

            @Override
            public long least(int test) {
                return costs[test].best();
            }

            @Override
            public long least(int test, int train) {
                return costs[test].best(train);
            }
        };
        long[] most = new long[costs.length];
        for (int f = 0; f < most.length; f++) {
            most[f] = Math.max(-TrainGraph.NONE, Math.min(tests.get(f).under(limit), TrainGraph.NONE));
        }
        return new TrainRooms(trains, most);
    }

    /** What is left beside what takes at least so much in each test. */
    TrainRooms beside(long[] least) {
        long[] more = taken.clone();
        for (int f = 0; f < more.length; f++) {
            more[f] += least[f];
        }
        return new TrainRooms(trains, most, more);
    }

    /** The same beside something of which nothing is known. */
    TrainRooms unknown() {
        long[] nothing = new long[most.length];
        Arrays.fill(nothing, Handle.NOTHING_MORE);
        return new TrainRooms(trains, most, nothing);
    }

    /** Room in each test beside the train that is the cheapest there. */
    long[] widest() {
        long[] room = new long[most.length];
        Arrays.setAll(room, this::widest);
        return room;
    }

    private long widest(int test) {
        long train = trains.least(test);
        return TrainGraph.none(train) ? Long.MIN_VALUE : most[test] - taken[test] - train;
    }

    /** True where some train leaves room for these sums in every test. */
    boolean hold(long[] sums) {
        return hold(sums, null);
    }

    /** The sums of two things together where there is room for them, or null. */
    long @Nullable [] together(long[] one, long[] other) {
        if (!hold(one, other)) {
            return null;
        }
        long[] sums = one.clone();
        for (int f = 0; f < sums.length; f++) {
            sums[f] += other[f];
        }
        return sums;
    }

    private boolean hold(long[] one, long @Nullable [] other) {
        for (int f = 0; f < most.length; f++) {
            if (sum(one, other, f) >= widest(f)) {
                return false;
            }
        }
        for (int train = 0; train < trains.count(); train++) {
            if (beside(train, one, other)) {
                return true;
            }
        }
        return false;
    }

    private boolean beside(int train, long[] one, long @Nullable [] other) {
        for (int f = 0; f < most.length; f++) {
            long least = trains.least(f, train);
            if (TrainGraph.none(least) || sum(one, other, f) >= most[f] - taken[f] - least) {
                return false;
            }
        }
        return true;
    }

    private static long sum(long[] one, long @Nullable [] other, int test) {
        return other == null ? one[test] : one[test] + other[test];
    }
}
