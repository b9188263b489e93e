package withy.catalog;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * One column of a catalogue file: its name, what may stand in it, and how a part's value is taken for writing.
 *
 * @param name snake_case, ending in the unit
 * @param sort what stands in it
 * @param needed true where a row without it is refused
 * @param min least value (each value of a list)
 * @param max greatest value (each value of a list)
 * @param words the words allowed, for words and sets of words
 * @param about one line of documentation
 * @param value the value of a part: Double, Integer, Long, Boolean, String, LocalDate, Lab, enum or list of these; null = empty cell
 */
record Column<P>(
        String name,
        Sort sort,
        boolean needed,
        double min,
        double max,
        List<String> words,
        String about,
        Function<P, @Nullable Object> value) {

    /** What stands in a cell. */
    enum Sort {
        ID,
        TEXT,
        WORD,
        WORDS,
        FLAG,
        WHOLE,
        NUMBER,
        /** A number that has no unit, whatever its name ends in. */
        BARE,
        LENGTH,
        MASS,
        STRENGTH,
        LENGTHS,
        STATIONS,
        MONEY,
        DATE,
        COLOUR
    }

    static <P> Column<P> number(
            String name, Sort sort, double min, double max, String about, Function<P, @Nullable Object> value) {
        return new Column<>(name, sort, true, min, max, List.of(), about, value);
    }

    static <P> Column<P> length(
            String name, double min, double max, String about, Function<P, @Nullable Object> value) {
        return number(name, Sort.LENGTH, min, max, about, value);
    }

    static <P> Column<P> mass(String name, double min, double max, String about, Function<P, @Nullable Object> value) {
        return number(name, Sort.MASS, min, max, about, value);
    }

    static <P> Column<P> whole(String name, double min, double max, String about, Function<P, @Nullable Object> value) {
        return number(name, Sort.WHOLE, min, max, about, value);
    }

    static <P> Column<P> text(String name, String about, Function<P, @Nullable Object> value) {
        return number(name, Sort.TEXT, 0, 0, about, value);
    }

    static <P> Column<P> flag(String name, String about, Function<P, @Nullable Object> value) {
        return new Column<>(name, Sort.FLAG, false, 0, 0, List.of("yes", "no"), about, value);
    }

    static <P, E extends Enum<E>> Column<P> word(
            String name, Class<E> type, String about, Function<P, @Nullable Object> value) {
        return new Column<>(name, Sort.WORD, true, 0, 0, words(type), about, value);
    }

    static <P, E extends Enum<E>> Column<P> wordSet(
            String name, Class<E> type, String about, Function<P, @Nullable Object> value) {
        return new Column<>(name, Sort.WORDS, true, 0, 0, words(type), about, value);
    }

    /** The same column, which may be left empty or out. */
    Column<P> optional() {
        return new Column<>(name, sort, false, min, max, words, about, value);
    }

    /** The word of an enum constant in files: lower case with hyphens. */
    static String wordOf(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    private static <E extends Enum<E>> List<String> words(Class<E> type) {
        List<String> words = new ArrayList<>();
        for (E constant : type.getEnumConstants()) {
            words.add(wordOf(constant));
        }
        return List.copyOf(words);
    }

    /** Name without its unit. */
    String stem() {
        String unit = ownUnit();
        return unit.isEmpty() ? name : name.substring(0, name.length() - unit.length() - 1);
    }

    /** Unit in which the column's limits and values are kept, or empty. */
    String ownUnit() {
        return switch (sort) {
            case LENGTH, LENGTHS, STATIONS -> "mm";
            case MASS -> "g";
            case STRENGTH -> "kg";
            default -> "";
        };
    }

    /** What is allowed, in words. */
    String allowed() {
        return allowed(range(), "mm");
    }

    /** The same in the unit a list has the column in. */
    String allowed(Header.Place place) {
        if (place.factor().compareTo(BigDecimal.ONE) == 0) {
            return allowed();
        }
        String range = place.typed(min, RoundingMode.CEILING) + " to " + place.typed(max, RoundingMode.FLOOR) + " "
                + place.unit();
        return allowed(range, place.unit());
    }

    private String allowed(String range, String unit) {
        return switch (sort) {
            case ID -> "lower-case letters, digits and hyphens, 2 to 60 of them, starting with a letter or digit";
            case TEXT -> "text of 1 to " + Limits.TEXT + " characters";
            case WORD -> "one of " + String.join(", ", words);
            case WORDS -> "one or more of " + String.join(", ", words) + ", with | between";
            case FLAG -> "yes or no";
            case DATE -> "a date such as 2026-05-31";
            case COLOUR -> "CIE L|a|b such as 35|2.1|-8, L 0 to 100, a and b -160 to 160";
            case STATIONS ->
                "at least 4 of x:diameter in " + unit + " with | between"
                        + (unit.equals("mm") ? ", such as 0:12.4|700:9.1|1400:5.2|2100:1.9" : "") + ", diameters "
                        + range;
            case LENGTHS -> "lengths with | between, each " + range;
            case WHOLE -> "a whole number " + range;
            default -> range;
        };
    }

    private String range() {
        String unit = sort == Sort.NUMBER ? unitTail() : ownUnit();
        return Numbers.plain(min) + " to " + Numbers.plain(max) + (unit.isEmpty() ? "" : " " + unit);
    }

    private String unitTail() {
        if (name.endsWith("_g_ml")) {
            return "g/ml";
        }
        for (String tail : List.of("ml", "min", "h", "m")) {
            if (name.endsWith("_" + tail)) {
                return tail;
            }
        }
        return "";
    }
}
