package withy.web;

import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import withy.units.Dates;
import withy.units.UnitsFault;
import withy.web.Field.Kind;

/** What a builder types into a field as the brief reads it: days and money as they are written by hand, "about", "2 pieces", metres without their unit. */
final class AsTyped {
    private static final Pattern ABOUT =
            Pattern.compile("(?:about|around|approx\\.?|approximately|roughly|circa|ca\\.?|~)\\s*(?=[\\d€$£])(.+)");
    private static final Pattern PIECES = Pattern.compile("(.+?)[\\s-]*(?:pieces?|pcs?\\.?|parts?|sections?)");
    private static final Pattern SIZE = Pattern.compile("[A-Za-z]{0,3}[\\s-]?(\\d{3,5})[\\s-]?[A-Za-z]{0,3}");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,3}(?:[.,]\\d{1,3})?");
    private static final List<String> SMALL = List.of("one", "two", "three", "four", "five", "six");
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

    /** A day as 2026-05-31, where one with its year is told; else as typed. */
    private static String day(String told) {
        try {
            Dates.Day day = Dates.byHand(told, LocalDate.EPOCH);
            return day.yearTold() ? day.date().toString() : told;
        } catch (UnitsFault none) {
            return told;
        }
    }
}
