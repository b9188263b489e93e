package withy.mechanics;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.hipparchus.exception.MathRuntimeException;
import org.jspecify.annotations.Nullable;

/**
 * Large deflection of a rod under a line that runs through its rings to the reel: the elastica of {@link BendUnderLoad} with the line's forces
 * at the rings.
 *
 * <p>The directions of the tip and of the line in each span are found together ({@link Broyden}, else Levenberg–Marquardt), from those of the
 * same rod pulled at its tip alone; the rings change the shape little, since rod and line together carry the outer pull only. Where that fails,
 * the pull is raised in steps. A shape is believed only when the clamp's direction and every ring are met to 1e-8, the root moment equals the lever moments
 * of pull, line and weights to 1e-6, and the blank does not coil. Frictionless rings; the blank does not push the line aside where they touch.
 */
public final class LineThroughRings {
    private static final double ANGLE_TOLERANCE_RAD = 1e-8;
    private static final double LEVER_TOLERANCE = 1e-6;
    private static final double ENOUGH_RAD = 1e-11;

    /** How far a bent blank may point beyond pull and clamp; farther is a coil. */
    private static final double COILED_RAD = 0.7;

    /** Shares of the pull it is raised by where the whole can't be met at once. */
    private static final double[] STEPS = {0.15, 0.3, 0.45, 0.6, 0.7, 0.8, 0.9, 1.0};

    private static final int MOST_EVALUATIONS = 60;
    private static final int MOST_STEPS = 20;

    private LineThroughRings() {}

    public static LineResult solve(LineCase line) {
        double turn = Math.IEEEremainder(line.held().clampAngleRad() - line.pullRad(), 2.0 * Math.PI);
        LineResult straight = attempt(line, turn, null);
        if (straight instanceof LineResult.Held) {
            return straight;
        }
        double[] assumed = null;
        for (double share : STEPS) {
            LineCase eased =
                    new LineCase(line.held(), line.rings(), line.reel(), share * line.tensionN(), line.pullRad());
            LineShooter shooter = new LineShooter(eased, turn);
            assumed = found(eased, shooter, assumed);
            if (assumed == null) {
                return straight;
            }
        }
        return attempt(line, turn, assumed);
    }

    private static LineResult attempt(LineCase line, double turn, double @Nullable [] start) {
        LineShooter shooter = new LineShooter(line, turn);
        double[] assumed = found(line, shooter, start);
        if (assumed == null) {
            return new LineResult.NotConverged(String.format(
                    Locale.ROOT,
                    "No way of the line through the rings meets the handle under a pull of %.1f N; it may be too much"
                            + " for this blank.",
                    line.tensionN()));
        }
        try {
            return believed(line, turn, new Assembly(line, shooter).of(assumed));
        } catch (MathRuntimeException e) {
            return new LineResult.NotConverged("The integration failed: " + e.getMessage());
        }
    }

    /** The directions that meet all rings and the clamp, or null. */
    private static double @Nullable [] found(LineCase line, LineShooter shooter, double @Nullable [] start) {
        double[] from = start == null ? guess(line, shooter) : start;
        if (from == null) {
            return null;
        }
        double[] soon = arrived(shooter, from);
        if (soon != null) {
            return soon;
        }
        try {
            double[] near = LeastSquares.fit(
                    from,
                    at -> {
                        double[] misses = shooter.misses(at);
                        return new LeastSquares.Value(misses, shooter.slopes(at, misses));
                    },
                    MOST_EVALUATIONS);
            return arrived(shooter, near);
        } catch (MathRuntimeException e) {
            return null;
        }
    }

    /** By Newton's steps from directions that are near, or null where they don't arrive. */
    private static double @Nullable [] arrived(LineShooter shooter, double[] near) {
        try {
            Broyden.Root root = Broyden.root(near, shooter::misses, shooter::slopes, ENOUGH_RAD, MOST_STEPS);
            return root.miss() <= ANGLE_TOLERANCE_RAD ? root.at() : null;
        } catch (MathRuntimeException e) {
            return null;
        }
    }

    /** Directions on the rod pulled at its tip without rings and weights. */
    private static double @Nullable [] guess(LineCase line, LineShooter shooter) {
        BendCase held = line.held();
        BendCase bare = new BendCase(
                held.stiffness(),
                held.clampMm(),
                held.clampAngleRad(),
                null,
                List.of(PointLoad.pull(held.stiffness().tipMm(), line.tensionN(), line.pullRad())));
        return BendUnderLoad.solve(bare) instanceof BendResult.Bent bent
                ? shooter.guess(new BentAxis(bent.nodes()))
                : null;
    }

    private static LineResult believed(LineCase line, double turn, LineResult.Held held) {
        double angle = held.nodes().get(0).angleRad() - line.pullRad() - turn;
        double angleError = Math.abs(Math.IEEEremainder(angle, 2.0 * Math.PI));
        double scale = 0.0;
        for (BendResult.Node node : held.nodes()) {
            if (!Double.isFinite(node.xMm() + node.yMm() + node.angleRad() + node.momentNmm())) {
                return new LineResult.NotConverged("The shape ran out of numbers at " + node.sMm() + " mm.");
            }
            double from = node.angleRad() - line.pullRad();
            if (from < Math.min(0.0, turn) - COILED_RAD || from > Math.max(0.0, turn) + COILED_RAD) {
                return new LineResult.NotConverged("The blank would have to coil at " + node.sMm() + " mm.");
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
        LineResult.Held of(double[] assumed) {
            LineShooter.Trial trial = shooter.shape(assumed);
            double[] root = trial.clamp();
            double length = shooter.rod().lengthMm();
            double force = shooter.rod().forceN();
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
            double scale = shooter.rod().forceN() * shooter.rod().lengthMm();
            return new BendResult.Node(
                    shooter.rod().tipMm() - shooter.rod().lengthMm() * row[0],
                    at[0],
                    at[1],
                    line.pullRad() + row[1],
                    row[2] * scale);
        }

        private double[] about(double[] root, double[] at) {
            double length = shooter.rod().lengthMm();
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
