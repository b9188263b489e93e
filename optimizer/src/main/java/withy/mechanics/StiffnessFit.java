package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.RealVector;
import org.jspecify.annotations.Nullable;

/**
 * Stiffness of a blank from loads hung at its tip and the drops they made: EI = c·d^p with c, or c and p, by least squares over
 * {@link BendUnderLoad} (Levenberg–Marquardt).
 *
 * <p>Drops in mm, loads in g, blank held level. One reading gives c alone. p shows only in how the drop grows with the load, so it
 * is fitted from three readings on, and left at the start value where the readings don't tell it.
 */
public final class StiffnessFit {
    private static final int READINGS_FOR_EXPONENT = 3;
    private static final double LOWEST_EXPONENT = 1.0;
    private static final double HIGHEST_EXPONENT = 5.0;

    private StiffnessFit() {}

    /** From where a drop was measured. */
    public enum DropFrom {
        /** The straight line of the unbent blank. */
        STRAIGHT_LINE,
        /** Where the blank's own weight had already taken the tip. */
        OWN_DROOP
    }

    /** One reading: grams at the tip, millimetres of drop. */
    public record Reading(double loadG, double dropMm) {
        public Reading {
            Finite.positive(loadG, "load in g");
            Finite.positive(dropMm, "drop in mm");
        }
    }

    /** The blank on the wall: its shape, where it was held, its own weight if known. */
    public record Wall(
            TaperProfile diameter, double clampMm, @Nullable TubeMass own, DropFrom from) {}

    /** What came of it. */
    public sealed interface Outcome {
        /**
         * The fitted law.
         *
         * @param residualsMm computed less measured drop, a reading each
         * @param rmsMm root mean square of those
         */
        record Fitted(StiffnessProfile.OfDiameter stiffness, List<Double> residualsMm, double rmsMm)
                implements Outcome {
            public Fitted {
                residualsMm = List.copyOf(residualsMm);
            }
        }

        /** No law to be trusted, and why. */
        record None(String reason) implements Outcome {}
    }

    /** Fits c with p as given. */
    public static Outcome scale(Wall wall, double exponent, List<Reading> readings) {
        Law start = start(wall, exponent, readings);
        return start == null
                ? new Outcome.None("No reading to start from: the first drop must be below the free length.")
                : fit(wall, readings, new double[] {Math.log(start.scale())}, at -> new Law(Math.exp(at[0]), exponent));
    }

    /** Fits c and p, from three readings on. */
    public static Outcome scaleAndExponent(Wall wall, double startExponent, List<Reading> readings) {
        if (readings.size() < READINGS_FOR_EXPONENT) {
            return new Outcome.None(
                    "The exponent needs at least " + READINGS_FOR_EXPONENT + " readings, not " + readings.size() + ".");
        }
        Outcome first = scale(wall, startExponent, readings);
        if (!(first instanceof Outcome.Fitted fitted)) {
            return first;
        }
        double root = wall.diameter().at(wall.clampMm());
        double atRoot = fitted.stiffness().scale() * Math.pow(root, startExponent);
        Outcome both = fit(wall, readings, new double[] {Math.log(atRoot), startExponent}, at -> {
            double p = Math.min(HIGHEST_EXPONENT, Math.max(LOWEST_EXPONENT, at[1]));
            return new Law(Math.exp(at[0]) / Math.pow(root, p), p);
        });
        return both instanceof Outcome.Fitted better && better.rmsMm() <= fitted.rmsMm() ? both : first;
    }

    record Law(double scale, double exponent) {}

