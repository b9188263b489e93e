package withy.brief;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.MissingNode;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.TreeSet;
import java.util.function.BiFunction;
import org.jspecify.annotations.Nullable;
import withy.brief.BriefFault.Notation;

/**
 * One JSON object of a brief, read key by key. Every value asked for comes back, or null where it is left out or faulty; faults go to the notes.
 * Keys nobody asked for are faults, so a slip of the pen never passes as a default.
 */
final class Fields {
    private final JsonNode node;
    private final String path;
    private final Notes notes;
    private final Values values;
    private final TreeSet<String> asked = new TreeSet<>();

    Fields(JsonNode node, String path, Notes notes) {
        this.path = path;
        this.notes = notes;
        this.values = new Values(notes);
        if (node.isObject() || node.isMissingNode()) {
            this.node = node;
        } else {
            this.node = MissingNode.getInstance();
            notes.fault(
                    path,
                    Values.shown(node),
                    "an object in braces",
                    "Maybe the value belongs to a key inside it.",
                    Notation.HINT);
        }
    }

    Notes notes() {
        return notes;
    }

    /** True where the object itself is in the brief. */
    boolean present() {
        return node.isObject();
    }

    /** True where the key is there, whatever stands in it. */
    boolean has(String key) {
        return !take(key).isMissingNode();
    }

    boolean isNull(String key) {
        return take(key).isNull();
    }

    /** The object under a key; where it is left out, an empty one. */
    Fields object(String key) {
        return new Fields(take(key), at(key), notes);
    }

    /** An empty object in the place of a null. */
    Fields none(String key) {
        return new Fields(MissingNode.getInstance(), at(key), notes);
    }

    /** Faults for every key that was not asked for. */
    void finish() {
        for (Iterator<String> keys = node.fieldNames(); keys.hasNext(); ) {
            String key = keys.next();
            if (!asked.contains(key)) {
                notes.fault(
                        at(key),
                        "unknown key \"" + key + "\"",
                        "one of " + String.join(", ", asked),
                        NearKey.maybe(key, asked));
            }
        }
    }

    /** A faulty value under a key, told from outside. */
    void fault(String key, String plain, String maybe, Notation... notation) {
        notes.fault(at(key), Values.shown(take(key)), plain, maybe, notation);
    }

    @Nullable
    String text(String key, int longest) {
        JsonNode value = take(key);
        if (value.isMissingNode()) {
            return null;
        }
        if (!value.isTextual() || value.textValue().length() > longest) {
            fault(
                    key,
                    "text of at most " + longest + " characters",
                    "Maybe put it in quotes, and shorten it.",
                    Notation.HINT);
            return null;
        }
        if (value.textValue().chars().anyMatch(c -> Character.isISOControl(c) && c != '\n' && c != '\t')) {
            fault(key, "text without control characters", "Maybe it was pasted from elsewhere: type it anew.");
            return null;
        }
        return value.textValue().strip();
    }

    @Nullable
    Boolean flag(String key) {
        JsonNode value = take(key);
        if (value.isMissingNode()) {
            return null;
        }
        if (!value.isBoolean()) {
            fault(key, "true or false", "Maybe write it without quotes.", Notation.HINT);
            return null;
        }
        return value.booleanValue();
    }

    @Nullable
    Integer whole(String key, int min, int max) {
        Double number = number(key, new Bounds(min, max), "");
        if (number == null) {
            return null;
        }
        if (number != Math.rint(number)) {
            fault(key, "a whole number, " + min + " to " + max, "Maybe round it.");
            return null;
        }
        return number.intValue();
    }

    /** A JSON number within bounds. */
    @Nullable
    Double number(String key, Bounds bounds, String unit) {
        JsonNode value = take(key);
        return value.isMissingNode() ? null : values.number(value, at(key), bounds, unit);
    }

