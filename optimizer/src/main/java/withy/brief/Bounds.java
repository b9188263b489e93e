package withy.brief;

import java.util.Locale;
import withy.units.LengthUnit;

/**
 * What a number may be: wide enough for any rod, narrow enough to catch a slip of unit or of the decimal mark.
 *
 * @param min least, in the field's unit
 * @param max most
 */
record Bounds(double min, double max) {
    static final Bounds ROD_MM = new Bounds(900, 6000);
    static final Bounds PACKED_MM = new Bounds(200, 6000);
    static final Bounds LURE_G = new Bounds(0.1, 500);
    static final Bounds LINE_MM = new Bounds(0.03, 1.6);
    static final Bounds STRENGTH_KG = new Bounds(0.05, 800);
    static final Bounds LEADER_MM = new Bounds(0, 20_000);
    static final Bounds DRAG_KG = new Bounds(0.05, 40);
    static final Bounds FISH_KG = new Bounds(0.02, 200);
    static final Bounds FOOT_MM = new Bounds(30, 120);
    static final Bounds FOOT_THICK_MM = new Bounds(1, 8);
    static final Bounds FOOT_WIDE_MM = new Bounds(5, 25);
    static final Bounds REEL_G = new Bounds(80, 2000);
    static final Bounds OFFSET_MM = new Bounds(-60, 80);
    static final Bounds LIP_MM = new Bounds(15, 120);
    static final Bounds STEM_MM = new Bounds(5, 150);
    static final Bounds PALM_MM = new Bounds(45, 130);
    static final Bounds FOREARM_MM = new Bounds(150, 480);
    static final Bounds REACH_MM = new Bounds(80, 1000);
    static final Bounds ZONE_MM = new Bounds(-200, 600);
    static final Bounds PRIORITY = new Bounds(0, 100);
    static final Bounds STEP = new Bounds(0.000_001, 1_000_000);
    static final Bounds WISH_STEPS = new Bounds(0.1, 100);

    boolean holds(double value) {
        return value >= min && value <= max;
    }

    /** The nearest value that may be. */
    double clamp(double value) {
        return Math.max(min, Math.min(max, value));
    }

    /** "900 to 6000 mm". */
    String text(String unit) {
        return plain(min) + " to " + plain(max) + (unit.isEmpty() ? "" : " " + unit);
    }

    /** A likely slip: unit off by a thousand or ten; inches for millimetres, told beside centimetres where both may be. */
    String slip(double value, String unit) {
        boolean inches = unit.equals("mm") && holds(value * LengthUnit.INCH.mm());
        for (double factor : new double[] {1000, 10, 100, 0.1, 0.01, 0.001}) {
            if (holds(value * factor) && value != 0) {
                return "Maybe another unit was meant: " + rounded(value * factor)
                        + (inches && factor == 10 ? " or " + rounded(value * LengthUnit.INCH.mm()) : "")
                        + (unit.isEmpty() ? "" : " " + unit) + " would be allowed.";
            }
        }
        return inches
                ? "Maybe inches were meant: " + rounded(value * LengthUnit.INCH.mm()) + " mm would be allowed."
                : "Maybe a digit is missing or one too many.";
    }

    private static String rounded(double value) {
        return plain(Math.round(value * 1000) / 1000.0);
    }

    /** Shortest decimal text of a number. */
    static String plain(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return String.format(Locale.ROOT, "%.0f", value);
        }
        return new java.math.BigDecimal(Double.toString(value))
                .stripTrailingZeros()
                .toPlainString();
    }
}
