package withy.rod;

import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.catalog.SeatEnd;

/**
 * The reel seat with what belongs to it.
 *
 * @param seat the seat
 * @param hood moving hood fitted instead of its own, or null
 * @param arbor bushing between seat and blank, or null (glue or tape rings)
 * @param fromMm rear end of the seat, mm
 */
public record SeatSet(
        ReelSeat seat, @Nullable Hood hood, @Nullable Arbor arbor, double fromMm) {

    /** Front end, mm. */
    public double toMm() {
        return fromMm + seat.lengthMm();
    }

    /** Outer diameter of the rear face, mm: the hood's where the moving hood is there. */
    public double rearFaceMm() {
        return hood != null && seat.movingHood() == SeatEnd.REAR ? hood.faceOdMm() : seat.rearOdMm();
    }

    /** Outer diameter of the front face, mm. */
    public double frontFaceMm() {
        return hood != null && seat.movingHood() == SeatEnd.FRONT ? hood.faceOdMm() : seat.frontOdMm();
    }

    /** True where two nuts or a ratchet hold the moving hood. */
    public boolean doubleLock() {
        return hood != null ? hood.doubleLock() : seat.doubleLock();
    }
}
