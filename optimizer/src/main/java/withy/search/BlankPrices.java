package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import withy.catalog.ReelSeat;
import withy.rod.Station;

/**
 * What the parts on a shelf cost at least on one blank, or on any, under one set of prices, wherever the reel stands: station by station, the least first. Each
 * station is put in order when it is first asked for.
 */
final class BlankPrices {
    final PriceList list;
    private final Linear k;
    private final Shelf shelf;
    private final Ground ground;
    private final Underlying on;
    private final @Nullable BlankPrices lower;
    private final Map<Station, Ranked> checks = new HashMap<>();
    private final Map<Integer, Ranked> seats = new HashMap<>();
    private final Map<Integer, Long> handles = new HashMap<>();
    private final Map<BitSet, Long> onward = new IdentityHashMap<>();
    /** By what goes beside a grip ({@link Neighbours#caps}). */
    private final Map<BitSet, Long> caps = new IdentityHashMap<>();

    private @Nullable Ranked rears;
    private @Nullable Ranked butts;
    private @Nullable Ranked fores;
    private @Nullable Long edge;
    private @Nullable Long aroundSeat;

    /**
     * @param lower what they cost at least on any blank; null where that is not known
     */
    BlankPrices(PriceList list, Underlying on, @Nullable BlankPrices lower) {
        this.list = list;
        this.lower = lower;
        this.k = list.k;
        this.shelf = list.shelf;
        this.ground = shelf.ground;
        this.on = on;
    }

    /** Checks between grip and seat. */
    Ranked rearChecks() {
        return checks(Station.REAR_CHECK);
    }

    /** Checks between seat and fore grip. */
    Ranked foreChecks() {
        return checks(Station.FORE_CHECK);
    }

    /** Checks that end the handle. */
    Ranked endChecks() {
        return checks(Station.WINDING_CHECK);
    }

    /** Those that go somewhere on the blank, wherever the reel stands. */
    private Ranked checks(Station station) {
        return checks.computeIfAbsent(station, any -> {
            CheckPlaces.Reach reach = shelf.checkPlaces.reach(station);
            long[] floors = list.checks(station, reach.fromMm(), reach.toMm());
            IntPredicate goes = i -> on.goes(station, i);
            return lower == null
                    ? new Ranked(floors, goes)
                    : Ranked.lazily(lower.checks(station), goes, i -> floors[i]);
        });
    }

    /**
     * Seats of at least one class with hood and arbors, what the best grip behind them is worth beside them credited, with what covers an edge that is not
     * finished.
     */
    Ranked seats(int leastClass) {
        return seats.computeIfAbsent(leastClass, any -> {
            if (lower != null) {
                return Ranked.lazily(lower.seats(leastClass), i -> true, i -> seat(i, leastClass));
            }
            long[] floors = new long[shelf.seats.length];
            Arrays.setAll(floors, i -> seat(i, leastClass));
            return new Ranked(floors);
        });
    }

    private long seat(int place, int leastClass) {
        return seat(place, leastClass, ground.firstFoot(), ground.lastFoot());
    }

    /** The same of one seat with the reel foot between two places, mm from the butt; {@link TrainGraph#NONE} where it does not go there. */
    long seat(int place, int leastClass, int firstMm, int lastMm) {
        long floor = list.seats.of(place, leastClass, on, firstMm, lastMm);
        return TrainGraph.none(floor) ? TrainGraph.NONE : floor + (shelf.seats[place].frontFinished() ? 0 : edge());
    }

    /** What an edge of the seat that is not finished costs more than a finished one: a check or a fore grip must stand before it. */
    private long edge() {
        Long known = edge;
        if (known == null) {
            long end = endChecks().least();
            long ring = foreChecks().least();
            long grip = shelf.mayHaveForeGrip() ? fores().least() : TrainGraph.NONE;
            long more = Math.min(end - Math.min(0, end), ring - Math.min(0, ring));
            more = Math.min(more, grip - Math.min(fore(), grip));
            known = ground.ruled("ring-fit") ? Math.min(more, TrainGraph.NONE) : 0;
            edge = known;
        }
        return known;
    }

    /** A number a fore grip, or none, costs no less than; {@link TrainGraph#NONE} where there must be one and none goes on. */
    private long fore() {
        long bare = shelf.mustHaveForeGrip() ? TrainGraph.NONE : k.perMilliStep() * ground.wishes.foreGrip(false);
        return shelf.mayHaveForeGrip() ? Math.min(bare, fores().least()) : bare;
    }

