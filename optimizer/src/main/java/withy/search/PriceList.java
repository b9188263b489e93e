package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Wish;
import withy.catalog.ButtCap;
import withy.catalog.Decal;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * What the parts on a shelf cost at least under one set of prices, on any blank and wherever the reel stands; {@link BlankPrices} puts them in order for one
 * blank. What a milligram costs depends on where it lies ({@link Linear#leastPerMg}), so a part that stands at the seat is looked at there.
 */
final class PriceList {
    /** Furthest the front of a handle reaches ahead of the reel foot, mm. */
    private static final double FRONT_REACH_MM = 1500;

    /** Glue, thread and rounding of a small part where weight is welcome, mg. */
    private static final double SMALL_SLACK_MG = 2000;

    /** Furthest that the glue of a cap reaches into the butt, mm. */
    private static final double CAP_GLUE_MM = 20;

    private static final long UNKNOWN = Long.MIN_VALUE;

    final Linear k;
    final Shelf shelf;
    final double armMm;
    final SeatFloors seats;
    /** A number no keeper and inscription cost less than. */
    final long keeperFloor;

    private final Ground ground;
    private final Map<String, BlankPrices> blanks = new HashMap<>();
    private final long[] caps;
    private final Map<Station, long[]> checks = new HashMap<>();
    private @Nullable BlankPrices any;
    private @Nullable Long moneyAnywhere;

    PriceList(Shelf shelf, Linear k) {
        this.shelf = shelf;
        this.ground = shelf.ground;
        this.k = k;
        this.armMm = Setting.armMm(ground.brief);
        this.keeperFloor = keeper();
        this.caps = new long[ground.caps.size()];
        Arrays.fill(caps, UNKNOWN);
        this.seats = new SeatFloors(this);
    }

    /** The same on one blank. */
    BlankPrices on(BlankShape shape) {
        return blanks.computeIfAbsent(
                shape.blank().id(),
                id -> new BlankPrices(this, new OneBlank(shelf, shape), ground.manyBlanks() ? onAny() : null));
    }

    /** The most numbers it may keep: of each grip on each blank one, where all are looked at. */
    long numbers() {
        return (long) blanks.size() * (shelf.rears.length + shelf.butts.length + shelf.fores.length);
    }

    /** The same on any blank. */
    BlankPrices onAny() {
        BlankPrices known = any;
        if (known == null) {
            known = new BlankPrices(this, shelf.anyBlank(), null);
            any = known;
        }
        return known;
    }

    /** A cap by its place among those that are open ({@link Ground#caps}), wherever the reel stands. */
    long cap(int place) {
        if (caps[place] == UNKNOWN) {
            ButtCap cap = ground.caps.get(place);
            double from = -ground.lastFoot() - cap.addedMm();
            caps[place] = small(cap, Station.BUTT_CAP, from, -ground.firstFoot() + CAP_GLUE_MM);
        }
        return caps[place];
    }

    /** Every check of the shelf at a station that lies between two places told from the reel foot; {@link TrainGraph#NONE} where it may not stand there. */
    long[] checks(Station station, double fromMm, double toMm) {
        return checks.computeIfAbsent(station, any -> {
            long[] floors = new long[shelf.checks.length];
            CheckWorth.At worth = shelf.checkWorth.at(station);
            double c = k.leastPerMg(fromMm, toMm, armMm);
            for (int i = 0; i < floors.length; i++) {
                floors[i] = worth.allowed()[i]
                        ? weighed(c, shelf.checks[i])
                                + k.perMilli() * worth.milli()[i]
                                - k.perStyleCenti() * worth.styleCenti()[i]
                                + k.perMilliStep() * worth.milliSteps()[i]
                        : TrainGraph.NONE;
            }
            return floors;
        });
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

    private long keeper() {
        Wish<Boolean> wish = ground.handleRule ? ground.brief.handle().keeper() : null;
        boolean must = wish != null && wish.hard() && wish.value();
        boolean mustNot = wish != null && wish.hard() && !wish.value();
        long least = TrainGraph.NONE;
        if (shelf.stations.optional(Station.KEEPER) && !must) {
            least = k.perMilliStep() * ground.wishes.keeper(false);
        }
        double c = k.leastPerMg(shelf.shortestFrontMm, FRONT_REACH_MM, armMm);
        for (Keeper keeper : ground.keepers) {
            if (!mustNot && shelf.stations.allows(Station.KEEPER, keeper)) {
                long wished = k.perMilliStep() * ground.wishes.keeper(true);
                least = Math.min(
                        least, wished + (long) Math.floor(c * keeper.massMg()) + small(keeper, Station.KEEPER));
            }
        }
        long decal = 0;
        long heaviestMg = 0;
        for (Decal one : ground.decals) {
            decal = Math.max(decal, -missed(one, Station.DECAL));
            heaviestMg = Math.max(heaviestMg, one.massMg());
        }
        long welcome = (long) Math.floor(Math.min(0, c) * heaviestMg) + ground.endDress(k, shelf.shortestFrontMm);
        return (TrainGraph.none(least) ? 0 : least) - decal + welcome;
    }

    /** A small part somewhere between two places told from the reel foot. */
    private long small(Part part, Station station, double fromMm, double toMm) {
        return weighed(k.leastPerMg(fromMm, toMm, armMm), part) + small(part, station);
    }

    /** But for its weight. */
    private long small(Part part, Station station) {
        return money(part) - k.perStyleCenti() * style(part, station) + missed(part, station);
    }

    /** What a small part costs at least by its weight, at so much a milligram. */
    private static long weighed(double c, Part part) {
        return (long) Math.floor(c * (c >= 0 ? part.massMg() : part.massMg() + SMALL_SLACK_MG));
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
