package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.BriefFault.Notation;
import withy.units.UnitsFault;

/** Single values of a brief, wherever they stand. Each comes back, or null where it is faulty; faults go to the notes. */
final class Values {
    private static final String MAYBE_DROP = "Maybe leave the key out: then a default is taken and told.";

    private final Notes notes;

    Values(Notes notes) {
        this.notes = notes;
    }

    /** A JSON number within bounds. */
    @Nullable
    Double number(JsonNode value, String where, Bounds bounds, String unit) {
        if (!value.isNumber()) {
            String maybe = value.isTextual() ? "Maybe write the number without quotes." : MAYBE_DROP;
            notes.fault(where, shown(value), "a number, " + bounds.text(unit), maybe, Notation.HINT);
            return null;
        }
        double number = value.doubleValue();
        if (!bounds.holds(number)) {
            notes.fault(where, withUnit(shown(value), unit), bounds.text(unit), bounds.slip(number, unit));
            return null;
        }
        return number;
    }

    /** A JSON number of a quantity's own unit, on its grid. */
    @Nullable
    Double figure(JsonNode value, String where, Quantity kind, Bounds bounds) {
        Double number = number(value, where, bounds, kind.symbol());
        return number == null ? null : Double.valueOf(kind.round(number));
    }

    /** Text with a unit, on the quantity's grid. */
    @Nullable
    Double typed(JsonNode value, String where, Quantity kind, Bounds bounds) {
        if (!value.isTextual()) {
            String maybe = value.isNumber()
                    ? "Maybe \"" + value.asText() + " " + kind.symbol() + "\" was meant, or the key with "
                            + kind.suffix() + " at its end."
                    : MAYBE_DROP;
            notes.fault(where, shown(value), bounds.text(kind.symbol()), maybe, Notation.UNIT, Notation.HINT);
            return null;
        }
        try {
            double parsed = kind.parse(value.textValue());
            if (bounds.holds(parsed)) {
                return kind.round(parsed);
            }
            notes.fault(
                    where,
                    shown(value),
                    bounds.text(kind.symbol()),
                    "Maybe its number or its unit is a slip: that is " + Bounds.plain(kind.round(parsed)) + " "
                            + kind.symbol() + ".");
        } catch (UnitsFault e) {
            notes.fault(where, shown(value), e.allowed() + ", " + bounds.text(kind.symbol()), e.maybe());
        }
        return null;
    }

    /** One of the constants of an enum, written in lower camel case. */
    <E extends Enum<E>> @Nullable E choice(JsonNode value, String where, Class<E> type) {
        Map<String, E> words = new TreeMap<>();
        for (E constant : type.getEnumConstants()) {
            words.put(Words.of(constant), constant);
        }
        E found = value.isTextual() ? words.get(value.textValue()) : null;
        if (found == null) {
            String near = value.isTextual() ? value.textValue() : value.asText();
            notes.fault(
                    where,
                    shown(value),
                    "one of " + String.join(", ", words.keySet()),
                    NearKey.maybe(near, words.keySet()));
        }
        return found;
    }

    /** As it is told in a fault. */
    static String shown(JsonNode value) {
        return value.isMissingNode() ? "nothing" : value.toString();
    }

    private static String withUnit(String number, String unit) {
        return unit.isEmpty() ? number : number + " " + unit;
    }
}
