package withy.catalog;

/** Which end of the seat: toward the butt or toward the tip. */
public enum SeatEnd {
    REAR,
    FRONT
}
