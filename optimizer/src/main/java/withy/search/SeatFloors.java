package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;
import withy.mechanics.ArborRings;
import withy.rod.SeatGap;
import withy.rod.Setting;
import withy.rod.Station;

/** What the seats on a shelf cost at least under one set of prices, each with the hood and the arbors that are cheapest, wherever the reel stands. */
final class SeatFloors {
    /** Rounding of what fills a seat where weight is welcome, mg. */
    private static final double FILLING_ROUNDING_MG = 5;

    /** What an arbor may be off its bore and its blank, mm. */
    private static final double ARBOR_PLAY_MM = 0.01;

    /** Rounding of arbors and of glue, mg. */
    private static final double ROUNDING_MG = 2;

    private static final long UNKNOWN = Long.MIN_VALUE;

    private final PriceList list;
    private final Shelf shelf;
    private final Ground ground;
    private final Linear k;
    private final double armMm;
    /** By class: seat and the cheapest hood, the same on every blank. */
    private final Map<Integer, long[]> parts = new HashMap<>();

    /** By the number of rings a seat takes: the arbors no other is both lighter and cheaper than. */
    private final Filling[][] fillings;
    /** Most that wished arbors are credited, as a number not above nought. */
    private final long wished;

    /** Of the seats on the list's shelf. */
    SeatFloors(PriceList list) {
        this.list = list;
        this.shelf = list.shelf;
        this.ground = shelf.ground;
        this.k = list.k;
        this.armMm = Setting.armMm(ground.brief);
        this.fillings = new Filling[ArborRings.MOST + 1][];
        for (int rings = 1; rings <= ArborRings.MOST; rings++) {
            fillings[rings] = fillings(rings);
        }
        long credit = 0;
        for (Arbor arbor : ground.arbors) {
            credit = Math.min(credit, list.missed(arbor, Station.SEAT_ARBORS));
        }
        this.wished = credit;
    }

    /** Arbors for one seat: what they are made of and their price. */
    private record Filling(double densityGMm3, long money) {}

    private Filling[] fillings(int rings) {
        List<Filling> all = new ArrayList<>();
        for (Arbor arbor : ground.arbors) {
            long money = k.perMilli() * ground.tariff.partMilli(arbor, SeatGap.pieces(arbor, rings));
            all.add(new Filling(arbor.densityGMm3(), money));
        }
        all.sort(Comparator.comparingDouble(Filling::densityGMm3).thenComparingLong(Filling::money));
        List<Filling> worthIt = new ArrayList<>();
        long cheapest = Long.MAX_VALUE;
        for (Filling one : all) {
            if (one.money < cheapest) {
                worthIt.add(one);
                cheapest = one.money;
            }
        }
        return worthIt.toArray(Filling[]::new);
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
        long seatWished = k.perMilliStep() * ground.wishes.seat(seat) + list.missed(seat, Station.SEAT);
        long filled = c < 0
                ? (long) Math.floor(c * mostFillingMg(seat, on)) + arbors(seat, on, 0, firstMm, lastMm)
                : arbors(seat, on, c, firstMm, lastMm);
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

    /** Mass that what fills a seat does not exceed, mg: its whole bore around the thinnest blank filled, and glue on both sides. */
    private double mostFillingMg(ReelSeat seat, Underlying on) {
        double rear = Math.max(0, ground.firstFoot() - seat.footCentreMm());
        double thick = on.thickest(rear, Math.max(rear, ground.lastFoot() + seat.lengthMm()));
        double thin = on.thinnest(ground.lastFoot() + seat.lengthMm());
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

    /** Least that fills the gap between seat and blank, with its glue, where the blank is thickest: elsewhere the gap is wider. */
    private long arbors(ReelSeat seat, Underlying on, double c, double firstMm, double lastMm) {
        double rear = Math.max(0, firstMm - seat.footCentreMm());
        double front = Math.max(rear, lastMm + seat.lengthMm());
        double thick = on.thickest(rear, front);
        if ((seat.boreMm() - thick) / 2 < ArborRings.TAPE_UP_TO_MM + 0.01 || !ground.boreRuled) {
            return wished;
        }
        double outer = seat.boreMm() - SeatGap.UNDER_BORE_MM - ARBOR_PLAY_MM;
        double inner = thick + SeatGap.OVER_BLANK_MM + ARBOR_PLAY_MM;
        int rings = ArborRings.count(seat.lengthMm(), ground.brief.durabilityClass());
        double volume = Math.PI / 4 * (outer * outer - inner * inner) * rings * SeatGap.RING_MM;
        double glueMg = glueMg(seat.boreMm() + on.thinnest(front), rings * SeatGap.RING_MM);
        long least = TrainGraph.NONE;
        for (Filling one : fillings[rings]) {
            double mg = Math.max(0, volume * one.densityGMm3 * 1000 + glueMg - ROUNDING_MG);
            least = Math.min(least, (long) (c * mg) + one.money);
        }
        return TrainGraph.none(least) ? TrainGraph.NONE / 4 : least + wished;
    }

    private double glueMg(double diametersMm, double lengthMm) {
        double film = ground.catalog.rates().adhesiveFilmMm();
        return 1000 * ArborRings.adhesiveMassG(diametersMm, lengthMm, film, ground.thinnestGlueGMl);
    }
}
