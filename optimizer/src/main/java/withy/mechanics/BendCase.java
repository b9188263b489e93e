package withy.mechanics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A rod held fast at one place and loaded ahead of it.
 *
 * <pre>
 *    y up
 *    |            __.--- tip        angles in radians above the horizontal
 *    |      _.--''    |
 *    |__.--' angle    v load
 *    +------------------ x forward
 *   clamp
 * </pre>
 *
 * @param stiffness EI along the whole blank
 * @param clampMm where it is held, mm from the butt; what lies behind stays straight
 * @param clampAngleRad direction of the rod at the clamp, above the horizontal
 * @param own the tube whose weight bends it, or null to leave its weight out
 * @param loads forces ahead of the clamp; those behind are ignored
 */
public record BendCase(
        StiffnessProfile stiffness,
        double clampMm,
        double clampAngleRad,
        @Nullable TubeMass own,
        List<PointLoad> loads) {
    /** Steepest angle at which a rod can be held here: beyond it a hung weight may fall to either side. */
    private static final double STEEPEST_RAD = Math.toRadians(89.0);

    public BendCase {
        loads = List.copyOf(loads);
        if (!(clampMm >= stiffness.buttMm() && clampMm < stiffness.tipMm())) {
            throw new IllegalArgumentException("The clamp at " + clampMm + " mm must lie on the blank, "
                    + stiffness.buttMm() + "–" + stiffness.tipMm()
                    + " mm.\nMaybe it was measured from the tip.");
        }
        if (!(Math.abs(clampAngleRad) <= STEEPEST_RAD)) {
            throw new IllegalArgumentException("The angle at the clamp must lie within ±89 degrees, not "
                    + Math.toDegrees(clampAngleRad) + ".\nMaybe degrees were given for radians.");
        }
        for (PointLoad load : loads) {
            if (load.sMm() > stiffness.tipMm()) {
                throw new IllegalArgumentException("A load at " + load.sMm() + " mm must lie on the blank, up to "
                        + stiffness.tipMm() + " mm.\nMaybe the blank is shorter than the rod.");
            }
        }
    }

    /** Held level at the butt, one hung weight at the tip, own weight left out. */
    public static BendCase level(StiffnessProfile stiffness, PointLoad load) {
        return new BendCase(stiffness, stiffness.buttMm(), 0.0, null, List.of(load));
    }

    double lengthMm() {
        return stiffness.tipMm() - clampMm;
    }

    /** All point forces ahead of the clamp, the blank's lumps among them, from tip to clamp. */
    List<PointLoad> loadsAhead() {
        List<PointLoad> ahead = new ArrayList<>();
        for (PointLoad load : loads) {
            if (load.sMm() > clampMm && (load.size() > 0.0 || load.coupleNmm() != 0.0)) {
                ahead.add(load);
            }
        }
        if (own != null) {
            for (TubeMass.Lump lump : own.lumps()) {
                if (lump.xMm() > clampMm && lump.xMm() <= stiffness.tipMm()) {
                    ahead.add(PointLoad.hung(lump.xMm(), lump.massG()));
                }
            }
        }
        ahead.sort(Comparator.comparingDouble(PointLoad::sMm).reversed());
        return ahead;
    }
}
