package withy.catalog;

import org.jspecify.annotations.Nullable;

/**
 * A colour in CIE 1976 L*a*b* (ISO/CIE 11664-4), illuminant D65, no unit.
 *
 * @param l lightness 0 to 100
 * @param a green–red
 * @param b blue–yellow
 */
public record Lab(double l, double a, double b) {
    @Override
    public boolean equals(@Nullable Object other) {
        return other instanceof Lab that
                && Double.compare(l, that.l) == 0
                && Double.compare(a, that.a) == 0
                && Double.compare(b, that.b) == 0;
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Double.hashCode(l) + Double.hashCode(a)) + Double.hashCode(b);
    }

    public Lab {
        if (!(l >= 0 && l <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160)) {
            throw new IllegalArgumentException("L*a*b* out of range: " + l + " " + a + " " + b);
        }
    }
}
