package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/**
 * Integrates the bent rod from tip to clamp for an assumed direction of the tip.
 *
 * <p>Angles count from a reference direction, best that of the load: under a large load the tip points so nearly along it that
 * only the difference keeps its digits.
 *
 * <p>u distance from the tip over length L; θ angle from the reference; m moment over (F·L), F the sum of all loads; r the force of
 * everything outboard over F, known at each u since all loads keep their direction. dθ/du = −m·(F·L²/EI); dm/du = cosθ·r_y −
 * sinθ·r_x; a couple adds to m. At the tip m = 0. Places are integrated beside.
 */
final class TipShooter {
    private static final int ANGLE = 0;
    private static final int MOMENT = 1;
    private static final int WEIGHT = 2;
    private static final int X = 3;
    private static final int Y = 4;
    private static final int WEIGHT_X = 5;
    private static final int WEIGHT_Y = 6;
    private static final int ELASTIC = 7;
    private static final int SHORT = 3;
    private static final int LONG = 8;

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
    private final DormandPrince853Integrator fine = new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, RELATIVE);
    private final DormandPrince853Integrator rough =
            new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, ROUGH_RELATIVE);

    TipShooter(BendCase held, LoadedStretches stretches, double referenceRad) {
        this.held = held;
        this.stretches = stretches;
        this.referenceRad = referenceRad;
        this.cosReference = stretches.cosReference();
        this.sinReference = stretches.sinReference();
        this.lengthMm = held.lengthMm();
        this.forceN = stretches.forceN();
    }

    /** Angle at the clamp from the reference, for a tip direction from the reference. */
    double clampAngle(double tipRad) {
        return clampAngle(tipRad, fine);
    }

    /** The same to about five digits, for a search. */
    double roughClampAngle(double tipRad) {
        return clampAngle(tipRad, rough);
    }

    private double clampAngle(double tipRad, DormandPrince853Integrator integrator) {
        double[] state = new double[SHORT];
        state[ANGLE] = tipRad;
        double forward = 0.0;
        double up = 0.0;
        for (LoadedStretches.Stretch stretch : stretches.all()) {
            forward += stretch.forward();
            up += stretch.up();
            state[MOMENT] += stretch.couple();
            state = run(integrator, stretch, forward, up, state, stretch.u0(), stretch.u1());
        }
        return state[ANGLE];
    }

    /** The whole shape for a tip direction from the reference. */
    BendResult.Bent shape(double tipRad) {
        List<double[]> rows = new ArrayList<>();
        double[] state = new double[LONG];
        state[ANGLE] = tipRad;
        double forward = 0.0;
        double up = 0.0;
        for (LoadedStretches.Stretch stretch : stretches.all()) {
            forward += stretch.forward();
            up += stretch.up();
            rows.add(row(stretch.u0(), state));
            state[MOMENT] += stretch.couple();
            int parts = Math.max(1, (int) Math.ceil((stretch.u1() - stretch.u0()) * DRAWN_NODES));
            for (int part = 1; part <= parts; part++) {
                double a = stretch.u0() + (stretch.u1() - stretch.u0()) * (part - 1) / parts;
                double b = part == parts ? stretch.u1() : stretch.u0() + (stretch.u1() - stretch.u0()) * part / parts;
                state = run(fine, stretch, forward, up, state, a, b);
                if (part < parts) {
                    rows.add(row(b, state));
                }
            }
        }
        rows.add(row(1.0, state));
        return assemble(rows, state);
    }

    private static double[] row(double u, double[] state) {
        return new double[] {u, state[ANGLE], state[MOMENT], state[X], state[Y]};
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
        double angle = held.clampAngleRad();
        double drop = Math.sin(angle) * last.xMm() - Math.cos(angle) * last.yMm();
        double elastic = root[ELASTIC] * forceN * lengthMm;
        return new BendResult.Bent(nodes, drop, root[MOMENT] * forceN * lengthMm, lever, elastic - work);
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

    private double[] run(
            DormandPrince853Integrator integrator,
            LoadedStretches.Stretch stretch,
            double forward,
            double up,
            double[] state,
            double from,
            double to) {
        Equations equations = new Equations(stretch, forward, up, state.length);
        integrator.setInitialStepSize(to - from);
        return integrator.integrate(equations, new ODEState(from, state), to).getPrimaryState();
    }

    private final class Equations implements OrdinaryDifferentialEquation {
        private final LoadedStretches.Stretch stretch;
        private final double forward;
        private final double up;
        private final int dimension;
        private final double tipMm = held.stiffness().tipMm();
        private final double loadMm2 = forceN * lengthMm * lengthMm;

        Equations(LoadedStretches.Stretch stretch, double forward, double up, int dimension) {
            this.stretch = stretch;
            this.forward = forward;
            this.up = up;
            this.dimension = dimension;
        }

        @Override
        public int getDimension() {
            return dimension;
        }

        @Override
        public double[] computeDerivatives(double u, double[] state) {
            double s = tipMm - lengthMm * u;
            double flexibility = loadMm2 / stretch.stiffness().atNmm2(s);
            double cos = Math.cos(state[ANGLE]);
            double sin = Math.sin(state[ANGLE]);
            LoadedStretches.TaperedWeight weight = stretch.weight();
            double w = weight == null ? 0.0 : weight.at(s) * lengthMm / forceN;
            double[] rate = new double[dimension];
            rate[ANGLE] = -state[MOMENT] * flexibility;
            rate[MOMENT] = cos * (up - cosReference * state[WEIGHT]) - sin * (forward - sinReference * state[WEIGHT]);
            rate[WEIGHT] = w;
            if (dimension == LONG) {
                rate[X] = -cos;
                rate[Y] = -sin;
                rate[WEIGHT_X] = w * state[X];
                rate[WEIGHT_Y] = w * state[Y];
                rate[ELASTIC] = state[MOMENT] * state[MOMENT] * flexibility / 2.0;
            }
            return rate;
        }
    }
}
