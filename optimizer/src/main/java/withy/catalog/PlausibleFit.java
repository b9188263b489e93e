package withy.catalog;

import java.util.NavigableSet;
import java.util.Set;
import java.util.TreeSet;

/** Parts against each other: what no blank, seat or tip of this catalogue can take. */
final class PlausibleFit {
    /** Loosest tip-top, mm (handbook, rule 12). */
    private static final double TUBE_LOOSEST_MM = 0.40;

    /** Loosest rigid check, mm (handbook, rule 11). */
    private static final double CHECK_LOOSEST_MM = 0.5;

    /** Widest radial gap under a seat, mm (handbook, rule 9). */
    private static final double SEAT_GAP_MM = 6;

    /** The handle lies in this share of a blank, from the butt. */
    private static final double HANDLE_SHARE = 0.4;

    private final CatalogPlausibility told;
    private final NavigableSet<Double> tips = new TreeSet<>();
    private final NavigableSet<Double> tubes = new TreeSet<>();
    private final Set<String> seats = new TreeSet<>();
    private final Set<String> recesses = new TreeSet<>();
    private double thinnestMm = Double.MAX_VALUE;
    private double thickestMm;

    PlausibleFit(Catalog catalog, CatalogPlausibility told) {
        this.told = told;
        for (Blank blank : catalog.all(PartKind.BLANK, Blank.class)) {
            tips.add(blank.tipOdMm());
            for (Blank.OdStation station : blank.stations()) {
                if (station.xMm() <= HANDLE_SHARE * blank.lengthMm()) {
                    thinnestMm = Math.min(thinnestMm, station.odMm());
                    thickestMm = Math.max(thickestMm, station.odMm());
                }
            }
        }
        catalog.all(PartKind.TIP_TOP, TipTop.class).forEach(top -> tubes.add(top.tubeMm()));
        for (ReelSeat seat : catalog.all(PartKind.REEL_SEAT, ReelSeat.class)) {
            seats.add(seat.hoodFamily() + " " + seat.size());
            recesses.add(seat.recessFamily());
        }
    }

    void check(Part part) {
        if (part instanceof Blank blank) {
            blank(blank);
        } else if (part instanceof TipTop top) {
            tipTop(top);
        } else if (part instanceof ReelSeat seat) {
            inHandle(seat, "bore_mm", seat.boreMm(), thinnestMm, thickestMm + 2 * SEAT_GAP_MM);
        } else if (part instanceof Grip grip) {
            grip(grip);
        } else if (part instanceof Check check) {
            double slack = check.soft() ? 0 : CHECK_LOOSEST_MM;
            double least = check.soft() ? 0.75 * thinnestMm : thinnestMm;
            inHandle(check, "inner_mm", check.innerMm(), least, thickestMm + slack);
        } else if (part instanceof ButtCap cap) {
            inHandle(cap, "inner_mm", cap.innerMm(), 0.75 * thinnestMm, thickestMm + 2);
        } else if (part instanceof Arbor arbor) {
            inHandle(arbor, "id_mm", Math.max(arbor.idMm(), thinnestMm), thinnestMm, thickestMm);
        } else if (part instanceof Hood hood) {
            hood(hood);
        } else if (part instanceof Guide guide) {
            guide(guide);
        }
    }

    private void blank(Blank blank) {
        Double tube = tubes.higher(blank.tipOdMm());
        if (!tubes.isEmpty() && (tube == null || tube - blank.tipOdMm() > TUBE_LOOSEST_MM)) {
            told.warn(
                    blank,
                    "stations_mm",
                    Numbers.plain(blank.tipOdMm()) + " mm",
                    "is a tip that no tip-top here fits",
                    "a tube up to " + Numbers.plain(TUBE_LOOSEST_MM) + " mm wider",
                    "measure the tip again, or stock the next size");
        }
        for (int i = 1; i < blank.stations().size(); i++) {
            Blank.OdStation rear = blank.stations().get(i - 1);
            Blank.OdStation front = blank.stations().get(i);
            if (front.odMm() > rear.odMm() && front.xMm() > rear.xMm()) {
                told.warn(
                        blank,
                        "stations_mm",
                        Numbers.plain(front.xMm()) + ":" + Numbers.plain(front.odMm()),
                        "is thicker than at " + Numbers.plain(rear.xMm()) + " mm, nearer the butt",
                        "growing only at a joint, as two stations of one x",
                        "two digits changed places");
            }
        }
    }

    private void tipTop(TipTop top) {
        Double tip = tips.lower(top.tubeMm());
        if (tip == null) {
            told.warn(
                    top,
                    "tube_mm",
                    Numbers.plain(top.tubeMm()) + " mm",
                    "is smaller than any tip here",
                    "above " + Numbers.plain(tips.first()) + " mm",
                    "it waits for a thinner blank; or the figure is in 64ths of an inch: name the column tube_64ths");
        }
    }

    private void grip(Grip grip) {
        inHandle(grip, "ream_max_mm", grip.reamMaxMm(), 0.85 * thinnestMm, Double.MAX_VALUE);
        inHandle(grip, "bore_mm", grip.boreMm(), 0, thickestMm + 2);
        if (!grip.recessFamily().isEmpty() && !recesses.contains(grip.recessFamily())) {
            told.warn(
                    grip,
                    "recess_family",
                    grip.recessFamily(),
                    "is the recess of no seat here",
                    String.join(", ", recesses),
                    "the family is mistyped");
        }
    }

    private void hood(Hood hood) {
        if (!seats.contains(hood.family() + " " + hood.size())) {
            told.warn(
                    hood,
                    "family",
                    hood.family() + " " + hood.size(),
                    "fits no seat here",
                    "hood_family and size of a seat",
                    "family or size is mistyped");
        }
    }

    private void guide(Guide guide) {
        if (guide.heightMm() < guide.ringSize() / 2) {
            told.warn(
                    guide,
                    "height_mm",
                    Numbers.plain(guide.heightMm()) + " mm",
                    "puts the ring into the blank",
                    "at least half the ring size",
                    "it was measured to the ring's lower edge");
        }
        double open = guide.ringIdMm() / guide.ringSize();
        if (open < 0.5 || open > 0.95) {
            told.warn(
                    guide,
                    "ring_id_mm",
                    Numbers.plain(guide.ringIdMm()) + " mm",
                    "is an odd opening for ring size " + Numbers.plain(guide.ringSize()),
                    "half to nineteen twentieths of it",
                    "the inner diameter of another size was copied");
        }
    }

    private void inHandle(Part part, String column, double value, double least, double most) {
        if (value < least || value > most) {
            told.warn(
                    part,
                    column,
                    Numbers.plain(value) + " mm",
                    "fits no blank here",
                    "handles here are " + Numbers.plain(thinnestMm) + " to " + Numbers.plain(thickestMm) + " mm thick",
                    "inner and outer diameter changed places");
        }
    }
}
