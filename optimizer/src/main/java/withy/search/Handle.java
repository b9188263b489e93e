package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.rod.Fitter;

/**
 * The handle of one stand under one set of prices, from the butt end to keeper and inscription: the cheapest, and every one below a limit. Seats are
 * looked at in the order of what they cost at least, and only while one may still matter.
 */
final class Handle {
    private static final long NONE = TrainGraph.NONE;

    /** Below whatever anything costs. */
    static final long NOTHING_MORE = Long.MIN_VALUE / 2;

    final Stand stand;
    final Linear k;
    final Behind behind;
    final Ahead ahead;
    private final BlankPrices prices;
    private final long behindFloor;
    private final long aheadFloor;
    private final long besidesFloor;
    final FrontEnds ends;
    private final Map<Fitter, Map<Integer, Least>> least = new IdentityHashMap<>();

    Handle(Stand stand, BlankPrices prices) {
        this.stand = stand;
        this.k = prices.list.k;
        this.behind = new Behind(stand, prices);
        this.ahead = new Ahead(stand, prices);
        this.ends = new FrontEnds(stand, k);
        this.prices = prices;
        this.behindFloor = behind.floor();
        this.aheadFloor = prices.ahead();
        this.besidesFloor = none() ? 0 : behindFloor + aheadFloor;
    }

    /** What was found below a limit. */
    private record Least(long cost, long under) {}

    /** Takes handles; gives the cost from which on further ones are of no interest. */
    interface Visitor {
        long handle(Chosen handle, long cost);
    }

    /**
     * Cost of the cheapest handle dressed with one thread, seat and hood of at least one class, where it is below a limit; else some number that is not below the limit and not above that
     * cost, or {@link TrainGraph#none} where there is no handle.
     */
    long least(Fitter dress, int leastClass, long under) {
        Map<Integer, Least> of = least.computeIfAbsent(dress, any -> new HashMap<>());
        Least known = of.get(leastClass);
        if (known != null && (known.cost < known.under || known.under >= under)) {
            return known.cost;
        }
        long found = leastNow(dress, leastClass, under, false);
        of.put(leastClass, new Least(found, under));
        return found;
    }

    /** True where some handle dressed with one thread, seat and hood of at least one class, costs less than a limit; the first found ends it. */
    boolean any(Fitter dress, int leastClass, long under) {
        long limit = Math.min(under, NONE);
        Least known = least.getOrDefault(dress, Map.of()).get(leastClass);
        if (known != null && (known.cost < known.under || known.under >= limit)) {
            return known.cost < limit;
        }
        return leastNow(dress, leastClass, limit, true) < limit;
    }

    /** The same with the least that the thread of the ends may cost ({@link Ground#endDress}): no dressed handle costs less. */
    long leastUndressed(int leastClass, long under) {
        return leastNow(null, leastClass, under, false);
    }

    /** Of some handle below a limit, whatever the thread of its ends, what it costs at least; the limit where there is none. */
    long anyUndressed(int leastClass, long under) {
        return leastNow(null, leastClass, under, true);
    }

    /**
     * The cheapest.
     *
     * @param anyWillDo true where the first below the limit ends it
     */
    private long leastNow(@Nullable Fitter dress, int leastClass, long under, boolean anyWillDo) {
        if (none()) {
            return NONE;
        }
        long best = Math.min(under, NONE);
        for (int s = next(0, leastClass, best); s >= 0; s = next(s + 1, leastClass, best)) {
            for (SeatGroup group : seat(s, leastClass)) {
                long least = leastWith(group, dress, leastClass, best, anyWillDo);
                if (least < best && anyWillDo) {
                    return least;
                }
                best = least;
            }
        }
        return best;
    }

    /** Cost of the cheapest handle with a seat of a group, whatever the thread of its ends, where it is below a limit; else the limit. */
    long leastWith(SeatGroup group, int leastClass, long under) {
        return none() ? under : leastWith(group, null, leastClass, under, false);
    }

    /** Cost of the cheapest way behind a seat of a group, or {@link TrainGraph#none}. */
    long leastBehind(SeatGroup group) {
        return none() ? NONE : behind.best(group, all(), NONE);
    }

    private long leastWith(SeatGroup group, @Nullable Fitter dress, int leastClass, long under, boolean anyWillDo) {
        long seat = cheapest(group, leastClass);
        if (TrainGraph.none(seat)) {
            return under;
        }
        long back = behind.best(group, all(), under - seat - aheadFloor);
        if (TrainGraph.none(back)) {
            return under;
        }
        Cheapest least = new Cheapest(dress, group, back, under - seat, anyWillDo);
        ahead.ways(group.set(), least, least);
        return least.found ? seat + least.best : under;
    }

    /** True where nothing goes behind a seat, or nothing ahead of it. */
    boolean none() {
        return TrainGraph.none(behindFloor) || TrainGraph.none(aheadFloor);
    }