    /** A quantity under {@code keyMm} as a number, or under {@code key} as text. */
    @Nullable
    Double quantity(String key, Quantity kind, Bounds bounds) {
        JsonNode number = take(key + kind.suffix());
        JsonNode text = take(key);
        if (bothTold(key, kind)) {
            return null;
        }
        if (!number.isMissingNode()) {
            return values.figure(number, at(key + kind.suffix()), kind, bounds);
        }
        return text.isMissingNode() ? null : values.typed(text, at(key), kind, bounds);
    }

    private boolean bothTold(String key, Quantity kind) {
        boolean both = has(key + kind.suffix()) && has(key);
        if (both) {
            fault(key, "either " + key + kind.suffix() + " or " + key, "Maybe drop one of the two.");
        }
        return both;
    }

    /** A range: {@code keyMm} or {@code key}, each one figure or an object of {@code min} and {@code max}. */
    Span span(String key, Quantity kind, Bounds bounds) {
        String numberKey = key + kind.suffix();
        JsonNode number = take(numberKey);
        JsonNode text = take(key);
        if (bothTold(key, kind)) {
            return Span.UNTOLD;
        }
        if (number.isObject() || text.isObject()) {
            boolean numeric = number.isObject();
            Fields ends = object(numeric ? numberKey : key);
            Double min = ends.end("min", numeric, kind, bounds);
            Double max = ends.end("max", numeric, kind, bounds);
            ends.finish();
            if (min != null && max != null && min > max) {
                ends.fault(
                        "min",
                        "at most max, " + Bounds.plain(max) + " " + kind.symbol(),
                        "Maybe min and max are swapped.");
            }
            return new Span(min, max, false);
        }
        JsonNode told = number.isMissingNode() ? text : number;
        RangeTyped both = told.isTextual() ? RangeTyped.of(told.textValue(), kind) : null;
        if (both != null) {
            fault(
                    number.isMissingNode() ? key : numberKey,
                    "one figure",
                    "Maybe write " + both.asWritten(key) + ".",
                    Notation.RANGE,
                    Notation.HINT);
            return Span.UNTOLD;
        }
        Double one = quantity(key, kind, bounds);
        return one == null ? Span.UNTOLD : new Span(one, one, true);
    }

    private @Nullable Double end(String key, boolean numeric, Quantity kind, Bounds bounds) {
        JsonNode value = take(key);
        if (value.isMissingNode()) {
            return null;
        }
        return numeric ? values.figure(value, at(key), kind, bounds) : values.typed(value, at(key), kind, bounds);
    }

    /** One of the constants of an enum, written in lower camel case. */
    <E extends Enum<E>> @Nullable E choice(String key, Class<E> type) {
        JsonNode value = take(key);
        return value.isMissingNode() ? null : values.choice(value, at(key), type);
    }

    /** A list; an item that can't be read is a fault and left out. */
    <T> List<T> list(String key, int most, BiFunction<JsonNode, String, @Nullable T> item) {
        JsonNode value = take(key);
        List<T> items = new ArrayList<>();
        if (value.isMissingNode()) {
            return items;
        }
        if (!value.isArray() || value.size() > most) {
            fault(
                    key,
                    "a list in square brackets of at most " + most,
                    "Maybe put the one value in square brackets.",
                    Notation.HINT);
            return items;
        }
        for (int i = 0; i < value.size(); i++) {
            T read = item.apply(value.get(i), at(key) + "[" + i + "]");
            if (read != null) {
                items.add(read);
            }
        }
        return items;
    }

    <E extends Enum<E>> List<E> choices(String key, Class<E> type) {
        return list(key, 50, (value, where) -> values.choice(value, where, type));
    }

    /** The raw value, for the few keys of more than one form. */
    JsonNode take(String key) {
        asked.add(key);
        notes.asked(path.replaceAll("\\[\\d+]", "[]"), key);
        JsonNode value = node.get(key);
        return value == null ? MissingNode.getInstance() : value;
    }

    String at(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }
}
