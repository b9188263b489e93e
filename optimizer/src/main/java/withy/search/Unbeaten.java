package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Things of which only those are kept that no other beats: is at most as large in every sum that decides.
 *
 * @param <T> the things
 */
final class Unbeaten<T> {
    /** Things a new one is held against, those that beat most first. */
    private static final int MOST_HELD_AGAINST = 400;

    private final boolean[] decides;
    private final List<Of<T>> kept = new ArrayList<>();
    private final List<Of<T>> strong = new ArrayList<>();

    /**
     * @param decides which of the sums decide
     */
    Unbeaten(boolean[] decides) {
        this.decides = decides;
    }

    /**
     * A thing with its sums.
     *
     * @param <T> the thing
     */
    record Of<T>(T thing, long[] sums) {}

    void add(T thing, long[] sums) {
        add(new Of<>(thing, sums));
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
        Unbeaten<T> again = new Unbeaten<>(decides);
        kept.forEach(again::add);
        return again.kept;
    }

    private boolean beats(Of<T> one, Of<T> other) {
        for (int f = 0; f < decides.length; f++) {
            if (decides[f] && one.sums()[f] > other.sums()[f]) {
                return false;
            }
        }
        return true;
    }
}
