package withy.mechanics;

import withy.units.LineGauge;

/**
 * The diameter over all of a line, as rings and knots meet it: a braid's label states packed-solid fibre, so the real one is
 * {@link LineGauge.Braid#OVERALL_FACTOR} times that (from memory, 1.15–1.29); other lines measure what they say.
 */
public final class LineDiameter {
    private LineDiameter() {}

    public static double overallMm(double labelMm, boolean braid) {
        Finite.positive(labelMm, "line diameter in mm");
        return braid ? labelMm * LineGauge.Braid.OVERALL_FACTOR : labelMm;
    }
}
