package withy.rod;

import withy.catalog.Part;

/**
 * A part at its station.
 *
 * @param station where
 * @param part what
 * @param fromMm its rear end from the blank's butt, mm (guides: the ring; tip-top: the blank's tip)
 * @param lengthMm its length along the blank as fitted, mm (guides, keeper: 0)
 */
public record Placed(Station station, Part part, double fromMm, double lengthMm) {
    /** Its front end, mm. */
    public double toMm() {
        return fromMm + lengthMm;
    }
}
