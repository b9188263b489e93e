package withy.mechanics;

import java.util.List;

/**
 * A held rod whose line runs from the reel through its rings and is pulled beyond the tip-top.
 *
 * <pre>
 *            ring 1        ring 2     tip-top
 *   ====clamp==|=============|===========|
 *     |        o-------------o-----------o----&gt; pull
 *    reel- - ´
 * </pre>
 *
 * The line slides without friction, so its tension is the same everywhere; it runs straight between rings.
 *
 * @param held the rod, where and how it is held, its weight and what hangs on it; the line's forces are added to those
 * @param rings where the line touches the rings, stripper first, tip-top last; the last one's place is the tip
 * @param reel where the line leaves the reel, which is held fast with the handle
 * @param tensionN pull in the line, N
 * @param pullRad direction of the line beyond the tip-top, radians above level
 */
public record LineCase(BendCase held, List<Ring> rings, Ring reel, double tensionN, double pullRad) {
    /**
     * A point the line touches.
     *
     * @param sMm along the rod, mm from the butt
     * @param offsetMm from the blank's axis, mm, positive above it while the rod lies level
     */
    public record Ring(double sMm, double offsetMm) {
        public Ring {
            Finite.any(sMm, "place of a ring in mm");
            Finite.any(offsetMm, "height of a ring in mm");
        }
    }

    public LineCase {
        rings = List.copyOf(rings);
        Finite.positive(tensionN, "pull in the line in N");
        Finite.any(pullRad, "direction of the line in radians");
        if (rings.isEmpty()) {
            throw new IllegalArgumentException(
                    "A line needs at least the tip-top to run through.\nMaybe the rings are missing.");
        }
        double before = held.clampMm();
        for (Ring ring : rings) {
            if (!(ring.sMm() > before)) {
                throw new IllegalArgumentException("Rings must stand ahead of the clamp at " + held.clampMm()
                        + " mm and in order, not at " + ring.sMm()
                        + " mm.\nMaybe the handle reaches under the first guide.");
            }
            before = ring.sMm();
        }
        if (Math.abs(before - held.stiffness().tipMm()) > 1e-6) {
            throw new IllegalArgumentException("The last ring must be the tip-top at "
                    + held.stiffness().tipMm() + " mm, not at " + before + " mm.\nMaybe the tip-top is missing.");
        }
        if (!(reel.sMm() < rings.get(0).sMm())) {
            throw new IllegalArgumentException("The line must leave the reel behind the first ring at "
                    + rings.get(0).sMm() + " mm, not at " + reel.sMm()
                    + " mm.\nMaybe the stripper stands at the reel.");
        }
    }
}
