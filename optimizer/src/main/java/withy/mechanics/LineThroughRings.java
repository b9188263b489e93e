package withy.mechanics;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.hipparchus.analysis.UnivariateFunction;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.exception.MathRuntimeException;

/**
 * Large deflection of a rod under a line that runs through its rings to the reel: the elastica of {@link BendUnderLoad} with the line's forces
 * at the rings.
 *
 * <p>One unknown, the tip's direction, is searched near that of the same rod pulled at its tip alone; the rings change the shape little, since
 * rod and line together carry the outer pull only. A shape is believed only when the clamp's direction is met to 1e-8 and the root moment
 * equals the lever moments of pull, line and weights to 1e-6. Frictionless rings; the blank does not push the line aside where they touch.
 */
public final class LineThroughRings {
    private static final double ANGLE_TOLERANCE_RAD = 1e-8;
    private static final double LEVER_TOLERANCE = 1e-6;

    /** First step away from the guess, as a share of the angle between pull and clamp; later ones grow. */
    private static final double FIRST_STEP = 0.01;

    /** Tip direction the rough search is content with, radians. */
    private static final double ROUGHNESS = 1e-6;

    private static final double GROWTH = 2.0;
    private static final int MOST_STEPS_OUT = 12;
    private static final int MOST_SOLVER_STEPS = 60;

    private LineThroughRings() {}

    public static LineResult solve(LineCase line) {
        BendCase held = line.held();
        double turn = Math.IEEEremainder(held.clampAngleRad() - line.pullRad(), 2.0 * Math.PI);
        try {
            LineShooter shooter = new LineShooter(line);
            OptionalDouble near = root(
                    tip -> shooter.roughClampAngle(tip) - turn,
                    guess(line),
                    Math.max(Math.abs(turn), 0.1) * FIRST_STEP,
                    ROUGHNESS);
            OptionalDouble tip = near.isEmpty()
                    ? near
                    : root(t -> shooter.clampAngle(t) - turn, near.getAsDouble(), 10.0 * ROUGHNESS, 1e-15);
            if (tip.isEmpty()) {
                return new LineResult.NotConverged(String.format(
                        Locale.ROOT,
                        "No direction of the tip meets the handle under a pull of %.1f N; it may be too much for this"
                                + " blank.",
                        line.tensionN()));
            }
            return believed(line, turn, new Assembly(line, shooter).of(tip.getAsDouble()));
        } catch (LineShooter.NoPath e) {
            return new LineResult.NotConverged(String.valueOf(e.getMessage()));
        } catch (MathRuntimeException e) {
            return new LineResult.NotConverged("The integration failed: " + e.getMessage());
        }
    }

    /** Direction of the tip, from the pull's, of the rod pulled at its tip without rings and weights. */
    private static double guess(LineCase line) {
        BendCase held = line.held();
        BendCase bare = new BendCase(
                held.stiffness(),
                held.clampMm(),
                held.clampAngleRad(),
                null,
                List.of(PointLoad.pull(held.stiffness().tipMm(), line.tensionN(), line.pullRad())));
        return BendUnderLoad.solve(bare) instanceof BendResult.Bent bent
                ? Math.IEEEremainder(bent.tip().angleRad() - line.pullRad(), 2.0 * Math.PI)
                : 0.0;
    }

    private static OptionalDouble root(UnivariateFunction miss, double guess, double firstStep, double exact) {
        double at = miss.value(guess);
        if (at == 0.0) {
            return OptionalDouble.of(guess);
        }
        double low = guess;
        double high = guess;
        double atLow = at;
        double atHigh = at;
        double step = firstStep;
        for (int i = 0; i < MOST_STEPS_OUT; i++) {
            double lower = low - step;
            double atLower = miss.value(lower);
            if (atLower * atLow <= 0.0) {
                return OptionalDouble.of(between(miss, lower, low, exact));
            }
            double higher = high + step;
            double atHigher = miss.value(higher);
            if (atHigher * atHigh <= 0.0) {
                return OptionalDouble.of(between(miss, high, higher, exact));
            }
            low = lower;
            atLow = atLower;
            high = higher;
            atHigh = atHigher;
            step *= GROWTH;
        }
        return OptionalDouble.empty();
    }

    private static double between(UnivariateFunction miss, double low, double high, double exact) {
        return new BracketingNthOrderBrentSolver(1e-14, exact, Math.max(exact, 1e-10), 5)
                .solve(MOST_SOLVER_STEPS, miss, low, high);
    }

    private static LineResult believed(LineCase line, double turn, LineResult.Held held) {
        double angle = held.nodes().get(0).angleRad() - line.pullRad() - turn;
        double angleError = Math.abs(Math.IEEEremainder(angle, 2.0 * Math.PI));
        double scale = 0.0;
        for (BendResult.Node node : held.nodes()) {
            if (!Double.isFinite(node.xMm() + node.yMm() + node.angleRad() + node.momentNmm())) {
                return new LineResult.NotConverged("The shape ran out of numbers at " + node.sMm() + " mm.");
            }
            scale = Math.max(scale, Math.abs(node.momentNmm()));
        }
        double leverError = Math.abs(held.rootMomentNmm() - held.leverMomentNmm());
        if (angleError > ANGLE_TOLERANCE_RAD || leverError > LEVER_TOLERANCE * scale) {
            return new LineResult.NotConverged(String.format(
                    Locale.ROOT,
                    "The shape misses the handle by %.1e radians and equilibrium by %.1e N·mm.",
                    angleError,
                    leverError));
        }
        return held;
    }

