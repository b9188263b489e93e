package withy.machine;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withy.mechanics.BendResult;
import withy.mechanics.BentAxis;
import withy.mechanics.GuideSpacing;
import withy.mechanics.OneThirdDrop;
import withy.rod.GuidePlan;
import withy.rod.Setting;

/**
 * Guides spaced geometrically and then shifted to the bend of the blank. The growth of the spaces may be a little beyond the usual 1.05–1.25.
 *
 * <p>The stripper stands where the reel wants it. The others are spaced between two ways: geometric growth from the tip, and equal turns of
 * the blank between guides, at a drop of the tip by a third. Of a grid of first spaces and mixtures that one is taken whose line turns
 * most evenly from guide to guide (least sum of squares), while it clears the blank. No foot comes near a ferrule. Depends on blank, reel foot, count and
 * brief alone, never on which guides are chosen: ring heights are the house's.
 */
public final class BendSpacing {
    /** Half of a usual guide's length with its wraps, mm; common practice. */
    private static final double HALF_FOOT_MM = 15;

    /** Least distance the line should keep off the blank, mm. ASSUMED. */
    public static final double KEEP_OFF_MM = 1;

    private static final int FIRST_SPACES = 5;
    private static final int MIXTURES = 5;

    /** Growth from one space to the next that is still taken once shifted. ASSUMED. */
    private static final double LEAST_GROWTH = 1.0;

    private static final double MOST_GROWTH = 1.4;

    /** Degrees a millimetre too little of clearance weighs as. */
    private static final double DEGREES_PER_MM = 10;

    private final Setting setting;
    private final @Nullable BentAxis axis;
    private final double fromMm;

    private BendSpacing(Setting setting, @Nullable BentAxis axis, double fromMm) {
        this.setting = setting;
        this.axis = axis;
        this.fromMm = fromMm;
    }

    /** Bends the bare blank once; the spacings of any count follow. */
    public static BendSpacing of(Setting setting, BlankStiffness stiffness) {
        double clamp = setting.footMm() + HouseRings.FOOT_TO_FRONT_MM;
        double stripper = setting.footMm() + GuidePlan.stripperDistanceMm(setting.brief());
        if (stripper >= setting.blank().lengthMm()) {
            return new BendSpacing(setting, null, stripper);
        }
        OneThirdDrop.Outcome bend =
                OneThirdDrop.of(stiffness.profile(), clamp, setting.shape().tube(), List.of());
        BentAxis axis = bend instanceof OneThirdDrop.Outcome.Found found
                ? new BentAxis(found.shape().nodes())
                : null;
        return new BendSpacing(setting, axis, stripper);
    }

