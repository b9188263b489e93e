package withy.mechanics;

/**
 * A force of fixed direction on the rod, and a couple beside it.
 *
 * @param sMm place along the rod, mm from the butt
 * @param forwardN horizontal, away from the angler
 * @param upN vertical, up
 * @param coupleNmm turning the rod up is positive
 */
public record PointLoad(double sMm, double forwardN, double upN, double coupleNmm) {
    public PointLoad {
        Finite.any(sMm, "place of a load in mm");
        Finite.any(forwardN, "forward force in N");
        Finite.any(upN, "upward force in N");
        Finite.any(coupleNmm, "couple in N·mm");
    }

    /** A mass in grams that hangs or sits at a place. */
    public static PointLoad hung(double sMm, double massG) {
        return new PointLoad(sMm, 0.0, -massG * MassSum.NMM_PER_GMM, 0.0);
    }

    /** A pull in newtons, its direction in radians above the horizontal away from the angler. */
    public static PointLoad pull(double sMm, double forceN, double directionRad) {
        return new PointLoad(sMm, forceN * Math.cos(directionRad), forceN * Math.sin(directionRad), 0.0);
    }

    double size() {
        return Math.hypot(forwardN, upN);
    }
}
