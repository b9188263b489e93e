package withy.rules;

import withy.brief.Brief;
import withy.rod.Setting;

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
final class LineOffSpool {
    /** How far off the line a ring may stand, mm (trade table). */
    static final double WITHIN_MM = 10;

    private static final double CHOKE_LIPS = 26.5;
    private static final double CHOKE_MIN = 0.35;
    private static final double CHOKE_MAX = 0.60;

    /** Blank's axis to reel foot, mm: half a usual seat barrel. ASSUMED. */
    private static final double AXIS_TO_FOOT_MM = 11;

    /** Foot centre to the spool's front lip, mm. ASSUMED. */
    private static final double FOOT_TO_LIP_MM = 60;

    private LineOffSpool() {}

    /** Distance from the blank's axis at the stripper, mm; 0 ahead of the choke point. */
    static double heightMm(Setting setting) {
        Brief.Reel reel = setting.brief().reel();
        double lipMm = AXIS_TO_FOOT_MM + reel.stemHeightMm() - reel.lipDiameterMm() / 2;
        double spoolMm = setting.footMm() + FOOT_TO_LIP_MM;
        double toTip = setting.blank().lengthMm() - spoolMm;
        double choke = Math.max(CHOKE_MIN * toTip, Math.min(CHOKE_MAX * toTip, CHOKE_LIPS * reel.lipDiameterMm()));
        double share = (setting.guideMm(1) - spoolMm) / choke;
        return Math.max(0, lipMm * (1 - share));
    }
}
