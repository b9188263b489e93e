package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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
    private long leftOut = NONE;
    private Linear k = new Linear(0, 0, 0, 0, 0, 0, 0);
    private List<Priced> priced = List.of();

    /**
     * @param stand the handle's side of the layout
     * @param with one entry for each thread worth looking at, the likeliest first
     * @param leastClass class every load-bearing part has at least
     * @param limit threads with a floor from here on are left out
     */
    Completion(Stand stand, Setting setting, List<Candidate> with, int leastClass, long limit) {
        this(stand, setting, with, leastClass, limit, new HashMap<>());
    }

    /**
     * The same again of a layout.
     *
     * @param before what of it depends on the thread, as far as it was met before; more is added
     */
    Completion(
            Stand stand,
            Setting setting,
            List<Candidate> with,
            int leastClass,
            long limit,
            Map<Consumables, Dressing> before) {
        this.stand = stand;
        for (Candidate one : with) {
            if (one.floor < limit) {
                dressings.add(
                        before.computeIfAbsent(one.with, thread -> new Dressing(stand, setting, thread, leastClass)));
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

    /** A thread with a number no build it makes costs less than; of the first of them the cheapest build. */
    private record Priced(Dressing dressing, long floor) {}

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
        priced = List.of();
        Handle handle = stand.priced(k);
        long[] rests = rests();
        long undressed = undressed(handle, rests, Math.min(limit, NONE));
        List<Priced> list = new ArrayList<>();
        long least = NONE;
        for (int d = 0; d < rests.length; d++) {
            if (TrainGraph.none(rests[d]) || TrainGraph.none(undressed)) {
                continue;
            }
            Dressing dressing = dressings.get(d);
            long cost = rests[d] + undressed;
            if (cost < Math.min(limit, least)) {
                long under = Math.min(limit, least) - rests[d];
                long best = handle.least(stand.dress(dressing.with), dressing.leastClass, under);
                if (TrainGraph.none(best)) {
                    continue;
                }
                cost = rests[d] + best;
            }
            least = Math.min(least, cost);
            if (cost < limit) {
                list.add(new Priced(dressing, cost));
            }
        }
        list.sort(Comparator.comparingLong(Priced::floor));
        priced = list;
        return least;
    }

    /** What everything but the handle costs at least, thread by thread. */
    private long[] rests() {
        long[] rests = new long[dressings.size()];
        BareTrains bare = dressings.isEmpty() ? null : dressings.get(0).bare(k);
        for (int d = 0; d < rests.length; d++) {
            rests[d] = dressings.get(d).price(k, bare);
        }
        return rests;
    }

    /** A number the handle costs no less than with any thread; with few of them each is as soon asked. */
    private long undressed(Handle handle, long[] rests, long limit) {
        long rest = Arrays.stream(rests).min().orElse(NONE);
        return rests.length < FEW_THREADS || TrainGraph.none(rest)
                ? Handle.NOTHING_MORE
                : handle.leastUndressed(dressings.get(0).leastClass, limit - rest);
    }

    /** True where some build with a thread that was not left out costs less than a limit, under whatever prices; the first found ends it. */
    boolean any(Linear prices, long limit) {
        k = prices;
        priced = List.of();
        Handle handle = stand.priced(k);
        BareTrains bare = dressings.isEmpty() ? null : dressings.get(0).bare(k);
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
            if (one.floor < walk.under()) {
                walk.thread(one.dressing);
            }
        }
        return walk.whole();
    }

    /** Prices last set. */
    Linear prices() {
        return k;
    }
}
