package withy.catalog;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import withy.units.LengthUnit;
import withy.units.MassUnit;

/** Units a column name may end in, with their exact size in the unit the column is kept in. */
final class CellUnit {
    private static final Map<String, BigDecimal> LENGTHS = new LinkedHashMap<>();
    private static final Map<String, BigDecimal> MASSES = new LinkedHashMap<>();
    private static final Map<String, BigDecimal> STRENGTHS = new LinkedHashMap<>();

    static {
        length("mm", LengthUnit.MILLIMETRE);
        length("cm", LengthUnit.CENTIMETRE);
        length("m", LengthUnit.METRE);
        length("in", LengthUnit.INCH);
        length("ft", LengthUnit.FOOT);
        length("64ths", LengthUnit.SIXTY_FOURTH);
        mass("g", MassUnit.GRAM);
        mass("mg", MassUnit.MILLIGRAM);
        mass("kg", MassUnit.KILOGRAM);
        mass("oz", MassUnit.OUNCE);
        mass("lb", MassUnit.POUND);
        mass("gr", MassUnit.GRAIN);
        // Line and lift ratings are written in units of mass and kept in kg.
        MASSES.forEach((name, grams) -> STRENGTHS.put(name, grams.movePointLeft(3)));
    }

    private CellUnit() {}

    private static void length(String name, LengthUnit unit) {
        LENGTHS.put(name, BigDecimal.valueOf(unit.mm()));
    }

    private static void mass(String name, MassUnit unit) {
        MASSES.put(name, BigDecimal.valueOf(unit.grams()));
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
