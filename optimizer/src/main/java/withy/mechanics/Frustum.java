package withy.mechanics;

/**
 * A straight piece with a straight bore: blank, grip, arbor, cap, ring.
 *
 * <pre>
 *   butt ___________ tip
 *   D0  |___________|  D1     outer diameters, mm
 *   B0  |           |  B1     bore diameters, mm (0 for solid)
 *       |~~~~~~~~~~~|
 *       0     z     L
 * </pre>
 *
 * With radii a at z = 0 and b at z = L: ∫R² = L(a²+ab+b²)/3; ∫zR² = L²(a²+2ab+3b²)/12; ∫z²R² = L³(a²+3ab+6b²)/30; ∫R⁴ =
 * L(a⁴+a³b+a²b²+ab³+b⁴)/5; the piece is outer less bore. I about the axis = ρπ/2·∫R⁴; across it at the butt end =
 * ρπ∫z²R² + half of that. Valid while the bore nowhere passes the outside. Standard integrals of a mechanics table.
 *
 * @param lengthMm L, mm
 * @param outerButtMm D0, mm
 * @param outerTipMm D1, mm
 * @param boreButtMm B0, mm
 * @param boreTipMm B1, mm
 */
public record Frustum(double lengthMm, double outerButtMm, double outerTipMm, double boreButtMm, double boreTipMm) {
    /** g/mm³ for 1 g/cm³. */
    private static final double G_PER_MM3 = 1e-3;

    public Frustum {
        Finite.positive(lengthMm, "length in mm");
        Finite.notNegative(boreButtMm, "bore at the butt end in mm");
        Finite.notNegative(boreTipMm, "bore at the tip end in mm");
        Finite.notNegative(outerButtMm - boreButtMm, "wall at the butt end in mm");
        Finite.notNegative(outerTipMm - boreTipMm, "wall at the tip end in mm");
    }

    public static Frustum solid(double lengthMm, double buttMm, double tipMm) {
        return new Frustum(lengthMm, buttMm, tipMm, 0.0, 0.0);
    }

    public static Frustum tube(double lengthMm, double outerMm, double boreMm) {
        return new Frustum(lengthMm, outerMm, outerMm, boreMm, boreMm);
    }

    public double volumeMm3() {
        return Math.PI * (r2(outerButtMm, outerTipMm) - r2(boreButtMm, boreTipMm));
    }

    public double massG(double densityGPerCm3) {
        return densityGPerCm3 * G_PER_MM3 * volumeMm3();
    }

    /** Centre of mass from the butt end, mm; half-way where the bore takes everything and nothing is left. */
    public double centreMm() {
        double volume = volumeMm3();
        return volume == 0
                ? lengthMm / 2
                : Math.PI * (zr2(outerButtMm, outerTipMm) - zr2(boreButtMm, boreTipMm)) / volume;
    }

    /** Inertia about its own axis, g·mm². */
    public double axialInertiaGmm2(double densityGPerCm3) {
        return densityGPerCm3 * G_PER_MM3 * Math.PI / 2.0 * (r4(outerButtMm, outerTipMm) - r4(boreButtMm, boreTipMm));
    }

    /** Inertia across the axis about the butt end, g·mm². */
    public double endInertiaGmm2(double densityGPerCm3) {
        double z2 = z2r2(outerButtMm, outerTipMm) - z2r2(boreButtMm, boreTipMm);
        return densityGPerCm3 * G_PER_MM3 * Math.PI * z2 + axialInertiaGmm2(densityGPerCm3) / 2.0;
    }

    /** Inertia across the axis about its own centre, g·mm². */
    public double centreInertiaGmm2(double densityGPerCm3) {
        double centre = centreMm();
        return endInertiaGmm2(densityGPerCm3) - massG(densityGPerCm3) * centre * centre;
    }

    /** The piece as masses along the rod, its butt end at x mm. */
    public MassSum at(double xMm, double densityGPerCm3) {
        return MassSum.piece(massG(densityGPerCm3), xMm + centreMm(), centreInertiaGmm2(densityGPerCm3));
    }

    private double r2(double d0, double d1) {
        double a = d0 / 2.0;
        double b = d1 / 2.0;
        return lengthMm * (a * a + a * b + b * b) / 3.0;
    }

    private double zr2(double d0, double d1) {
        double a = d0 / 2.0;
        double b = d1 / 2.0;
        return lengthMm * lengthMm * (a * a + 2.0 * a * b + 3.0 * b * b) / 12.0;
    }

    private double z2r2(double d0, double d1) {
        double a = d0 / 2.0;
        double b = d1 / 2.0;
        return lengthMm * lengthMm * lengthMm * (a * a + 3.0 * a * b + 6.0 * b * b) / 30.0;
    }

    private double r4(double d0, double d1) {
        double a = d0 / 2.0;
        double b = d1 / 2.0;
        return lengthMm * (a * a * a * a + a * a * a * b + a * a * b * b + a * b * b * b + b * b * b * b) / 5.0;
    }
}
