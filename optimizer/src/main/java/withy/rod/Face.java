package withy.rod;

/**
 * One end of a part along the handle, where it meets its neighbour.
 *
 * @param station whose
 * @param partId which part
 * @param odMm outer diameter there, mm
 * @param ring true for winding checks and trim rings
 */
public record Face(Station station, String partId, double odMm, boolean ring) {}
