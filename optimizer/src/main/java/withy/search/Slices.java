package withy.search;

import java.util.Collection;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.rod.Consumables;
import withy.rod.Layout;

/**
 * The scores in which a layout that was put off is walked: first only builds that score little more than any can, which are few; where there is none,
 * those of twice that much more, and so on.
 */
final class Slices {
    /** Of the scores between the least a layout may hold and the limit, this part comes first. */
    private static final int FIRST_OF = 16;

    /** Layouts of which what was found is kept in mind. */
    private static final int MOST_FOUND = 8;

    /** Least that a layout was known to hold when it was put off, by the node's order. */
    private final Map<Long, Long> firsts = new HashMap<>();

    /** Multipliers found for the stands of a layout when it was put off, by the same. */
    private final Map<Long, Map<Stand, Prices>> prices = new HashMap<>();

    /** Where nothing of a stand of a layout that scores less is left to look at, by the same. */
    private final Map<Long, Map<Stand, Long>> walked = new HashMap<>();

    /** What depends on the thread, of the layouts walked last, by the same and their stands. */
    private final Map<Long, Map<Stand, Map<Consumables, Dressing>>> dressings = newest();

    /** Whether ceilings can be kept, by layout and stand. */
    private final Map<Layout, Map<Stand, LayoutCeilings>> ceilings = newest();

    private static <K, V> Map<K, V> newest() {
        return new LinkedHashMap<>(MOST_FOUND, 0.75f, true) {
            @Override
            protected boolean removeEldestEntry(Map.Entry<K, V> eldest) {
                return size() > MOST_FOUND;
            }
        };
    }

    /** What was found of the ceilings of a stand of a layout, as far as it holds with these threads and parts of this class, too; else nothing yet. */
    LayoutCeilings ceilings(Task task, Layout layout, Stand stand, Collection<Consumables> threads, int leastClass) {
        Map<Stand, LayoutCeilings> of = ceilings.computeIfAbsent(layout, any -> new IdentityHashMap<>());
        LayoutCeilings known = of.get(stand);
        if (known == null || !known.holdsFor(threads, leastClass)) {
            known = new LayoutCeilings(task, threads, leastClass);
            of.put(stand, known);
        }
        return known;
    }

    /** What depends on the thread, of a stand of a layout that was walked: it holds in its next slice, too. More may be added. */
    Map<Consumables, Dressing> dressings(Node node, Stand stand) {
        return dressings
                .computeIfAbsent(node.order(), any -> new IdentityHashMap<>())
                .computeIfAbsent(stand, any -> new HashMap<>());
    }

    /** A stand of a layout was looked through up to some score. */
    void walked(Node node, Stand stand, long under) {
        walked.computeIfAbsent(node.order(), any -> new HashMap<>()).merge(stand, under, Math::max);
    }

    /** True where nothing of a stand of a layout that scores less than a limit is left to look at. */
    boolean isWalked(Node node, Stand stand, long limit) {
        return walked.getOrDefault(node.order(), Map.of()).getOrDefault(stand, Long.MIN_VALUE) >= limit;
    }

    /** A stand of a layout is put off. */
    void putOff(Node node, Stand stand, Prices multipliers) {
        prices.computeIfAbsent(node.order(), any -> new HashMap<>()).put(stand, multipliers);
    }

    /** The multipliers found for a stand of a layout that was put off, or null. */
    @Nullable
    Prices prices(Node node, Stand stand) {
        return prices.getOrDefault(node.order(), Map.of()).get(stand);
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
