package withy.catalog;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;

/** Units a column name may end in, with their exact size in the unit the column is kept in. */
final class CellUnit {
    private static final Map<String, BigDecimal> LENGTHS = new LinkedHashMap<>();
    private static final Map<String, BigDecimal> MASSES = new LinkedHashMap<>();
    private static final Map<String, BigDecimal> STRENGTHS = new LinkedHashMap<>();

    static {
        put(LENGTHS, "mm", "1");
        put(LENGTHS, "cm", "10");
        put(LENGTHS, "m", "1000");
        put(LENGTHS, "in", "25.4");
        put(LENGTHS, "ft", "304.8");
        put(LENGTHS, "64ths", "0.396875");
        put(MASSES, "g", "1");
        put(MASSES, "mg", "0.001");
        put(MASSES, "kg", "1000");
        put(MASSES, "oz", "28.349523125");
        put(MASSES, "lb", "453.59237");
        put(MASSES, "gr", "0.06479891");
        put(STRENGTHS, "kg", "1");
        put(STRENGTHS, "g", "0.001");
        put(STRENGTHS, "lb", "0.45359237");
        put(STRENGTHS, "oz", "0.028349523125");
    }

    private CellUnit() {}

    private static void put(Map<String, BigDecimal> units, String name, String size) {
        units.put(name, new BigDecimal(size));
    }

    /** Units a column may be written in; empty for columns without a unit. */
    static Map<String, BigDecimal> unitsOf(Column<?> column) {
        return switch (column.sort()) {
            case LENGTH, LENGTHS, STATIONS -> LENGTHS;
            case MASS -> MASSES;
            case STRENGTH -> STRENGTHS;
            default -> Map.of();
        };
    }
}
