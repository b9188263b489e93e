package withy.units;

import java.util.Currency;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads and prints amounts of one currency as minor units (cents). */
public final class Money {
    /** Largest amount read, in whole units of the currency: far above any rod, far below overflow. */
    private static final long MOST_UNITS = 1_000_000_000L;

    /** Thousands set apart and a decimal mark of another kind: it can be told what was meant. */
    private static final Pattern THOUSANDS = Pattern.compile("(\\d{1,3}(?:[.,' \u00a0]\\d{3})+)[.,](\\d{1,2})(?!\\d)");

    private Money() {}

    /** Reads "650", "650.00", "650,5", "€650", "650 €", "EUR 650"; a sign or code of another currency is refused. */
    public static long minor(String text, Currency currency) {
        TextCursor cursor = new TextCursor(text, DecimalMark.EITHER);
        takeSign(cursor, currency);
        int from = cursor.position();
        Matcher grouped = THOUSANDS.matcher(text);
        if (grouped.find()) {
            String meant = grouped.group(1).replaceAll("\\D", "") + "." + grouped.group(2);
            throw cursor.fault(from, "an amount in " + currency.getCurrencyCode(), "Maybe write " + meant + ".");
        }
        double value = cursor.number();
        if (cursor.wasFraction()) {
            throw cursor.fault(from, "a decimal amount", "Maybe write the fraction as decimals.");
        }
        takeSign(cursor, currency);
        Quantities.refuseRest(cursor);
        if (value > MOST_UNITS) {
            throw cursor.fault(from, "at most " + MOST_UNITS, "Maybe digits were typed twice.");
        }
        double minor = value * scale(currency);
        long rounded = Math.round(minor);
        if (Math.abs(minor - rounded) > 1e-6 * Math.max(1.0, minor * 1e-6)) {
            throw cursor.fault(
                    from,
                    "at most " + currency.getDefaultFractionDigits() + " decimals in " + currency.getCurrencyCode(),
                    "Maybe a decimal too many was typed.");
        }
        return rounded;
    }

    /** The amount with its code, "650.00 EUR", the same everywhere. */
    public static String print(long minor, Currency currency) {
        int digits = Math.max(0, currency.getDefaultFractionDigits());
        long scale = scale(currency);
        long whole = Math.abs(minor) / scale;
        String sign = minor < 0 ? "-" : "";
        String rest = digits == 0 ? "" : "." + String.format(Locale.ROOT, "%0" + digits + "d", Math.abs(minor) % scale);
        return sign + whole + rest + " " + currency.getCurrencyCode();
    }

    private static void takeSign(TextCursor cursor, Currency currency) {
        int from = cursor.position();
        String word = cursor.word();
        String code = currency.getCurrencyCode();
        if (!word.isEmpty() && !word.equals(code.toLowerCase(Locale.ROOT)) && !isSignOf(word, code)) {
            throw cursor.fault(
                    from, "an amount in " + code, "Maybe the amount is in another currency than the catalogue.");
        }
    }

    private static boolean isSignOf(String sign, String code) {
        return switch (sign) {
            case "€" -> code.equals("EUR");
            case "£" -> code.equals("GBP");
            case "$" -> code.endsWith("D");
            case "kr" -> code.equals("SEK") || code.equals("NOK") || code.equals("DKK");
            default -> false;
        };
    }

    private static long scale(Currency currency) {
        long scale = 1;
        for (int i = 0; i < currency.getDefaultFractionDigits(); i++) {
            scale *= 10;
        }
        return scale;
    }
}
