package withy.mechanics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.jspecify.annotations.Nullable;

/**
 * Integrates a rod with a line through its rings from tip to clamp for an assumed direction of the tip.
 *
 * <p>Angles count from the direction of the pull. Between two rings the line pulls all that lies outboard with T·(1 − cosφ, −sinφ), φ the
 * direction of the line there, whatever happens at the rings ahead, because inner forces cancel. φ of each span is the one unknown of
 * that span: the line must end in the next ring. It is found span by span from the tip inward, by secants. Offsets of the rings enter as couples.
 */
final class LineShooter {
    private static final int ANGLE = 0;
    private static final int MOMENT = 1;
    private static final int WEIGHT = 2;
    private static final int X = 3;
    private static final int Y = 4;
    private static final int WEIGHT_X = 5;
    private static final int WEIGHT_Y = 6;
    private static final int ELASTIC = 7;
    private static final int SHORT = 5;
    private static final int LONG = 8;
    private static final double ABSOLUTE = 1e-13;
    private static final double RELATIVE = 1e-10;

    /** Enough to tell on which side of the clamp's direction a trial ends. */
    private static final double ROUGH_RELATIVE = 1e-6;

    private static final double LEAST_STEP = 1e-13;
    private static final double DIRECTION_RAD = 1e-13;

    /** A direction that can't be had better than this is none. */
    private static final double WORST_DIRECTION_RAD = 1e-11;

    private static final double ROUGH_DIRECTION_RAD = 1e-7;
    private static final int MOST_SECANTS = 40;
    private static final double WIDEST_SECANT_RAD = 0.4;
    private static final double FIRST_BRACKET_RAD = 0.01;
    private static final double WIDEST_BRACKET_RAD = 0.7;

    /** Nodes a span, so that the line's distance from the blank is seen and a drawn curve looks round. */
    private static final int NODES_A_SPAN = 10;

    private final LineCase line;
    private final LineSpans spans;
    private final double tension;
    private final double[] directions;

    /** How fast each span's miss falls with its direction, from the last trial; −1 to begin with, as if the rod were stiff. */
    private final double[] slopes;

