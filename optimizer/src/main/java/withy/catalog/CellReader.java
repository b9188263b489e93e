package withy.catalog;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Reads one cell of a known column, or says what is wrong with it. */
final class CellReader {
    private static final Pattern ID = Pattern.compile("[a-z0-9][a-z0-9-]{1,59}");
    private static final Pattern DOTTED_DATE = Pattern.compile("(\\d{1,2})\\.(\\d{1,2})\\.(\\d{4})");
    private static final Pattern COLON = Pattern.compile(":");

    private final Header header;
    private final FaultList faults;
    private final Numbers.Mark mark;
    private final int moneyDigits;

    CellReader(Header header, FaultList faults, Numbers.Mark mark, int moneyDigits) {
        this.header = header;
        this.faults = faults;
        this.mark = mark;
        this.moneyDigits = moneyDigits;
    }

    /** The value, or null after telling a fault. */
    @Nullable
    Object read(Column<?> column, Header.Place place, int line, String text) {
        return switch (column.sort()) {
            case ID -> id(column, line, text);
            case TEXT -> text(column, line, text);
            case WORD -> word(column, line, text);
            case WORDS -> words(column, line, text);
            case FLAG -> flag(column, line, text);
            case DATE -> date(column, line, text);
            case COLOUR -> colour(column, line, text);
            case STATIONS -> stations(column, place, line, text);
            case LENGTHS -> numbers(column, place, line, text);
            case WHOLE -> whole(column, place, line, text);
            case MONEY -> money(column, place, line, text);
            case NUMBER, BARE, LENGTH, MASS, STRENGTH -> number(column, place, line, text);
        };
    }

    private @Nullable Object id(Column<?> column, int line, String text) {
        if (ID.matcher(text).matches()) {
            return text;
        }
        String mended =
                text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
        boolean fits = ID.matcher(mended).matches();
        return fault(column, line, text, "is not an id", fits ? "write " + mended : "give it a short name of its own");
    }

    private @Nullable Object text(Column<?> column, int line, String text) {
        if (text.length() > Limits.TEXT) {
            return fault(column, line, text, "is " + text.length() + " characters long", "shorten it");
        }
        if (text.chars().anyMatch(CellReader::unseen)) {
            return fault(column, line, text, "holds a line break or control character", "write it on one line");
        }
        // A leading apostrophe before a formula sign is the writer's own guard, see CatalogWriter.
        return text.length() > 1 && text.charAt(0) == '\'' && CatalogWriter.FORMULA.indexOf(text.charAt(1)) >= 0
                ? text.substring(1)
                : text;
    }

    /** Signs that no name needs: they steer a terminal or turn the direction of writing round. */
    private static boolean unseen(int c) {
        return Character.isISOControl(c)
                || c >= 0x202a && c <= 0x202e
                || c >= 0x2066 && c <= 0x2069
                || c == 0x2028
                || c == 0x2029;
    }

    private @Nullable Object word(Column<?> column, int line, String text) {
        if (column.words().contains(text)) {
            return text;
        }
        String plain = text.strip().toLowerCase(Locale.ROOT).replaceAll("[\\s_]+", "-");
        if (column.words().contains(plain)) {
            return plain;
        }
        String near = NearWord.to(plain, column.words());
        return fault(
                column,
                line,
                text,
                "is not a known word",
                near.isEmpty() ? "the nearest of those will do" : "\"" + near + "\" was meant");
    }

    private @Nullable Object words(Column<?> column, int line, String text) {
        List<String> all = new ArrayList<>();
        for (String item : text.split("\\|", -1)) {
            if (word(column, line, item) instanceof String word) {
                all.add(word);
            } else {
                return null;
            }
        }
        return List.copyOf(all);
    }

