package withy.search;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;
import withy.mechanics.ArborRings;
import withy.rod.BlankShape;
import withy.rod.SeatGap;
import withy.rod.Setting;
import withy.rod.Station;

/** What the seats on a shelf cost at least under one set of prices, each with the hood and the arbors that are cheapest, wherever the reel stands. */
final class SeatFloors {
    /** Rounding of what fills a seat where weight is welcome, mg. */
    private static final double FILLING_ROUNDING_MG = 5;

    /** What an arbor may be off its bore and its blank, mm. */
    private static final double ARBOR_PLAY_MM = 0.1;

    private static final long UNKNOWN = Long.MIN_VALUE;

    private final PriceList list;
    private final Shelf shelf;
    private final Ground ground;
    private final Linear k;
    private final double armMm;
    /** Seat and the cheapest hood, the same on every blank. */
    private final long[] parts;

    /** Of the seats on the list's shelf. */
    SeatFloors(PriceList list) {
        this.list = list;
        this.shelf = list.shelf;
        this.parts = new long[shelf.seats.length];
        Arrays.fill(parts, UNKNOWN);
        this.ground = shelf.ground;
        this.k = list.k;
        this.armMm = Setting.armMm(ground.brief);
    }

    /** A number a seat of the shelf with hood and arbors costs no less than on a blank; {@link TrainGraph#NONE} where it does not go on it. */
    long of(int place, BlankShape shape) {
        ReelSeat seat = shelf.seats[place];
        double rear = -seat.footCentreMm();
        double front = rear + seat.lengthMm();
        double thin = Math.min(
                shape.profile().at(Math.max(0, ground.lastFoot() + rear)),
                shape.profile().at(Math.max(0, ground.firstFoot() + rear)));
        if (ground.boreRuled && seat.boreMm() < thin - 0.01) {
            return TrainGraph.NONE;
        }
        long style = ground.style.part(shape.blank(), shelf.form, Station.SEAT, seat, 1)
                + shelf.neighbours.pairs(seat).most();
        long own = parts(place);
        if (TrainGraph.none(own)) {
            return own;
        }
        // what fills a seat lies around its middle
        double c = k.perMgAt((rear + front) / 2, armMm);
        long wished = k.perMilliStep() * ground.wishes.seat(seat) + list.missed(seat, Station.SEAT);
        long filled = c < 0
                ? (long) Math.floor(c * mostFillingMg(seat, shape)) + arbors(seat, shape, 0)
                : arbors(seat, shape, c);
        return own + filled + wished - k.perStyleCenti() * style;
    }

    private long parts(int place) {
        if (parts[place] == UNKNOWN) {
            ReelSeat seat = shelf.seats[place];
            long least = shelf.stations.optional(Station.HOOD) ? own(seat, null) : TrainGraph.NONE;
            for (Hood hood : shelf.hoodsFor(seat)) {
                least = Math.min(least, own(seat, hood));
            }
            parts[place] = least;
        }
        return parts[place];
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

    /** Mass that what fills a seat does not exceed, mg: its whole bore around the thinnest blank filled, and glue on both sides. */
    private double mostFillingMg(ReelSeat seat, BlankShape shape) {
        double rear = Math.max(0, ground.firstFoot() - seat.footCentreMm());
        double thick = shape.profile().largestBetween(rear, Math.max(rear, ground.lastFoot() + seat.lengthMm()));
        double thin = shape.profile().at(ground.lastFoot() + seat.lengthMm());
        double bore = Math.max(seat.boreMm(), thick);
        double densest = ground.catalog.rates().tapeDensityGMm3();
        for (Arbor arbor : ground.arbors) {
            densest = Math.max(densest, arbor.densityGMm3());
        }
        double filled = Math.PI / 4 * (bore * bore - thin * thin) * seat.lengthMm() * densest;
        double glued = 2
                * ArborRings.adhesiveMassG(
                        bore, seat.lengthMm(), ground.catalog.rates().adhesiveFilmMm(), ground.thickestGlueGMl);
        return (filled + glued) * 1000 + FILLING_ROUNDING_MG;
    }

    /** Least that fills the gap between seat and blank where the reel stands nearest the butt: it only gets wider further up. */
    private long arbors(ReelSeat seat, BlankShape shape, double c) {
        double rear = Math.max(0, ground.firstFoot() - seat.footCentreMm());
        double thick = shape.profile().largestBetween(rear, Math.max(rear, ground.lastFoot() + seat.lengthMm()));
        long wished = 0;
        for (Arbor arbor : ground.arbors) {
            wished = Math.min(wished, list.missed(arbor, Station.SEAT_ARBORS));
        }
        if ((seat.boreMm() - thick) / 2 < ArborRings.TAPE_UP_TO_MM + 0.01 || !ground.boreRuled) {
            return wished;
        }
        double outer = seat.boreMm() - SeatGap.UNDER_BORE_MM - ARBOR_PLAY_MM;
        double inner = thick + SeatGap.OVER_BLANK_MM + ARBOR_PLAY_MM;
        int rings = ArborRings.count(seat.lengthMm(), ground.brief.durabilityClass());
        double volume = Math.PI / 4 * (outer * outer - inner * inner) * rings * SeatGap.RING_MM;
        long least = TrainGraph.NONE;
        for (Arbor arbor : ground.arbors) {
            double mg = Math.max(0, volume * arbor.densityGMm3() * 1000 - 1);
            least = Math.min(least, (long) (c * mg) + list.money(arbor));
        }
        return TrainGraph.none(least) ? TrainGraph.NONE / 4 : least + wished;
    }
}