    /** Turns a trial's rows into places about the clamp, and sums levers and energy. */
    private record Assembly(LineCase line, LineShooter shooter) {
        LineResult.Held of(double tipRad) {
            LineShooter.Trial trial = shooter.shape(tipRad);
            double[] root = trial.clamp();
            double length = shooter.spans().lengthMm();
            double force = shooter.spans().forceN();
            List<BendResult.Node> nodes = new ArrayList<>();
            nodes.add(node(root, new double[] {1.0, root[0], root[1], root[3], root[4]}));
            for (int i = trial.rows().size() - 1; i >= 0; i--) {
                nodes.add(node(root, trial.rows().get(i)));
            }
            List<LineResult.RingLoad> rings = rings(trial, root);
            double[] reel = about(root, trial.touched().get(trial.touched().size() - 1));
            double weightX = root[5] - root[2] * root[3];
            double weightY = root[6] - root[2] * root[4];
            double lever = -force * length * forward(weightX, weightY);
            double work = -force * length * up(weightX, weightY);
            for (PointLoad load : line.held().loadsAhead()) {
                BendResult.Node at = nearest(nodes, load.sMm());
                lever += load.upN() * at.xMm() - load.forwardN() * at.yMm() + load.coupleNmm();
                work += load.upN() * at.yMm() + load.forwardN() * at.xMm() + load.coupleNmm() * at.angleRad();
            }
            LineResult.RingLoad tip = rings.get(rings.size() - 1);
            LineResult.RingLoad stripper = rings.get(0);
            double pullX = Math.cos(line.pullRad());
            double pullY = Math.sin(line.pullRad());
            double span = Math.hypot(stripper.xMm() - reel[0], stripper.yMm() - reel[1]);
            double toReelX = (reel[0] - stripper.xMm()) / span;
            double toReelY = (reel[1] - stripper.yMm()) / span;
            lever += line.tensionN() * (tip.xMm() * pullY - tip.yMm() * pullX);
            lever += line.tensionN() * (stripper.xMm() * toReelY - stripper.yMm() * toReelX);
            double lineMm = span + along(rings);
            double spent = line.tensionN() * (lineMm - tip.xMm() * pullX - tip.yMm() * pullY);
            BendResult.Node last = nodes.get(nodes.size() - 1);
            double angle = line.held().clampAngleRad();
            return new LineResult.Held(
                    nodes,
                    rings,
                    reel[0],
                    reel[1],
                    Math.sin(angle) * last.xMm() - Math.cos(angle) * last.yMm(),
                    root[1] * force * length,
                    lever,
                    lineMm,
                    root[7] * force * length - work + spent);
        }

        private List<LineResult.RingLoad> rings(LineShooter.Trial trial, double[] root) {
            List<LineResult.RingLoad> rings = new ArrayList<>();
            int count = line.rings().size();
            for (int i = 0; i < count; i++) {
                double[] touched = trial.touched().get(i);
                double[] at = about(root, touched);
                double x = line.tensionN() * (Math.cos(touched[2]) - Math.cos(touched[3]));
                double y = line.tensionN() * (Math.sin(touched[2]) - Math.sin(touched[3]));
                rings.add(new LineResult.RingLoad(
                        line.rings().get(count - 1 - i).sMm(),
                        at[0],
                        at[1],
                        forward(x, y),
                        up(x, y),
                        Math.IEEEremainder(touched[2] - touched[3], 2.0 * Math.PI)));
            }
            Collections.reverse(rings);
            return rings;
        }

        private static double along(List<LineResult.RingLoad> rings) {
            double sum = 0.0;
            for (int i = 1; i < rings.size(); i++) {
                sum += Math.hypot(
                        rings.get(i).xMm() - rings.get(i - 1).xMm(),
                        rings.get(i).yMm() - rings.get(i - 1).yMm());
            }
            return sum;
        }

        private BendResult.Node node(double[] root, double[] row) {
            double[] at = about(root, new double[] {row[3], row[4]});
            double scale = shooter.spans().forceN() * shooter.spans().lengthMm();
            return new BendResult.Node(
                    shooter.spans().tipMm() - shooter.spans().lengthMm() * row[0],
                    at[0],
                    at[1],
                    line.pullRad() + row[1],
                    row[2] * scale);
        }

        private double[] about(double[] root, double[] at) {
            double length = shooter.spans().lengthMm();
            double x = length * (at[0] - root[3]);
            double y = length * (at[1] - root[4]);
            return new double[] {forward(x, y), up(x, y)};
        }

        private static BendResult.Node nearest(List<BendResult.Node> nodes, double sMm) {
            BendResult.Node nearest = nodes.get(0);
            for (BendResult.Node node : nodes) {
                if (Math.abs(node.sMm() - sMm) < Math.abs(nearest.sMm() - sMm)) {
                    nearest = node;
                }
            }
            return nearest;
        }

        private double forward(double x, double y) {
            return Math.cos(line.pullRad()) * x - Math.sin(line.pullRad()) * y;
        }

        private double up(double x, double y) {
            return Math.sin(line.pullRad()) * x + Math.cos(line.pullRad()) * y;
        }
    }
}