    private final DormandPrince853Integrator fine = new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, RELATIVE);
    private final DormandPrince853Integrator coarse =
            new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, ROUGH_RELATIVE);
    private boolean rough;

    /** No line runs through the rings for a tip direction. */
    static final class NoPath extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NoPath(String reason) {
            super(reason);
        }
    }

    /** One trial: the state at the clamp and, where asked for, rows along the rod. */
    record Trial(double[] clamp, List<double[]> rows, List<double[]> touched) {}

    LineShooter(LineCase line) {
        this.line = line;
        this.spans = new LineSpans(line);
        this.tension = line.tensionN() / spans.forceN();
        this.directions = new double[line.rings().size()];
        Arrays.fill(directions, Double.NaN);
        this.slopes = new double[directions.length];
        Arrays.fill(slopes, -1.0);
    }

    LineSpans spans() {
        return spans;
    }

    /** Angle at the clamp from the pull's direction, for a tip direction from it. */
    double clampAngle(double tipRad) {
        rough = false;
        return shoot(tipRad, SHORT).clamp()[ANGLE];
    }

    /** The same to about five digits, for a search. */
    double roughClampAngle(double tipRad) {
        rough = true;
        return shoot(tipRad, SHORT).clamp()[ANGLE];
    }

    /** The whole rod for a tip direction. */
    Trial shape(double tipRad) {
        rough = false;
        return shoot(tipRad, LONG);
    }

    private Trial shoot(double tipRad, int size) {
        List<double[]> rows = new ArrayList<>();
        List<double[]> touched = new ArrayList<>();
        double[] state = new double[size];
        state[ANGLE] = tipRad;
        double ahead = 0.0;
        for (int span = 0; span < directions.length; span++) {
            double offset = ring(span).offsetMm() / spans.lengthMm();
            double here = solve(span, state, ahead, offset);
            directions[span] = here;
            touched.add(new double[] {
                state[X] - offset * Math.sin(state[ANGLE]), state[Y] + offset * Math.cos(state[ANGLE]), ahead, here
            });
            state = run(span, with(state, ahead, here, offset), here, size == LONG ? rows : null);
            ahead = here;
        }
        touched.add(reel(state));
        return new Trial(state, rows, touched);
    }

    /** Ring counted from the tip. */
    private LineCase.Ring ring(int span) {
        return line.rings().get(directions.length - 1 - span);
    }

    /** The direction of the line in a span that leads into the next ring, or to the reel. */
    private double solve(int span, double[] state, double ahead, double offset) {
        double enough = rough ? ROUGH_DIRECTION_RAD : DIRECTION_RAD;
        double here = Double.isNaN(directions[span]) ? state[ANGLE] : directions[span];
        double miss = miss(span, state, ahead, here, offset);
        double best = here;
        double least = Math.abs(miss);
        for (int step = 0; step < MOST_SECANTS && least > enough; step++) {
            double change = -miss / slopes[span];
            if (!(Math.abs(change) <= WIDEST_SECANT_RAD)) {
                change = Math.copySign(Math.min(Math.abs(miss), WIDEST_SECANT_RAD), miss) / 2.0;
            }
            double missNext = miss(span, state, ahead, here + change, offset);
            if (missNext != miss && Math.abs(change) > WORST_DIRECTION_RAD) {
                slopes[span] = (missNext - miss) / change;
            }
            here += change;
            miss = missNext;
            if (Math.abs(miss) >= least && least < WORST_DIRECTION_RAD) {
                return best;
            }
            if (Math.abs(miss) < least) {
                best = here;
                least = Math.abs(miss);
            }
        }
        return least <= Math.max(enough, WORST_DIRECTION_RAD) ? best : bracketed(span, state, ahead, offset, enough);
    }

    /** The same by brackets, nearest to the blank's own direction first, where secants run astray. */
    private double bracketed(int span, double[] state, double ahead, double offset, double enough) {
        slopes[span] = -1.0;
        double low = state[ANGLE];
        double high = low;
        double atLow = miss(span, state, ahead, low, offset);
        double atHigh = atLow;
        for (double step = FIRST_BRACKET_RAD; step < WIDEST_BRACKET_RAD; step *= 1.5) {
            double lower = low - step;
            double atLower = miss(span, state, ahead, lower, offset);
            if (atLower * atLow <= 0.0) {
                return between(span, state, ahead, offset, enough, lower, low);
            }
            double higher = high + step;
            double atHigher = miss(span, state, ahead, higher, offset);
            if (atHigher * atHigh <= 0.0) {
                return between(span, state, ahead, offset, enough, high, higher);
            }
            low = lower;
            atLow = atLower;
            high = higher;
            atHigh = atHigher;
        }
        throw new NoPath("The line finds no way from ring " + (directions.length - span) + " of " + directions.length
                + " back to the next.");
    }

    private double between(
            int span, double[] state, double ahead, double offset, double enough, double low, double high) {
        return new BracketingNthOrderBrentSolver(1e-14, enough, enough, 5)
                .solve(MOST_SECANTS, at -> miss(span, state, ahead, at, offset), low, high);
    }

    private double miss(int span, double[] state, double ahead, double here, double offset) {
        double[] end = run(span, with(Arrays.copyOf(state, SHORT), ahead, here, offset), here, null);
        double fromX = state[X] - offset * Math.sin(state[ANGLE]);
        double fromY = state[Y] + offset * Math.cos(state[ANGLE]);
        double[] to = span + 1 < directions.length ? place(end, ring(span + 1).offsetMm()) : reel(end);
        double direction = Math.atan2(fromY - to[1], fromX - to[0]);
        return Math.IEEEremainder(direction - here, 2.0 * Math.PI);
    }

    private double[] place(double[] state, double offsetMm) {
        double offset = offsetMm / spans.lengthMm();
        return new double[] {state[X] - offset * Math.sin(state[ANGLE]), state[Y] + offset * Math.cos(state[ANGLE])};
    }

    private double[] reel(double[] clamp) {
        double behind = (line.held().clampMm() - line.reel().sMm()) / spans.lengthMm();
        double[] at = place(clamp, line.reel().offsetMm());
        return new double[] {at[0] - behind * Math.cos(clamp[ANGLE]), at[1] - behind * Math.sin(clamp[ANGLE])};
    }

    /** The state with the couple of a ring: offset × force of the line's two parts. */
    private double[] with(double[] state, double ahead, double here, double offset) {
        double forward = tension * (Math.cos(ahead) - Math.cos(here));
        double up = tension * (Math.sin(ahead) - Math.sin(here));
        double[] turned = state.clone();
        turned[MOMENT] -= offset * (forward * Math.cos(state[ANGLE]) + up * Math.sin(state[ANGLE]));
        return turned;
    }

    private double[] run(int span, double[] from, double here, @Nullable List<double[]> rows) {
        double[] state = from;
        double forward = tension * (1.0 - Math.cos(here));
        double up = -tension * Math.sin(here);
        for (LineSpans.Piece piece : spans.all().get(span)) {
            if (rows != null) {
                rows.add(row(piece.u0(), state));
            }
            state = state.clone();
            state[MOMENT] += piece.couple();
            Equations equations = new Equations(piece, piece.forward() + forward, piece.up() + up, state.length);
            List<LineSpans.Piece> pieces = spans.all().get(span);
            double whole = pieces.get(pieces.size() - 1).u1() - pieces.get(0).u0();
            int parts =
                    rows == null ? 1 : Math.max(1, (int) Math.ceil((piece.u1() - piece.u0()) / whole * NODES_A_SPAN));
            for (int part = 1; part <= parts; part++) {
                double a = piece.u0() + (piece.u1() - piece.u0()) * (part - 1) / parts;
                double b = part == parts ? piece.u1() : piece.u0() + (piece.u1() - piece.u0()) * part / parts;
                DormandPrince853Integrator integrator = rough ? coarse : fine;
                integrator.setInitialStepSize(b - a);
                state = integrator
                        .integrate(equations, new ODEState(a, state), b)
                        .getPrimaryState();
                if (rows != null && part < parts) {
                    rows.add(row(b, state));
                }
            }
        }
        return state;
    }

    private static double[] row(double u, double[] state) {
        return new double[] {u, state[ANGLE], state[MOMENT], state[X], state[Y]};
    }

    private final class Equations implements OrdinaryDifferentialEquation {
        private final LineSpans.Piece piece;
        private final double forward;
        private final double up;
        private final int dimension;
        private final double cos = Math.cos(line.pullRad());
        private final double sin = Math.sin(line.pullRad());
        private final double tipMm = spans.tipMm();
        private final double lengthMm = spans.lengthMm();
        private final double forceN = spans.forceN();

        Equations(LineSpans.Piece piece, double forward, double up, int dimension) {
            this.piece = piece;
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
            double flexibility =
                    forceN * lengthMm * lengthMm / piece.stiffness().atNmm2(s);
            double cosHere = Math.cos(state[ANGLE]);
            double sinHere = Math.sin(state[ANGLE]);
            LoadedStretches.TaperedWeight weight = piece.weight();
            double w = weight == null ? 0.0 : weight.at(s) * lengthMm / forceN;
            double[] rate = new double[dimension];
            rate[ANGLE] = -state[MOMENT] * flexibility;
            rate[MOMENT] = cosHere * (up - cos * state[WEIGHT]) - sinHere * (forward - sin * state[WEIGHT]);
            rate[WEIGHT] = w;
            rate[X] = -cosHere;
            rate[Y] = -sinHere;
            if (dimension == LONG) {
                rate[WEIGHT_X] = w * state[X];
                rate[WEIGHT_Y] = w * state[Y];
                rate[ELASTIC] = state[MOMENT] * state[MOMENT] * flexibility / 2.0;
            }
            return rate;
        }
    }
}
