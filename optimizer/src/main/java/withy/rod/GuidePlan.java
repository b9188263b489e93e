package withy.rod;

import withy.brief.Brief;
import withy.catalog.RodType;
import withy.mechanics.GuideSpacing;

/**
 * House tables of the guide train that depend on brief and blank length alone. Common practice, no published source; lengths in mm.
 *
 * <pre>
 *   butt |====seat===|----- stripper ----|--|--|-- … --|-| tip-top
 *             foot x_f       x_f + stripper distance        first space
 * </pre>
 */
public final class GuidePlan {
    /** Spool lip diameter to stripper distance from the reel foot; mid-values of the trade table, linear between. */
    private static final double[] LIP_MM = {40, 45, 49.5, 57, 67, 78};

    private static final double[] STRIPPER_MM = {415, 475, 530, 625, 775, 900};

    /** Low-profile casting reels weigh less than this, g; their first guide may stand nearer. */
    private static final double LOW_PROFILE_G = 260;

    private GuidePlan() {}

    /** Distance from reel foot centre to the stripper, mm, for the brief's reel. */
    public static double stripperDistanceMm(Brief brief) {
        if (!brief.rodType().spinningReel()) {
            return brief.reel().massG() < LOW_PROFILE_G ? 450 : 500;
        }
        double lip = brief.reel().lipDiameterMm();
        int last = LIP_MM.length - 1;
        if (lip <= LIP_MM[0]) {
            return STRIPPER_MM[0];
        }
        for (int i = 1; i <= last; i++) {
            if (lip <= LIP_MM[i]) {
                double share = (lip - LIP_MM[i - 1]) / (LIP_MM[i] - LIP_MM[i - 1]);
                return STRIPPER_MM[i - 1] + share * (STRIPPER_MM[i] - STRIPPER_MM[i - 1]);
            }
        }
        return STRIPPER_MM[last];
    }

    /** Fewest guides without tip-top that any brief may look at: stripper, reducer, runner. */
    public static final int LEAST_GUIDES = 3;

    /** Fewest guides a rod may have by its length: the table's, or so few that only the line's clearance decides. */
    public static int fewestGuides(Brief brief, double lengthMm) {
        return brief.guidesByClearance() ? LEAST_GUIDES : fewestGuides(brief.rodType(), lengthMm);
    }

    /** Fewest guides without tip-top for a rod type and blank length. */
    public static int fewestGuides(RodType type, double lengthMm) {
        return switch (type) {
            case SPINNING -> lengthMm < 1650 ? 5 : lengthMm < 1850 ? 6 : lengthMm < 2200 ? 7 : lengthMm < 2750 ? 8 : 9;
            case CASTING -> lengthMm < 1800 ? 7 : lengthMm < 2050 ? 8 : lengthMm < 2200 ? 9 : 10;
            case SURF_SPINNING -> 6;
        };
    }

    /** No more guides can be spaced evenly on a blank with the reel foot at one place, or further from the butt, mm. */
    public static int mostGuides(Brief brief, double lengthMm, double footMm) {
        double span = lengthMm - footMm - stripperDistanceMm(brief);
        return GuideSpacing.mostGuides(span, firstSpaceMinMm(brief), Station.MOST_GUIDES);
    }

    /** Shortest first space from the tip-top's ring, mm. */
    public static double firstSpaceMinMm(Brief brief) {
        return brief.rodType() == RodType.SURF_SPINNING ? 140 : brief.twoHanded() ? 110 : light(brief) ? 75 : 90;
    }

    /** Longest first space from the tip-top's ring, mm. */
    public static double firstSpaceMaxMm(Brief brief) {
        return brief.rodType() == RodType.SURF_SPINNING ? 180 : brief.twoHanded() ? 130 : light(brief) ? 100 : 110;
    }

    private static boolean light(Brief brief) {
        return brief.lure().heaviestG() <= 10;
    }
}
