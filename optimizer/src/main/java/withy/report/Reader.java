package withy.report;

import java.math.BigDecimal;
import java.text.DecimalFormatSymbols;
import java.text.NumberFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Currency;
import java.util.Locale;
import withy.explain.Phrases;
import withy.units.QuantityText;

/**
 * Who reads a paper: units, and the decimal sign, the forms of money and of dates of a country that was named, never the machine's.
 *
 * @param units units
 * @param locale language and country
 */
public record Reader(QuantityText units, Locale locale) {

    /** An amount of money. */
    String money(long minor, String currency) {
        Currency unit = Currency.getInstance(currency);
        int digits = Math.max(0, unit.getDefaultFractionDigits());
        NumberFormat format = NumberFormat.getCurrencyInstance(locale);
        format.setCurrency(unit);
        format.setMinimumFractionDigits(digits);
        format.setMaximumFractionDigits(digits);
        return format.format(BigDecimal.valueOf(minor, digits));
    }

    /** A day. */
    String day(LocalDate date) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.MEDIUM)
                .withLocale(locale)
                .format(date);
    }

    /** A place or a part's length, broken between two systems of units only. */
    String length(double mm) {
        return decimals(Markup.unbroken(units.partLength(mm)));
    }

    /** A diameter or a gap. */
    String thin(double mm) {
        return decimals(Markup.unbroken(units.thickness(mm)));
    }

    /** A weight. */
    String mass(double grams) {
        return decimals(Markup.unbroken(units.mass(grams)));
    }

    /** How much two masses differ as they are printed. */
    String massBetween(double grams, double otherGrams) {
        return decimals(Markup.unbroken(units.massBetween(grams, otherGrams)));
    }

    /** A small part's weight. */
    String fine(double grams) {
        return decimals(Markup.unbroken(units.fineMass(grams)));
    }

    /** A bare number with at most so many decimals. */
    String number(double value, int most) {
        NumberFormat format = NumberFormat.getNumberInstance(locale);
        format.setGroupingUsed(false);
        format.setMaximumFractionDigits(most);
        return format.format(value);
    }

    /** How much of something, in a unit of a list of materials; pieces are a bare count. */
    String amount(double amount, String unit) {
        return unit.equals("pieces")
                ? number(amount, 0)
                : Markup.unbroken(number(amount, 1) + " " + Phrases.of("paper.unit." + unit));
    }

    /** True where decimals have a comma. */
    boolean decimalComma() {
        return DecimalFormatSymbols.getInstance(locale).getDecimalSeparator() == ',';
    }

    /** A quantity or a sentence of ours with its decimal signs; never for names, which stay as they are. */
    String decimals(String words) {
        char mark = DecimalFormatSymbols.getInstance(locale).getDecimalSeparator();
        return mark == '.' ? words : words.replaceAll("(?<=\\d)\\.(?=\\d)", String.valueOf(mark));
    }
}
