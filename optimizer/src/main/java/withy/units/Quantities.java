package withy.units;

import java.util.Map;
import java.util.TreeMap;

/**
 * Reads lengths, masses and strengths as a builder types them: {@code 7'3"}, {@code 7 ft 3 in}, {@code 86 in}, {@code 5/64},
 * {@code 1/2 oz}, {@code 1 lb 4 oz}, {@code 1,98 m}. A bare number takes the unit the caller states; a bare fraction is
 * inches for a length and ounces for a mass, since nobody writes fractions of a millimetre or a gram. A faulty text raises
 * {@link UnitsFault}. No value is negative, infinite or not a number.
 */
public final class Quantities {
    private static final Map<String, LengthUnit> LENGTHS = lengths();
    private static final Map<String, MassUnit> MASSES = masses();
    private static final Map<String, ForceUnit> FORCES = forces();

    private Quantities() {}

    public static Length length(String text, LengthUnit bare) {
        TextCursor cursor = new TextCursor(text, DecimalMark.EITHER);
        double mm = 0.0;
        double previousUnitMm = Double.POSITIVE_INFINITY;
        do {
            int from = cursor.position();
            double value = cursor.number();
            boolean fraction = cursor.wasFraction();
            LengthUnit unit = lengthUnit(cursor, fraction, previousUnitMm == LengthUnit.FOOT.mm(), bare);
            if (unit.mm() >= previousUnitMm) {
                throw cursor.fault(from, "a smaller unit than before", "Maybe two lengths ran together.");
            }
            mm += value * unit.mm();
            previousUnitMm = unit.mm();
        } while (!cursor.atEnd());
        return new Length(mm);
    }

    private static LengthUnit lengthUnit(TextCursor cursor, boolean fraction, boolean afterFeet, LengthUnit bare) {
        int from = cursor.position();
        String word = cursor.word();
        if (word.isEmpty()) {
            return fraction || afterFeet ? LengthUnit.INCH : bare;
        }
        LengthUnit unit = LENGTHS.get(word);
        if (unit == null) {
            throw cursor.fault(
                    from, "mm, cm, m, in, \" , ft or '", "Maybe the unit is one of another quantity, or misspelt.");
        }
        return unit;
    }

    public static Mass mass(String text, MassUnit bare) {
        TextCursor cursor = new TextCursor(text, DecimalMark.EITHER);
        double grams = 0.0;
        double previousUnitG = Double.POSITIVE_INFINITY;
        do {
            int from = cursor.position();
            double value = cursor.number();
            boolean fraction = cursor.wasFraction();
            int unitAt = cursor.position();
            String word = cursor.word();
            MassUnit unit = word.isEmpty() ? (fraction ? MassUnit.OUNCE : bare) : MASSES.get(word);
            if (unit == null) {
                throw cursor.fault(
                        unitAt, "mg, g, kg, gr, oz or lb", "Maybe the unit is one of another quantity, or misspelt.");
            }
            if (unit.grams() >= previousUnitG) {
                throw cursor.fault(from, "a smaller unit than before", "Maybe two masses ran together.");
            }
            grams += value * unit.grams();
            previousUnitG = unit.grams();
        } while (!cursor.atEnd());
        return new Mass(grams);
    }

    /** A force or a line strength; "4,5 kg" and "10 lb" mean the weight of that mass at standard gravity. */
    public static Force force(String text, ForceUnit bare) {
        TextCursor cursor = new TextCursor(text, DecimalMark.EITHER);
        double value = cursor.number();
        int unitAt = cursor.position();
        String word = cursor.word();
        ForceUnit unit = word.isEmpty() ? bare : FORCES.get(word);
        if (unit == null) {
            throw cursor.fault(unitAt, "N, kg, g, lb or oz", "Maybe the unit is one of another quantity, or misspelt.");
        }
        refuseRest(cursor);
        return new Force(value * unit.newtons());
    }

    /** A number without a unit, as in a table cell. */
    public static double decimal(String text, DecimalMark mark) {
        TextCursor cursor = new TextCursor(text, mark);
        double value = cursor.number();
        refuseRest(cursor);
        return value;
    }

    static void refuseRest(TextCursor cursor) {
        if (!cursor.atEnd()) {
            throw cursor.fault(cursor.position(), "nothing more", "Maybe two values ran together.");
        }
    }

    private static Map<String, LengthUnit> lengths() {
        Map<String, LengthUnit> map = new TreeMap<>();
        put(map, LengthUnit.MILLIMETRE, "mm", "mm.", "millimetre", "millimetres", "millimeter", "millimeters");
        put(map, LengthUnit.CENTIMETRE, "cm", "cm.", "centimetre", "centimetres", "centimeter", "centimeters");
        put(map, LengthUnit.METRE, "m", "m.", "metre", "metres", "meter", "meters");
        put(map, LengthUnit.INCH, "in", "in.", "inch", "inches", "\"", "″", "”", "“", "''", "′′", "’’");
        put(map, LengthUnit.FOOT, "ft", "ft.", "foot", "feet", "'", "′", "’");
        return map;
    }

    private static Map<String, MassUnit> masses() {
        Map<String, MassUnit> map = new TreeMap<>();
        put(map, MassUnit.MILLIGRAM, "mg", "milligram", "milligrams");
        put(map, MassUnit.GRAM, "g", "g.", "gram", "grams", "gramme", "grammes");
        put(map, MassUnit.KILOGRAM, "kg", "kg.", "kilo", "kilos", "kilogram", "kilograms");
        put(map, MassUnit.GRAIN, "gr", "gr.", "grain", "grains");
        put(map, MassUnit.OUNCE, "oz", "oz.", "ounce", "ounces");
        put(map, MassUnit.POUND, "lb", "lb.", "lbs", "lbs.", "pound", "pounds");
        return map;
    }

    private static Map<String, ForceUnit> forces() {
        Map<String, ForceUnit> map = new TreeMap<>();
        put(map, ForceUnit.NEWTON, "n", "newton", "newtons");
        put(map, ForceUnit.GRAM_FORCE, "g", "gf", "gram", "grams");
        put(map, ForceUnit.KILOGRAM_FORCE, "kg", "kg.", "kgf", "kilo", "kilos", "kilogram", "kilograms");
        put(map, ForceUnit.OUNCE_FORCE, "oz", "oz.", "ozf", "ounce", "ounces");
        put(map, ForceUnit.POUND_FORCE, "lb", "lb.", "lbs", "lbs.", "lbf", "pound", "pounds");
        return map;
    }

    private static <U> void put(Map<String, U> map, U unit, String... words) {
        for (String word : words) {
            map.put(word, unit);
        }
    }
}
