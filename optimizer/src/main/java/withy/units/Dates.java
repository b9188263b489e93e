package withy.units;

import java.time.DateTimeException;
import java.time.LocalDate;

/** Reads calendar dates of the form 2026-05-31 (ISO 8601, calendar date, extended form) and nothing else. */
public final class Dates {
    private static final int EARLIEST_YEAR = 1900;

    private Dates() {}

    public static LocalDate date(String text) {
        String trimmed = text.strip();
        if (!trimmed.matches("\\d{4}-\\d{2}-\\d{2}")) {
            throw fault(trimmed, "a date as year-month-day", "Maybe write it as 2026-05-31.");
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

    private static UnitsFault fault(String text, String allowed, String maybe) {
        String shown = text.length() > TextCursor.LONGEST_TEXT ? text.substring(0, 20) + "…" : text;
        return new UnitsFault(shown, 0, "\"" + shown + "\"", allowed, maybe);
    }
}