    /** Ring positions from the butt, stripper first; empty where this count can't be spaced. */
    public Optional<double[]> positions(int count) {
        double tip = setting.blank().lengthMm();
        double span = tip - fromMm;
        if (axis == null || !(span > 0)) {
            return Optional.empty();
        }
        double low = GuidePlan.firstSpaceMinMm(setting.brief());
        double high = GuidePlan.firstSpaceMaxMm(setting.brief());
        double[] best = null;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < FIRST_SPACES; i++) {
            double first = low + (high - low) * i / (FIRST_SPACES - 1);
            double growth = growth(span / first, count);
            if (growth > MOST_GROWTH || growth < LEAST_GROWTH) {
                continue;
            }
            double[] plain = fromButt(new GuideSpacing(count, first, growth), tip);
            double[] even = evenTurns(count, tip);
            for (int k = 0; k < MIXTURES; k++) {
                Optional<double[]> mixed = usable(mix(plain, even, (double) k / (MIXTURES - 1)), tip);
                if (mixed.isPresent() && cost(mixed.get()) < least) {
                    best = mixed.get();
                    least = cost(best);
                }
            }
        }
        return Optional.ofNullable(best);
    }

    /** r with 1 + r + … + r^(count − 1) = spaces; beyond what is taken where there is none in it. */
    private static double growth(double spaces, int count) {
        double low = LEAST_GROWTH - 0.1;
        double high = MOST_GROWTH + 0.1;
        for (int step = 0; step < 60; step++) {
            double middle = (low + high) / 2;
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum = sum * middle + 1;
            }
            if (sum < spaces) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }

    private static double[] fromButt(GuideSpacing spacing, double tip) {
        double[] fromTip = spacing.fromTipMm();
        double[] x = new double[fromTip.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = tip - fromTip[x.length - 1 - i];
        }
        return x;
    }

    private static double[] mix(double[] plain, double[] even, double share) {
        double[] x = new double[plain.length];
        for (int i = 0; i < x.length; i++) {
            x[i] = plain[i] + share * (even[i] - plain[i]);
        }
        return x;
    }

    /** Between stripper and tip the blank turns by the same angle from guide to guide. */
    private double[] evenTurns(int count, double tip) {
        BentAxis bent = axis();
        double start = bent.at(fromMm).angleRad();
        double end = bent.at(tip).angleRad();
        double[] x = new double[count];
        for (int i = 0; i < count; i++) {
            double wanted = start + (end - start) * i / count;
            double low = fromMm;
            double high = tip;
            for (int step = 0; step < 50 && i > 0; step++) {
                double middle = (low + high) / 2;
                if (bent.at(middle).angleRad() > wanted) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            x[i] = low;
        }
        return x;
    }

    private Optional<double[]> usable(double[] x, double tip) {
        double before = 0;
        double first = tip - x[x.length - 1];
        if (first < GuidePlan.firstSpaceMinMm(setting.brief()) - 1e-6
                || first > GuidePlan.firstSpaceMaxMm(setting.brief()) + 1e-6) {
            return Optional.empty();
        }
        for (int i = x.length - 1; i >= 0; i--) {
            double space = (i == x.length - 1 ? tip : x[i + 1]) - x[i];
            if (before > 0 && (space < LEAST_GROWTH * before || space > MOST_GROWTH * before)) {
                return Optional.empty();
            }
            before = space;
        }
        List<GuideSpacing.Zone> ferrules = setting.shape().joints().stream()
                .map(j -> new GuideSpacing.Zone(j.fromMm(), j.toMm()))
                .toList();
        return GuideSpacing.clearOfFerrules(x, HALF_FOOT_MM, ferrules);
    }

    /** Root mean square of the turns in the guides ahead of the stripper, degrees, more where the line comes too near the blank. */
    private double cost(double[] x) {
        List<double[]> points = new ArrayList<>();
        int side = RodBend.side(setting.brief());
        double tip = setting.blank().lengthMm();
        for (double at : x) {
            points.add(axis().beside(at, side * HouseRings.heightMm(setting, at)));
        }
        points.add(axis().beside(tip, side * setting.odAt(tip)));
        double squares = 0;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 1; i < points.size(); i++) {
            double rear = x[i - 1];
            double front = i < x.length ? x[i] : tip;
            nearest = Math.min(nearest, gapMm((rear + front) / 2, points.get(i - 1), points.get(i), side));
            if (i + 1 < points.size()) {
                double turn = turn(points.get(i - 1), points.get(i), points.get(i + 1));
                squares += turn * turn;
            }
        }
        double even = Math.sqrt(squares / Math.max(1, x.length - 1));
        return Math.toDegrees(even) + DEGREES_PER_MM * Math.max(0, KEEP_OFF_MM - nearest);
    }

    private double gapMm(double sMm, double[] from, double[] to, int side) {
        BendResult.Node node = axis().at(sMm);
        double across = Math.hypot(to[0] - from[0], to[1] - from[1]);
        double cross =
                ((to[0] - from[0]) * (node.yMm() - from[1]) - (to[1] - from[1]) * (node.xMm() - from[0])) / across;
        return -side * cross - setting.odAt(sMm) / 2;
    }

    private BentAxis axis() {
        if (axis == null) {
            throw new IllegalStateException("no bend to space guides by");
        }
        return axis;
    }

    private static double turn(double[] a, double[] b, double[] c) {
        double one = Math.atan2(b[1] - a[1], b[0] - a[0]);
        double two = Math.atan2(c[1] - b[1], c[0] - b[0]);
        return Math.abs(Math.IEEEremainder(two - one, 2 * Math.PI));
    }
}