    private @Nullable Object flag(Column<?> column, int line, String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "yes", "y", "true", "1", "x" -> Boolean.TRUE;
            case "no", "n", "false", "0" -> Boolean.FALSE;
            default -> fault(column, line, text, "is neither yes nor no", "write yes, or leave it empty for no");
        };
    }

    /** ISO 8601, or day.month.year as spreadsheets rewrite it where the comma marks decimals. */
    private @Nullable Object date(Column<?> column, int line, String text) {
        Matcher dotted = DOTTED_DATE.matcher(text);
        try {
            LocalDate date = dotted.matches()
                    ? LocalDate.of(number(dotted, 3), number(dotted, 2), number(dotted, 1))
                    : LocalDate.parse(text);
            if (date.getYear() >= 1990 && date.getYear() <= 2200) {
                return date;
            }
        } catch (DateTimeException noDate) {
            return fault(column, line, text, "is not a date", "write year, month, day with hyphens");
        }
        return fault(column, line, text, "is not a day of this trade", "the year is mistyped");
    }

    private static int number(Matcher matcher, int group) {
        return Integer.parseInt(matcher.group(group));
    }

    private @Nullable Object colour(Column<?> column, int line, String text) {
        List<BigDecimal> values = new ArrayList<>();
        for (String item : text.split("\\|", -1)) {
            BigDecimal value = Numbers.parse(item, mark);
            if (value == null) {
                return fault(column, line, text, "is not a colour", "write three numbers with | between");
            }
            values.add(value);
        }
        if (values.size() != 3) {
            return fault(column, line, text, "is " + values.size() + " numbers, not three", "write L|a|b");
        }
        double l = values.get(0).doubleValue();
        double a = values.get(1).doubleValue();
        double b = values.get(2).doubleValue();
        if (!(l >= 0 && l <= 100 && Math.abs(a) <= 160 && Math.abs(b) <= 160)) {
            return fault(
                    column, line, text, "is outside the colour space", "the numbers are red, green, blue, not L|a|b");
        }
        return new Lab(l, a, b);
    }

    private @Nullable Object stations(Column<?> column, Header.Place place, int line, String text) {
        List<Blank.OdStation> stations = new ArrayList<>();
        String[] items = text.split("\\|", -1);
        if (items.length < 4 || items.length > Limits.LIST) {
            return fault(
                    column,
                    line,
                    text,
                    "has " + items.length + " stations",
                    "measure at butt, tip and two places between");
        }
        for (String item : items) {
            String[] pair = COLON.split(item, -1);
            BigDecimal x = pair.length == 2 ? Numbers.parse(pair[0], mark) : null;
            BigDecimal od = pair.length == 2 ? Numbers.parse(pair[1], mark) : null;
            if (x == null || od == null) {
                return fault(column, line, item, "is not a pair x:diameter", "write such as 300:11.2");
            }
            double xMm = Numbers.scaled(x, place.factor());
            double odMm = Numbers.scaled(od, place.factor());
            if (!inRange(column, odMm) || !(xMm >= 0 && xMm <= 6000)) {
                return fault(column, line, item, "is impossible for a blank", hintFor(column, odMm));
            }
            stations.add(new Blank.OdStation(xMm, odMm));
        }
        return List.copyOf(stations);
    }

    private @Nullable Object numbers(Column<?> column, Header.Place place, int line, String text) {
        List<Double> all = new ArrayList<>();
        String[] items = text.split("\\|", -1);
        if (items.length > Limits.LIST) {
            return fault(column, line, text, "has " + items.length + " values", "split it");
        }
        for (String item : items) {
            if (number(column, place, line, item) instanceof Double value) {
                all.add(value);
            } else {
                return null;
            }
        }
        return List.copyOf(all);
    }

    private @Nullable Object whole(Column<?> column, Header.Place place, int line, String text) {
        if (!(number(column, place, line, text) instanceof Double value)) {
            return null;
        }
        if (value != Math.rint(value)) {
            return fault(column, line, text, "is not a whole number", "write " + Math.round(value));
        }
        return value.intValue();
    }

    private @Nullable Object money(Column<?> column, Header.Place place, int line, String text) {
        BigDecimal value = parsed(column, line, text);
        if (value == null || !(checked(column, line, text, value.doubleValue()) instanceof Double)) {
            return null;
        }
        BigDecimal minor = value.movePointRight(moneyDigits);
        if (minor.stripTrailingZeros().scale() > 0) {
            return fault(
                    column,
                    line,
                    text,
                    "is finer than the currency's smallest coin",
                    "write " + value.setScale(moneyDigits, RoundingMode.HALF_UP).toPlainString());
        }
        return minor.longValueExact();
    }

    private @Nullable Object number(Column<?> column, Header.Place place, int line, String text) {
        BigDecimal value = parsed(column, line, text);
        return value == null ? null : checked(column, line, text, Numbers.scaled(value, place.factor()));
    }

    private @Nullable BigDecimal parsed(Column<?> column, int line, String text) {
        BigDecimal value = Numbers.parse(text, mark);
        if (value != null) {
            return value;
        }
        BigDecimal either = Numbers.parse(text, Numbers.Mark.COMMA);
        if (either != null) {
            BigDecimal other = Numbers.parse(text, Numbers.Mark.POINT);
            String choice =
                    other == null ? either.toPlainString() : other.toPlainString() + " or " + either.toPlainString();
            fault(column, line, text, "can be read in two ways", "write " + choice);
            return null;
        }
        String digits = text.replaceAll("\\s*[A-Za-z\"'%€]+\\.?$", "");
        boolean unit = !digits.equals(text) && Numbers.parse(digits, Numbers.Mark.COMMA) != null;
        fault(
                column,
                line,
                text,
                "is not a number",
                unit ? "write " + digits + " alone; the unit stands in the column's name" : "a letter slipped in");
        return null;
    }

    private @Nullable Object checked(Column<?> column, int line, String text, double value) {
        return inRange(column, value)
                ? (Object) value
                : fault(column, line, text, "is out of range", hintFor(column, value));
    }

    private static boolean inRange(Column<?> column, double value) {
        return value >= column.min() && value <= column.max();
    }

    private String hintFor(Column<?> column, double value) {
        Header.Place place = header.places().get(column.name());
        String own = place == null || place.unit().isEmpty() ? column.ownUnit() : place.unit();
        String unit = own.isEmpty() ? "" : " " + own;
        if (value < 0 && inRange(column, -value)) {
            return "the minus sign is a slip: " + header.typed(column.name(), -value) + unit;
        }
        for (double shift : new double[] {10, 0.1, 100, 0.01, 1000, 0.001}) {
            double moved = BigDecimal.valueOf(value)
                    .divide(BigDecimal.valueOf(shift), 6, RoundingMode.HALF_UP)
                    .doubleValue();
            if (value > 0 && inRange(column, moved)) {
                return "the decimal mark slipped: " + header.typed(column.name(), moved) + unit;
            }
        }
        return "the value belongs in another column";
    }

    private @Nullable Object fault(Column<?> column, int line, String text, String problem, String maybe) {
        Header.Place place = header.places().get(column.name());
        String allowed = place == null ? column.allowed() : column.allowed(place);
        faults.add(line, column.name(), text, problem, allowed, maybe);
        return null;
    }
}
