package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withy.catalog.Arbor;
import withy.catalog.ReelSeat;
import withy.mechanics.ArborRings;
import withy.rod.Fitter;
import withy.rod.SeatGap;
import withy.rod.Station;

/** What fills the gap between seat and blank costs at least under one set of prices: arbors, tape or glue alone, by how wide the gap may be. */
final class GapFloors {
    /** Rounding of what fills a seat where weight is welcome, mg. */
    private static final double FILLING_ROUNDING_MG = 5;

    /** What an arbor may be off its bore and its blank, mm. */
    private static final double PLAY_MM = 0.01;

    /** Rounding of arbors and of glue, mg. */
    private static final double ROUNDING_MG = 2;

    private final Ground ground;
    private final Linear k;
    /** By the number of rings a seat takes: the arbors no other is both lighter and cheaper than. */
    private final Arbors[][] light = new Arbors[ArborRings.MOST + 1][];
    /** The same of those no other is both heavier and cheaper than. */
    private final Arbors[][] heavy = new Arbors[ArborRings.MOST + 1][];
    /** Most that wished arbors are credited, as a number not above nought. */
    private final long wished;

    /** For the seats on the list's shelf. */
    GapFloors(PriceList list) {
        this.ground = list.shelf.ground;
        this.k = list.k;
        for (int rings = 1; rings <= ArborRings.MOST; rings++) {
            Comparator<Arbors> byDensity = Comparator.comparingDouble(Arbors::densityGMm3);
            List<Arbors> all = arbors(rings);
            light[rings] = worthIt(all, byDensity);
            heavy[rings] = worthIt(all, byDensity.reversed());
        }
        long credit = 0;
        for (Arbor arbor : ground.arbors) {
            credit = Math.min(credit, list.missed(arbor, Station.SEAT_ARBORS));
        }
        this.wished = credit;
    }

    /** Arbors for one seat: what they are made of and their price. */
    private record Arbors(double densityGMm3, long money) {}

    private List<Arbors> arbors(int rings) {
        List<Arbors> all = new ArrayList<>();
        for (Arbor arbor : ground.arbors) {
            long money = k.perMilli() * ground.tariff.partMilli(arbor, SeatGap.pieces(arbor, rings));
            all.add(new Arbors(arbor.densityGMm3(), money));
        }
        return all;
    }

    private static Arbors[] worthIt(List<Arbors> all, Comparator<Arbors> bestFirst) {
        List<Arbors> worthIt = new ArrayList<>();
        long cheapest = Long.MAX_VALUE;
        for (Arbors one :
                all.stream().sorted(bestFirst.thenComparingLong(Arbors::money)).toList()) {
            if (one.money < cheapest) {
                worthIt.add(one);
                cheapest = one.money;
            }
        }
        return worthIt.toArray(Arbors[]::new);
    }

    /**
     * A number what fills the gap of a seat costs no less than, its glue included; {@link TrainGraph#none} where only arbors do and there are none.
     *
     * @param c cost of a milligram around the middle of the seat
     * @param firstMm butt end of the seat where it stands nearest the butt, mm
     * @param lastMm butt end of the seat where it stands furthest from it, mm
     */
    long of(ReelSeat seat, Underlying on, double c, double firstMm, double lastMm) {
        double rear = Math.max(0, firstMm);
        double front = Math.max(rear, lastMm + seat.lengthMm());
        double thick = on.thickest(rear, front);
        boolean wide = (seat.boreMm() - thick) / 2 >= ArborRings.TAPE_UP_TO_MM + PLAY_MM && ground.boreRuled;
        if (c >= 0) {
            return wide ? lightest(seat, c, thick, on.thinnest(front)) : wished;
        }
        double thin = Math.min(on.thinnest(rear), on.thinnest(Math.max(0, lastMm)));
        double bore = Math.max(seat.boreMm(), thick);
        long filled = heaviest(seat, c, bore, ground.boreRuled ? thin : 0);
        return wide
                ? filled
                : Math.min(filled, (long) Math.floor(c * mostBareMg(seat, bore, on.thinnest(front))) + wished);
    }

    /** Arbors where weight is a burden: least of them where the blank is thickest, elsewhere the gap is wider. */
    private long lightest(ReelSeat seat, double c, double thick, double thin) {
        double outer = seat.boreMm() - SeatGap.UNDER_BORE_MM - PLAY_MM;
        double inner = thick + SeatGap.OVER_BLANK_MM + PLAY_MM;
        int rings = rings(seat);
        double glueMg = glueMg(seat.boreMm() + thin, rings * SeatGap.RING_MM, ground.thinnestGlueGMl);
        long least = TrainGraph.NONE;
        for (Arbors one : light[rings]) {
            double mg = Math.max(0, volume(outer, inner, rings) * one.densityGMm3 * 1000 + glueMg - ROUNDING_MG);
            least = Math.min(least, (long) (c * mg) + one.money);
        }
        return TrainGraph.none(least) ? TrainGraph.NONE : least + wished;
    }

    /** Arbors where weight is welcome: most of them where the blank is thinnest at the thick end of the seat. */
    private long heaviest(ReelSeat seat, double c, double bore, double thin) {
        double outer = seat.boreMm() - SeatGap.UNDER_BORE_MM + PLAY_MM;
        double inner = Math.max(0, thin + SeatGap.OVER_BLANK_MM - PLAY_MM);
        int rings = rings(seat);
        double glued = Math.max(2 * bore * rings * SeatGap.RING_MM, bore * seat.lengthMm());
        double glueMg = glueMg(glued, 1, ground.thickestGlueGMl);
        long least = TrainGraph.NONE;
        for (Arbors one : heavy[rings]) {
            double mg = Math.max(0, volume(outer, inner, rings)) * one.densityGMm3 * 1000 + glueMg + ROUNDING_MG;
            least = Math.min(least, (long) Math.floor(c * mg) + one.money);
        }
        return TrainGraph.none(least) ? TrainGraph.NONE : least + wished;
    }

    private int rings(ReelSeat seat) {
        return ArborRings.count(seat.lengthMm(), ground.brief.durabilityClass());
    }

    private static double volume(double outerMm, double innerMm, int rings) {
        return Math.PI / 4 * (outerMm * outerMm - innerMm * innerMm) * rings * SeatGap.RING_MM;
    }

    /** Mass that tape or glue alone does not exceed, mg. */
    private double mostBareMg(ReelSeat seat, double bore, double thin) {
        double tapeMm = SeatGap.TAPE_RINGS * Fitter.TAPE_RING_MM;
        double tape = Math.PI
                / 4
                * Math.max(0, bore * bore - thin * thin)
                * tapeMm
                * ground.catalog.rates().tapeDensityGMm3();
        return tape * 1000
                + glueMg(bore, Math.max(tapeMm, seat.lengthMm()), ground.thickestGlueGMl)
                + FILLING_ROUNDING_MG;
    }

    private double glueMg(double diametersMm, double lengthMm, double densityGMl) {
        return 1000
                * ArborRings.adhesiveMassG(
                        diametersMm, lengthMm, ground.catalog.rates().adhesiveFilmMm(), densityGMl);
    }
}
