package withy.catalog;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The sound values of one row by column name; a part is built from it once no needed value is missing or faulty. */
final class Row {
    private final Map<String, Object> values;
    private final double housePercent;

    /**
     * @param values by column name
     * @param housePercent the shop's tolerance of a catalogue weight where the row states none, %
     */
    Row(Map<String, Object> values, double housePercent) {
        this.values = new LinkedHashMap<>(values);
        this.housePercent = housePercent;
    }

    PartFacts facts() {
        double weightG = number("weight_g");
        // Kept to the milligram, as every weight is compared.
        double houseG = Math.round(weightG * housePercent * 10) / 1000.0;
        return new PartFacts(
                text("id"),
                text("maker"),
                text("model"),
                (Long) needed("price"),
                (LocalDate) values.get("price_date"),
                whole("pack_qty", 1),
                whole("stock", 0),
                (Integer) values.get("lead_days"),
                text("supplier"),
                text("bin"),
                weightG,
                number("weight_tol_g", houseG),
                numberOrNull("measured_g"),
                word("material", Material.class),
                (Lab) values.get("colour_lab"),
                values.containsKey("gloss") ? word("gloss", Gloss.class) : null,
                text("set_code"),
                whole("durability_class"),
                whole("corrosion_class"));
    }

    private int whole(String column, int otherwise) {
        return values.containsKey(column) ? whole(column) : otherwise;
    }

    double number(String column) {
        return (Double) needed(column);
    }

    double number(String column, double otherwise) {
        Double value = numberOrNull(column);
        return value == null ? otherwise : value;
    }

    @Nullable
    Double numberOrNull(String column) {
        return (Double) values.get(column);
    }

    int whole(String column) {
        return (Integer) needed(column);
    }

    boolean flag(String column) {
        return Boolean.TRUE.equals(values.get(column));
    }

    String text(String column) {
        Object value = values.get(column);
        return value == null ? "" : (String) value;
    }

    <E extends Enum<E>> E word(String column, Class<E> type) {
        return constant(type, (String) needed(column));
    }

    <E extends Enum<E>> List<E> words(String column, Class<E> type) {
        return texts(needed(column)).stream().map(word -> constant(type, word)).toList();
    }

    List<Double> numbers(String column) {
        return ((List<?>) needed(column)).stream().map(Double.class::cast).toList();
    }

    List<Blank.OdStation> stations(String column) {
        return ((List<?>) needed(column))
                .stream().map(Blank.OdStation.class::cast).toList();
    }

    static <E extends Enum<E>> E constant(Class<E> type, String word) {
        for (E constant : type.getEnumConstants()) {
            if (Column.wordOf(constant).equals(word)) {
                return constant;
            }
        }
        throw new IllegalArgumentException("no " + type.getSimpleName() + " is called " + word);
    }

    private static List<String> texts(Object value) {
        return ((List<?>) value).stream().map(String.class::cast).toList();
    }

    private Object needed(String column) {
        Object value = values.get(column);
        if (value == null) {
            throw new IllegalStateException("column " + column + " was not read");
        }
        return value;
    }
}
