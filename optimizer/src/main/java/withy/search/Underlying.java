package withy.search;

import java.util.BitSet;
import withy.catalog.ReelSeat;
import withy.rod.Station;

/** What a handle stands on, as far as its least price depends upon it: one blank, or any that is open ({@link AnyBlank}). */
interface Underlying {
    /** The largest diameter between two places, both included, mm. */
    double thickest(double fromMm, double toMm);

    /** The diameter at a place, or less, mm. */
    double thinnest(double atMm);

    /** Style points a seat is worth on it at most, hundredths. */
    long style(ReelSeat seat);

    /** Caps that may go on it, as indexes into those that are open ({@link Ground#caps}). */
    BitSet caps();

    /** False where a check of the shelf goes nowhere on it, wherever the reel stands. */
    boolean goes(Station station, int check);

    GripMasses rears();

    GripMasses butts();

    GripMasses fores();
}
