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
 * load's direction is the shape without a point of inflection. Otherwise every root on a grid is solved and the shape of least
 * energy is taken. A shape is believed only when the angle at the clamp is met to 1e-8 and the root moment equals Σ load ×
 * lever to 1e-6.
 */
public final class BendUnderLoad {
    private static final double ANGLE_TOLERANCE_RAD = 1e-8;
    private static final double LEVER_TOLERANCE = 1e-6;
    private static final double PARALLEL_TOLERANCE = 1e-12;

    /** ln of the smallest angle between tip and load that is followed; a rod that needs less lies along its load. */
    private static final double SMALLEST_LN = -60.0;

    private static final double SCAN_STEP_LN = 0.6;
    /** Share by which a bracket of the rough search is widened. */
    private static final double ROUGHNESS = 0.01;

    /** How closely the drawn shape is brought to the clamp, the share of the tip's angle a slope is taken over, and how often. */
    private static final double MENDED_RAD = 1e-9;

    private static final double SLOPE_SHARE = 1e-4;
    private static final int MOST_MENDS = 4;
    private static final int GRID = 48;
    private static final int MOST_STEPS = 80;

    private BendUnderLoad() {}

    public static BendResult solve(BendCase held) {
        double turn = Math.IEEEremainder(held.clampAngleRad() - loadDirection(held), 2.0 * Math.PI);
        double reference = held.clampAngleRad() - turn;
        LoadedStretches stretches = new LoadedStretches(held, reference);
        TipShooter shooter = new TipShooter(held, stretches, reference);
        try {
            if (stretches.forceN() == 0.0) {
                return straight(held);
            }
            List<Double> tips = parallel(held) ? oneWay(shooter, turn, stretches.growth()) : everyWay(shooter, turn);
            BendResult best = new BendResult.NotConverged("No direction of the tip meets the clamp at "
                    + degrees(held.clampAngleRad()) + " degrees; the load may be too large for this blank.");
            for (double tip : tips) {
                BendResult next = believed(held, met(held, shooter, tip));
                if (!(best instanceof BendResult.Bent kept)
                        || (next instanceof BendResult.Bent bent && bent.energyNmm() < kept.energyNmm())) {
                    best = next;
                }
            }
            return best;
        } catch (MathRuntimeException e) {
            return new BendResult.NotConverged("The integration failed: " + e.getMessage());
        }
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

    /**
     * The shape of a tip direction, mended until it meets the clamp: drawing takes other steps than searching, and a heavy load magnifies what that
     * differs by.
     */
    private static BendResult.Bent met(BendCase held, TipShooter shooter, double tip) {
        double mended = tip;
        BendResult.Bent bent = shooter.shape(mended);
        for (int i = 0; i < MOST_MENDS && Math.abs(missRad(held, bent)) > MENDED_RAD && mended != 0.0; i++) {
            double step = SLOPE_SHARE * mended;
            double slope = (shooter.clampAngle(mended + step) - shooter.clampAngle(mended)) / step;
            mended -= missRad(held, bent) / slope;
            bent = shooter.shape(mended);
        }
        return bent;
    }

    private static double missRad(BendCase held, BendResult.Bent bent) {
        return bent.nodes().get(0).angleRad() - held.clampAngleRad();
    }

    private static BendResult believed(BendCase held, BendResult.Bent bent) {
        double angleError = Math.abs(missRad(held, bent));
        double scale = 0.0;
        for (BendResult.Node node : bent.nodes()) {
            if (!Double.isFinite(node.xMm() + node.yMm() + node.angleRad() + node.momentNmm())) {
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

    /** Whether everything that acts pulls in one direction and nothing twists. */
    private static boolean parallel(BendCase held) {
        double forward = 0.0;
        double up = 0.0;
        double sizes = 0.0;
        TubeMass own = held.own();
        if (own != null) {
            up = -own.massG() * MassSum.NMM_PER_GMM;
            sizes = -up;
        }
        for (PointLoad load : held.loadsAhead()) {
            if (load.coupleNmm() != 0.0) {
                return false;
            }
            forward += load.forwardN();
            up += load.upN();
            sizes += load.size();
        }
        return sizes - Math.hypot(forward, up) <= PARALLEL_TOLERANCE * sizes;
    }

    private static double loadDirection(BendCase held) {
        for (PointLoad load : held.loadsAhead()) {
            if (load.size() > 0.0) {
                return Math.atan2(load.upN(), load.forwardN());
            }
        }
        return -Math.PI / 2.0;
    }

    private static List<Double> oneWay(TipShooter shooter, double turn, double growth) {
        if (Math.abs(turn) < PARALLEL_TOLERANCE) {
            return List.of(turn);
        }
        double sign = Math.signum(turn);
        UnivariateFunction miss = ln -> sign * (shooter.clampAngle(turn * Math.exp(ln)) - turn);
        UnivariateFunction side = ln -> sign * (shooter.roughClampAngle(turn * Math.exp(ln)) - turn);
        double low = Math.min(-SCAN_STEP_LN, -growth - SCAN_STEP_LN);
        while (low >= SMALLEST_LN && side.value(low) > 0.0) {
            low -= 2.0 * SCAN_STEP_LN;
        }
        if (low < SMALLEST_LN) {
            return List.of();
        }
        while (low < 0.0) {
            double high = Math.min(0.0, low + SCAN_STEP_LN);
            if (side.value(high) >= 0.0) {
                OptionalDouble ln = root(miss, low - ROUGHNESS, high + ROUGHNESS);
                return ln.isPresent() ? List.of(turn * Math.exp(ln.getAsDouble())) : List.of();
            }
            low = high;
        }
        return List.of();
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
                double margin = ROUGHNESS * (tip - previous);
                root(miss, previous - margin, tip + margin).ifPresent(roots::add);
            }
            previous = tip;
            missPrevious = missTip;
        }
        return roots;
    }

    /** The root between two places, or none when the rough search was misled there. */
    private static OptionalDouble root(UnivariateFunction miss, double low, double high) {
        if (miss.value(low) * miss.value(high) > 0.0) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(
                new BracketingNthOrderBrentSolver(1e-15, 1e-14, 1e-13, 5).solve(MOST_STEPS, miss, low, high));
    }

    private static String degrees(double radians) {
        return String.format(Locale.ROOT, "%.1f", Math.toDegrees(radians));
    }
}