    /** Seats of at least one class, by what each costs at least wherever on the blank the reel stands. */
    Ranked seats(int leastClass) {
        return prices.seats(leastClass);
    }

    /** The first seat from a place on in the order of what seats of at least one class cost that may stand in a handle below a limit; -1 where none may. */
    int next(int from, int leastClass, long under) {
        Ranked seats = seats(leastClass);
        for (int s = from; seats.has(s) && seats.floor(s) + besidesFloor < under; s++) {
            if (floorHere(seats.at(s), seats.floor(s), leastClass, under) < under) {
                return s;
            }
        }
        return -1;
    }

    /** The seat at a place in that order, with what may go with it. */
    List<SeatGroup> seat(int place, int leastClass) {
        return stand.seat(seats(leastClass).at(place));
    }

    /** No way ahead of a seat costs less. */
    long aheadFloor() {
        return aheadFloor;
    }

    /** A number no handle here with one seat costs less than, or one that is not below the limit. */
    private long floorHere(int seat, long anywhere, int leastClass, long under) {
        Neighbours.Pairs pairs = stand.shelf.neighbours.pairs(stand.shelf.seats[seat]);
        // what the best grip is worth beside the seat is in both
        long besides = k.perStyleCenti() * pairs.most() + behind.floor(pairs) + aheadFloor;
        if (anywhere + besides >= under) {
            return under;
        }
        int foot = stand.setting.footMm();
        long floor = prices.seat(seat, leastClass, foot, foot);
        return TrainGraph.none(floor) ? NONE : floor + besides;
    }

    /** Cost of the cheapest seat of a group of at least one class, or {@link TrainGraph#none}. */
    long cheapest(SeatGroup group, int leastClass) {
        return group.cheapest(k, leastClass);
    }

    /** Every rear grip. */
    BitSet all() {
        return stand.shelf.neighbours.rears(null);
    }

    /** Keeps the cheapest way around a seat. */
    private final class Cheapest implements Ahead.Asked, Ahead.Visitor {
        private final @Nullable Fitter dress;
        private final SeatGroup seat;
        private final long back;
        private long best;
        private final boolean anyWillDo;
        private boolean found;

        /** With the cheapest way behind the seat beside any grips. */
        Cheapest(@Nullable Fitter dress, SeatGroup seat, long back, long under, boolean anyWillDo) {
            this.dress = dress;
            this.seat = seat;
            this.back = back;
            this.best = under;
            this.anyWillDo = anyWillDo;
        }

        private boolean ended() {
            return found && anyWillDo;
        }

        @Override
        public long ends(double frontMm) {
            return ends.cost(dress, frontMm);
        }

        @Override
        public long under() {
            return ended() ? NOTHING_MORE : best - back;
        }

        @Override
        public long behind(BitSet beside, long ahead) {
            return ended() ? NONE : behind.best(seat, beside, best - ahead);
        }

        @Override
        public boolean cheapest() {
            return true;
        }

        @Override
        public long under(long rest) {
            return ended() ? NOTHING_MORE : best - rest;
        }

        @Override
        public void way(Ahead.Way way, long ends, long rest) {
            best = way.cost() + ends + rest;
            found = true;
        }
    }

    /** Takes handles from the seat on ahead with their cost; gives the cost from which on whole handles are of no interest. */
    interface FrontVisitor {
        long front(Front front, long cost);
    }

    /** Every handle dressed with one thread that costs less than a limit; the limit may fall as they come. */
    void below(Fitter dress, int leastClass, long limit, Visitor visitor) {
        long[] under = {Math.min(limit, NONE)};
        fronts(dress, leastClass, limit, any -> true, (front, soFar) -> {
            behind.ways(front.seat().group(), front.way().foreGrip().part, under[0] - soFar, rest -> {
                under[0] = Math.min(under[0], visitor.handle(front.with(rest), soFar + rest.cost()));
                return under[0] == Long.MIN_VALUE ? Long.MIN_VALUE : under[0] - soFar;
            });
            return under[0];
        });
    }

    /**
     * From the seat on ahead, every handle dressed with one thread that costs less than a limit with its cheapest way behind; seat by seat.
     *
     * @param worthIt false of seats that are of no interest
     */
    void fronts(Fitter dress, int leastClass, long limit, Predicate<SeatGroup> worthIt, FrontVisitor visitor) {
        new HandleWalk(this, dress, leastClass, limit, worthIt, visitor).go();
    }

    /** Every way behind a seat beside a fore grip that costs less than a limit. */
    void behind(Front front, long limit, Behind.Visitor visitor) {
        behind.ways(front.seat().group(), front.way().foreGrip().part, limit, visitor);
    }

    /** The rear grips that may stand behind, as one and the same object for the same fore grip. */
    BitSet rearsBeside(Front front) {
        return stand.shelf.neighbours.rears(front.way().foreGrip().part);
    }
}
