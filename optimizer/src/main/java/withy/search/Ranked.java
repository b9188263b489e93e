package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.function.IntPredicate;
import java.util.function.IntToLongFunction;
import org.jspecify.annotations.Nullable;

/**
 * Candidates of a station with a number the cost of each is not below, least first; equal ones in content order. Only as many are put in order as are
 * asked for: a search looks at the first few.
 */
final class Ranked {
    /** What floors may be out by where the same is worked out from other numbers. */
    private static final long ROUNDING = 1;

    private final long[] floors;
    private final int[] heap;
    private final IntPredicate possible;
    private final @Nullable IntToLongFunction exact;
    private final BitSet known = new BitSet();
    private int size;
    private int[] ordered = new int[0];
    private int sorted;

    /** By these floors; those at {@link TrainGraph#NONE} are left out. */
    Ranked(long[] floors) {
        this(floors, i -> true);
    }

    /** The same without those that are found impossible when their turn comes. */
    Ranked(long[] floors, IntPredicate possible) {
        this(floors, possible, null);
    }

    /**
     * By floors that are worked out when their turn comes.
     *
     * @param lower numbers they are not below, but for rounding
     * @param exact the floor of a candidate
     */
    static Ranked lazily(long[] lower, IntPredicate possible, IntToLongFunction exact) {
        long[] rounded = lower.clone();
        for (int i = 0; i < rounded.length; i++) {
            rounded[i] -= ROUNDING;
        }
        return new Ranked(rounded, possible, exact);
    }

    /** The same by floors that are not below those of these. */
    static Ranked lazily(Ranked lower, IntPredicate possible, IntToLongFunction exact) {
        return lazily(lower.floors, possible, exact);
    }

    private Ranked(long[] floors, IntPredicate possible, @Nullable IntToLongFunction exact) {
        this.floors = floors;
        this.possible = possible;
        this.exact = exact;
        int n = 0;
        int[] all = new int[floors.length];
        for (int i = 0; i < floors.length; i++) {
            if (!TrainGraph.none(floors[i])) {
                all[n++] = i;
            }
        }
        this.heap = Arrays.copyOf(all, n);
        this.size = n;
        for (int i = n / 2; i >= 0; i--) {
            sink(i, n);
        }
    }

    /** Works out the floor of what stands at a place of the heap; false where that was known. */
    private boolean lookedAt(int place) {
        int candidate = heap[place];
        if (exact == null || known.get(candidate)) {
            return false;
        }
        known.set(candidate);
        floors[candidate] = exact.applyAsLong(candidate);
        sink(place, size);
        return true;
    }

    /** True where there is a candidate of a rank, 0 for the least. */
    boolean has(int rank) {
        while (sorted <= rank && size > 0 && !TrainGraph.none(floors[heap[0]])) {
            if (lookedAt(0)) {
                continue;
            }
            int top = heap[0];
            size--;
            heap[0] = heap[size];
            sink(0, size);
            if (possible.test(top)) {
                order(top);
            }
        }
        return rank < sorted;
    }

    private void order(int candidate) {
        if (sorted == ordered.length) {
            ordered = Arrays.copyOf(ordered, Math.max(8, 2 * sorted));
        }
        ordered[sorted++] = candidate;
    }

    /** Index of the candidate of a rank that is there. */
    int at(int rank) {
        return ordered[rank];
    }

    /** Floor of the candidate of a rank; {@link TrainGraph#NONE} where there is none. */
    long floor(int rank) {
        return has(rank) ? floors[ordered[rank]] : TrainGraph.NONE;
    }

    /** Least floor; {@link TrainGraph#NONE} where there is no candidate. */
    long least() {
        return floor(0);
    }

    /** Least floor of the candidates that are among some; {@link TrainGraph#NONE} where there is none. None is put in order for it. */
    long least(IntPredicate among) {
        for (int rank = 0; rank < sorted; rank++) {
            if (among.test(ordered[rank])) {
                return floors[ordered[rank]];
            }
        }
        long least = TrainGraph.NONE;
        for (int i = 0; i < size; i++) {
            // what is looked at sinks, and another stands in its place
            while (floors[heap[i]] < least && among.test(heap[i]) && lookedAt(i)) {}
            int candidate = heap[i];
            if (floors[candidate] < least && among.test(candidate) && possible.test(candidate)) {
                least = floors[candidate];
            }
        }
        return least;
    }

    private void sink(int from, int size) {
        int i = from;
        while (2 * i + 1 < size) {
            int child = 2 * i + 1;
            if (child + 1 < size && before(heap[child + 1], heap[child])) {
                child++;
            }
            if (!before(heap[child], heap[i])) {
                return;
            }
            int swap = heap[i];
            heap[i] = heap[child];
            heap[child] = swap;
            i = child;
        }
    }

    private boolean before(int a, int b) {
        return floors[a] < floors[b] || floors[a] == floors[b] && a < b;
    }
}
