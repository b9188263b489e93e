package withy.search;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.LongUnaryOperator;

/** What the handles of one stand cost at least whatever the thread of their ends, as far as it was asked about. */
final class Undressed {
    /** Prices kept. */
    private static final int MOST = 16;

    private final Map<AtClass, Least> least = new Latest<>();
    /** Of handles met what they cost at least. */
    private final Map<AtClass, Long> met = new Latest<>();

    /** What was found below a limit: the least, or some number from the limit on. */
    private record Least(long cost, long under) {
        boolean tells(long limit) {
            return cost < under || under >= limit;
        }
    }

    private static final class Latest<V> extends LinkedHashMap<AtClass, V> {
        private static final long serialVersionUID = 1;

        Latest() {
            super(8, 0.75f, true);
        }

        @Override
        protected boolean removeEldestEntry(Map.Entry<AtClass, V> eldest) {
            return size() > MOST;
        }
    }

    /**
     * The least below a limit, or some number from the limit on.
     *
     * @param find finds the same
     */
    long least(AtClass asked, long under, LongUnaryOperator find) {
        Least known = least.get(asked);
        if (known == null || !known.tells(under)) {
            known = new Least(find.applyAsLong(under), under);
            least.put(asked, known);
        }
        return known.cost;
    }

    /**
     * True where some handle costs less than a limit.
     *
     * @param find gives what some handle below a limit costs at least, or some number from the limit on where there is none
     */
    boolean any(AtClass asked, long under, LongUnaryOperator find) {
        Least known = least.get(asked);
        if (known != null && known.tells(under)) {
            return known.cost < under;
        }
        if (met.getOrDefault(asked, Long.MAX_VALUE) < under) {
            return true;
        }
        long found = find.applyAsLong(under);
        if (found < under) {
            met.put(asked, found);
        } else {
            least.put(asked, new Least(found, under));
        }
        return found < under;
    }
}
