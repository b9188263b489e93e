package withy.rod;

import withy.catalog.Arbor;
import withy.mechanics.ArborRings;

/**
 * The gap between a seat's bore and the blank, and what fills it (trade table; common practice, no published source).
 *
 * @param blankMm blank under the middle of the seat, mm
 * @param thickMm blank at the thick end of the seat, mm
 * @param radialMm half of bore less blank at the thick end, mm; negative where the seat does not go on
 * @param filling what fills it; arbors where an arbor part is chosen
 * @param rings how many arbor rings carry the seat
 * @param arborOuterMm arbor trimmed to the seat's bore, mm
 * @param arborInnerMm arbor reamed to the blank at the thick end, mm
 */
public record SeatGap(
        double blankMm,
        double thickMm,
        double radialMm,
        ArborRings.Filling filling,
        int rings,
        double arborOuterMm,
        double arborInnerMm) {
    /** Length of one arbor ring, mm (trade table 20–30). */
    public static final double RING_MM = 25;

    /** Tape rings under a seat (trade table: four, never a full sleeve). */
    public static final int TAPE_RINGS = 4;

    /** Arbor outer diameter under the seat's bore, mm (trade table 0.1–0.2). */
    public static final double UNDER_BORE_MM = 0.15;

    /** Arbor bore over the blank, mm (trade table 0.1–0.2). */
    public static final double OVER_BLANK_MM = 0.15;

    /** Works it out. */
    public static SeatGap of(SeatSet set, Setting setting) {
        double thick = setting.thickestMm(set.fromMm(), set.toMm());
        double radial = (set.seat().boreMm() - thick) / 2;
        ArborRings.Filling filling = ArborRings.fillingFor(radial);
        if (set.arbor() != null && filling == ArborRings.Filling.TAPE_RINGS) {
            filling = ArborRings.Filling.ARBORS;
        }
        return new SeatGap(
                setting.odAt((set.fromMm() + set.toMm()) / 2),
                thick,
                radial,
                filling,
                ArborRings.count(set.seat().lengthMm(), setting.brief().durabilityClass()),
                set.seat().boreMm() - UNDER_BORE_MM,
                thick + OVER_BLANK_MM);
    }

    /** Arbor length used in all, mm. */
    public double ringsMm() {
        return rings * RING_MM;
    }

    /** Pieces of an arbor as sold that are cut up for it. */
    public int pieces(Arbor arbor) {
        return pieces(arbor, rings);
    }

    /** Pieces of an arbor as sold that are cut up for so many rings. */
    public static int pieces(Arbor arbor, int rings) {
        int ringsAPiece = Math.max(1, (int) Math.floor(arbor.lengthMm() / RING_MM));
        return (rings + ringsAPiece - 1) / ringsAPiece;
    }
}