    /** The law that meets the smallest reading in linear theory, by one bend at an even guess. */
    static @Nullable Law start(Wall wall, double exponent, List<Reading> readings) {
        double length = wall.diameter().endMm() - wall.clampMm();
        Reading least = null;
        for (Reading reading : readings) {
            if (reading.dropMm() < length && (least == null || reading.loadG() < least.loadG())) {
                least = reading;
            }
        }
        if (least == null) {
            return null;
        }
        StiffnessProfile unit = StiffnessProfile.OfDiameter.withButt(wall.diameter(), 1.0, exponent);
        double compliance = compliance(unit, wall.clampMm());
        double ei = least.loadG() * MassSum.NMM_PER_GMM * compliance / least.dropMm();
        return new Law(ei / Math.pow(wall.diameter().valueAtStation(0), exponent), exponent);
    }

    /** Drop of the tip a newton at EI = 1 at the butt: ∫(L − s)²/EI ds, Simpson between breaks. */
    private static double compliance(StiffnessProfile unit, double clampMm) {
        double tip = unit.tipMm();
        double sum = 0.0;
        double from = clampMm;
        for (double to : unit.breaksMm()) {
            if (to > from) {
                StiffnessProfile.Stretch ei = unit.stretch(from, to);
                int parts = 32;
                double h = (to - from) / parts;
                for (int i = 0; i < parts; i++) {
                    double a = from + i * h;
                    sum += h
                            / 6.0
                            * (lever(tip - a, ei, a)
                                    + 4.0 * lever(tip - a - h / 2, ei, a + h / 2)
                                    + lever(tip - a - h, ei, a + h));
                }
                from = to;
            }
        }
        return sum;
    }

    private static double lever(double reach, StiffnessProfile.Stretch ei, double at) {
        return reach * reach / ei.atNmm2(at);
    }

    private static Outcome fit(Wall wall, List<Reading> readings, double[] from, Function<double[], Law> law) {
        double[] target = readings.stream().mapToDouble(Reading::dropMm).toArray();
        try {
            double[] found = LeastSquares.fit(from, at -> drops(wall, readings, law.apply(at)), target);
            return fitted(wall, readings, law.apply(found));
        } catch (NoDrop e) {
            return new Outcome.None(String.valueOf(e.getMessage()));
        } catch (MathRuntimeException e) {
            return new Outcome.None("The fit did not converge: " + e.getMessage());
        }
    }

    private static Outcome fitted(Wall wall, List<Reading> readings, Law law) {
        double[] drops = drops(wall, readings, law);
        List<Double> residuals = new ArrayList<>();
        RealVector all = new ArrayRealVector(drops.length);
        for (int i = 0; i < drops.length; i++) {
            double residual = drops[i] - readings.get(i).dropMm();
            residuals.add(residual);
            all.setEntry(i, residual);
        }
        return new Outcome.Fitted(
                new StiffnessProfile.OfDiameter(wall.diameter(), law.scale(), law.exponent()),
                residuals,
                all.getNorm() / Math.sqrt(drops.length));
    }

    private static double[] drops(Wall wall, List<Reading> readings, Law law) {
        StiffnessProfile stiffness = new StiffnessProfile.OfDiameter(wall.diameter(), law.scale(), law.exponent());
        double droop = wall.from() == DropFrom.OWN_DROOP ? drop(wall, stiffness, List.of()) : 0.0;
        double[] drops = new double[readings.size()];
        for (int i = 0; i < drops.length; i++) {
            PointLoad load = PointLoad.hung(stiffness.tipMm(), readings.get(i).loadG());
            drops[i] = drop(wall, stiffness, List.of(load)) - droop;
        }
        return drops;
    }

    private static double drop(Wall wall, StiffnessProfile stiffness, List<PointLoad> loads) {
        BendResult result = BendUnderLoad.solve(new BendCase(stiffness, wall.clampMm(), 0.0, wall.own(), loads));
        if (result instanceof BendResult.Bent bent) {
            return bent.dropMm();
        }
        throw new NoDrop(((BendResult.NotConverged) result).reason());
    }

    private static final class NoDrop extends RuntimeException {
        private static final long serialVersionUID = 1L;

        NoDrop(String reason) {
            super(reason);
        }
    }
}
