package withy.rod;

import withy.brief.Brief;

/**
 * The straight line from the spool's lip (its edge toward the blank) to the choke point on the blank, on which a stripper of a spinning rod should
 * stand.
 *
 * <pre>
 *   =========blank==========o==========choke===
 *     |foot        stripper |   .  ´
 *     |stem          .  ´
 *   [spool] lip  .´
 * </pre>
 *
 * Choke = {@value #CHOKE_LIPS} lip diameters ahead of the spool, kept within {@value #CHOKE_MIN}–{@value #CHOKE_MAX} of the way from spool to tip.
 * Common practice; a warning only.
 */
public final class LineOffSpool {
    /** How far off the line a ring may stand, mm (trade table). */
    public static final double WITHIN_MM = 10;

    private static final double CHOKE_LIPS = 26.5;
    private static final double CHOKE_MIN = 0.35;
    private static final double CHOKE_MAX = 0.60;

    /** Blank's axis to reel foot, mm: half a usual seat barrel. ASSUMED. */
    private static final double AXIS_TO_FOOT_MM = 11;

    /** Foot centre to the spool's front lip, mm. ASSUMED. */
    private static final double FOOT_TO_LIP_MM = 60;

    /** Foot centre to a casting reel's line guide, mm. ASSUMED. */
    private static final double FOOT_TO_GUIDE_MM = 25;

    private LineOffSpool() {}

    /** Distance from the blank's axis at the stripper, mm; 0 ahead of the choke point. */
    public static double heightMm(Setting setting) {
        return heightMm(setting, setting.guideMm(1));
    }

    /** Distance from the blank's axis at x, mm; 0 ahead of the choke point. */
    public static double heightMm(Setting setting, double xMm) {
        double spoolMm = setting.footMm() + FOOT_TO_LIP_MM;
        double share = (xMm - spoolMm) / (chokeMm(setting) - spoolMm);
        return Math.max(0, lipMm(setting.brief().reel()) * (1 - share));
    }

    /** Where the line meets the blank's axis, mm from the butt. */
    public static double chokeMm(Setting setting) {
        double spoolMm = setting.footMm() + FOOT_TO_LIP_MM;
        double toTip = setting.blank().lengthMm() - spoolMm;
        double lips = CHOKE_LIPS * setting.brief().reel().lipDiameterMm();
        return spoolMm + Math.max(CHOKE_MIN * toTip, Math.min(CHOKE_MAX * toTip, lips));
    }

    /** Where the line leaves the reel, mm from the butt: the spool's lip, or a casting reel's line guide. */
    public static double leavesMm(Setting setting) {
        return setting.footMm() + (setting.brief().rodType().spinningReel() ? FOOT_TO_LIP_MM : FOOT_TO_GUIDE_MM);
    }

    /** Where the line leaves the reel, mm from the blank's axis. */
    public static double leavesHeightMm(Setting setting) {
        Brief.Reel reel = setting.brief().reel();
        return setting.brief().rodType().spinningReel() ? lipMm(reel) : AXIS_TO_FOOT_MM + reel.stemHeightMm();
    }

    private static double lipMm(Brief.Reel reel) {
        return AXIS_TO_FOOT_MM + reel.stemHeightMm() - reel.lipDiameterMm() / 2;
    }
}
