package withy.search;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a handle must cost less than in each of some tests, beside each train that there is: what one train leaves room for in one test and another train in
 * another goes with neither.
 */
final class TrainRooms {
    private final List<long[]> rooms;

    TrainRooms(List<long[]> rooms) {
        this.rooms = rooms;
    }

    /**
     * The rooms the least of every train leaves.
     *
     * @param costs the trains under each test
     * @param limit the limit of the walk
     */
    static TrainRooms of(Dressing with, List<Walk.Test> tests, TrainCosts[] costs, long limit) {
        List<long[]> rooms = new ArrayList<>();
        for (int train = 0; train < with.graph().trains().size(); train++) {
            long[] room = room(tests, costs, limit, train);
            if (room != null) {
                rooms.add(room);
            }
        }
        return new TrainRooms(rooms);
    }

    private static long @Nullable [] room(List<Walk.Test> tests, TrainCosts[] costs, long limit, int train) {
        long[] room = new long[costs.length];
        for (int f = 0; f < room.length; f++) {
            long least = costs[f].best(train);
            if (TrainGraph.none(least)) {
                return null;
            }
            long most = tests.get(f).under(limit);
            room[f] = Math.max(-TrainGraph.NONE, Math.min(most, TrainGraph.NONE)) - least;
        }
        return room;
    }

    /** What is left beside what takes at least so much of each test. */
    TrainRooms beside(long[] least) {
        List<long[]> left = new ArrayList<>();
        for (long[] room : rooms) {
            long[] less = room.clone();
            for (int f = 0; f < less.length; f++) {
                less[f] -= least[f];
            }
            left.add(less);
        }
        return new TrainRooms(left);
    }

    /** True where some train leaves room for these sums in every test. */
    boolean hold(long[] sums) {
        for (long[] room : rooms) {
            if (below(sums, room)) {
                return true;
            }
        }
        return false;
    }

    private static boolean below(long[] sums, long[] room) {
        for (int f = 0; f < room.length; f++) {
            if (sums[f] >= room[f]) {
                return false;
            }
        }
        return true;
    }

    /** The sums of two things together where there is room for them, or null. */
    long @Nullable [] together(long[] one, long[] other) {
        for (long[] room : rooms) {
            if (below(one, other, room)) {
                long[] sums = new long[room.length];
                for (int f = 0; f < sums.length; f++) {
                    sums[f] = one[f] + other[f];
                }
                return sums;
            }
        }
        return null;
    }

    private static boolean below(long[] one, long[] other, long[] room) {
        for (int f = 0; f < room.length; f++) {
            if (one[f] + other[f] >= room[f]) {
                return false;
            }
        }
        return true;
    }

    /** Most room there is in a test; as little as can be where there is no train. */
    long most(int test) {
        long most = -TrainGraph.NONE;
        for (long[] room : rooms) {
            most = Math.max(most, room[test]);
        }
        return most;
    }

    /** True where whatever fits into others fits into these. */
    boolean cover(TrainRooms others) {
        for (long[] other : others.rooms) {
            boolean covered = false;
            for (long[] room : rooms) {
                covered |= covers(room, other);
            }
            if (!covered) {
                return false;
            }
        }
        return true;
    }

    private static boolean covers(long[] room, long[] other) {
        for (int f = 0; f < room.length; f++) {
            if (room[f] < other[f]) {
                return false;
            }
        }
        return true;
    }
}
