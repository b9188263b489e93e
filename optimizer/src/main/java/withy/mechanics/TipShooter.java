package withy.mechanics;

import static withy.mechanics.StretchRunner.ALL;
import static withy.mechanics.StretchRunner.ANGLE;
import static withy.mechanics.StretchRunner.ELASTIC;
import static withy.mechanics.StretchRunner.MOMENT;
import static withy.mechanics.StretchRunner.WEIGHT;
import static withy.mechanics.StretchRunner.WEIGHT_X;
import static withy.mechanics.StretchRunner.WEIGHT_Y;
import static withy.mechanics.StretchRunner.X;
import static withy.mechanics.StretchRunner.Y;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.mechanics.LoadedStretches.Stretch;

/**
 * The bent rod from tip to clamp for an assumed direction of the tip.
 *
 * <p>Angles count from a reference direction, best that of the load: under a large load the tip points so nearly along it that
 * only the difference keeps its digits.
 */
final class TipShooter {
    /** Angle, moment and weight. */
    private static final int RULING = 3;

    /** Far below any angle looked for: the relative bound alone governs, so that tiny angles keep their digits. */
    private static final double ABSOLUTE = 1e-32;

    private static final double RELATIVE = 1e-11;

    /** Enough to tell on which side of the clamp's direction a trial ends. */
    private static final double ROUGH_RELATIVE = 1e-5;

    private static final double LEAST_STEP = 1e-12;

    /** Extra nodes so that a drawn curve looks round. */
    private static final int DRAWN_NODES = 40;

    private final BendCase held;
    private final double cosReference;
    private final double sinReference;
    private final double referenceRad;
    private final double lengthMm;
    private final double forceN;
    private final LoadedStretches stretches;
    private final StretchRunner fine;
    private final StretchRunner rough;

    TipShooter(BendCase held, LoadedStretches stretches, double referenceRad) {
        this.held = held;
        this.stretches = stretches;
        this.referenceRad = referenceRad;
        this.cosReference = stretches.cosReference();
        this.sinReference = stretches.sinReference();
        this.lengthMm = held.lengthMm();
        this.forceN = stretches.forceN();
        this.fine = new StretchRunner(stretches, RULING, LEAST_STEP, ABSOLUTE, RELATIVE);
        this.rough = new StretchRunner(stretches, RULING, LEAST_STEP, ABSOLUTE, ROUGH_RELATIVE);
    }

    /** Angle at the clamp from the reference, for a tip direction from the reference. */
    double clampAngle(double tipRad) {
        return clampAngle(tipRad, fine);
    }

    /** The same to about five digits, for a search. */
    double roughClampAngle(double tipRad) {
        return clampAngle(tipRad, rough);
    }

    private double clampAngle(double tipRad, StretchRunner runner) {
        double[] state = new double[RULING];
        state[ANGLE] = tipRad;
        for (Stretch stretch : stretches.all()) {
            state[MOMENT] += stretch.couple();
            state = runner.over(stretch, stretch.forward(), stretch.up(), state);
        }
        return state[ANGLE];
    }

    /** Where a trial ends. */
    record Reached(double clampRad, double dropMm) {}

    /** Angle at the clamp from the reference, radians, and drop of the tip from the clamp's direction, mm. */
    Reached reached(double tipRad) {
        double[] root = end(tipRad, null);
        double x = -lengthMm * forward(root[X], root[Y]);
        double y = -lengthMm * up(root[X], root[Y]);
        return new Reached(root[ANGLE], dropMm(x, y));
    }

    /** The whole shape for a tip direction from the reference. */
    BendResult.Bent shape(double tipRad) {
        List<double[]> rows = new ArrayList<>();
        double[] root = end(tipRad, rows);
        rows.add(StretchRunner.row(1.0, root));
        return assemble(rows, root);
    }

    /** All of the state at the clamp; rows, where wanted, of what comes before it. */
    private double[] end(double tipRad, @Nullable List<double[]> rows) {
        double[] state = new double[ALL];
        state[ANGLE] = tipRad;
        for (Stretch stretch : stretches.all()) {
            int parts = 1;
            if (rows != null) {
                rows.add(StretchRunner.row(stretch.u0(), state));
                parts = Math.max(1, (int) Math.ceil((stretch.u1() - stretch.u0()) * DRAWN_NODES));
            }
            state[MOMENT] += stretch.couple();
            state = fine.drawn(stretch, stretch.forward(), stretch.up(), state, parts, rows);
        }
        return state;
    }

    private double dropMm(double x, double y) {
        return Math.sin(held.clampAngleRad()) * x - Math.cos(held.clampAngleRad()) * y;
    }

    private BendResult.Bent assemble(List<double[]> rows, double[] root) {
        double tip = held.stiffness().tipMm();
        List<BendResult.Node> nodes = new ArrayList<>();
        for (int i = rows.size() - 1; i >= 0; i--) {
            double[] row = rows.get(i);
            nodes.add(new BendResult.Node(
                    tip - lengthMm * row[0],
                    lengthMm * forward(row[3] - root[X], row[4] - root[Y]),
                    lengthMm * up(row[3] - root[X], row[4] - root[Y]),
                    referenceRad + row[1],
                    row[2] * forceN * lengthMm));
        }
        double weightX = root[WEIGHT_X] - root[WEIGHT] * root[X];
        double weightY = root[WEIGHT_Y] - root[WEIGHT] * root[Y];
        double lever = -forceN * lengthMm * forward(weightX, weightY);
        double work = -forceN * lengthMm * up(weightX, weightY);
        for (PointLoad load : held.loadsAhead()) {
            BendResult.Node at = nodeAt(nodes, load.sMm());
            lever += load.upN() * at.xMm() - load.forwardN() * at.yMm() + load.coupleNmm();
            work += load.upN() * at.yMm() + load.forwardN() * at.xMm() + load.coupleNmm() * at.angleRad();
        }
        BendResult.Node last = nodes.get(nodes.size() - 1);
        double elastic = root[ELASTIC] * forceN * lengthMm;
        return new BendResult.Bent(
                nodes, dropMm(last.xMm(), last.yMm()), root[MOMENT] * forceN * lengthMm, lever, elastic - work);
    }

    private double forward(double x, double y) {
        return cosReference * x - sinReference * y;
    }

    private double up(double x, double y) {
        return sinReference * x + cosReference * y;
    }

    private static BendResult.Node nodeAt(List<BendResult.Node> nodes, double sMm) {
        BendResult.Node nearest = nodes.get(0);
        for (BendResult.Node node : nodes) {
            if (Math.abs(node.sMm() - sMm) < Math.abs(nearest.sMm() - sMm)) {
                nearest = node;
            }
        }
        return nearest;
    }
}
