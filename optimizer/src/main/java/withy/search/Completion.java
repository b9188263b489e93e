package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.rod.Consumables;
import withy.rod.Setting;

/**
 * Exact completion of one layout, every load-bearing part at least of one class: the cheapest build under linear prices, and
 * every build below a limit. Handle and guide train meet only in the thread and in the sums. Not for several threads at once.
 */
final class Completion {
    private static final long NONE = TrainGraph.NONE;

    /** With fewer threads the handle is as soon looked at with each. */
    private static final int FEW_THREADS = 3;

    private final Stand stand;
    private final List<Dressing> dressings = new ArrayList<>();
    /** Of each a number no build with it costs less than under {@link #floorsOf}. */
    private final List<Long> floors = new ArrayList<>();

    private final @Nullable Linear floorsOf;
    private long leftOut = NONE;
    private Linear k = new Linear(0, 0, 0, 0, 0, 0, 0);
    private List<Priced> priced = List.of();
    /** A number no handle costs less than with any thread, under the prices last set. */
    private long undressed;

    /**
     * @param stand the handle's side of the layout
     * @param with one entry for each thread worth looking at, the likeliest first
     * @param leastClass class every load-bearing part has at least
     * @param limit threads with a floor from here on are left out
     */
    Completion(Stand stand, Setting setting, List<Candidate> with, int leastClass, long limit) {
        this(stand, setting, with, null, leastClass, limit, new HashMap<>());
    }

    /**
     * The same again of a layout.
     *
     * @param floorsOf the prices of which the threads' floors hold as well as of the score, or null where that is not known
     * @param before what of it depends on the thread, as far as it was met before; more is added
     */
    Completion(
            Stand stand,
            Setting setting,
            List<Candidate> with,
            @Nullable Linear floorsOf,
            int leastClass,
            long limit,
            Map<Consumables, Dressing> before) {
        this.stand = stand;
        this.floorsOf = floorsOf;
        for (Candidate one : with) {
            if (one.floor < limit) {
                dressings.add(
                        before.computeIfAbsent(one.with, thread -> new Dressing(stand, setting, thread, leastClass)));
                floors.add(one.floor);
            } else {
                leftOut = Math.min(leftOut, one.floor);
            }
        }
    }

    /**
     * Thread, finish and adhesive.
     *
     * @param floor a number no build with them scores below
     */
    record Candidate(Consumables with, long floor) {}

    /**
     * A thread with a number no build it makes costs less than; of the first of them the cheapest build.
     *
     * @param looked false where the thread was not looked at under the prices of the moment
     */
    private record Priced(Dressing dressing, long floor, boolean looked) {}

    /**
     * Least score of a build under these prices, threads that were left out among them.
     *
     * @param prices prices that make the score linear
     * @param limit above it only "not below the limit" is of interest
     * @return the least where it is below the limit, else some number that is not below the limit and not above the least
     */
    long price(Linear prices, long limit) {
        return Math.min(leftOut, least(prices, limit));
    }

    /** The same under whatever prices, of the builds with a thread that was not left out. */
    long least(Linear prices, long limit) {
        k = prices;
        Handle handle = stand.priced(k);
        BareTrains bare = bare();
        List<Priced> list = new ArrayList<>();
        long least = NONE;
        undressed = Handle.NOTHING_MORE;
        boolean asked = false;
        boolean tried = false;
        long cheapest = NONE;
        for (int d : cheapestFirst()) {
            Dressing dressing = dressings.get(d);
            long floor = floor(d);
            if (floor >= Math.min(limit, least)) {
                if (floor < limit) {
                    list.add(new Priced(dressing, floor, false));
                }
                continue;
            }
            long rest = dressing.price(k, bare);
            if (TrainGraph.none(rest)) {
                continue;
            }
            if (!asked && (limit < NONE || tried)) {
                // where no limit is known the first handle that is found makes one
                asked = true;
                undressed = undressed(handle, Math.min(Math.min(limit, NONE), least) - Math.min(rest, cheapest));
            }
            cheapest = Math.min(cheapest, rest);
            if (TrainGraph.none(undressed)) {
                break;
            }
            long cost = rest + undressed;
            if (cost < Math.min(limit, least)) {
                long under = Math.min(limit, least) - rest;
                long best = handle.least(stand.dress(dressing.with), dressing.leastClass, under);
                tried = true;
                if (TrainGraph.none(best)) {
                    continue;
                }
                cost = rest + best;
            }
            least = Math.min(least, cost);
            if (cost < limit) {
                list.add(new Priced(dressing, cost, true));
            }
        }
        list.sort(Comparator.comparingLong(Priced::floor).thenComparing(one -> !one.looked));
        priced = list;
        return least;
    }

    private @Nullable BareTrains bare() {
        return dressings.isEmpty() ? null : dressings.get(0).bare(k);
    }

    /** A number no build with a thread costs less than under the prices last set. */
    private long floor(int d) {
        return k.equals(floorsOf) ? floors.get(d) : Long.MIN_VALUE;
    }

    private List<Integer> cheapestFirst() {
        List<Integer> order = new ArrayList<>();
        for (int d = 0; d < dressings.size(); d++) {
            order.add(d);
        }
        order.sort(Comparator.comparingLong(this::floor));
        return order;
    }

    /** A number the handle costs no less than with any thread; with few of them each is as soon asked. */
    private long undressed(Handle handle, long limit) {
        return dressings.size() < FEW_THREADS
                ? Handle.NOTHING_MORE
                : handle.leastUndressed(dressings.get(0).leastClass, limit);
    }

    /** True where some build with a thread that was not left out costs less than a limit, under whatever prices; the first found ends it. */
    boolean any(Linear prices, long limit) {
        k = prices;
        priced = List.of();
        Handle handle = stand.priced(k);
        BareTrains bare = bare();
        for (Dressing dressing : dressings) {
            long rest = dressing.price(k, bare);
            if (!TrainGraph.none(rest)
                    && handle.any(stand.dress(dressing.with), dressing.leastClass, Math.min(limit, NONE) - rest)) {
                return true;
            }
        }
        return false;
    }

    /** Threads that were not left out. */
    List<Consumables> threads() {
        return dressings.stream().map(dressing -> dressing.with).toList();
    }

    /** Takes a walk past every build there may be, thread by thread; false where it was given up. */
    boolean builds(Walk walk) {
        for (Priced one : priced) {
            if (one.floor < walk.under() && (one.looked || look(one.dressing) < walk.under())) {
                walk.thread(one.dressing);
            }
        }
        return walk.whole();
    }

    /** Threads that were not looked at under the prices last set, since none of their builds costs less than the cheapest. */
    int unlooked() {
        return (int) priced.stream().filter(one -> !one.looked).count();
    }

    /** Looks at a thread that was not looked at; a number no build with it costs less than. */
    private long look(Dressing dressing) {
        return TrainGraph.sum(dressing.price(k, bare()), undressed);
    }

    /** Prices last set. */
    Linear prices() {
        return k;
    }
}
