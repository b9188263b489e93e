package withy.web;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withy.web.Field.Kind;

/** What a builder types into a field as the brief reads it: days and money as they are written by hand, "about", "2 pieces", metres without their unit. */
final class AsTyped {
    private static final Pattern ABOUT =
            Pattern.compile("(?:about|around|approx\\.?|approximately|roughly|circa|ca\\.?|~)\\s*(?=[\\d€$£])(.+)");
    private static final Pattern PIECES = Pattern.compile("(.+?)[\\s-]*(?:pieces?|pcs?\\.?|parts?|sections?)");
    private static final Pattern SIZE = Pattern.compile("[A-Za-z]{0,3}[\\s-]?(\\d{3,5})[\\s-]?[A-Za-z]{0,3}");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,3}(?:[.,]\\d{1,3})?");
    private static final List<String> SMALL = List.of("one", "two", "three", "four", "five", "six");
    private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})[-./](\\d{1,2})[-./](\\d{1,2})");
    private static final Pattern YEAR_LAST = Pattern.compile("(\\d{1,2})([./-])\\s?(\\d{1,2})[./-]\\s?(\\d{4})");
    private static final Pattern MONTH_NAMED =
            Pattern.compile("(?:(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s+)?([A-Za-z]{3,9})\\.?"
                    + "(?:\\s+(\\d{1,2})(?:st|nd|rd|th)?)?,?\\s+(\\d{4})");
    private static final List<String> MONTHS =
            List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");

    /** Bare lengths that can only be metres up to this, and centimetres from the next to below what is read as millimetres. */
    private static final double MOST_M = 6;

    private static final double LEAST_CM = 20;

    private AsTyped() {}

    /** As the brief reads it; what it would not read any better stays as it was typed. */
    static String of(Field field, String typed, Currency currency) {
        Matcher about = ABOUT.matcher(typed);
        String told = field.kind() != Kind.TEXT && about.matches() ? about.group(1) : typed;
        return switch (field.kind()) {
            case TEXT -> field.key().equals("wantedBy") ? day(told) : told;
            case BUDGET -> money(told, currency);
            case WHOLE -> size(told);
            case SPAN -> field.unit().isEmpty() ? pieces(told) : told;
            case AMOUNT -> length(field, told);
            case CHOICE, WISH, SOME, LINE, LEADER, WEIGHT -> told;
        };
    }

    /** True of what says that there is none. */
    static boolean none(String told) {
        return told.toLowerCase(Locale.ROOT).matches("none|no|no leader|without|[-–]");
    }

    /** A length without its unit, where only one unit makes a rod of it. */
    static String length(Field field, String told) {
        boolean whole = field.key().equals("length");
        if (!NUMBER.matcher(told).matches() || !whole && !field.key().equals("packedMax")) {
            return told;
        }
        double number = Double.parseDouble(told.replace(',', '.'));
        if (number > 0 && number <= MOST_M) {
            return told + " m";
        }
        return number >= LEAST_CM && number < (whole ? 900 : 200) ? told + " cm" : told;
    }

    private static String pieces(String told) {
        Matcher named = PIECES.matcher(told);
        String counted = named.matches() ? named.group(1) : told;
        int small = SMALL.indexOf(counted.toLowerCase(Locale.ROOT));
        return small < 0 ? counted : String.valueOf(small + 1);
    }

    /** A reel's size is its number, whatever letters the maker puts around it. */
    private static String size(String told) {
        Matcher lettered = SIZE.matcher(told);
        return lettered.matches() ? lettered.group(1) : told;
    }

    private static String money(String told, Currency currency) {
        String name = currency.getDisplayName(Locale.ENGLISH);
        String word = name.substring(name.lastIndexOf(' ') + 1);
        return told.replaceFirst("[,.]\\s?[-–]$", "")
                .replaceFirst("(?i)(?<=\\d)\\s*" + Pattern.quote(word) + "s?$", " " + currency.getCurrencyCode());
    }

    /** A day as 2026-05-31, where it can only be one; else as typed. */
    static String day(String typed) {
        String told = typed.strip();
        Matcher first = YEAR_FIRST.matcher(told);
        if (first.matches()) {
            return day(told, first.group(1), first.group(2), first.group(3));
        }
        Matcher last = YEAR_LAST.matcher(told);
        if (last.matches()) {
            int one = Integer.parseInt(last.group(1));
            int two = Integer.parseInt(last.group(3));
            // with strokes some write the month first
            boolean either = last.group(2).equals("/") && one <= 12 && two <= 12 && one != two;
            boolean monthFirst = two > 12;
            return either
                    ? told
                    : day(told, last.group(4), last.group(monthFirst ? 1 : 3), last.group(monthFirst ? 3 : 1));
        }
        Matcher named = MONTH_NAMED.matcher(told);
        if (named.matches() && (named.group(1) == null) != (named.group(3) == null)) {
            int month = MONTHS.indexOf(named.group(2).toLowerCase(Locale.ROOT).substring(0, 3)) + 1;
            String day = named.group(1) == null ? named.group(3) : named.group(1);
            return day(told, named.group(4), String.valueOf(month), day);
        }
        return told;
    }

    private static String day(String told, String year, String month, String day) {
        try {
            return LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day))
                    .toString();
        } catch (DateTimeException none) {
            return told;
        }
    }
}
