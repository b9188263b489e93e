package withy.mechanics;

import java.util.Arrays;
import java.util.stream.DoubleStream;

/**
 * Bending stiffness EI along the blank, N·mm², in the plane of bending.
 *
 * <p>Smooth between its breaks; a step of diameter is a break. Elementary beam theory: I of a ring = π/64·(D⁴ − d⁴).
 */
public sealed interface StiffnessProfile {

    /** EI in N·mm² on a stretch without a break inside; both ends seen from within. */
    Stretch stretch(double fromMm, double toMm);

    /** Places, mm from the butt, where the law changes, butt and tip end included, rising. */
    double[] breaksMm();

    /** The same shape, stiffer by a factor. */
    StiffnessProfile scaled(double factor);

    /** EI at a place, on a step the tip's side. */
    default double atNmm2(double xMm) {
        double[] breaks = breaksMm();
        int above = 1;
        while (above < breaks.length - 1 && breaks[above] <= xMm) {
            above++;
        }
        return stretch(breaks[above - 1], breaks[above]).atNmm2(xMm);
    }

    double buttMm();

    double tipMm();

    /** EI on one stretch. */
    @FunctionalInterface
    interface Stretch {
        double atNmm2(double xMm);
    }

    /**
     * EI = c·d^p. p = 4: solid, or a wall in proportion to the diameter; p = 3: a thin wall of constant thickness; p = 0: even.
     *
     * @param diameter outer diameter, mm
     * @param scale c, N·mm^(2−p)
     * @param exponent p
     */
    record OfDiameter(TaperProfile diameter, double scale, double exponent) implements StiffnessProfile {
        public OfDiameter {
            Finite.positive(scale, "stiffness scale");
            Finite.notNegative(exponent, "stiffness exponent");
            for (double d : diameter.value()) {
                Finite.positive(d, "diameter of the blank in mm");
            }
        }

        /** The law with a given EI at the butt. */
        public static OfDiameter withButt(TaperProfile diameter, double buttNmm2, double exponent) {
            return new OfDiameter(diameter, buttNmm2 / Math.pow(diameter.valueAtStation(0), exponent), exponent);
        }

        @Override
        public Stretch stretch(double fromMm, double toMm) {
            double from = diameter.at(fromMm);
            double slope = (diameter.before(toMm) - from) / (toMm - fromMm);
            return x -> scale * power(from + slope * (x - fromMm));
        }

        private double power(double d) {
            if (exponent == 4.0) {
                return d * d * d * d;
            }
            return exponent == 3.0 ? d * d * d : Math.pow(d, exponent);
        }

        @Override
        public double[] breaksMm() {
            return DoubleStream.of(diameter.xMm()).distinct().toArray();
        }

        @Override
        public double buttMm() {
            return diameter.startMm();
        }

        @Override
        public double tipMm() {
            return diameter.endMm();
        }

        @Override
        public OfDiameter scaled(double factor) {
            return new OfDiameter(diameter, scale * factor, exponent);
        }
    }

    /**
     * EI = E·π/64·(D⁴ − (D − 2t)⁴), solid where the wall reaches the axis.
     *
     * @param diameter outer diameter D, mm
     * @param wall wall t, mm
     * @param modulusMpa E along the blank, N/mm²
     */
    record OfWall(TaperProfile diameter, TaperProfile wall, double modulusMpa) implements StiffnessProfile {
        public OfWall {
            Finite.positive(modulusMpa, "modulus in N/mm²");
            for (double d : diameter.value()) {
                Finite.positive(d, "diameter of the blank in mm");
            }
            for (double t : wall.value()) {
                Finite.positive(t, "wall of the blank in mm");
            }
        }

        @Override
        public Stretch stretch(double fromMm, double toMm) {
            double d0 = diameter.at(fromMm);
            double dSlope = (diameter.before(toMm) - d0) / (toMm - fromMm);
            double t0 = wall.at(fromMm);
            double tSlope = (wall.before(toMm) - t0) / (toMm - fromMm);
            return x -> {
                double outer = d0 + dSlope * (x - fromMm);
                double inner = Math.max(0.0, outer - 2.0 * (t0 + tSlope * (x - fromMm)));
                return modulusMpa * Math.PI / 64.0 * (outer * outer * outer * outer - inner * inner * inner * inner);
            };
        }

        @Override
        public double[] breaksMm() {
            double[] inside = DoubleStream.of(wall.xMm())
                    .filter(x -> x > diameter.startMm() && x < diameter.endMm())
                    .toArray();
            return Arrays.stream(new double[][] {diameter.xMm(), inside})
                    .flatMapToDouble(Arrays::stream)
                    .sorted()
                    .distinct()
                    .toArray();
        }

        @Override
        public double buttMm() {
            return diameter.startMm();
        }

        @Override
        public double tipMm() {
            return diameter.endMm();
        }

        @Override
        public OfWall scaled(double factor) {
            return new OfWall(diameter, wall, modulusMpa * factor);
        }
    }
}
