package withy.oracle;

import java.util.function.DoubleUnaryOperator;
import withy.catalog.Grip;

/** A grip's shape and what is integrated over it, a second time. */
final class SecondGrip {
    private SecondGrip() {}

    private static double sq(double value) {
        return value * value;
    }

    /** Outer diameter and bore at z of a grip's rear (0) or front (1) half. */
    private static double[] shape(Grip grip, double length, double bore0, double bore1, int part, double z) {
        double h = length / 2;
        double share = part == 0 ? z / h : (z - h) / h;
        double od0 = part == 0 ? grip.rearOdMm() : grip.midOdMm();
        double od1 = part == 0 ? grip.midOdMm() : grip.frontOdMm();
        double mid = (bore0 + bore1) / 2;
        double b0 = Math.min(od0, part == 0 ? bore0 : mid);
        double b1 = Math.min(od1, part == 0 ? mid : bore1);
        return new double[] {od0 + share * (od1 - od0), b0 + share * (b1 - b0)};
    }

    static double half(Grip grip, double length, double bore0, double bore1, int part, DoubleUnaryOperator weight) {
        return SecondRod.simpson(part * length / 2, (part + 1) * length / 2, z -> {
            double[] s = shape(grip, length, bore0, bore1, part, z);
            return Math.PI / 4 * (s[0] * s[0] - s[1] * s[1]) * weight.applyAsDouble(z);
        });
    }

    /** Own inertia of the slices about their diameters: ∫ π/4·(R⁴ − r⁴). */
    static double across(Grip grip, double length, double bore0, double bore1, int part) {
        return SecondRod.simpson(part * length / 2, (part + 1) * length / 2, z -> {
            double[] s = shape(grip, length, bore0, bore1, part, z);
            return Math.PI / 64 * (sq(sq(s[0])) - sq(sq(s[1])));
        });
    }
}
