package withy.machine;

import withy.brief.Brief;
import withy.units.ForceUnit;

/**
 * How the rod is held and pulled.
 *
 * @param buttDeg direction of the butt above level, degrees
 * @param pullDeg direction of the line beyond the tip above level, degrees; −90 straight down
 * @param pullN pull in the line, N
 */
public record Pose(double buttDeg, double pullDeg, double pullN) {
    /** Butt half-way up, the fish far out on the water. ASSUMED. */
    public static final double USUAL_BUTT_DEG = 45;

    public static final double USUAL_PULL_DEG = 0;

    public Pose {
        if (!(Math.abs(buttDeg) <= 89) || !(Math.abs(pullDeg) <= 180) || !(pullN > 0 && pullN < 1e4)) {
            throw new IllegalArgumentException(
                    "The butt must be held within ±89 degrees, the line pull within ±180 and with " + "above 0 N, not "
                            + buttDeg + ", " + pullDeg + " and " + pullN + ".\nMaybe a value is missing.");
        }
    }

    /** The working load: the brief's drag, butt and line as usual. */
    public static Pose working(Brief brief) {
        return new Pose(USUAL_BUTT_DEG, USUAL_PULL_DEG, brief.dragKg() * ForceUnit.KILOGRAM_FORCE.newtons());
    }

    /** The static test of the bench: held level, a weight on the line. */
    public static Pose hung(double grams) {
        return new Pose(0, -90, grams / 1000 * ForceUnit.KILOGRAM_FORCE.newtons());
    }
}
