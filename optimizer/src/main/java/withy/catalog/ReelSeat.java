package withy.catalog;

/**
 * Holds the reel foot.
 *
 * @param casting true for a seat that carries the reel on top, false for a spinning seat
 * @param size nominal size (16, 17, 18 …)
 * @param boreMm inner diameter, mm
 * @param lengthMm length along the blank, mm
 * @param footCentreMm from the seat's rear end to the centre of the reel foot, mm
 * @param barrelOdMm outer diameter where the palm lies, mm
 * @param rearOdMm outer diameter of the rear face, mm
 * @param frontOdMm outer diameter of the front face, mm
 * @param footLengthMinMm shortest reel foot it clamps, mm
 * @param footLengthMaxMm longest reel foot it clamps, mm
 * @param footThicknessMaxMm thickest foot end that enters the hoods, mm
 * @param footWidthMaxMm widest foot that enters the hoods, mm
 * @param hoodFamily family of the moving hood's thread; hoods of the same family and size fit
 * @param movingHood which end's hood moves
 * @param movingHoodG weight of the moving hood it is sold with, g; taken off when another hood is fitted
 * @param doubleLock true where two nuts or a ratchet hold the hood
 * @param trigger true with a finger trigger
 * @param frontFinished true where the front edge needs no winding check
 * @param throughBlank true where the blank runs through and metal or full-length body carries the load (class 5)
 * @param recessFamily fore grips of this recess family fit over its front hood; empty = none
 */
public record ReelSeat(
        PartFacts facts,
        boolean casting,
        int size,
        double boreMm,
        double lengthMm,
        double footCentreMm,
        double barrelOdMm,
        double rearOdMm,
        double frontOdMm,
        double footLengthMinMm,
        double footLengthMaxMm,
        double footThicknessMaxMm,
        double footWidthMaxMm,
        String hoodFamily,
        SeatEnd movingHood,
        double movingHoodG,
        boolean doubleLock,
        boolean trigger,
        boolean frontFinished,
        boolean throughBlank,
        String recessFamily)
        implements Part {

    @Override
    public PartKind kind() {
        return PartKind.REEL_SEAT;
    }
}
