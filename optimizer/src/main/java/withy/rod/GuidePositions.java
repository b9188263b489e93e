package withy.rod;

import java.util.List;
import java.util.Optional;
import withy.brief.Brief;
import withy.mechanics.GuideSpacing;

/**
 * Where the rings sit, from the layout alone.
 *
 * @param xMm ring positions from the blank's butt, stripper first, mm
 * @param even true where the growth of the gaps lies in the usual range and no foot comes near a ferrule end
 */
record GuidePositions(double[] xMm, boolean even) {
    /** Half of a usual guide's length with its wraps, mm: positions may not depend on which guide is chosen. Common practice. */
    private static final double HALF_FOOT_MM = 15;

    /** Positions for a layout; equal gaps where no usual growth fits, so that any build can be measured. */
    static GuidePositions of(Brief brief, BlankShape shape, Layout layout) {
        double tip = shape.blank().lengthMm();
        double stripper = layout.reelFootMm() + GuidePlan.stripperDistanceMm(brief);
        int count = layout.guideCount();
        double span = tip - stripper;
        Optional<GuideSpacing> spacing = span > 0
                ? GuideSpacing.reach(span, count, GuidePlan.firstSpaceMinMm(brief), GuidePlan.firstSpaceMaxMm(brief))
                : Optional.empty();
        double[] x = new double[count];
        if (spacing.isEmpty()) {
            for (int i = 0; i < count; i++) {
                x[i] = tip - span * (count - i) / count;
            }
            return new GuidePositions(x, false);
        }
        double[] fromTip = spacing.get().fromTipMm();
        for (int i = 0; i < count; i++) {
            x[i] = tip - fromTip[count - 1 - i];
        }
        if (shape.joints().isEmpty()) {
            return new GuidePositions(x, true);
        }
        List<GuideSpacing.Zone> ferrules = shape.joints().stream()
                .map(j -> new GuideSpacing.Zone(j.fromMm(), j.toMm()))
                .toList();
        Optional<double[]> clear = GuideSpacing.clearAndEven(x, tip, HALF_FOOT_MM, ferrules);
        return clear.map(moved -> new GuidePositions(moved, true)).orElseGet(() -> new GuidePositions(x, false));
    }
}
