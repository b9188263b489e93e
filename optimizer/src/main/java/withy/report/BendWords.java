package withy.report;

import java.util.Locale;

/** Figures as a bend tells them. */
final class BendWords {
    private BendWords() {}

    static String degrees(double deg) {
        return number(deg, 1) + "°";
    }

    static String hertz(double hz) {
        return number(hz, hz < 0.1 ? 3 : 2) + " Hz";
    }

    static String number(double value, int decimals) {
        String shown = String.format(Locale.ROOT, "%." + decimals + "f", value);
        return shown.matches("-0(\\.0+)?") ? shown.substring(1) : shown;
    }
}
