package withy.mechanics;

import java.util.Arrays;
import java.util.List;
import org.hipparchus.ode.ExpandableODE;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.SecondaryODE;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.hipparchus.ode.sampling.ODEStateInterpolator;
import org.hipparchus.ode.sampling.ODEStepHandler;
import org.jspecify.annotations.Nullable;
import withy.mechanics.LoadedStretches.Stretch;
import withy.mechanics.LoadedStretches.TaperedWeight;

/**
 * Integrates a bent rod over smooth stretches, from the tip toward the clamp.
 *
 * <p>u distance from the tip over length L; θ angle from the reference direction; m moment over (F·L), F the sum of all loads; r the force of
 * everything outboard over F, known at each u since all loads keep their direction. dθ/du = −m·(F·L²/EI); dm/du = cosθ·r_y − sinθ·r_x.
 * Weight outboard, places, the weight's first moments and the elastic energy are integrated beside.
 *
 * <p>Only the first components rule the steps. The others, of a drawn shape, ride along, and what is drawn between the steps is
 * interpolated: so a drawn shape ends where the same rod ended in the search, to the last digit.
 */
final class StretchRunner {
    static final int ANGLE = 0;
    static final int MOMENT = 1;
    static final int WEIGHT = 2;
    static final int X = 3;
    static final int Y = 4;
    static final int WEIGHT_X = 5;
    static final int WEIGHT_Y = 6;
    static final int ELASTIC = 7;

    /** Components of a state that holds all. */
    static final int ALL = 8;

    /** So that what rides along is exact too where what rules is easy: a rod bent to an arc. */
    private static final double LONGEST_STEP = 0.125;

    private final double sinReference;
    private final double cosReference;
    private final double tipMm;
    private final double lengthMm;
    private final double forceN;
    private final int ruling;
    private final DormandPrince853Integrator integrator;

    /** For the rod of some stretches; the first ruling components (3 or 5) rule the steps, to an absolute and a relative bound. */
    StretchRunner(LoadedStretches rod, int ruling, double leastStep, double absolute, double relative) {
        this.sinReference = rod.sinReference();
        this.cosReference = rod.cosReference();
        this.tipMm = rod.tipMm();
        this.lengthMm = rod.lengthMm();
        this.forceN = rod.forceN();
        this.ruling = ruling;
        this.integrator = new DormandPrince853Integrator(leastStep, LONGEST_STEP, absolute, relative);
    }

    /** What rules at the far end of a stretch; forward and up are all point forces outboard, couples already in the state. */
    double[] over(Stretch stretch, double forward, double up, double[] state) {
        integrator.setInitialStepSize(Math.min(LONGEST_STEP, stretch.u1() - stretch.u0()));
        return integrator
                .integrate(new Ruling(stretch, forward, up), new ODEState(stretch.u0(), state), stretch.u1())
                .getPrimaryState();
    }

    /** The same with all components; adds a row, where they are wanted, for each inner end of so many equal parts. */
    double[] drawn(
            Stretch stretch, double forward, double up, double[] state, int parts, @Nullable List<double[]> rows) {
        Ruling equations = new Ruling(stretch, forward, up);
        ExpandableODE all = new ExpandableODE(equations);
        all.addSecondaryEquations(new Beside(equations));
        double[] first = Arrays.copyOf(state, ruling);
        double[] rest = Arrays.copyOfRange(state, ruling, ALL);
        integrator.setInitialStepSize(Math.min(LONGEST_STEP, stretch.u1() - stretch.u0()));
        if (rows != null && parts > 1) {
            integrator.addStepHandler(new Rows(stretch, parts, rows));
        }
        try {
            return integrator
                    .integrate(all, new ODEState(stretch.u0(), first, new double[][] {rest}), stretch.u1())
                    .getCompleteState();
        } finally {
            integrator.clearStepHandlers();
        }
    }

    /** Place, angle, moment and the two coordinates of a state that holds all. */
    static double[] row(double u, double[] state) {
        return new double[] {u, state[ANGLE], state[MOMENT], state[X], state[Y]};
    }

    private final class Ruling implements OrdinaryDifferentialEquation {
        private final Stretch stretch;
        private final double forward;
        private final double up;
        private double cos;
        private double sin;
        private double flexibility;
        private double weight;

        Ruling(Stretch stretch, double forward, double up) {
            this.stretch = stretch;
            this.forward = forward;
            this.up = up;
        }

        @Override
        public int getDimension() {
            return ruling;
        }

        @Override
        public double[] computeDerivatives(double u, double[] state) {
            double s = tipMm - lengthMm * u;
            flexibility = forceN * lengthMm * lengthMm / stretch.stiffness().atNmm2(s);
            cos = Math.cos(state[ANGLE]);
            sin = Math.sin(state[ANGLE]);
            TaperedWeight own = stretch.weight();
            weight = own == null ? 0.0 : own.at(s) * lengthMm / forceN;
            double[] rate = new double[ruling];
            rate[ANGLE] = -state[MOMENT] * flexibility;
            rate[MOMENT] = cos * (up - cosReference * state[WEIGHT]) - sin * (forward - sinReference * state[WEIGHT]);
            rate[WEIGHT] = weight;
            if (ruling > Y) {
                rate[X] = -cos;
                rate[Y] = -sin;
            }
            return rate;
        }
    }

    /** What does not rule; asked right after the ruling ones at the same place. */
    private final class Beside implements SecondaryODE {
        private final Ruling at;

        Beside(Ruling at) {
            this.at = at;
        }

        @Override
        public int getDimension() {
            return ALL - ruling;
        }

        @Override
        public double[] computeDerivatives(double u, double[] state, double[] rate, double[] beside) {
            double[] more = new double[ALL - ruling];
            if (ruling <= X) {
                more[X - ruling] = -at.cos;
                more[Y - ruling] = -at.sin;
            }
            more[WEIGHT_X - ruling] = at.weight * (ruling <= X ? beside[X - ruling] : state[X]);
            more[WEIGHT_Y - ruling] = at.weight * (ruling <= X ? beside[Y - ruling] : state[Y]);
            more[ELASTIC - ruling] = state[MOMENT] * state[MOMENT] * at.flexibility / 2.0;
            return more;
        }
    }

    /** Writes down the inner ends of the parts as the steps pass them. */
    private static final class Rows implements ODEStepHandler {
        private final Stretch stretch;
        private final int parts;
        private final List<double[]> rows;
        private int next = 1;

        Rows(Stretch stretch, int parts, List<double[]> rows) {
            this.stretch = stretch;
            this.parts = parts;
            this.rows = rows;
        }

        @Override
        public void handleStep(ODEStateInterpolator step) {
            for (; next < parts; next++) {
                double u = stretch.u0() + (stretch.u1() - stretch.u0()) * next / parts;
                if (u > step.getCurrentState().getTime()) {
                    return;
                }
                rows.add(row(u, step.getInterpolatedState(u).getCompleteState()));
            }
        }
    }
}
