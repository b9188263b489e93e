package withy.mechanics;

/**
 * What fills the gap between blank and seat, by the radial gap g in mm (house table, common practice): up to
 * {@value #GLUE_ONLY_MM} glue alone, up to {@value #TAPE_UP_TO_MM} tape rings, above that arbors, never over
 * {@value #LARGEST_GAP_MM}. Two arbors near the ends of a seat, three from {@value #THREE_FROM_SEAT_MM} mm of seat or durability
 * class {@value #THREE_FROM_CLASS}. No published source.
 */
public final class ArborRings {
    public static final double GLUE_ONLY_MM = 0.2;
    public static final double TAPE_UP_TO_MM = 1.0;
    public static final double LARGEST_GAP_MM = 6.0;
    public static final double THREE_FROM_SEAT_MM = 110.0;
    public static final int THREE_FROM_CLASS = 4;

    private static final double G_PER_MM3 = 1e-3;

    /** How a gap is filled. */
    public enum Filling {
        TOO_TIGHT,
        GLUE,
        TAPE_RINGS,
        ARBORS,
        TOO_WIDE
    }

    private ArborRings() {}

    /** The filling for a radial gap. */
    public static Filling fillingFor(double radialGapMm) {
        if (radialGapMm < 0.0) {
            return Filling.TOO_TIGHT;
        }
        if (radialGapMm <= GLUE_ONLY_MM) {
            return Filling.GLUE;
        }
        if (radialGapMm < TAPE_UP_TO_MM) {
            return Filling.TAPE_RINGS;
        }
        return radialGapMm <= LARGEST_GAP_MM ? Filling.ARBORS : Filling.TOO_WIDE;
    }

    /** Most arbors, or rings of tape, that carry a seat or a grip. */
    public static final int MOST = 3;

    private static final int FEWEST = 2;

    /** How many arbors, or rings of tape, carry a seat. */
    public static int count(double seatLengthMm, int durabilityClass) {
        return seatLengthMm >= THREE_FROM_SEAT_MM || durabilityClass >= THREE_FROM_CLASS ? MOST : FEWEST;
    }

    /**
     * Butt ends of evenly spread rings: the first at one end, the last at the other.
     *
     * @param fromMm butt end of the seat
     * @param seatLengthMm length of the seat
     * @param ringMm length of one ring
     * @param count rings, at least 1
     */
    public static double[] places(double fromMm, double seatLengthMm, double ringMm, int count) {
        if (count < 1 || count * ringMm > seatLengthMm) {
            throw new IllegalArgumentException(count + " rings of " + ringMm + " mm must fit a seat of " + seatLengthMm
                    + " mm.\nMaybe use a full sleeve.");
        }
        double[] places = new double[count];
        for (int i = 0; i < count; i++) {
            places[i] = count == 1
                    ? fromMm + (seatLengthMm - ringMm) / 2.0
                    : fromMm + i * (seatLengthMm - ringMm) / (count - 1);
        }
        return places;
    }

    /** Mass, g, of a film of adhesive around a cylinder: π·d·l·film·ρ. */
    public static double adhesiveMassG(double diameterMm, double lengthMm, double filmMm, double densityGPerCm3) {
        Finite.notNegative(diameterMm, "glued diameter in mm");
        Finite.notNegative(lengthMm, "glued length in mm");
        Finite.notNegative(filmMm, "adhesive film in mm");
        return Math.PI * diameterMm * lengthMm * filmMm * densityGPerCm3 * G_PER_MM3;
    }

    /** Mass, g, of adhesive that fills a whole radial gap. */
    public static double fillMassG(double boreMm, double blankMm, double lengthMm, double densityGPerCm3) {
        return Frustum.tube(lengthMm, boreMm, blankMm).massG(densityGPerCm3);
    }
}