    /** A number nothing ahead of a seat with a finished edge costs less than, keeper and inscription included. */
    long ahead() {
        long fore = fore();
        return TrainGraph.none(fore)
                ? fore
                : fore
                        + Math.min(0, foreChecks().least())
                        + Math.min(0, endChecks().least())
                        + list.keeperFloor;
    }

    /** Rear or full grips, each with the least way on to the butt end. */
    Ranked rears() {
        Ranked known = rears;
        if (known == null) {
            known = lower == null
                    ? on.rears().ranked(on.rears().floors(k, list.armMm, this::onward))
                    : on.rears().ranked(lower.rears(), k, list.armMm, this::onward);
            rears = known;
        }
        return known;
    }

    /** Butt grips, each with its cheapest cap. */
    Ranked butts() {
        Ranked known = butts;
        if (known == null) {
            known = lower == null
                    ? on.butts().ranked(on.butts().floors(k, list.armMm, this::cap))
                    : on.butts().ranked(lower.butts(), k, list.armMm, this::cap);
            butts = known;
        }
        return known;
    }

    /** Fore grips. */
    Ranked fores() {
        Ranked known = fores;
        if (known == null) {
            known = lower == null
                    ? on.fores().ranked(on.fores().floors(k, list.armMm, cut -> 0))
                    : on.fores().ranked(lower.fores(), k, list.armMm, cut -> 0);
            fores = known;
        }
        return known;
    }

    /** A number no way on from a rear grip to the butt end costs less than, wherever the reel stands. */
    long onward(Cut rear) {
        return shelf.split ? onward(shelf.neighbours.butts(rear)) : cap(rear);
    }

    /** The same of a split handle, from any rear grip that goes with certain butt grips. */
    long onward(BitSet may) {
        return onward.computeIfAbsent(may, any -> least(butts(), may));
    }

    /** Least floor of butt grips that are among these. */
    long least(Ranked ranks, BitSet may) {
        return ranks.least(b -> may.get(shelf.butts[b].index()));
    }

    /** Cheapest cap beside a grip at the butt. */
    private long cap(Cut cut) {
        return caps.computeIfAbsent(shelf.neighbours.caps(cut.grip()), may -> {
            BitSet caps = on.caps();
            long least = may.get(ground.caps.size()) ? 0 : TrainGraph.NONE;
            for (int c = may.nextSetBit(0); c >= 0 && c < ground.caps.size(); c = may.nextSetBit(c + 1)) {
                if (caps.get(c)) {
                    least = Math.min(least, list.cap(c));
                }
            }
            return least;
        });
    }

    /** A number no handle on the blank costs less than whose seat and hood are of at least one class. */
    long handle(int leastClass) {
        return handles.computeIfAbsent(leastClass, this::handleNow);
    }

    private long handleNow(int leastClass) {
        if (shelf.seats.length == 1) {
            long seat = list.seats.of(0, leastClass, on, ground.firstFoot(), ground.lastFoot());
            return TrainGraph.none(seat) ? seat : TrainGraph.sum(seat, aroundSeat());
        }
        Ranked seats = seats(leastClass);
        return !rears().has(0) || !seats.has(0) || TrainGraph.none(ahead())
                ? TrainGraph.NONE
                : seatAndRear(seats, rears()) + Math.min(0, rearChecks().least()) + ahead();
    }

    private long aroundSeat() {
        Long known = aroundSeat;
        if (known == null) {
            known = new LoneSeat(this).around();
            aroundSeat = known;
        }
        return known;
    }

    /** Cheapest seat with a grip behind it, the two side by side. */
    private long seatAndRear(Ranked seats, Ranked rears) {
        long least = TrainGraph.NONE;
        for (int r = 0; rears.floor(r) + seats.least() < least; r++) {
            for (int s = 0; rears.floor(r) + seats.floor(s) < least; s++) {
                ReelSeat seat = shelf.seats[seats.at(s)];
                Neighbours.Pairs pairs = shelf.neighbours.pairs(seat);
                long missed = pairs.most() - pairs.each()[shelf.rears[rears.at(r)].index()];
                least = Math.min(least, rears.floor(r) + seats.floor(s) + k.perStyleCenti() * missed);
            }
        }
        return least;
    }
}
