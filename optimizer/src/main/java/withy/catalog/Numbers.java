package withy.catalog;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.units.DecimalMark;
import withy.units.Quantities;
import withy.units.UnitsFault;

/**
 * Numbers as spreadsheets write them: decimal point or comma, thousands marked by blanks, apostrophes, points or commas;
 * or as fractions.
 *
 * <p>"1,500" alone may be one and a half or fifteen hundred; {@link Mark} says which, from the rest of the file.
 */
final class Numbers {
    /** Decimal mark of one file. UNKNOWN refuses what could be read either way. */
    enum Mark {
        POINT,
        COMMA,
        UNKNOWN
    }

    private static final Pattern BLANKS = Pattern.compile("(?<=\\d)[ \\u00a0\\u202f\\u2009'\\u2019](?=\\d{3}(?!\\d))");
    private static final Pattern PLAIN = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,2})?");
    private static final Pattern POINT_GROUPS = Pattern.compile("[+-]?[1-9]\\d{0,2}(\\.\\d{3})+(,\\d*)?");
    private static final Pattern COMMA_GROUPS = Pattern.compile("[+-]?[1-9]\\d{0,2}(,\\d{3})+(\\.\\d*)?");

    private static final int MOST_SIGNS = 40;

    /** Places kept of a converted value: a millionth of a millimetre or gram. */
    private static final int PLACES = 6;

    private Numbers() {}

    /** The number, or null where the text is none or could mean two. */
    static @Nullable BigDecimal parse(String text, Mark mark) {
        int decimals = decimals(text);
        if (decimals >= 0 && decimals != 3) {
            return new BigDecimal(text);
        }
        String plain = normal(text);
        if (plain.length() > MOST_SIGNS) {
            return null;
        }
        boolean pointGroups = POINT_GROUPS.matcher(plain).matches();
        boolean commaGroups = COMMA_GROUPS.matcher(plain).matches();
        if (plain.indexOf(',') >= 0 && plain.indexOf('.') >= 0) {
            if (pointGroups) {
                plain = plain.replace(".", "").replace(',', '.');
            } else if (commaGroups) {
                plain = plain.replace(",", "");
            } else {
                return null;
            }
        } else if (commaGroups) {
            boolean many = plain.indexOf(',') != plain.lastIndexOf(',');
            if (mark == Mark.UNKNOWN && !many) {
                return null;
            }
            plain = mark == Mark.COMMA && !many ? plain.replace(',', '.') : plain.replace(",", "");
        } else if (pointGroups && (mark == Mark.COMMA || plain.indexOf('.') != plain.lastIndexOf('.'))) {
            plain = plain.replace(".", "");
        } else {
            plain = plain.replace(',', '.');
        }
        return PLAIN.matcher(plain).matches() ? new BigDecimal(plain) : fraction(text);
    }

    /** A number marked as on a rule or a lure: 3/8, 7 1/2, 7-1/2; or null. */
    private static @Nullable BigDecimal fraction(String text) {
        try {
            return BigDecimal.valueOf(Quantities.decimal(text, DecimalMark.EITHER));
        } catch (UnitsFault none) {
            return null;
        }
    }

    /** 1 for a cell that can only have a decimal comma, -1 for one that can only have a decimal point, 0 for any other. */
    static int evidence(String text) {
        int decimals = decimals(text);
        if (decimals >= 0 && decimals != 3) {
            return decimals == 0 ? 0 : -1;
        }
        String plain = normal(text);
        int comma = plain.lastIndexOf(',');
        int point = plain.lastIndexOf('.');
        if (comma < 0 && point < 0) {
            return 0;
        }
        boolean groups = POINT_GROUPS.matcher(plain).matches()
                || COMMA_GROUPS.matcher(plain).matches();
        boolean both = comma >= 0 && point >= 0;
        if (groups && !both || parse(text, Mark.UNKNOWN) == null) {
            return 0;
        }
        return comma > point ? 1 : -1;
    }

    /** Digits behind the point of a number that is nothing but digits and one point at most, as most cells are; -1 for any other text. */
    private static int decimals(String text) {
        int point = -1;
        int length = text.length();
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            if (c == '.' && point < 0) {
                point = i;
            } else if (c < '0' || c > '9') {
                return -1;
            }
        }
        if (length == 0 || length > MOST_SIGNS || point == 0 || point == length - 1) {
            return -1;
        }
        return point < 0 ? 0 : length - 1 - point;
    }

    /** A value times the exact size of its unit, rounded half up to a millionth. */
    static double scaled(BigDecimal value, BigDecimal factor) {
        return value.multiply(factor).setScale(PLACES, RoundingMode.HALF_UP).doubleValue();
    }

    /** Shortest plain decimal text of a number, without exponent. */
    static String plain(double value) {
        BigDecimal exact = BigDecimal.valueOf(value).stripTrailingZeros();
        return exact.signum() == 0 ? "0" : exact.toPlainString();
    }

    private static String normal(String text) {
        return BLANKS.matcher(text.strip()).replaceAll("").replace('\u2212', '-');
    }
}
