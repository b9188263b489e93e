package withy.rod;

/**
 * What a builder reads of a rod.
 *
 * @param weightG finished rod without reel, g
 * @param weightToleranceG ± of it from the stated tolerances (root sum of squares), g
 * @param tipHeavyNmm moment of rod and reel about the hand, N·mm; positive = the tip sinks
 * @param balanceFromReelFootMm balance point of rod with reel, mm ahead of the reel foot centre
 * @param swingWeightKgM2 inertia of the rod without reel about the hand, kg·m²
 * @param balanceOutsideZoneNmm moment by which the balance point misses the wanted zone, N·mm; 0 inside
 * @param counterweightG weight at the butt end that would bring the balance point into the zone, g; 0 inside or behind it
 * @param finishedLengthMm finished length, mm
 * @param packedLengthMm longest packed section, mm
 * @param reelToButtMm reel foot centre to the butt end, cap included, mm
 * @param priceMinor what the customer pays, tax included, minor units
 */
public record Figures(
        double weightG,
        double weightToleranceG,
        double tipHeavyNmm,
        double balanceFromReelFootMm,
        double swingWeightKgM2,
        double balanceOutsideZoneNmm,
        double counterweightG,
        double finishedLengthMm,
        double packedLengthMm,
        double reelToButtMm,
        long priceMinor) {}
