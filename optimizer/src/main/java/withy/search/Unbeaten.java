package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/**
 * Things of which only those are kept that no other beats: is at most as large in every sum that decides.
 *
 * @param <T> the things
 */
final class Unbeaten<T> {
    /** Things a new one is held against, those that beat most first. */
    private static final int MOST_HELD_AGAINST = 400;

    /** With so many things those that are beaten are sifted out. */
    private static final int SIFTED_FROM = 50_000;

    /** With so many sums that decide, which are beaten is found in one sweep. */
    private static final int SWEPT_BY = 3;

    private final int[] deciding;
    private List<Of<T>> kept = new ArrayList<>();
    private final List<Of<T>> strong = new ArrayList<>();
    private int siftAt = SIFTED_FROM;

    /**
     * @param decides which of the sums decide
     */
    Unbeaten(boolean[] decides) {
        this(IntStream.range(0, decides.length).filter(f -> decides[f]).toArray());
    }

    private Unbeaten(int[] deciding) {
        this.deciding = deciding;
    }

    /**
     * A thing with its sums.
     *
     * @param <T> the thing
     */
    record Of<T>(T thing, long[] sums) {}

    void add(T thing, long[] sums) {
        add(new Of<>(thing, sums));
        if (kept.size() >= siftAt) {
            kept = all();
            siftAt = Math.max(SIFTED_FROM, 2 * kept.size());
        }
    }

    /** How many are kept so far, beaten ones that were not found yet among them. */
    int size() {
        return kept.size();
    }

    /** One of those kept. */
    T any() {
        return kept.get(0).thing();
    }

    private void add(Of<T> one) {
        for (int i = 0; i < strong.size(); i++) {
            if (beats(strong.get(i), one)) {
                if (i > 0) {
                    strong.set(i, strong.set(i - 1, strong.get(i)));
                }
                return;
            }
        }
        kept.add(one);
        if (strong.size() < MOST_HELD_AGAINST) {
            strong.add(one);
        } else {
            strong.set(strong.size() - 1, one);
        }
    }

    /** Those kept, by their first sum; of equal ones the one that came first. */
    List<Of<T>> all() {
        kept.sort(Comparator.comparingLong(one -> one.sums()[0]));
        if (deciding.length == SWEPT_BY) {
            return swept();
        }
        Unbeaten<T> again = new Unbeaten<>(deciding);
        kept.forEach(again::add);
        return again.kept;
    }

    /** By rising first deciding sum: what is beaten then is so in the other two by one that came before, and of these only steps that fall need be kept. */
    private List<Of<T>> swept() {
        Integer[] order = IntStream.range(0, kept.size()).boxed().toArray(Integer[]::new);
        Arrays.sort(
                order,
                Comparator.<Integer>comparingLong(i -> sum(i, 0))
                        .thenComparingLong(i -> sum(i, 1))
                        .thenComparingLong(i -> sum(i, 2)));
        TreeMap<Long, Long> steps = new TreeMap<>();
        boolean[] beaten = new boolean[kept.size()];
        for (int i : order) {
            long third = sum(i, 2);
            Map.Entry<Long, Long> below = steps.floorEntry(sum(i, 1));
            beaten[i] = below != null && below.getValue() <= third;
            if (!beaten[i]) {
                steps.put(sum(i, 1), third);
                Map.Entry<Long, Long> next = steps.higherEntry(sum(i, 1));
                while (next != null && next.getValue() >= third) {
                    steps.remove(next.getKey());
                    next = steps.higherEntry(sum(i, 1));
                }
            }
        }
        List<Of<T>> left = new ArrayList<>();
        for (int i = 0; i < beaten.length; i++) {
            if (!beaten[i]) {
                left.add(kept.get(i));
            }
        }
        return left;
    }

    private long sum(int i, int which) {
        return kept.get(i).sums()[deciding[which]];
    }

    private boolean beats(Of<T> one, Of<T> other) {
        for (int f : deciding) {
            if (one.sums()[f] > other.sums()[f]) {
                return false;
            }
        }
        return true;
    }
}
