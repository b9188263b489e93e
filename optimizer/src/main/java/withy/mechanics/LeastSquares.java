package withy.mechanics;

import java.util.function.Function;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LeastSquaresBuilder;
import org.hipparchus.optim.nonlinear.vector.leastsquares.LevenbergMarquardtOptimizer;
import org.hipparchus.optim.nonlinear.vector.leastsquares.MultivariateJacobianFunction;
import org.hipparchus.util.Pair;

/** Least squares by Levenberg–Marquardt, slopes by central differences. Fails with the library's exception where it does not converge. */
final class LeastSquares {
    private static final double DIFFERENCE = 1e-5;
    private static final int MOST_EVALUATIONS = 400;
    private static final int MOST_ITERATIONS = 200;

    private LeastSquares() {}

    /** A model's value and its slopes, a row a value. */
    @SuppressWarnings("ArrayRecordComponent") // handed straight to the solver
    record Value(double[] value, double[][] slopes) {}

    /** Brings a model with known slopes as near to nought as it goes. */
    static double[] fit(double[] start, Function<double[], Value> model, int mostEvaluations) {
        return new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .model(point -> {
                            Value value = model.apply(point.toArray());
                            return new Pair<>(
                                    new ArrayRealVector(value.value(), false),
                                    new Array2DRowRealMatrix(value.slopes(), false));
                        })
                        .target(new double[start.length])
                        .maxEvaluations(mostEvaluations)
                        .maxIterations(mostEvaluations)
                        .build())
                .getPoint()
                .toArray();
    }

    static double[] fit(double[] start, Function<double[], double[]> model, double[] target) {
        MultivariateJacobianFunction withSlopes = point -> {
            double[] at = point.toArray();
            double[] value = model.apply(at);
            double[][] slope = new double[value.length][at.length];
            for (int k = 0; k < at.length; k++) {
                double[] moved = at.clone();
                moved[k] += DIFFERENCE;
                double[] up = model.apply(moved);
                moved[k] -= 2.0 * DIFFERENCE;
                double[] down = model.apply(moved);
                for (int i = 0; i < value.length; i++) {
                    slope[i][k] = (up[i] - down[i]) / (2.0 * DIFFERENCE);
                }
            }
            return new Pair<>(new ArrayRealVector(value, false), new Array2DRowRealMatrix(slope, false));
        };
        return new LevenbergMarquardtOptimizer()
                .optimize(new LeastSquaresBuilder()
                        .start(start)
                        .model(withSlopes)
                        .target(target)
                        .maxEvaluations(MOST_EVALUATIONS)
                        .maxIterations(MOST_ITERATIONS)
                        .build())
                .getPoint()
                .toArray();
    }
}
