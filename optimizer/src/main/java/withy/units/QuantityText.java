package withy.units;

import java.math.BigDecimal;
import java.util.Locale;

/** Prints quantities for one reader; the same on every machine whatever its locale. */
public record QuantityText(UnitSystem system) {
    private static final double MM_PER_INCH = 25.4;
    private static final double NMM_PER_OUNCE_INCH = 0.028349523125 * Force.STANDARD_GRAVITY_M_S2 * MM_PER_INCH;
    private static final double KGM2_PER_OUNCE_SQUARE_INCH = 0.028349523125 * 0.0254 * 0.0254;

    /** A rod or blank: "2.13 m", {@code 7'0"} to the nearest 1/8 in. */
    public String rodLength(double mm) {
        return pick(number(mm / 1000.0, 2) + " m", feetAndInches(mm));
    }

    /** A part or a position: "84.5 mm", {@code 3 21/64"} to the nearest 1/64 in. */
    public String partLength(double mm) {
        return pick(trimmed(mm, 1) + " mm", inches(mm, 64));
    }

    /** A diameter or a gap: "0.13 mm", {@code 0.005"}. */
    public String thickness(double mm) {
        return pick(trimmed(mm, 2) + " mm", number(mm / MM_PER_INCH, 4) + "\"");
    }

    /** A tip-top tube: "1.79 mm", {@code 4.5/64"}, always in 64ths and halves of them. */
    public String tubeSize(double mm) {
        double halves = Math.rint(mm / LengthUnit.SIXTY_FOURTH.mm() * 2.0) / 2.0;
        return pick(number(mm, 2) + " mm", trimmed(halves, 1) + "/64\"");
    }

    /** A weight: "18.5 g", "0.65 oz". */
    public String mass(double grams) {
        return pick(number(grams, 1) + " g", number(grams / MassUnit.OUNCE.grams(), 2) + " oz");
    }

    /** How much two weights differ as they are printed: what a reader gets who subtracts one from the other. */
    public String massBetween(double grams, double otherGrams) {
        double ounce = MassUnit.OUNCE.grams();
        return pick(between(grams, otherGrams, 1) + " g", between(grams / ounce, otherGrams / ounce, 2) + " oz");
    }

    /** A small part or a bit of thread: "0.12 g", "0.004 oz". */
    public String fineMass(double grams) {
        return pick(number(grams, 2) + " g", number(grams / MassUnit.OUNCE.grams(), 3) + " oz");
    }

    /** A lure weight: "14.2 g", "10 g", "1/2 oz" to the nearest 1/32 oz. */
    public String lureMass(double grams) {
        return pick(trimmed(grams, 1) + " g", fraction(grams / MassUnit.OUNCE.grams(), 32) + " oz");
    }

    /** A line strength or a drag: "4.5 kg", "10.0 lb". */
    public String strength(double newtons) {
        return pick(
                number(newtons / ForceUnit.KILOGRAM_FORCE.newtons(), 1) + " kg",
                number(newtons / ForceUnit.POUND_FORCE.newtons(), 1) + " lb");
    }

    /** A moment: "314 N·mm", "44.4 oz·in". */
    public String moment(double newtonMm) {
        return pick(number(newtonMm, 0) + " N·mm", number(newtonMm / NMM_PER_OUNCE_INCH, 1) + " oz·in");
    }

    /** How much two moments differ as they are printed. */
    public String momentBetween(double newtonMm, double otherNewtonMm) {
        return pick(
                between(newtonMm, otherNewtonMm, 0) + " N·mm",
                between(newtonMm / NMM_PER_OUNCE_INCH, otherNewtonMm / NMM_PER_OUNCE_INCH, 1) + " oz·in");
    }

    /** A swing weight: "0.0363 kg·m²", "1982 oz·in²". */
    public String inertia(double kgM2) {
        return pick(number(kgM2, 4) + " kg·m²", number(kgM2 / KGM2_PER_OUNCE_SQUARE_INCH, 0) + " oz·in²");
    }

    /** How much two swing weights differ as they are printed. */
    public String inertiaBetween(double kgM2, double otherKgM2) {
        return pick(
                between(kgM2, otherKgM2, 4) + " kg·m²",
                between(kgM2 / KGM2_PER_OUNCE_SQUARE_INCH, otherKgM2 / KGM2_PER_OUNCE_SQUARE_INCH, 0) + " oz·in²");
    }

    /** A measured length on the grid limits are compared on, 0.01 mm: "82.5 mm", {@code 3.248"}. */
    public String measuredLength(double mm) {
        return pick(trimmed(mm, 2) + " mm", trimmed(mm / MM_PER_INCH, 4) + "\"");
    }

    /** A measured weight to the milligram: "0.125 g", "0.0044 oz". */
    public String measuredMass(double grams) {
        return pick(trimmed(grams, 3) + " g", trimmed(grams / MassUnit.OUNCE.grams(), 4) + " oz");
    }

    /** A measured strength or fish, as finely: "4.5 kg", "9.921 lb". */
    public String measuredStrength(double kg) {
        return pick(trimmed(kg, 3) + " kg", trimmed(kg * 1000 / MassUnit.POUND.grams(), 3) + " lb");
    }

    private String pick(String metric, String imperial) {
        return switch (system) {
            case METRIC -> metric;
            case IMPERIAL -> imperial;
            case BOTH -> metric + " (" + imperial + ")";
        };
    }

    private static String feetAndInches(double mm) {
        long eighths = Math.round(Math.abs(mm) / MM_PER_INCH * 8.0);
        return sign(mm, eighths) + eighths / 96 + "'" + fraction((eighths % 96) / 8.0, 8) + "\"";
    }

    private static String inches(double mm, int parts) {
        return fraction(mm / MM_PER_INCH, parts) + "\"";
    }

    /** A whole number and a reduced fraction of at most the given denominator, a power of two: "3 5/16". */
    static String fraction(double value, int parts) {
        long all = Math.round(Math.abs(value) * parts);
        long whole = all / parts;
        long numerator = all % parts;
        long denominator = parts;
        while (numerator != 0 && numerator % 2 == 0) {
            numerator /= 2;
            denominator /= 2;
        }
        String sign = sign(value, all);
        if (numerator == 0) {
            return sign + whole;
        }
        return sign + (whole == 0 ? "" : whole + " ") + numerator + "/" + denominator;
    }

    private static String sign(double value, long rounded) {
        return value < 0.0 && rounded != 0 ? "-" : "";
    }

    private static String number(double value, int decimals) {
        String shown = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return shown.matches("-0(\\.0+)?") ? shown.substring(1) : shown;
    }

    private static String between(double value, double other, int decimals) {
        BigDecimal shown = new BigDecimal(number(value, decimals));
        return shown.subtract(new BigDecimal(number(other, decimals))).abs().toPlainString();
    }

    private static String trimmed(double value, int decimals) {
        String shown = number(value, decimals);
        return shown.contains(".") ? shown.replaceAll("0+$", "").replaceAll("\\.$", "") : shown;
    }
}
