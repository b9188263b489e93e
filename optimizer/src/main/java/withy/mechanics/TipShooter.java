package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.jspecify.annotations.Nullable;

/**
 * Integrates the bent rod from tip to clamp for an assumed direction of the tip.
 *
 * <p>Angles count from a reference direction, best that of the load: under a large load the tip points so nearly along it that
 * only the difference keeps its digits.
 *
 * <p>u distance from the tip over length L; θ angle from the reference; m moment over (F·L), F the sum of all loads; r the force of
 * everything outboard over F, known at each u since all loads keep their direction. dθ/du = −m·(F·L²/EI); dm/du = cosθ·r_y −
 * sinθ·r_x; a couple adds to m. At the tip m = 0. Places are integrated beside. Stretches end at every break of stiffness,
 * weight and load, so that each is smooth.
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
    private final List<Stretch> stretches = new ArrayList<>();
    private final DormandPrince853Integrator fine = new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, RELATIVE);
    private final DormandPrince853Integrator rough =
            new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, ROUGH_RELATIVE);

    /** One smooth stretch, from u0 (nearer the tip) to u1, with the loads that join at u0. */
    private record Stretch(
            double u0,
            double u1,
            StiffnessProfile.Stretch stiffness,
            @Nullable TaperedWeight weight,
            double forward,
            double up,
            double couple) {}

    /** Weight per length a·g·d^n on one stretch, N/mm. */
    private record TaperedWeight(double fromMm, double diameter, double slope, double scale, double exponent) {
        double at(double sMm) {
            double d = diameter + slope * (sMm - fromMm);
            return scale * (exponent == 1.0 ? d : Math.pow(d, exponent));
        }
    }

    TipShooter(BendCase held, double referenceRad) {
        this.held = held;
        this.referenceRad = referenceRad;
        this.cosReference = Math.cos(referenceRad);
        this.sinReference = Math.sin(referenceRad);
        this.lengthMm = held.lengthMm();
        double force = 0.0;
        for (PointLoad load : held.loadsAhead()) {
            force += load.size() + Math.abs(load.coupleNmm()) / lengthMm;
        }
        TubeMass own = held.own();
        if (own != null) {
            force += own.massG() * MassSum.NMM_PER_GMM;
        }
        this.forceN = force;
        if (force > 0.0) {
            cut();
        }
    }

    /** Sum of all loads, N; 0 leaves the rod straight. */
    double forceN() {
        return forceN;
    }

    private void cut() {
        double tip = held.stiffness().tipMm();
        TreeSet<Double> places = new TreeSet<>();
        for (double place : held.stiffness().breaksMm()) {
            places.add(place);
        }
        for (PointLoad load : held.loadsAhead()) {
            places.add(load.sMm());
        }
        TubeMass own = held.own();
        if (own != null) {
            for (double place : own.profile().xMm()) {
                places.add(Math.min(place, tip));
            }
        }
        places.add(held.clampMm());
        places.add(tip);
        double[] down = places.tailSet(held.clampMm(), true).descendingSet().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        for (int i = 1; i < down.length; i++) {
            stretches.add(stretch(down[i], down[i - 1], tip));
        }
    }

    private Stretch stretch(double from, double to, double tip) {
        double forward = 0.0;
        double up = 0.0;
        double couple = 0.0;
        for (PointLoad load : held.loadsAhead()) {
            if (load.sMm() == to) {
                forward += (load.forwardN() * cosReference + load.upN() * sinReference) / forceN;
                up += (load.upN() * cosReference - load.forwardN() * sinReference) / forceN;
                couple += load.coupleNmm() / (forceN * lengthMm);
            }
        }
        return new Stretch(
                (tip - to) / lengthMm,
                (tip - from) / lengthMm,
                held.stiffness().stretch(from, to),
                weight(from, to),
                forward,
                up,
                couple);
    }

    private @Nullable TaperedWeight weight(double from, double to) {
        TubeMass own = held.own();
        if (own == null || from >= own.profile().endMm() || to <= own.profile().startMm()) {
            return null;
        }
        double d0 = own.profile().at(from);
        double slope = (own.profile().before(to) - d0) / (to - from);
        return new TaperedWeight(from, d0, slope, own.scale() * MassSum.NMM_PER_GMM, own.exponent());
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
        for (Stretch stretch : stretches) {
            forward += stretch.forward();
            up += stretch.up();
            state[MOMENT] += stretch.couple();
            state = run(integrator, stretch, forward, up, state, stretch.u0(), stretch.u1());
        }
        return state[ANGLE];
    }

    /** Σ over the stretches of √(outboard force/EI)·length: how many times e-fold a small angle grows toward the clamp. */
    double growth() {
        double forward = 0.0;
        double up = 0.0;
        double weightN = 0.0;
        double growth = 0.0;
        double tip = held.stiffness().tipMm();
        for (Stretch stretch : stretches) {
            forward += stretch.forward();
            up += stretch.up();
            double middleMm = tip - lengthMm * (stretch.u0() + stretch.u1()) / 2.0;
            double span = lengthMm * (stretch.u1() - stretch.u0());
            TaperedWeight weight = stretch.weight();
            double half = weight == null ? 0.0 : weight.at(middleMm) * span / 2.0;
            weightN += half;
            double force = Math.hypot(forward * forceN - sinReference * weightN, up * forceN - cosReference * weightN);
            weightN += half;
            double ends = Math.min(
                    stretch.stiffness().atNmm2(tip - lengthMm * stretch.u0()),
                    stretch.stiffness().atNmm2(tip - lengthMm * stretch.u1()));
            double middle = stretch.stiffness().atNmm2(middleMm);
            growth += span * (Math.sqrt(force / ends) + 2.0 * Math.sqrt(force / middle)) / 3.0;
        }
        return growth;
    }

    /** The whole shape for a tip direction from the reference. */
    BendResult.Bent shape(double tipRad) {
        List<double[]> rows = new ArrayList<>();
        double[] state = new double[LONG];
        state[ANGLE] = tipRad;
        double forward = 0.0;
        double up = 0.0;
        for (Stretch stretch : stretches) {
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
            Stretch stretch,
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
        private final Stretch stretch;
        private final double forward;
        private final double up;
        private final int dimension;
        private final double tipMm = held.stiffness().tipMm();
        private final double loadMm2 = forceN * lengthMm * lengthMm;

        Equations(Stretch stretch, double forward, double up, int dimension) {
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
            TaperedWeight weight = stretch.weight();
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
