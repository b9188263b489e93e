package withy.search;

import java.util.Set;
import java.util.function.DoubleFunction;
import withy.rod.BlankShape;

/**
 * From where to where a part may lie on a blank before its first joint: nearer the butt it is too tight, further from it too loose. Rather too wide; what lies at the
 * joint or beyond it is not told of.
 *
 * <pre>
 *   butt |----tight----|====may lie====|--loose--| joint   not told
 *                   fromMm            toMm      endMm
 * </pre>
 *
 * @param fromMm mm from the butt
 * @param toMm mm from the butt
 * @param endMm what lies further from the butt is not told of, mm
 */
record Stretch(double fromMm, double toMm, double endMm) {
    /** As closely as an end is told, mm. */
    private static final double NEAR_MM = 0.5;

    /** So far short of the joint, where the blank is thicker again, mm. */
    private static final double SHORT_OF_MM = 1;

    /**
     * By halves, with a rule's word for some places.
     *
     * @param lengthMm of the part
     * @param said why the part does not go on with its rear end at a place, mm from the butt
     * @param tight what is said of a part that is too tight, and so nearer the butt, too
     * @param loose what is said of one that is too loose, and so further from it, too
     */
    static Stretch of(
            BlankShape shape, double lengthMm, DoubleFunction<String> said, Set<String> tight, Set<String> loose) {
        double before = shape.joints().isEmpty()
                ? shape.blank().lengthMm()
                : shape.joints().get(0).fromMm();
        double end = before - lengthMm - SHORT_OF_MM;
        if (end <= 0) {
            return new Stretch(0, 0, Double.NEGATIVE_INFINITY);
        }
        double from = tight.contains(said.apply(0)) ? furthest(0, end, said, tight) : 0;
        double to = loose.contains(said.apply(end)) ? furthest(end, 0, said, loose) : end;
        return new Stretch(from, to, end);
    }

    /** From a place where it does not go on for some reasons toward another as far as it does not for these. */
    private static double furthest(double fromMm, double towardMm, DoubleFunction<String> said, Set<String> reasons) {
        double far = fromMm;
        double free = towardMm;
        while (Math.abs(free - far) > NEAR_MM) {
            double middle = (far + free) / 2;
            boolean still = reasons.contains(said.apply(middle));
            far = still ? middle : far;
            free = still ? free : middle;
        }
        return far;
    }

    /** False where it does not go on with its rear end at a place. */
    boolean has(double xMm) {
        return xMm > endMm || xMm >= fromMm && xMm <= toMm;
    }

    /** False where it goes on nowhere between two places. */
    boolean meets(double nearestMm, double furthestMm) {
        return furthestMm > endMm || furthestMm >= fromMm && nearestMm <= toMm;
    }
}
