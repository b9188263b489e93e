package withy.mechanics;

import static withy.mechanics.StretchRunner.ALL;
import static withy.mechanics.StretchRunner.ANGLE;
import static withy.mechanics.StretchRunner.MOMENT;
import static withy.mechanics.StretchRunner.X;
import static withy.mechanics.StretchRunner.Y;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.mechanics.LoadedStretches.Stretch;

/**
 * Integrates a rod with a line through its rings from tip to clamp for assumed directions of the tip and of the line in each span.
 *
 * <p>Angles count from the direction of the pull. Between two rings the line pulls all that lies outboard with T·(1 − cosφ, −sinφ), φ the
 * direction of the line there, whatever happens at the rings ahead, because inner forces cancel. Offsets of the rings enter as couples. What
 * was assumed is right where the line of each span ends in its next ring, the last at the reel, and the blank meets the clamp.
 */
final class LineShooter {
    /** Angle, moment, weight and place. */
    private static final int RULING = 5;

    private static final double ABSOLUTE = 1e-13;
    private static final double RELATIVE = 1e-10;
    private static final double LEAST_STEP = 1e-13;
    private static final double DIFFERENCE_RAD = 1e-7;

    /** Nodes a span, so that the line's distance from the blank is seen and a drawn curve looks round. */
    private static final int NODES_A_SPAN = 10;

    private final LineCase line;
    private final LineSpans spans;
    private final LoadedStretches rod;
    private final double tension;
    private final double turn;
    private final int count;
    private final StretchRunner runner;

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
        this.rod = spans.stretches();
        this.runner = new StretchRunner(rod, RULING, LEAST_STEP, ABSOLUTE, RELATIVE);
        this.tension = line.tensionN() / rod.forceN();
        this.turn = turn;
        this.count = line.rings().size();
    }

    LoadedStretches rod() {
        return rod;
    }

    /** By how much each span's line misses its next ring, and the blank the clamp, radians. Assumed: tip, then each span from the tip. */
    double[] misses(double[] assumed) {
        double[] misses = new double[count + 1];
        double[] state = new double[RULING];
        state[ANGLE] = assumed[0];
        misses(assumed, 0, state, misses);
        return misses;
    }

    /** How the misses change with what is assumed, by differences; a span's direction changes nothing ahead of it. */
    double[][] slopes(double[] assumed, double[] misses) {
        double[][] slopes = new double[count + 1][count + 1];
        double[] state = new double[RULING];
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
        return run(span, with(state, ahead, here, ring(span).offsetMm() / rod.lengthMm()), here, null);
    }

    /** The whole rod for directions that are right. */
    Trial shape(double[] assumed) {
        List<double[]> rows = new ArrayList<>();
        List<double[]> touched = new ArrayList<>();
        double[] state = new double[ALL];
        state[ANGLE] = assumed[0];
        for (int span = 0; span < count; span++) {
            double ahead = span == 0 ? 0.0 : assumed[span];
            double here = assumed[span + 1];
            double[] at = place(state, ring(span).offsetMm());
            touched.add(new double[] {at[0], at[1], ahead, here});
            double offset = ring(span).offsetMm() / rod.lengthMm();
            state = run(span, with(state, ahead, here, offset), here, rows);
        }
        touched.add(reel(state));
        return new Trial(state, rows, touched);
    }

    /** Directions of the tip and of the line in each span on a rod bent by the pull alone: where to begin. */
    double[] guess(BentAxis axis) {
        double[] assumed = new double[count + 1];
        double pull = line.pullRad();
        assumed[0] = about(axis.at(rod.tipMm()).angleRad() - pull);
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
        double offset = offsetMm / rod.lengthMm();
        return new double[] {state[X] - offset * Math.sin(state[ANGLE]), state[Y] + offset * Math.cos(state[ANGLE])};
    }

    private double[] reel(double[] clamp) {
        double behind = (line.held().clampMm() - line.reel().sMm()) / rod.lengthMm();
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
        double forward = tension * (1.0 - Math.cos(here));
        double up = -tension * Math.sin(here);
        List<Stretch> stretches = spans.of(span);
        double whole =
                stretches.get(stretches.size() - 1).u1() - stretches.get(0).u0();
        double[] state = from;
        for (Stretch stretch : stretches) {
            double[] start = state.clone();
            start[MOMENT] += stretch.couple();
            if (rows == null) {
                state = runner.over(stretch, stretch.forward() + forward, stretch.up() + up, start);
            } else {
                rows.add(StretchRunner.row(stretch.u0(), state));
                int parts = Math.max(1, (int) Math.ceil((stretch.u1() - stretch.u0()) / whole * NODES_A_SPAN));
                state = runner.drawn(stretch, stretch.forward() + forward, stretch.up() + up, start, parts, rows);
            }
        }
        return state;
    }
}
