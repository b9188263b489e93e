package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;
import org.jspecify.annotations.Nullable;

/**
 * Integrates a rod with a line through its rings from tip to clamp for assumed directions of the tip and of the line in each span.
 *
 * <p>Angles count from the direction of the pull. Between two rings the line pulls all that lies outboard with T·(1 − cosφ, −sinφ), φ the
 * direction of the line there, whatever happens at the rings ahead, because inner forces cancel. Offsets of the rings enter as couples. What
 * was assumed is right where the line of each span ends in its next ring, the last at the reel, and the blank meets the clamp.
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
    private static final double LEAST_STEP = 1e-13;
    private static final double DIFFERENCE_RAD = 1e-7;

    /** Nodes a span, so that the line's distance from the blank is seen and a drawn curve looks round. */
    private static final int NODES_A_SPAN = 10;

    private final LineCase line;
    private final LineSpans spans;
    private final double tension;
    private final double turn;
    private final int count;
    private final DormandPrince853Integrator integrator =
            new DormandPrince853Integrator(LEAST_STEP, 1.0, ABSOLUTE, RELATIVE);

    /**
     * The rod for directions that are right.
     *
     * @param clamp state at the clamp
     * @param rows along the rod from the tip
     * @param touched each ring from the tip: place, direction of the line ahead and behind; last the reel's place
     */
    @SuppressWarnings("ArrayRecordComponent") // lives for one assembly
    record Trial(double[] clamp, List<double[]> rows, List<double[]> touched) {}

    /** The line's rod, its clamp at an angle from the pull's direction. */
    LineShooter(LineCase line, double turn) {
        this.line = line;
        this.spans = new LineSpans(line);
        this.tension = line.tensionN() / spans.forceN();
        this.turn = turn;
        this.count = line.rings().size();
    }

    LineSpans spans() {
        return spans;
    }

    /** By how much each span's line misses its next ring, and the blank the clamp, radians. Assumed: tip, then each span from the tip. */
    double[] misses(double[] assumed) {
        double[] misses = new double[count + 1];
        double[] state = new double[SHORT];
        state[ANGLE] = assumed[0];
        misses(assumed, 0, state, misses);
        return misses;
    }

    /** How the misses change with what is assumed, by differences; a span's direction changes nothing ahead of it. */
    double[][] slopes(double[] assumed, double[] misses) {
        double[][] slopes = new double[count + 1][count + 1];
        double[] state = new double[SHORT];
        state[ANGLE] = assumed[0];
        double[] moved = assumed.clone();
        moved[0] += DIFFERENCE_RAD;
        double[] other = misses(moved);
        for (int i = 0; i <= count; i++) {
            slopes[i][0] = (other[i] - misses[i]) / DIFFERENCE_RAD;
        }
        for (int span = 0; span < count; span++) {
            moved = assumed.clone();
            moved[span + 1] += DIFFERENCE_RAD;
            System.arraycopy(misses, 0, other, 0, misses.length);
            misses(moved, span, state.clone(), other);
            for (int i = span; i <= count; i++) {
                slopes[i][span + 1] = (other[i] - misses[i]) / DIFFERENCE_RAD;
            }
            state = step(assumed, span, state);
        }
        return slopes;
    }

    private void misses(double[] assumed, int from, double[] start, double[] into) {
        double[] state = start;
        for (int span = from; span < count; span++) {
            double[] here = place(state, ring(span).offsetMm());
            state = step(assumed, span, state);
            double[] next = span + 1 < count ? place(state, ring(span + 1).offsetMm()) : reel(state);
            double direction = Math.atan2(here[1] - next[1], here[0] - next[0]);
            into[span] = Math.IEEEremainder(direction - assumed[span + 1], 2.0 * Math.PI);
        }
        into[count] = state[ANGLE] - turn;
    }

    private double[] step(double[] assumed, int span, double[] state) {
        double ahead = span == 0 ? 0.0 : assumed[span];
        double here = assumed[span + 1];
        return run(span, with(state, ahead, here, ring(span).offsetMm() / spans.lengthMm()), here, null);
    }

    /** The whole rod for directions that are right. */
    Trial shape(double[] assumed) {
        List<double[]> rows = new ArrayList<>();
        List<double[]> touched = new ArrayList<>();
        double[] state = new double[LONG];
        state[ANGLE] = assumed[0];
        for (int span = 0; span < count; span++) {
            double ahead = span == 0 ? 0.0 : assumed[span];
            double here = assumed[span + 1];
            double[] at = place(state, ring(span).offsetMm());
            touched.add(new double[] {at[0], at[1], ahead, here});
            double offset = ring(span).offsetMm() / spans.lengthMm();
            state = run(span, with(state, ahead, here, offset), here, rows);
        }
        touched.add(reel(state));
        return new Trial(state, rows, touched);
    }

    /** Directions of the tip and of the line in each span on a rod bent by the pull alone: where to begin. */
    double[] guess(BentAxis axis) {
        double[] assumed = new double[count + 1];
        double pull = line.pullRad();
        assumed[0] = about(axis.at(spans.tipMm()).angleRad() - pull);
        for (int span = 0; span < count; span++) {
            double[] front = axis.beside(ring(span).sMm(), ring(span).offsetMm());
            LineCase.Ring next = span + 1 < count ? ring(span + 1) : line.reel();
            double[] rear = axis.beside(next.sMm(), next.offsetMm());
            assumed[span + 1] = about(Math.atan2(front[1] - rear[1], front[0] - rear[0]) - pull);
        }
        return assumed;
    }

    private static double about(double angle) {
        return Math.IEEEremainder(angle, 2.0 * Math.PI);
    }

    /** Ring counted from the tip. */
    private LineCase.Ring ring(int span) {
        return line.rings().get(count - 1 - span);
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
