package withy.mechanics;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Guides spaced geometrically from the tip-top: s₁, s₁·r, s₁·r², …, so that n spaces reach the stripper.
 *
 * <pre>
 *   tip-top   guide n        …                guide 1 = stripper
 *     o--s1---o----s1·r------o-----s1·r²------O
 *     0                                       D     mm from the tip-top's ring
 * </pre>
 *
 * D = s₁·(rⁿ − 1)/(r − 1), s₁ and D in mm, n spaces = n guides without the tip-top. Ratio kept in
 * {@value #SMALLEST_RATIO}–{@value #LARGEST_RATIO}, common practice; no published source.
 *
 * @param count n
 * @param firstMm s₁
 * @param ratio r
 */
public record GuideSpacing(int count, double firstMm, double ratio) {
    public static final double SMALLEST_RATIO = 1.05;
    public static final double LARGEST_RATIO = 1.25;

    /** Least distance from a guide's foot to a ferrule's end, mm; common practice. */
    public static final double FERRULE_CLEARANCE_MM = 20.0;

    private static final double RATIO_TOLERANCE = 1e-13;
    private static final int MOST_STEPS = 100;

    /** A stretch of blank, mm from the butt. */
    public record Zone(double fromMm, double toMm) {
        public Zone {
            Finite.notNegative(toMm - fromMm, "length of a zone in mm");
        }
    }

    public GuideSpacing {
        if (count < 1) {
            throw new IllegalArgumentException(
                    "A rod needs at least 1 guide, not " + count + ".\nMaybe the count is missing.");
        }
        Finite.positive(firstMm, "first space in mm");
        Finite.positive(ratio, "ratio of spaces");
    }

    /**
     * The spacing that reaches the stripper with the first space nearest the middle of its range; empty when no ratio fits.
     *
     * @param tipToStripperMm D
     * @param count n
     * @param lowFirstMm least first space
     * @param highFirstMm largest first space
     */
    public static Optional<GuideSpacing> reach(
            double tipToStripperMm, int count, double lowFirstMm, double highFirstMm) {
        Finite.positive(tipToStripperMm, "distance from tip to stripper in mm");
        Finite.positive(lowFirstMm, "least first space in mm");
        Finite.notNegative(highFirstMm - lowFirstMm, "range of the first space in mm");
        if (count == 1) {
            boolean within = tipToStripperMm >= lowFirstMm && tipToStripperMm <= highFirstMm;
            return within ? Optional.of(new GuideSpacing(1, tipToStripperMm, 1.0)) : Optional.empty();
        }
        double low = Math.max(lowFirstMm, tipToStripperMm / spaces(LARGEST_RATIO, count));
        double high = Math.min(highFirstMm, tipToStripperMm / spaces(SMALLEST_RATIO, count));
        if (!(low <= high)) {
            return Optional.empty();
        }
        double first = Math.min(high, Math.max(low, (lowFirstMm + highFirstMm) / 2.0));
        return Optional.of(new GuideSpacing(count, first, ratioFor(tipToStripperMm / first, count)));
    }

    /**
     * No more guides reach the stripper, whatever their spaces.
     *
     * @param tipToStripperMm D
     * @param lowFirstMm least first space
     * @param most so many at most are thought of
     */
    public static int mostGuides(double tipToStripperMm, double lowFirstMm, int most) {
        int count = 0;
        while (count < most && lowFirstMm <= tipToStripperMm / spaces(SMALLEST_RATIO, count + 1)) {
            count++;
        }
        return count;
    }

    /** Distances of the guides from the tip-top's ring, nearest first; the last is the stripper. */
    public double[] fromTipMm() {
        double[] places = new double[count];
        double space = firstMm;
        double place = 0.0;
        for (int i = 0; i < count; i++) {
            place += space;
            places[i] = place;
            space *= ratio;
        }
        return places;
    }

    /**
     * Moves guides off the ferrules, each as little as possible, order kept; empty when that can't be done.
     *
     * @param xMm ring centres from the butt, rising
     * @param footHalfMm half length of the widest foot with its wrap
     * @param ferrules stretches taken by ferrules
     */
    public static Optional<double[]> clearOfFerrules(double[] xMm, double footHalfMm, List<Zone> ferrules) {
        double keepOff = FERRULE_CLEARANCE_MM + Finite.notNegative(footHalfMm, "half a foot in mm");
        double[] moved = xMm.clone();
        for (int i = 0; i < moved.length; i++) {
            if (touches(xMm[i], keepOff, ferrules)) {
                moved[i] = nearestFree(xMm[i], keepOff, ferrules);
            }
            double space = i == 0 ? Double.POSITIVE_INFINITY : moved[i] - moved[i - 1];
            if (touches(moved[i], keepOff, ferrules) || space <= 0.0 || space < 2.0 * footHalfMm) {
                return Optional.empty();
            }
        }
        return Optional.of(moved);
    }

    /**
     * The same, with the guides beside a moved one following it, so that no gap takes the whole move ({@link EvenGaps}); the tip-top stays. Where that would
     * bring one near a ferrule or the next, only those that have to move.
     *
     * @param tipMm the tip-top's ring from the butt
     */
    public static Optional<double[]> clearAndEven(double[] xMm, double tipMm, double footHalfMm, List<Zone> ferrules) {
        Optional<double[]> clear = clearOfFerrules(xMm, footHalfMm, ferrules);
        return clear.map(moved -> Arrays.equals(moved, xMm)
                ? moved
                : EvenGaps.of(xMm, moved, tipMm)
                        .filter(even -> clearOfFerrules(even, footHalfMm, ferrules)
                                .filter(still -> Arrays.equals(still, even))
                                .isPresent())
                        .orElse(moved));
    }

    private static double nearestFree(double x, double keepOff, List<Zone> ferrules) {
        double nearest = x;
        double least = Double.POSITIVE_INFINITY;
        for (Zone zone : ferrules) {
            for (double place : new double[] {zone.fromMm() - keepOff, zone.toMm() + keepOff}) {
                if (Math.abs(place - x) < least && !touches(place, keepOff, ferrules)) {
                    nearest = place;
                    least = Math.abs(place - x);
                }
            }
        }
        return nearest;
    }

    private static boolean touches(double x, double keepOff, List<Zone> ferrules) {
        for (Zone zone : ferrules) {
            if (x > zone.fromMm() - keepOff && x < zone.toMm() + keepOff) {
                return true;
            }
        }
        return false;
    }

    private static double ratioFor(double spaces, int count) {
        if (spaces(SMALLEST_RATIO, count) >= spaces) {
            return SMALLEST_RATIO;
        }
        if (spaces(LARGEST_RATIO, count) <= spaces) {
            return LARGEST_RATIO;
        }
        return new BracketingNthOrderBrentSolver(RATIO_TOLERANCE, 5)
                .solve(MOST_STEPS, r -> spaces(r, count) - spaces, SMALLEST_RATIO, LARGEST_RATIO);
    }

    /** 1 + r + … + r^(n−1). */
    private static double spaces(double ratio, int count) {
        double sum = 0.0;
        double power = 1.0;
        for (int i = 0; i < count; i++) {
            sum += power;
            power *= ratio;
        }
        return sum;
    }
}
