package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Wish;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * What the parts on a shelf cost at least under one set of prices, wherever on a blank the reel stands; station by station, the least first. What a
 * milligram costs depends on where it lies ({@link Linear#leastPerMg}), so a part that stands at the seat is looked at there.
 */
final class PriceList {
    /** Furthest the front of a handle reaches ahead of the reel foot, mm. */
    private static final double FRONT_REACH_MM = 1500;

    /** Glue, thread and rounding of a small part where weight is welcome, mg. */
    private static final double SMALL_SLACK_MG = 2000;

    /** Furthest that the glue of a cap reaches into the butt, mm. */
    private static final double CAP_GLUE_MM = 20;

    final Linear k;
    private final Shelf shelf;
    private final Ground ground;
    private final double armMm;
    private final Map<String, Ranked> seats = new HashMap<>();
    private final Map<String, Ranked> rears = new HashMap<>();
    private final Map<String, Ranked> butts = new HashMap<>();
    private final Map<String, Ranked> fores = new HashMap<>();
    private final Map<String, Map<Object, Long>> onward = new HashMap<>();
    private final Map<String, Long> handles = new HashMap<>();
    private final Map<String, Ranked> rearChecks = new HashMap<>();
    private final Map<String, Ranked> foreChecks = new HashMap<>();
    private final Map<String, Ranked> endChecks = new HashMap<>();
    private final long keeperFloor;
    private @Nullable Long moneyAnywhere;

    PriceList(Shelf shelf, Linear k) {
        this.shelf = shelf;
        this.ground = shelf.ground;
        this.k = k;
        this.armMm = Setting.armMm(ground.brief);
        this.keeperFloor = keeper();
    }

    /** Checks between grip and seat. */
    Ranked rearChecks(BlankShape shape) {
        double behind = shelf.deepestMm + shelf.widestCheckMm;
        return rearChecks.computeIfAbsent(
                shape.blank().id(), id -> checks(Station.REAR_CHECK, shape, -behind, -shelf.shallowestMm));
    }

    /** Checks between seat and fore grip. */
    Ranked foreChecks(BlankShape shape) {
        double furthest = shelf.longestFrontMm + shelf.widestCheckMm;
        return foreChecks.computeIfAbsent(
                shape.blank().id(), id -> checks(Station.FORE_CHECK, shape, shelf.shortestFrontMm, furthest));
    }

    /** Checks that end the handle. */
    Ranked endChecks(BlankShape shape) {
        double furthest = shelf.longestFrontMm + shelf.widestCheckMm + shelf.longestForeMm;
        return endChecks.computeIfAbsent(
                shape.blank().id(), id -> checks(Station.WINDING_CHECK, shape, shelf.shortestFrontMm, furthest));
    }

    /** Seats with hood and arbors, what the best grip behind them is worth beside them credited. */
    Ranked seats(BlankShape shape) {
        SeatFloors floors = new SeatFloors(this, shelf);
        return seats.computeIfAbsent(shape.blank().id(), id -> ranked(shelf.seats, seat -> floors.of(seat, shape)));
    }

    /** Rear or full grips, each with the least way on to the butt end. */
    Ranked rears(BlankShape shape) {
        return rears.computeIfAbsent(shape.blank().id(), id -> {
            return shelf.rearMasses(shape).ranked(k, armMm, cut -> onward(shape, cut));
        });
    }

    /** A number no way on from a rear grip to the butt end costs less than, wherever the reel stands. */
    long onward(BlankShape shape, Cut cut) {
        Map<Object, Long> known = onward.computeIfAbsent(shape.blank().id(), id -> new IdentityHashMap<>());
        Object key = shelf.split ? buttsBeside(cut) : cut.grip();
        Long floor = known.get(key);
        if (floor == null) {
            floor = shelf.split ? least(butts(shape), buttsBeside(cut)) : cap(shape, cut, new HashMap<>());
            known.put(key, floor);
        }
        return floor;
    }

    /** Butt grips, each with its cheapest cap. */
    Ranked butts(BlankShape shape) {
        return butts.computeIfAbsent(shape.blank().id(), id -> {
            Map<String, Long> caps = new HashMap<>();
            return shelf.buttMasses(shape).ranked(k, armMm, cut -> cap(shape, cut, caps));
        });
    }

    /** Butt grips that go with a rear grip. */
    BitSet buttsBeside(Cut rear) {
        return ground.gripMatch.buttsBeside(ground.anySetting(), rear.grip());
    }

    /** Least floor of those that go with a rear grip. */
    long least(Ranked butts, BitSet may) {
        for (int b = 0; butts.has(b); b++) {
            if (may.get(shelf.butts[butts.at(b)].index())) {
                return butts.floor(b);
            }
        }
        return TrainGraph.NONE;
    }

    private long cap(BlankShape shape, Cut cut, Map<String, Long> known) {
        return known.computeIfAbsent(cut.grip().id(), id -> {
            List<ButtCap> all = shelf.capsOn(shape);
            BitSet may = shelf.capsBeside(shape, cut.grip());
            long least = may.get(all.size()) ? 0 : TrainGraph.NONE;
            for (int c = may.nextSetBit(0); c >= 0 && c < all.size(); c = may.nextSetBit(c + 1)) {
                double from = -ground.lastFoot() - all.get(c).addedMm();
                least = Math.min(least, small(all.get(c), Station.BUTT_CAP, from, -ground.firstFoot() + CAP_GLUE_MM));
            }
            return least;
        });
    }

    Ranked fores(BlankShape shape) {
        return fores.computeIfAbsent(
                shape.blank().id(), id -> shelf.foreMasses(shape).ranked(k, armMm, cut -> 0));
    }

    /** A number no keeper and inscription cost less than. */
    long keeperFloor() {
        return keeperFloor;
    }

    /** A number no handle costs less than on any blank, under prices of money alone. */
    long moneyAnywhere() {
        Long known = moneyAnywhere;
        if (known == null) {
            known = moneyNow();
            moneyAnywhere = known;
        }
        return known;
    }

    private long moneyNow() {
        long rear = TrainGraph.NONE;
        for (Cut cut : shelf.rears) {
            rear = Math.min(rear, k.perMilli() * cut.milli());
        }
        long seats = TrainGraph.NONE;
        for (ReelSeat seat : shelf.seats) {
            seats = Math.min(seats, money(seat));
        }
        return TrainGraph.none(rear) || TrainGraph.none(seats) ? TrainGraph.NONE : rear + seats;
    }

    /** A number no handle on the blank costs less than. */
    long handle(BlankShape shape) {
        return handles.computeIfAbsent(shape.blank().id(), id -> {
            Ranked rear = rears(shape);
            Ranked seat = seats(shape);
            if (!rear.has(0) || !seat.has(0)) {
                return TrainGraph.NONE;
            }
            long grip = shelf.fores.length == 0 ? 0 : Math.min(0, fores(shape).least());
            long bare = Math.min(0, k.perMilliStep() * ground.wishes.foreGrip(false));
            return seatAndRear(seat, rear)
                    + Math.min(0, rearChecks(shape).least())
                    + Math.min(bare, grip)
                    + Math.min(0, endChecks(shape).least())
                    + Math.min(0, foreChecks(shape).least())
                    + keeperFloor;
        });
    }

    /** Cheapest seat with a grip behind it, the two side by side. */
    private long seatAndRear(Ranked seats, Ranked rears) {
        long least = TrainGraph.NONE;
        for (int r = 0; rears.floor(r) + seats.least() < least; r++) {
            for (int s = 0; rears.floor(r) + seats.floor(s) < least; s++) {
                ReelSeat seat = shelf.seats[seats.at(s)];
                long pair = ground.style.gripAndSeat(shelf.rears[rears.at(r)].grip(), seat);
                long missed = ground.gripMatch.bestPair(ground.style, seat, shelf.split) - pair;
                least = Math.min(least, rears.floor(r) + seats.floor(s) + k.perStyleCenti() * missed);
            }
        }
        return least;
    }

    private static <P> Ranked ranked(P[] parts, ToLongFunction<P> floor) {
        long[] floors = new long[parts.length];
        for (int i = 0; i < parts.length; i++) {
            floors[i] = floor.applyAsLong(parts[i]);
        }
        return new Ranked(floors);
    }

    /** Those that go somewhere between two places told from the reel foot, wherever the reel stands on the blank. */
    private Ranked checks(Station station, BlankShape shape, double fromMm, double toMm) {
        long[] floors = new long[shelf.checks.length];
        for (int i = 0; i < floors.length; i++) {
            Check check = shelf.checks[i];
            floors[i] = shelf.stations.allows(station, check) ? small(check, station, fromMm, toMm) : TrainGraph.NONE;
        }
        double thickest = Math.max(0, ground.firstFoot() + fromMm - shelf.widestCheckMm);
        double thinnest = Math.max(thickest, ground.lastFoot() + toMm + shelf.widestCheckMm);
        return new Ranked(floors, i -> shelf.goes(station, i, shape, thickest, thinnest));
    }

    private long keeper() {
        Wish<Boolean> wish = ground.handleRule ? ground.brief.handle().keeper() : null;
        boolean must = wish != null && wish.hard() && wish.value();
        boolean mustNot = wish != null && wish.hard() && !wish.value();
        long least = TrainGraph.NONE;
        if (shelf.stations.optional(Station.KEEPER) && !must) {
            least = k.perMilliStep() * ground.wishes.keeper(false);
        }
        for (Keeper keeper : ground.keepers) {
            if (!mustNot && shelf.stations.allows(Station.KEEPER, keeper)) {
                long wished = k.perMilliStep() * ground.wishes.keeper(true);
                least = Math.min(least, wished + small(keeper, Station.KEEPER, shelf.shortestFrontMm, FRONT_REACH_MM));
            }
        }
        double c = k.leastPerMg(0, FRONT_REACH_MM, armMm);
        long decal = 0;
        for (Decal one : ground.decals) {
            decal = Math.max(decal, -missed(one, Station.DECAL));
        }
        return (TrainGraph.none(least) ? 0 : least) - decal + (c < 0 ? (long) (c * 2 * SMALL_SLACK_MG) : 0);
    }

    /** A small part somewhere between two places told from the reel foot. */
    private long small(Part part, Station station, double fromMm, double toMm) {
        double c = k.leastPerMg(fromMm, toMm, armMm);
        double mg = c >= 0 ? part.massMg() : part.massMg() + SMALL_SLACK_MG;
        return (long) Math.floor(c * mg)
                + money(part)
                - k.perStyleCenti() * style(part, station)
                + missed(part, station);
    }

    private long style(Part part, Station station) {
        return ground.style.part(ground.blanks.get(0), shelf.form, station, part, 1);
    }

    long missed(Part part, Station station) {
        return k.perMilliStep() * ground.wishes.part(station, part, 1);
    }

    long money(Part part) {
        return k.perMilli() * (ground.tariff.partMilli(part, 1) + ground.tariff.workMilli(part));
    }
}
