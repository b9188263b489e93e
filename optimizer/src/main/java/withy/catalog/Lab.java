package withy.catalog;

/**
 * A colour in CIE 1976 L*a*b* (ISO/CIE 11664-4), illuminant D65, no unit.
 *
 * @param l lightness 0 to 100
 * @param a green–red
 * @param b blue–yellow
 */
public record Lab(double l, double a, double b) {
    public Lab {
        if (!(l >= 0 && l <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160)) {
            throw new IllegalArgumentException("L*a*b* out of range: " + l + " " + a + " " + b);
        }
    }
}
