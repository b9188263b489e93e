package withy.search;

import withy.catalog.Decal;
import withy.catalog.Keeper;

/**
 * A handle from the seat on ahead.
 *
 * @param seat the seat with hood and arbors
 * @param way what stands ahead of it
 * @param keeper keeper, or the empty choice
 * @param decal inscription, or the empty choice
 */
record Front(SeatGroup.SeatOption seat, Ahead.Way way, Option<Keeper> keeper, Option<Decal> decal) {
    /** With what stands behind the seat. */
    Chosen with(Behind.Way behind) {
        return new Chosen(this, behind);
    }

    /** Adds all of it to what else is there. */
    Tally tally(Tally to) {
        to.add(seat.option()).add(way.foreCheck()).add(way.foreGrip()).add(way.endCheck());
        return to.add(keeper).add(decal);
    }
}
