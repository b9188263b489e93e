package withy.machine;

import java.util.ArrayList;
import java.util.List;
import withy.mechanics.BendResult;
import withy.mechanics.BentAxis;
import withy.mechanics.LineCase.Ring;
import withy.rod.LineOffSpool;
import withy.rod.Setting;

/**
 * Runs the line over a bent bare blank, ring to ring.
 *
 * <p>The blank is bent by the pull at its tip: line and rings hardly change its shape, since rod and line together carry the outer pull only.
 * {@link withy.mechanics.LineThroughRings}, which does not neglect that, finds gaps within 0.15 mm wherever the line comes near the blank.
 */
final class HouseLine {
    static final Lately<LineOnLayout.Key, LineOnLayout> LATELY = new Lately<>(20_000);

    /** Places looked at in each span. */
    private static final int STEPS = 20;

    private final Setting setting;
    private final int side;
    private final List<Ring> rings;

    private HouseLine(Setting setting) {
        this.setting = setting;
        this.side = RodBend.side(setting.brief());
        this.rings = HouseRings.touched(setting);
    }

    static LineOnLayout of(Setting setting) {
        if (!(setting.guideMm(1) < setting.blank().lengthMm())) {
            return new LineOnLayout.Unknown("The stripper would stand beyond the tip.");
        }
        HouseBend bend = HouseBend.of(setting);
        if (!(bend instanceof HouseBend.Bent bent)) {
            return new LineOnLayout.Unknown(((HouseBend.None) bend).reason());
        }
        HouseLine line = new HouseLine(setting);
        return new LineOnLayout.Runs(
                Math.min(line.gapMm(bent.working()), line.gapMm(bent.third())), line.turnRad(bent.third()));
    }

    /** Least distance over all spans from the stripper on, mm. */
    private double gapMm(BentAxis axis) {
        double half = RodBend.lineMm(setting.brief()) / 2;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < rings.size(); i++) {
            double rearMm = rings.get(i - 1).sMm();
            double spaceMm = rings.get(i).sMm() - rearMm;
            double[] from = axis.beside(rearMm, rings.get(i - 1).offsetMm());
            double[] to = axis.beside(rings.get(i).sMm(), rings.get(i).offsetMm());
            for (int step = 1; step < STEPS; step++) {
                double s = rearMm + spaceMm * step / STEPS;
                least = Math.min(least, -side * besideMm(axis.at(s), from, to) - setting.odAt(s) / 2 - half);
            }
        }
        return least;
    }

    /** Distance of the axis from the straight line between two points, mm, positive above it. */
    private static double besideMm(BendResult.Node node, double[] from, double[] to) {
        double x = to[0] - from[0];
        double y = to[1] - from[1];
        return (x * (node.yMm() - from[1]) - y * (node.xMm() - from[0])) / Math.hypot(x, y);
    }

    /** Most the line turns by in one guide, radians. */
    private double turnRad(BentAxis axis) {
        List<double[]> points = new ArrayList<>();
        points.add(axis.beside(LineOffSpool.leavesMm(setting), side * LineOffSpool.leavesHeightMm(setting)));
        rings.forEach(ring -> points.add(axis.beside(ring.sMm(), ring.offsetMm())));
        double most = 0;
        for (int i = 1; i + 1 < points.size(); i++) {
            double before = directionRad(points.get(i - 1), points.get(i));
            double after = directionRad(points.get(i), points.get(i + 1));
            most = Math.max(most, Math.abs(Math.IEEEremainder(after - before, 2 * Math.PI)));
        }
        return most;
    }

    private static double directionRad(double[] from, double[] to) {
        return Math.atan2(to[1] - from[1], to[0] - from[0]);
    }
}
