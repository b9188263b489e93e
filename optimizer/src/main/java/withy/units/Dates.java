package withy.units;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads calendar dates: of the form 2026-05-31 (ISO 8601, calendar date, extended form) and nothing else, or as they are written by hand. */
public final class Dates {
    private static final int EARLIEST_YEAR = 1900;
    private static final Pattern ISO = Pattern.compile("\\d{4}-\\d{2}-\\d{2}");
    private static final Pattern YEAR_FIRST = Pattern.compile("(\\d{4})[-./](\\d{1,2})[-./](\\d{1,2})");
    private static final Pattern NUMBERS =
            Pattern.compile("(\\d{1,2})([./-])\\s?(\\d{1,2})(?:[./-]\\s?(\\d{4}|\\d{2}))?\\.?");
    private static final Pattern DAY_FIRST = Pattern.compile(
            "(?:the )?(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s+(?:of )?([a-z]{3,9})\\.?(?:,?\\s+(\\d{4}|\\d{2}))?");
    private static final Pattern MONTH_FIRST =
            Pattern.compile("([a-z]{3,9})\\.?\\s+(?:the )?(\\d{1,2})(?:st|nd|rd|th)?(?:,?\\s+(\\d{4}|\\d{2}))?");
    private static final List<String> MONTHS =
            List.of("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec");
    private static final DateTimeFormatter WORDS = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);

    /** Years until a 29 February comes at the latest. */
    private static final int LONGEST_WAIT = 8;

    /** Of years that are written with two digits. */
    private static final int CENTURY = 2000;

    private Dates() {}

    /**
     * A day as it was written by hand.
     *
     * @param yearTold false where no year was written and the next such day is taken
     */
    public record Day(LocalDate date, boolean yearTold) {}

    /** A day of the form 2026-05-31. */
    public static LocalDate date(String text) {
        String trimmed = text.strip();
        if (!ISO.matcher(trimmed).matches()) {
            throw unread(trimmed);
        }
        try {
            LocalDate date = LocalDate.parse(trimmed);
            if (date.getYear() < EARLIEST_YEAR) {
                throw fault(trimmed, "a year from " + EARLIEST_YEAR, "Maybe the year is mistyped.");
            }
            return date;
        } catch (DateTimeException e) {
            UnitsFault fault = fault(trimmed, "a day of the calendar", "Maybe day and month are swapped.");
            fault.initCause(e);
            throw fault;
        }
    }

    /**
     * A day as it may be written by hand: 2026-05-31, 31.5.2026, 31 May, May 31st. What may be two days is none.
     *
     * @param from without a year the first such day from this one on is meant
     * @throws UnitsFault where it is no day
     */
    public static Day byHand(String text, LocalDate from) {
        String told = text.strip().toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        if (ISO.matcher(told).matches()) {
            return new Day(date(told), true);
        }
        Matcher first = YEAR_FIRST.matcher(told);
        if (first.matches()) {
            return day(text, first.group(1), first.group(2), first.group(3), from);
        }
        Matcher numbers = NUMBERS.matcher(told);
        if (numbers.matches()) {
            int one = Integer.parseInt(numbers.group(1));
            int two = Integer.parseInt(numbers.group(3));
            // with strokes some write the month first
            if (numbers.group(2).equals("/") && one <= 12 && two <= 12 && one != two) {
                throw unread(text.strip());
            }
            boolean monthFirst = two > 12;
            return day(
                    text, numbers.group(4), numbers.group(monthFirst ? 1 : 3), numbers.group(monthFirst ? 3 : 1), from);
        }
        Matcher dayFirst = DAY_FIRST.matcher(told);
        if (dayFirst.matches()) {
            return day(text, dayFirst.group(3), month(dayFirst.group(2)), dayFirst.group(1), from);
        }
        Matcher monthFirst = MONTH_FIRST.matcher(told);
        if (monthFirst.matches()) {
            return day(text, monthFirst.group(3), month(monthFirst.group(1)), monthFirst.group(2), from);
        }
        throw unread(text.strip());
    }

    /** A day in words: 31 May 2026. */
    public static String words(LocalDate day) {
        return WORDS.format(day);
    }

    private static String month(String name) {
        return String.valueOf(MONTHS.indexOf(name.substring(0, 3)) + 1);
    }

    private static Day day(String text, @Nullable String year, String month, String day, LocalDate from) {
        boolean told = year != null;
        int least = year == null ? from.getYear() : Integer.parseInt(year);
        least += year != null && year.length() == 2 ? CENTURY : 0;
        int most = told ? least : least + LONGEST_WAIT;
        for (int y = least; y <= most; y++) {
            try {
                LocalDate date = LocalDate.of(y, Integer.parseInt(month), Integer.parseInt(day));
                if (told || !date.isBefore(from)) {
                    return new Day(date, told);
                }
            } catch (DateTimeException none) {
                // a 29 February comes in another year
            }
        }
        throw unread(text.strip());
    }

    private static UnitsFault unread(String text) {
        return fault(text, "a date as year-month-day", "Maybe write it as 2026-05-31.");
    }

    private static UnitsFault fault(String text, String allowed, String maybe) {
        String shown = text.length() > TextCursor.LONGEST_TEXT ? text.substring(0, 20) + "…" : text;
        return new UnitsFault(shown, 0, "\"" + shown + "\"", allowed, maybe);
    }
}
