package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.TreeSet;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathRuntimeException;

/**
 * Large deflection of a rod of varying stiffness under loads of fixed direction and its own weight.
 *
 * <p>EI·dθ/ds = M, dM/ds = R_x·sinθ − R_y·cosθ, R the force of everything outboard (planar elastica, inextensible, Bernoulli;
 * K. E. Bisshopp and D. C. Drucker, Quarterly of Applied Mathematics 3 (1945) 272–275 for the even beam with one load). θ above
 * level, s from the butt; N, mm, N·mm². Integrated from the tip with the tip's direction as the one unknown, since shooting from
 * the clamp lands on wrong branches under large loads. Valid while the blank stays straight-elastic; shear, twist and the
 * flattening of thin walls are left out.
 *
 * <p>Where all loads pull one way, the tip lies between that way and the clamp's direction, and the first root seen from the
 * load's direction is the shape without a point of inflection ({@link OneWay}). Otherwise every root on a grid is solved and the shape of least
 * energy is taken, or none where that one is not believed. A shape is believed only when the angle at the clamp is met to 1e-8 and the root
 * moment equals Σ load × lever to 1e-6.
 */
public final class BendUnderLoad {
    private static final double ANGLE_TOLERANCE_RAD = 1e-8;
    private static final double LEVER_TOLERANCE = 1e-6;
    /** Share by which a bracket of the rough search is widened. */
    private static final double ROUGHNESS = 0.01;

    private static final int GRID = 48;
    private static final int MOST_STEPS = 80;

    private BendUnderLoad() {}

    public static BendResult solve(BendCase held) {
        double turn = turn(held);
        double reference = held.clampAngleRad() - turn;
        LoadedStretches stretches = new LoadedStretches(held, reference);
        if (stretches.forceN() == 0.0) {
            return straight(held);
        }
        TipShooter shooter = new TipShooter(held, stretches, reference);
        OneWay oneWay = OneWay.is(held) ? new OneWay(held, stretches, shooter, turn) : null;
        BendResult.Bent guessed = oneWay == null ? null : oneWay.guessed();
        if (guessed != null) {
            return guessed;
        }
        try {
            List<Double> tips = oneWay == null ? everyWay(shooter, turn) : oneWay.scanned();
            BendResult.Bent least = null;
            for (double tip : tips) {
                BendResult.Bent next = shooter.shape(tip);
                if (least == null || next.energyNmm() < least.energyNmm() || Double.isNaN(next.energyNmm())) {
                    least = next;
                }
            }
            return least == null
                    ? new BendResult.NotConverged("No direction of the tip meets the clamp at "
                            + degrees(held.clampAngleRad()) + " degrees; the load may be too large for this blank.")
                    : believed(held, least);
        } catch (MathRuntimeException e) {
            return new BendResult.NotConverged("The integration failed: " + e.getMessage());
        }
    }

    /** Direction of the clamp from that of the outermost load, radians within ±π. */
    static double turn(BendCase held) {
        return Math.IEEEremainder(held.clampAngleRad() - loadDirection(held), 2.0 * Math.PI);
    }

    private static BendResult straight(BendCase held) {
        double length = held.lengthMm();
        double angle = held.clampAngleRad();
        return new BendResult.Bent(
                List.of(
                        new BendResult.Node(held.clampMm(), 0.0, 0.0, angle, 0.0),
                        new BendResult.Node(
                                held.stiffness().tipMm(),
                                length * Math.cos(angle),
                                length * Math.sin(angle),
                                angle,
                                0.0)),
                0.0,
                0.0,
                0.0,
                0.0);
    }

    /** The shape, or why it is not to be trusted. */
    static BendResult believed(BendCase held, BendResult.Bent bent) {
        double angleError = Math.abs(bent.nodes().get(0).angleRad() - held.clampAngleRad());
        double scale = 0.0;
        for (BendResult.Node node : bent.nodes()) {
            if (!Double.isFinite(bent.energyNmm() + node.xMm() + node.yMm() + node.angleRad() + node.momentNmm())) {
                return new BendResult.NotConverged("The shape ran out of numbers at " + node.sMm() + " mm.");
            }
            scale = Math.max(scale, Math.abs(node.momentNmm()));
        }
        double leverError = Math.abs(bent.rootMomentNmm() - bent.leverMomentNmm());
        if (angleError > ANGLE_TOLERANCE_RAD || leverError > LEVER_TOLERANCE * scale) {
            return new BendResult.NotConverged(String.format(
                    Locale.ROOT,
                    "The shape misses the clamp by %.1e radians and equilibrium by %.1e N·mm.",
                    angleError,
                    leverError));
        }
        return bent;
    }

    private static double loadDirection(BendCase held) {
        for (PointLoad load : held.loadsAhead()) {
            if (load.size() > 0.0) {
                return Math.atan2(load.upN(), load.forwardN());
            }
        }
        return -Math.PI / 2.0;
    }

    /** Tip directions that meet the clamp, from a grid over a whole turn about the clamp's, finer near the outermost load's. */
    private static List<Double> everyWay(TipShooter shooter, double turn) {
        UnivariateFunction miss = tip -> shooter.clampAngle(tip) - turn;
        TreeSet<Double> grid = new TreeSet<>();
        for (int i = 0; i <= GRID; i++) {
            grid.add(turn + Math.PI * (2.0 * i / GRID - 1.0));
        }
        for (double offset = 0.05; offset > 1e-9; offset /= 4.0) {
            grid.add(-offset);
            grid.add(offset);
        }
        List<Double> roots = new ArrayList<>();
        double previous = grid.first();
        double missPrevious = shooter.roughClampAngle(previous) - turn;
        for (double tip : grid.tailSet(previous, false)) {
            double missTip = shooter.roughClampAngle(tip) - turn;
            if (missPrevious * missTip <= 0.0) {
                root(miss, previous, tip).ifPresent(roots::add);
            }
            previous = tip;
            missPrevious = missTip;
        }
        return roots;
    }

    /** The root between two places of a rough search, or none when that was misled there. */
    static OptionalDouble root(UnivariateFunction miss, double from, double to) {
        double margin = ROUGHNESS * Math.min(1.0, to - from);
        double low = from - margin;
        double high = to + margin;
        if (miss.value(low) * miss.value(high) > 0.0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                new BracketingNthOrderBrentSolver(1e-15, 1e-18, 1e-13, 5).solve(MOST_STEPS, miss, low, high));
    }

    private static String degrees(double radians) {
        return String.format(Locale.ROOT, "%.1f", Math.toDegrees(radians));
    }
}
