package withy.mechanics;

import withy.units.Force;

/**
 * Any number of masses along the rod as three sums, which add.
 *
 * <p>M = Σm (g); S = Σm·x (g·mm); J = Σ(m·x² + own) (g·mm²), x from the butt, own the inertia of each piece about its own
 * centre. About a pivot p: moment T = g·(S − M·p), inertia I = J − 2pS + p²M (parallel axes). Standard statics; g = 9.80665
 * m/s². Holds for any finite masses; a positive T sinks the tip.
 */
public record MassSum(double massG, double firstGmm, double secondGmm2) {
    public static final MassSum NONE = new MassSum(0.0, 0.0, 0.0);

    /** N·mm for a gram at a millimetre: 9.80665 m/s² · 10⁻³ kg/g. */
    public static final double NMM_PER_GMM = Force.STANDARD_GRAVITY_M_S2 * 1e-3;

    private static final double KGM2_PER_GMM2 = 1e-9;

    public MassSum {
        Finite.any(massG, "mass in g");
        Finite.any(firstGmm, "first moment in g·mm");
        Finite.any(secondGmm2, "second moment in g·mm²");
    }

    public static MassSum point(double massG, double xMm) {
        return new MassSum(massG, massG * xMm, massG * xMm * xMm);
    }

    /** A piece with its centre of mass at x and its own inertia about that centre. */
    public static MassSum piece(double massG, double xMm, double ownInertiaGmm2) {
        return new MassSum(massG, massG * xMm, massG * xMm * xMm + ownInertiaGmm2);
    }

    /** A slender even piece of the given length around x: own inertia m·l²/12. */
    public static MassSum bar(double massG, double xMm, double lengthMm) {
        return piece(massG, xMm, massG * lengthMm * lengthMm / 12.0);
    }

    public MassSum plus(MassSum other) {
        return new MassSum(massG + other.massG, firstGmm + other.firstGmm, secondGmm2 + other.secondGmm2);
    }

    public MassSum minus(MassSum other) {
        return new MassSum(massG - other.massG, firstGmm - other.firstGmm, secondGmm2 - other.secondGmm2);
    }

    /** The same masses moved by a distance toward the tip. */
    public MassSum moved(double byMm) {
        return new MassSum(massG, firstGmm + massG * byMm, secondGmm2 + 2.0 * byMm * firstGmm + byMm * byMm * massG);
    }

    /** The same shape with its mass scaled. */
    public MassSum scaled(double factor) {
        return new MassSum(massG * factor, firstGmm * factor, secondGmm2 * factor);
    }

    /** Centre of mass in mm from the butt; needs some mass. */
    public double centreMm() {
        Finite.positive(massG, "mass in g");
        return firstGmm / massG;
    }

    /** Moment of gravity about a pivot, N·mm, positive when the tip sinks. */
    public double momentNmm(double pivotMm) {
        return NMM_PER_GMM * (firstGmm - massG * pivotMm);
    }

    /** Inertia about a pivot, g·mm². */
    public double inertiaGmm2(double pivotMm) {
        return secondGmm2 - 2.0 * pivotMm * firstGmm + pivotMm * pivotMm * massG;
    }

    /** Inertia about a pivot, kg·m²: the swing weight when the pivot is the hand. */
    public double swingWeightKgM2(double pivotMm) {
        return inertiaGmm2(pivotMm) * KGM2_PER_GMM2;
    }

    /**
     * Grams at x that bring the moment about the pivot down to a target, 0 where none is needed.
     *
     * @param pivotMm hand or reel foot
     * @param weightAtMm where the counterweight sits, butt side of the pivot
     * @param targetNmm moment to reach
     */
    public double counterweightG(double pivotMm, double weightAtMm, double targetNmm) {
        Finite.positive(pivotMm - weightAtMm, "distance from counterweight to pivot in mm");
        return Math.max(0.0, momentNmm(pivotMm) - targetNmm) / (NMM_PER_GMM * (pivotMm - weightAtMm));
    }

    /**
     * Grams at x that bring the balance point back to a place, 0 where it lies there or nearer the butt.
     *
     * @param balanceMm wanted balance point from the butt
     * @param weightAtMm where the counterweight sits, butt side of the balance point
     */
    public double counterweightForBalanceG(double balanceMm, double weightAtMm) {
        return counterweightG(balanceMm, weightAtMm, 0.0);
    }
}
