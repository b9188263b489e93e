package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.hipparchus.exception.MathRuntimeException;

/**
 * Stiffness of a blank from its bent shape, traced as points: EI = c·d^p with c and p by least squares (Levenberg–Marquardt) over the places
 * of the points, each compared with the computed axis at the same distance along it.
 *
 * <p>Points ahead of and below the place where the blank is held, in one unit of any size: the first is where it is held, the last the tip,
 * and the traced length is scaled to the free length. Blank held level, one weight in g on its tip, its own weight acting too. The traced
 * length is that of the straight lines between the points, so points should lie close where it bends much.
 */
public final class TraceFit {
    private static final double LOWEST_EXPONENT = 1.0;
    private static final double HIGHEST_EXPONENT = 5.0;
    private static final int LEAST_POINTS = 4;

    private TraceFit() {}

    /** A traced point, ahead of and below where the blank is held. */
    public record Point(double ahead, double down) {
        public Point {
            Finite.any(ahead, "a traced point's distance ahead");
            Finite.any(down, "a traced point's distance down");
        }
    }

    /** What came of it. */
    public sealed interface Outcome {
        /**
         * The fitted law.
         *
         * @param residualsMm distance of each traced point from its computed place, the first left out
         * @param rmsMm root mean square of those
         * @param scaleMm mm in one unit of the trace
         */
        record Fitted(StiffnessProfile.OfDiameter stiffness, List<Double> residualsMm, double rmsMm, double scaleMm)
                implements Outcome {
            public Fitted {
                residualsMm = List.copyOf(residualsMm);
            }
        }

        /** No law to be trusted, and why. */
        record None(String reason) implements Outcome {}
    }

    /** Fits c and p. */
    public static Outcome of(StiffnessFit.Wall wall, double loadG, double startExponent, List<Point> points) {
        if (points.size() < LEAST_POINTS) {
            return new Outcome.None("A trace needs at least " + LEAST_POINTS + " points, not " + points.size() + ".");
        }
        double free = wall.diameter().endMm() - wall.clampMm();
        double[] along = along(points);
        double traced = along[along.length - 1];
        if (!(traced > 0.0)) {
            return new Outcome.None("All traced points are one.");
        }
        double scale = free / traced;
        double[] target = new double[2 * (points.size() - 1)];
        for (int i = 1; i < points.size(); i++) {
            target[2 * i - 2] = scale * (points.get(i).ahead() - points.get(0).ahead());
            target[2 * i - 1] = scale * (points.get(i).down() - points.get(0).down());
        }
        double drop = target[target.length - 1];
        if (!(drop > 0.0 && drop < free)) {
            return new Outcome.None(String.format(
                    Locale.ROOT, "The traced tip lies %.0f mm below the clamp; it must lie lower than it.", drop));
        }
        StiffnessFit.Law start =
                StiffnessFit.start(wall, startExponent, List.of(new StiffnessFit.Reading(loadG, drop)));
        if (start == null) {
            return new Outcome.None("The trace gives no stiffness to start from.");
        }
        double root = wall.diameter().at(wall.clampMm());
        try {
            double[] found = LeastSquares.fit(
                    new double[] {Math.log(start.scale() * Math.pow(root, startExponent)), startExponent},
                    at -> places(wall, loadG, law(at, root), along, scale),
                    target);
            return fitted(wall, loadG, law(found, root), along, scale, target);
        } catch (NoShape e) {
            return new Outcome.None(String.valueOf(e.getMessage()));
        } catch (MathRuntimeException e) {
            return new Outcome.None("The fit did not converge: " + e.getMessage());
        }
    }

    private static StiffnessFit.Law law(double[] at, double root) {
        double p = Math.min(HIGHEST_EXPONENT, Math.max(LOWEST_EXPONENT, at[1]));
        return new StiffnessFit.Law(Math.exp(at[0]) / Math.pow(root, p), p);
    }

    private static double[] along(List<Point> points) {
        double[] along = new double[points.size()];
        for (int i = 1; i < along.length; i++) {
            Point a = points.get(i - 1);
            Point b = points.get(i);
            along[i] = along[i - 1] + Math.hypot(b.ahead() - a.ahead(), b.down() - a.down());
        }
        return along;
    }

    private static double[] places(
            StiffnessFit.Wall wall, double loadG, StiffnessFit.Law law, double[] along, double scale) {
        StiffnessProfile stiffness = new StiffnessProfile.OfDiameter(wall.diameter(), law.scale(), law.exponent());
        BendResult result = BendUnderLoad.solve(new BendCase(
                stiffness, wall.clampMm(), 0.0, wall.own(), List.of(PointLoad.hung(stiffness.tipMm(), loadG))));
        if (!(result instanceof BendResult.Bent bent)) {
            throw new NoShape(((BendResult.NotConverged) result).reason());
        }
        BentAxis axis = new BentAxis(bent.nodes());
        double[] places = new double[2 * (along.length - 1)];
        for (int i = 1; i < along.length; i++) {
            BendResult.Node node = axis.at(wall.clampMm() + scale * along[i]);
            places[2 * i - 2] = node.xMm();
            places[2 * i - 1] = -node.yMm();
        }
        return places;
    }

    private static Outcome fitted(
            StiffnessFit.Wall wall, double loadG, StiffnessFit.Law law, double[] along, double scale, double[] target) {
        double[] places = places(wall, loadG, law, along, scale);
        List<Double> residuals = new ArrayList<>();
        double squares = 0.0;
        for (int i = 0; i < places.length; i += 2) {
            double off = Math.hypot(places[i] - target[i], places[i + 1] - target[i + 1]);
            residuals.add(off);
            squares += off * off;
        }
        return new Outcome.Fitted(
                new StiffnessProfile.OfDiameter(wall.diameter(), law.scale(), law.exponent()),
                residuals,
                Math.sqrt(squares / residuals.size()),
                scale);
    }

    private static final class NoShape extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NoShape(String reason) {
            super(reason);
        }
    }
}
