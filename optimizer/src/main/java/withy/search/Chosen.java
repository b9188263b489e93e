package withy.search;

import withy.objectives.Style;

/**
 * A whole handle.
 *
 * @param front from the seat on ahead
 * @param behind what stands behind the seat
 */
record Chosen(Front front, Behind.Way behind) {
    /** Adds all of it to what else is there. */
    Tally tally(Tally to, Style style) {
        return behind.tally(front.tally(to), style, front.seat().set().seat());
    }
}
