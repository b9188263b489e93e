package withy.mechanics;

import java.util.ArrayList;
import java.util.List;

/**
 * How far the line stays off the blank between rings: along the blank's normal, from its surface to the line's near side, mm; below 0 the
 * line lies on the blank. On the side the rings stand on.
 */
public final class LineClearance {
    private LineClearance() {}

    /**
     * The nearest approach in one span.
     *
     * @param ring the span behind ring 1, 2 …, counted from the stripper; 1 is the span from the reel
     * @param sMm where, along the rod, mm from the butt
     * @param gapMm blank's surface to the line, mm
     */
    public record Approach(int ring, double sMm, double gapMm) {}

    /**
     * Every span from the reel to the tip-top; of the first only what lies ahead of the clamp.
     *
     * @param held rod and line
     * @param diameter of the blank, mm
     * @param lineMm of the line, mm
     * @param side 1 rings above, −1 below
     */
    public static List<Approach> of(LineResult.Held held, TaperProfile diameter, double lineMm, int side) {
        List<Approach> nearest = new ArrayList<>();
        double fromX = held.reelXMm();
        double fromY = held.reelYMm();
        double behind = Double.NEGATIVE_INFINITY;
        int number = 0;
        for (LineResult.RingLoad ring : held.rings()) {
            number++;
            Approach least = null;
            for (BendResult.Node node : held.nodes()) {
                if (node.sMm() > behind + 1e-9 && node.sMm() < ring.sMm() - 1e-9) {
                    double gap = side * offset(node, fromX, fromY, ring) - diameter.before(node.sMm()) / 2 - lineMm / 2;
                    if (least == null || gap < least.gapMm()) {
                        least = new Approach(number, node.sMm(), gap);
                    }
                }
            }
            if (least != null) {
                nearest.add(least);
            }
            fromX = ring.xMm();
            fromY = ring.yMm();
            behind = ring.sMm();
        }
        return nearest;
    }

    /** Where the straight line crosses the blank's normal at a node, mm from the axis, positive above. */
    private static double offset(BendResult.Node node, double fromX, double fromY, LineResult.RingLoad to) {
        double cos = Math.cos(node.angleRad());
        double sin = Math.sin(node.angleRad());
        double a = (fromX - node.xMm()) * cos + (fromY - node.yMm()) * sin;
        double b = (to.xMm() - node.xMm()) * cos + (to.yMm() - node.yMm()) * sin;
        double offA = -(fromX - node.xMm()) * sin + (fromY - node.yMm()) * cos;
        double offB = -(to.xMm() - node.xMm()) * sin + (to.yMm() - node.yMm()) * cos;
        return Math.abs(b - a) < 1e-12 ? offB : offA + (offB - offA) * (0.0 - a) / (b - a);
    }
}
