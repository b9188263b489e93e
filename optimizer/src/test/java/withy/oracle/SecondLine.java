package withy.oracle;

import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleUnaryOperator;
import withy.catalog.Blank;
import withy.catalog.RodType;
import withy.machine.BlankStiffness;
import withy.mechanics.TubeMass;
import withy.rod.BlankShape;

/**
 * The line over the bent blank a second time: the blank as {@value #LINKS} stiff links, marched from the tip, the tip's direction and the test's
 * weight by false position. Stiffness and mass of the bare blank are the product's; they are held against published tables elsewhere.
 */
final class SecondLine {
    private static final int LINKS = 600;
    private static final double NEWTON_PER_G = 9.80665e-3;

    /** What two ways of bending may differ by: mm of room, share of a turn. */
    private static final double SAME_MM = 0.05;

    private static final double SAME_TURN = 0.01;

    private static final Map<Blank, BlankStiffness> STIFFNESS = new HashMap<>();
    private static final Map<String, SecondLine.Shape> KEPT = new HashMap<>();

    private final SecondRod rod;
    private final boolean above;
    private final double lineMm;
    private final TubeMass tube;
    private final DoubleUnaryOperator stiffness;
    private final Shape working;
    private final Shape third;

    /** A bent axis: place, x, y and direction of each joint of the links, tip first. */
    private record Shape(double[] s, double[] x, double[] y, double[] angle) {
        double drop() {
            int last = s.length - 1;
            double a = angle[last];
            return Math.sin(a) * (x[0] - x[last]) - Math.cos(a) * (y[0] - y[last]);
        }

        double of(double[] values, double at) {
            int last = s.length - 1;
            int i = (int) Math.floor((s[0] - at) / (s[0] - s[last]) * last);
            i = Math.max(0, Math.min(last - 1, i));
            return values[i] + (values[i + 1] - values[i]) * (s[i] - at) / (s[i] - s[i + 1]);
        }

        double[] beside(double at, double off) {
            int last = s.length - 1;
            double back = Math.max(0, s[last] - at);
            double a = of(angle, Math.max(at, s[last]));
            double px = of(x, Math.max(at, s[last])) - back * Math.cos(a);
            double py = of(y, Math.max(at, s[last])) - back * Math.sin(a);
            return new double[] {px - off * Math.sin(a), py + off * Math.cos(a)};
        }
    }

    SecondLine(SecondRod rod) {
        this.rod = rod;
        this.above = rod.brief.rodType() == RodType.CASTING;
        boolean braid = rod.brief.line().kind() == withy.brief.Brief.LineKind.BRAID;
        this.lineMm = rod.brief.line().diameterMm() * (braid ? 1.2 : 1);
        BlankShape shape = BlankShape.of(rod.blank);
        this.tube = shape.tube();
        this.stiffness = STIFFNESS
                .computeIfAbsent(rod.blank, blank -> BlankStiffness.of(shape))
                .profile()::atNmm2;
        double held = 50 * Math.floor(rod.foot / 50.0 + 0.5) + 60;
        String key = rod.blank + " " + held + " ";
        this.third = KEPT.computeIfAbsent(key, k -> third(held));
        this.working = KEPT.computeIfAbsent(key + rod.brief.dragKg(), k -> working(held));
    }

    private Shape working(double held) {
        return bent(held, Math.PI / 4, rod.brief.dragKg() * 9.80665, 0, -0.5, Math.PI / 4);
    }

    private Shape third(double held) {
        double drop = (rod.blank.lengthMm() - held) / 3;
        double newtons = zero(n -> level(held, n).drop() - drop, 0, 20);
        return level(held, newtons);
    }

    /** Where a rising function is nought: false position, the end that stays halved (Illinois). */
    private static double zero(DoubleUnaryOperator rising, double from, double to) {
        double low = from;
        double high = to;
        double atLow = rising.applyAsDouble(low);
        double atHigh = rising.applyAsDouble(high);
        int stayed = 0;
        for (int i = 0; i < 60 && high - low > 1e-9; i++) {
            double next = (low * atHigh - high * atLow) / (atHigh - atLow);
            double at = rising.applyAsDouble(next);
            if (Math.abs(at) < 1e-9) {
                return next;
            }
            if (at < 0) {
                low = next;
                atLow = at;
                atHigh /= stayed < 0 ? 2 : 1;
                stayed = -1;
            } else {
                high = next;
                atHigh = at;
                atLow /= stayed > 0 ? 2 : 1;
                stayed = 1;
            }
        }
        return (low + high) / 2;
    }

    private Shape level(double held, double newtons) {
        return bent(held, 0, 0, -newtons, -1.57, 0);
    }

    private Shape bent(double held, double clamp, double forward, double up, double from, double to) {
        double tip = zero(angle -> marched(held, forward, up, angle).angle[LINKS] - clamp, from, to);
        return marched(held, forward, up, tip);
    }

