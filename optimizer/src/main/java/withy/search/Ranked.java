package withy.search;

import java.util.Arrays;
import java.util.function.IntPredicate;

/**
 * Candidates of a station with a number the cost of each is not below, least first; equal ones in content order. Only as many are put in order as are
 * asked for: a search looks at the first few.
 */
final class Ranked {
    private final long[] floors;
    private final int[] heap;
    private final IntPredicate possible;
    private int size;
    private int[] ordered = new int[0];
    private int sorted;

    /** By these floors; those at {@link TrainGraph#NONE} are left out. */
    Ranked(long[] floors) {
        this(floors, i -> true);
    }

    /** The same without those that are found impossible when their turn comes. */
    Ranked(long[] floors, IntPredicate possible) {
        this.floors = floors;
        this.possible = possible;
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

    /** True where there is a candidate of a rank, 0 for the least. */
    boolean has(int rank) {
        while (sorted <= rank && size > 0) {
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
