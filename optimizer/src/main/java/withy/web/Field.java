package withy.web;

import java.util.List;

/**
 * One thing a customer can say.
 *
 * @param path where it stands in a brief, {@code lure.usual}; also its name in the form
 * @param kind what it is
 * @param unit unit of its number, where it may stand as a bare one: g, mm, kg; else empty
 * @param choices what may be chosen; empty where anything may be typed
 */
record Field(String path, Kind kind, String unit, List<String> choices) {
    Field {
        choices = List.copyOf(choices);
    }

    /** What a field is. */
    enum Kind {
        /** Plain words. */
        TEXT,
        /** A number with its unit. */
        AMOUNT,
        /** One number, or a least, a most, or both, with their unit. */
        SPAN,
        /** A whole number. */
        WHOLE,
        /** One of a few. */
        CHOICE,
        /** One of a few, wished or wanted by all means. */
        WISH,
        /** Some of a few. */
        SOME,
        /** Thickness or strength of a line. */
        LINE,
        /** Thickness or strength of a leader, or none. */
        LEADER,
        /** Money. */
        BUDGET,
        /** How much something counts. */
        WEIGHT
    }

    static Field text(String path) {
        return new Field(path, Kind.TEXT, "", List.of());
    }

    static Field amount(String path, String unit) {
        return new Field(path, Kind.AMOUNT, unit, List.of());
    }

    static Field span(String path, String unit) {
        return new Field(path, Kind.SPAN, unit, List.of());
    }

    static Field of(Kind kind, String path, String... choices) {
        return new Field(path, kind, "", List.of(choices));
    }

    /** The key of the last part of the path. */
    String key() {
        return path.substring(path.indexOf('.') + 1);
    }

    /** The key of the object it stands in, or empty. */
    String parent() {
        int dot = path.indexOf('.');
        return dot < 0 ? "" : path.substring(0, dot);
    }

    /** The key under which its bare number stands. */
    String twin() {
        return switch (unit) {
            case "g" -> key() + "G";
            case "mm" -> key() + "Mm";
            case "kg" -> key() + "Kg";
            default -> key();
        };
    }
}