    private Shape marched(double held, double forward, double up, double tip) {
        double length = rod.blank.lengthMm();
        double ds = (length - held) / LINKS;
        Shape shape =
                new Shape(new double[LINKS + 1], new double[LINKS + 1], new double[LINKS + 1], new double[LINKS + 1]);
        shape.s[0] = length;
        shape.angle[0] = tip;
        double moment = 0;
        double fy = up;
        for (int i = 0; i < LINKS; i++) {
            double middle = shape.s[i] - ds / 2;
            double grams = ds * tube.scale() * Math.pow(tube.profile().at(middle), tube.exponent());
            for (TubeMass.Lump lump : tube.lumps()) {
                grams += lump.xMm() <= shape.s[i] && lump.xMm() > shape.s[i] - ds ? lump.massG() : 0;
            }
            double half = shape.angle[i] - moment / stiffness.applyAsDouble(middle) * ds / 2;
            fy -= grams * NEWTON_PER_G / 2;
            moment += ds * (Math.cos(half) * fy - Math.sin(half) * forward);
            fy -= grams * NEWTON_PER_G / 2;
            double mean = moment - ds / 2 * (Math.cos(half) * fy - Math.sin(half) * forward);
            shape.angle[i + 1] = shape.angle[i] - mean / stiffness.applyAsDouble(middle) * ds;
            double along = (shape.angle[i] + shape.angle[i + 1]) / 2;
            shape.s[i + 1] = shape.s[i] - ds;
            shape.x[i + 1] = shape.x[i] - ds * Math.cos(along);
            shape.y[i + 1] = shape.y[i] - ds * Math.sin(along);
        }
        return shape;
    }

    /** Middles of the rings lie 6 mm off the blank or on the line off the spool, the line at the ring's lower edge as the rod lies in use. */
    private double off(double x) {
        double surface = rod.od(x) / 2;
        double middle = above ? surface + 6 : Math.max(surface + 6, offSpool(x));
        double edge = (3.5 - lineMm) / 2;
        return above ? middle - edge : -(middle + edge);
    }

    /** On the straight line from the lip's edge to where it meets the blank, 26.5 lips ahead, at 35 to 60 % of the way to the tip. */
    private double offSpool(double x) {
        double spool = rod.foot + 60;
        double way = rod.blank.lengthMm() - spool;
        double lip = rod.brief.reel().lipDiameterMm();
        double choke = Math.max(0.35 * way, Math.min(0.6 * way, 26.5 * lip));
        return Math.max(0, leavesReel() * (1 - (x - spool) / choke));
    }

    private double leavesReel() {
        double stem = 11 + rod.brief.reel().stemHeightMm();
        return above ? stem : stem - rod.brief.reel().lipDiameterMm() / 2;
    }

    private double tipOff() {
        double middle = rod.od(rod.blank.lengthMm()) / 2 + 0.3 + 1.75;
        double edge = (3.5 - lineMm) / 2;
        return above ? middle - edge : -(middle + edge);
    }

    private double[][] points(Shape shape, double[] x) {
        double[][] points = new double[x.length + 1][];
        for (int i = 0; i < x.length; i++) {
            points[i] = shape.beside(x[i], off(x[i]));
        }
        points[x.length] = shape.beside(rod.blank.lengthMm(), tipOff());
        return points;
    }

    private double room(Shape shape, int count) {
        double[] x = new SecondSpacing(rod, count).x;
        double[][] points = points(shape, x);
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < count; i++) {
            double end = i + 1 < count ? x[i + 1] : rod.blank.lengthMm();
            double dx = points[i + 1][0] - points[i][0];
            double dy = points[i + 1][1] - points[i][1];
            for (int k = 1; k < 20; k++) {
                double s = x[i] + (end - x[i]) * k / 20;
                double[] axis = shape.beside(s, 0);
                double below = (dx * (axis[1] - points[i][1]) - dy * (axis[0] - points[i][0])) / Math.hypot(dx, dy);
                least = Math.min(least, (above ? -below : below) - rod.od(s) / 2 - lineMm / 2);
            }
        }
        return least;
    }

    private double room(int count) {
        return Math.min(room(working, count), room(third, count));
    }

    private double turn(int count) {
        double[][] rings = points(third, new SecondSpacing(rod, count).x);
        double[] before = third.beside(rod.foot + (above ? 25 : 60), leavesReel() * (above ? 1 : -1));
        double most = 0;
        for (int i = 0; i < count; i++) {
            double in = Math.atan2(rings[i][1] - before[1], rings[i][0] - before[0]);
            double out = Math.atan2(rings[i + 1][1] - rings[i][1], rings[i + 1][0] - rings[i][0]);
            most = Math.max(most, Math.abs(out - in));
            before = rings[i];
        }
        return most;
    }

    boolean rubs(int count) {
        return SecondRules.mm(room(count)) < 0;
    }

    boolean turns(int count, int usual) {
        return SecondRules.milli(turn(count) / turn(usual)) > 1100;
    }

    boolean unsure(int count, int usual) {
        return Math.abs(room(count)) < SAME_MM || Math.abs(turn(count) / turn(usual) - 1.1) < SAME_TURN;
    }
}
