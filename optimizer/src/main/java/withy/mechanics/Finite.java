package withy.mechanics;

import java.util.Locale;

/** Refuses values no formula may be fed with. */
final class Finite {
    private Finite() {}

    static double any(double value, String what) {
        if (!Double.isFinite(value)) {
            throw refused(value, what, "a finite number");
        }
        return value;
    }

    static double positive(double value, String what) {
        if (!(value > 0.0) || Double.isInfinite(value)) {
            throw refused(value, what, "finite and above 0");
        }
        return value;
    }

    static double notNegative(double value, String what) {
        if (!(value >= 0.0) || Double.isInfinite(value)) {
            throw refused(value, what, "finite and not below 0");
        }
        return value;
    }

    private static IllegalArgumentException refused(double value, String what, String allowed) {
        return new IllegalArgumentException(String.format(
                Locale.ROOT,
                "%s is %s; it must be %s.%nMaybe a field is empty or in another unit.",
                what,
                value,
                allowed));
    }
}
