package withy.mechanics;

/**
 * Thread of one single touching layer, and the finish that covers it.
 *
 * <p>w covered length, d diameter under the wrap, t thread diameter, all mm; λ linear density, tex = g/km. Turns w/t; length a
 * turn √((π(d + t))² + t²); thread mass = length·λ. Turns of round thread fill π/4 of their envelope (square section side t a
 * turn), so resin volume = π/4·(D_f² − d²)·w less the thread's own volume, D_f the diameter over the finish. Valid for t well
 * under d. Geometry; the square-section packing is that of the worked film in the project's check values.
 *
 * @param widthMm w
 * @param underMm d
 * @param threadMm t
 */
public record ThreadWrap(double widthMm, double underMm, double threadMm) {
    private static final double MM_PER_KM = 1e6;
    private static final double G_PER_MM3 = 1e-3;

    public ThreadWrap {
        Finite.notNegative(widthMm, "wrap length in mm");
        Finite.notNegative(underMm, "diameter under the wrap in mm");
        Finite.positive(threadMm, "thread diameter in mm");
    }

    /** Linear density in tex of a thread of this diameter, packed with the given share of fibre. */
    public static double texOf(double threadMm, double fibreKgM3, double fibreShare) {
        return fibreKgM3 * fibreShare * Math.PI / 4.0 * threadMm * threadMm;
    }

    public double turns() {
        return widthMm / threadMm;
    }

    /** Thread used, mm. */
    public double threadLengthMm() {
        double circumference = Math.PI * (underMm + threadMm);
        return turns() * Math.sqrt(circumference * circumference + threadMm * threadMm);
    }

    /** Part of the thread's length that is there for the slant of its turns alone; the thinner the blank, the larger. */
    public double slantShare() {
        return 1.0 - turns() * Math.PI * (underMm + threadMm) / threadLengthMm();
    }

    /** Thread mass, g, from its linear density in tex. */
    public double threadMassG(double tex) {
        return threadLengthMm() / MM_PER_KM * tex;
    }

    /** Volume the thread itself takes, mm³. */
    public double threadVolumeMm3() {
        return threadLengthMm() * Math.PI / 4.0 * threadMm * threadMm;
    }

    /** Resin, mm³, that fills the wrap and covers it with a film. */
    public double resinVolumeMm3(double filmMm) {
        Finite.notNegative(filmMm, "finish film over the thread in mm");
        double over = underMm + 2.0 * (threadMm + filmMm);
        double envelope = Math.PI / 4.0 * (over * over - underMm * underMm) * widthMm;
        return Math.max(0.0, envelope - threadVolumeMm3());
    }

    /** Resin mass, g. */
    public double resinMassG(double filmMm, double densityGPerCm3) {
        return resinVolumeMm3(filmMm) * densityGPerCm3 * G_PER_MM3;
    }
}
