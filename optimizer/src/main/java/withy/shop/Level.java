package withy.shop;

import java.util.Collections;
import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How many pieces of a part there are.
 *
 * @param part catalogue id
 * @param shelf on the shelf, promised ones included
 * @param promised promised to open jobs, on the shelf or on order
 * @param ordered on order, promised ones included
 * @param toOrder of these, orders still to be sent
 * @param missing promised pieces that a loss took away
 * @param free on the shelf and promised to nobody
 * @param freeDue on order and promised to nobody, by the day they are due
 * @param revision changes with every movement
 */
public record Level(
        String part,
        int shelf,
        int promised,
        int ordered,
        int toOrder,
        int missing,
        int free,
        SortedMap<String, Integer> freeDue,
        int revision) {
    public Level {
        freeDue = Collections.unmodifiableSortedMap(new TreeMap<>(freeDue));
    }
}
