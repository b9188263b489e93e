package withy.search;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * The scores in which a layout that was put off is walked: first only builds that score little more than any can, which are few; where there is none,
 * those of twice that much more, and so on.
 */
final class Slices {
    /** Of the scores between the least a layout may hold and the limit, this part comes first. */
    private static final int FIRST_OF = 16;

    /** Least that a layout was known to hold when it was put off, by the node's order. */
    private final Map<Long, Long> firsts = new HashMap<>();

    /** Multipliers found for a layout when it was put off, by the same. */
    private final Map<Long, Prices> prices = new HashMap<>();

    /** A layout is put off. */
    void putOff(Node node, Prices found) {
        prices.put(node.order(), found);
    }

    /** The multipliers found for a layout that was put off, or null. */
    @Nullable
    Prices prices(Node node) {
        return prices.get(node.order());
    }

    /** Where the next slice of a layout ends; the limit for the last. */
    long end(Node node, long limit) {
        long from = node.bound();
        long first = firsts.computeIfAbsent(node.order(), any -> from);
        long width = Math.max((limit - first) / FIRST_OF, from - first);
        // what rounding leaves short of the limit is not worth another walk
        return limit == Long.MAX_VALUE || limit - from - width < width / FIRST_OF ? limit : from + width;
    }
}
