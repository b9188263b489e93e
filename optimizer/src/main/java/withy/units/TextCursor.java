package withy.units;

import java.util.Locale;

/** Walks one short text from left to right, reading numbers and unit words; each read moves on or faults, so it always ends. */
final class TextCursor {
    /** Longest text read as a quantity; anything longer is no quantity. */
    static final int LONGEST_TEXT = 64;

    /** Most digits of one number: keeps every value exact enough and finite. */
    private static final int MOST_DIGITS = 15;

    private static final String MAYBE_NUMBER = "Maybe a number such as 1.98, 1,98, 3/4 or 7 1/2 was meant.";
    private static final String VULGAR = "¼½¾⅛⅜⅝⅞";
    private static final double[] VULGAR_VALUE = {0.25, 0.5, 0.75, 0.125, 0.375, 0.625, 0.875};

    private final String text;
    private final DecimalMark mark;
    private int at;
    private boolean fraction;

    TextCursor(String raw, DecimalMark mark) {
        if (raw.length() > LONGEST_TEXT) {
            throw new UnitsFault(
                    raw.substring(0, 20) + "…",
                    LONGEST_TEXT,
                    raw.length() + " characters",
                    "at most " + LONGEST_TEXT + " characters",
                    "Maybe two fields ran together.");
        }
        this.text = raw.replace('\u00a0', ' ').replace('\u202f', ' ');
        this.mark = mark;
        skipSpaces();
    }

    boolean atEnd() {
        return at >= text.length();
    }

    int position() {
        return at;
    }

    /** Whether the number read last was written as a fraction. */
    boolean wasFraction() {
        return fraction;
    }

    void skipSpaces() {
        while (at < text.length() && Character.isWhitespace(text.charAt(at))) {
            at++;
        }
    }

    boolean startsNumber() {
        return !atEnd() && (isDigit(text.charAt(at)) || VULGAR.indexOf(text.charAt(at)) >= 0);
    }

    boolean take(char wanted) {
        if (!atEnd() && text.charAt(at) == wanted) {
            at++;
            return true;
        }
        return false;
    }

    /** The run of letters and unit signs here, in lower case; empty when there is none. */
    String word() {
        int from = at;
        while (at < text.length() && isWordSign(text.charAt(at))) {
            at++;
        }
        String found = text.substring(from, at).toLowerCase(Locale.ROOT);
        skipSpaces();
        return found;
    }

    void back(int position) {
        at = position;
    }

    /** A decimal number, a fraction (also with a decimal numerator, "4.5/64"), or a whole number and a fraction. */
    double number() {
        fraction = false;
        if (!atEnd() && VULGAR.indexOf(text.charAt(at)) >= 0) {
            return vulgar();
        }
        double first = decimal();
        int afterFirst = at;
        if (take('/')) {
            return over(first);
        }
        take('-');
        skipSpaces();
        if (startsNumber() && first == Math.rint(first)) {
            int second = at;
            if (VULGAR.indexOf(text.charAt(at)) >= 0) {
                return first + vulgar();
            }
            double numerator = digits();
            if (take('/')) {
                double part = over(numerator);
                if (part >= 1.0) {
                    throw fault(
                            second, "a fraction below 1", "Maybe the whole number and the fraction are two values.");
                }
                return first + part;
            }
        }
        at = afterFirst;
        skipSpaces();
        return first;
    }

    private double vulgar() {
        fraction = true;
        double value = VULGAR_VALUE[VULGAR.indexOf(text.charAt(at))];
        at++;
        skipSpaces();
        return value;
    }

    private double over(double numerator) {
        int from = at;
        double denominator = digits();
        if (denominator == 0.0) {
            throw fault(from, "a denominator above 0", MAYBE_NUMBER);
        }
        fraction = true;
        skipSpaces();
        return numerator / denominator;
    }

    private double decimal() {
        int from = at;
        if (atEnd() || !isDigit(text.charAt(at))) {
            throw fault(
                    at,
                    "a number",
                    take('-') ? "Maybe the minus sign is a slip: no quantity here is below zero." : MAYBE_NUMBER);
        }
        digits();
        boolean comma = at < text.length() && text.charAt(at) == ',' && mark != DecimalMark.POINT;
        boolean point = at < text.length() && text.charAt(at) == '.' && mark != DecimalMark.COMMA;
        if ((comma || point) && at + 1 < text.length() && isDigit(text.charAt(at + 1))) {
            int signAt = at;
            at++;
            digits();
            refuseThousands(from, signAt, comma);
        }
        if (at - from > MOST_DIGITS + 1) {
            throw fault(from, "at most " + MOST_DIGITS + " digits", MAYBE_NUMBER);
        }
        return Double.parseDouble(text.substring(from, at).replace(',', '.'));
    }

    private void refuseThousands(int from, int signAt, boolean comma) {
        boolean leadingZero = text.charAt(from) == '0';
        if (comma && mark == DecimalMark.EITHER && at - signAt == 4 && !leadingZero) {
            String whole = text.substring(from, signAt);
            String rest = text.substring(signAt + 1, at);
            throw fault(
                    signAt,
                    "a decimal comma that can't be taken for a thousands sign",
                    "Maybe %s%s or %s.%s was meant.".formatted(whole, rest, whole, rest));
        }
    }

    private double digits() {
        int from = at;
        while (at < text.length() && isDigit(text.charAt(at))) {
            at++;
        }
        if (at == from) {
            throw fault(at, "a digit", MAYBE_NUMBER);
        }
        if (at - from > MOST_DIGITS) {
            throw fault(from, "at most " + MOST_DIGITS + " digits", MAYBE_NUMBER);
        }
        return Double.parseDouble(text.substring(from, at));
    }

    UnitsFault fault(int position, String allowed, String maybe) {
        String read = position >= text.length() ? "the end" : "\"" + text.substring(position) + "\"";
        return new UnitsFault(text, position, read, allowed, maybe);
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static boolean isWordSign(char c) {
        return Character.isLetter(c) || "'\"′″’”“.°€$£#".indexOf(c) >= 0;
    }
}
