package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;
import withy.rod.Setting;
import withy.rod.Station;

/** What the seats on a shelf cost at least under one set of prices, each with the hood and the arbors that are cheapest, wherever the reel stands. */
final class SeatFloors {
    private static final long UNKNOWN = Long.MIN_VALUE;

    private final PriceList list;
    private final Shelf shelf;
    private final Ground ground;
    private final Linear k;
    private final double armMm;
    /** By class: seat and the cheapest hood, the same on every blank. */
    private final Map<Integer, long[]> parts = new HashMap<>();

    private final GapFloors gaps;

    /** Of the seats on the list's shelf. */
    SeatFloors(PriceList list) {
        this.list = list;
        this.shelf = list.shelf;
        this.ground = shelf.ground;
        this.k = list.k;
        this.armMm = Setting.armMm(ground.brief);
        this.gaps = new GapFloors(list);
    }

    /**
     * A number a seat of the shelf with hood and arbors costs no less than on a blank, or on any; {@link TrainGraph#NONE} where it does not go on it.
     *
     * @param leastClass class of the weaker of seat and hood
     * @param firstMm reel foot nearest the butt, mm
     * @param lastMm reel foot furthest from it, mm
     */
    long of(int place, int leastClass, Underlying on, double firstMm, double lastMm) {
        ReelSeat seat = shelf.seats[place];
        double rear = -seat.footCentreMm();
        double front = rear + seat.lengthMm();
        double thin = Math.min(on.thinnest(Math.max(0, lastMm + rear)), on.thinnest(Math.max(0, firstMm + rear)));
        if (ground.boreRuled && seat.boreMm() < thin - 0.01) {
            return TrainGraph.NONE;
        }
        long own = parts(place, leastClass);
        if (TrainGraph.none(own)) {
            return own;
        }
        long style = on.style(seat) + shelf.neighbours.pairs(seat).most();
        // what fills a seat lies around its middle
        double c = k.perMgAt((rear + front) / 2, armMm);
        long filled = gaps.of(seat, on, c, firstMm + rear, lastMm + rear);
        if (TrainGraph.none(filled)) {
            return TrainGraph.NONE;
        }
        long seatWished = k.perMilliStep() * ground.wishes.seat(seat) + list.missed(seat, Station.SEAT);
        return own + filled + seatWished - k.perStyleCenti() * style;
    }

    private long parts(int place, int leastClass) {
        long[] of = parts.computeIfAbsent(leastClass, any -> {
            long[] unknown = new long[shelf.seats.length];
            Arrays.fill(unknown, UNKNOWN);
            return unknown;
        });
        if (of[place] == UNKNOWN) {
            of[place] = partsNow(shelf.seats[place], leastClass);
        }
        return of[place];
    }

    private long partsNow(ReelSeat seat, int leastClass) {
        if (seat.facts().durabilityClass() < leastClass) {
            return TrainGraph.NONE;
        }
        long least = shelf.stations.optional(Station.HOOD) ? own(seat, null) : TrainGraph.NONE;
        for (Hood hood : shelf.hoodsFor(seat)) {
            if (hood.facts().durabilityClass() >= leastClass) {
                least = Math.min(least, own(seat, hood));
            }
        }
        return least;
    }

    /** Seat and hood at their places. */
    private long own(ReelSeat seat, @Nullable Hood hood) {
        double mg = seat.massMg() - (hood == null ? 0 : Math.round(seat.movingHoodG() * 1000));
        double middle = seat.lengthMm() / 2 - seat.footCentreMm() + armMm;
        double inertia = mg * (middle * middle + seat.lengthMm() * seat.lengthMm() / 12);
        double cost = k.perMg() * mg + k.perMgMm() * mg * (middle - armMm) + k.perMgMm2() * inertia;
        long money = list.money(seat);
        if (hood != null) {
            double u = seat.movingHood() == SeatEnd.REAR ? -seat.footCentreMm() : seat.lengthMm() - seat.footCentreMm();
            cost += hood.massMg() * k.perMgAt(u, armMm);
            money += k.perMilli() * ground.tariff.partMilli(hood, 1) + list.missed(hood, Station.HOOD);
        }
        return (long) Math.floor(cost) - Math.abs(k.perMgMm()) - Math.abs(k.perMgMm2()) + money;
    }
}
