package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntPredicate;
import java.util.function.IntToLongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Candidates of a station with a number the cost of each is not below, least first; equal ones in content order. Only as many are put in order as are
 * asked for: a search looks at the first few. Not for several threads at once.
 */
final class Ranked {
    /** What floors may be out by where the same is worked out from other numbers. */
    private static final long ROUNDING = 1;

    private static final int[] NOTHING = {};

    private final IntPredicate possible;
    private final Later later;
    /** Candidates with their floors that are not in order yet, a heap. */
    private int[] heap;

    private long[] floors;
    private int size;
    /** Those in order. */
    private int[] ordered = NOTHING;

    private long[] orderedFloors = {};
    private int sorted;

    /** By these floors; those at {@link TrainGraph#NONE} are left out. */
    Ranked(long[] floors) {
        this(floors, i -> true);
    }

    /** The same without those that are found impossible when their turn comes. */
    Ranked(long[] floors, IntPredicate possible) {
        this.possible = possible;
        this.later = new Later(null, i -> TrainGraph.NONE);
        int n = 0;
        int[] all = new int[floors.length];
        long[] of = new long[floors.length];
        for (int i = 0; i < floors.length; i++) {
            if (!TrainGraph.none(floors[i])) {
                all[n] = i;
                of[n++] = floors[i];
            }
        }
        this.heap = all;
        this.floors = of;
        this.size = n;
        for (int i = n / 2; i >= 0; i--) {
            sink(i);
        }
    }

    private Ranked(Ranked lower, IntPredicate possible, IntToLongFunction exact) {
        this.possible = possible;
        this.later = new Later(lower, exact);
        this.heap = NOTHING;
        this.floors = new long[0];
    }

    /**
     * By floors that are worked out when their turn comes.
     *
     * @param lower the candidates by numbers the floors are not below, but for rounding
     * @param exact the floor of a candidate
     */
    static Ranked lazily(Ranked lower, IntPredicate possible, IntToLongFunction exact) {
        return new Ranked(lower, possible, exact);
    }

    /** Candidates that were not looked at yet, in the order of some lower floors. */
    private static final class Later {
        private final @Nullable Ranked lower;
        private final IntToLongFunction exact;
        private final BitSet looked = new BitSet();
        private int next;

        Later(@Nullable Ranked lower, IntToLongFunction exact) {
            this.lower = lower;
            this.exact = exact;
        }

        /** A number the one of a rank costs no less than; {@link TrainGraph#NONE} where there is none. */
        long floor(int rank) {
            long floor = lower == null ? TrainGraph.NONE : lower.floor(rank);
            return TrainGraph.none(floor) ? TrainGraph.NONE : floor - ROUNDING;
        }
    }

    /** Takes one of those that come later, by its rank among them; its floor, or {@link TrainGraph#NONE} where it was taken before. */
    private long look(int rank) {
        Ranked lower = later.lower;
        int candidate = lower == null ? -1 : lower.at(rank);
        if (candidate < 0 || later.looked.get(candidate)) {
            return TrainGraph.NONE;
        }
        later.looked.set(candidate);
        long floor = later.exact.applyAsLong(candidate);
        if (!TrainGraph.none(floor)) {
            add(candidate, floor);
        }
        return floor;
    }

    /** True where there is a candidate of a rank, 0 for the least. */
    boolean has(int rank) {
        while (sorted <= rank) {
            long coming = later.floor(later.next);
            if (size > 0 && floors[0] < coming) {
                int top = heap[0];
                long floor = floors[0];
                size--;
                heap[0] = heap[size];
                floors[0] = floors[size];
                sink(0);
                if (possible.test(top)) {
                    order(top, floor);
                }
            } else if (TrainGraph.none(coming)) {
                return false;
            } else {
                look(later.next++);
            }
        }
        return true;
    }

    private void order(int candidate, long floor) {
        if (sorted == ordered.length) {
            ordered = Arrays.copyOf(ordered, Math.max(8, 2 * sorted));
            orderedFloors = Arrays.copyOf(orderedFloors, ordered.length);
        }
        ordered[sorted] = candidate;
        orderedFloors[sorted++] = floor;
    }

    /** Index of the candidate of a rank that is there. */
    int at(int rank) {
        return ordered[rank];
    }

    /** Floor of the candidate of a rank; {@link TrainGraph#NONE} where there is none. */
    long floor(int rank) {
        return has(rank) ? orderedFloors[rank] : TrainGraph.NONE;
    }

    /** Least floor; {@link TrainGraph#NONE} where there is no candidate. */
    long least() {
        return floor(0);
    }

    /** Least floor of the candidates that are among some; {@link TrainGraph#NONE} where there is none. None is put in order for it. */
    long least(IntPredicate among) {
        for (int rank = 0; rank < sorted; rank++) {
            if (among.test(ordered[rank])) {
                return orderedFloors[rank];
            }
        }
        long least = TrainGraph.NONE;
        for (int i = 0; i < size; i++) {
            if (floors[i] < least && among.test(heap[i]) && possible.test(heap[i])) {
                least = floors[i];
            }
        }
        Ranked lower = later.lower;
        for (int rank = later.next; lower != null && later.floor(rank) < least; rank++) {
            int candidate = lower.at(rank);
            if (among.test(candidate)) {
                long floor = look(rank);
                if (floor < least && possible.test(candidate)) {
                    least = floor;
                }
            }
        }
        return least;
    }

    private void add(int candidate, long floor) {
        if (size == heap.length) {
            heap = Arrays.copyOf(heap, Math.max(8, 2 * size));
            floors = Arrays.copyOf(floors, heap.length);
        }
        int i = size++;
        heap[i] = candidate;
        floors[i] = floor;
        while (i > 0 && before(i, (i - 1) / 2)) {
            swap(i, (i - 1) / 2);
            i = (i - 1) / 2;
        }
    }

    private void sink(int from) {
        int i = from;
        while (2 * i + 1 < size) {
            int child = 2 * i + 1;
            if (child + 1 < size && before(child + 1, child)) {
                child++;
            }
            if (!before(child, i)) {
                return;
            }
            swap(i, child);
            i = child;
        }
    }

    private void swap(int a, int b) {
        int candidate = heap[a];
        heap[a] = heap[b];
        heap[b] = candidate;
        long floor = floors[a];
        floors[a] = floors[b];
        floors[b] = floor;
    }

    private boolean before(int a, int b) {
        return floors[a] < floors[b] || floors[a] == floors[b] && heap[a] < heap[b];
    }
}
