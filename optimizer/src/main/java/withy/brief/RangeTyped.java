package withy.brief;

import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.units.UnitsFault;

/**
 * Two ends typed as one text, such as {@code 6'8" to 7'2"}: where a range was meant, it tells how one is written.
 *
 * @param min the less, as typed
 * @param max the more, as typed
 */
record RangeTyped(String min, String max) {
    private static final Pattern TWO = Pattern.compile("(.+?)\\s*(?:\\bto\\b|\\.\\.+|[-\u2013\u2014])\\s*(.+)");
    private static final Pattern BARE = Pattern.compile("[0-9.,/ ]+");
    private static final Pattern ONE_UNIT = Pattern.compile("[0-9.,/ ]+?\\s*([^0-9.,/ ]+)");

    /** The two ends of a text that is no single quantity; null where it is none or not two, the less first. */
    static @Nullable RangeTyped of(String text, Quantity kind) {
        Matcher two = TWO.matcher(text.strip());
        if (parsed(text, kind) != null || !two.matches()) {
            return null;
        }
        String max = two.group(2);
        Matcher unit = ONE_UNIT.matcher(max);
        String min = BARE.matcher(two.group(1)).matches() && unit.matches()
                ? two.group(1) + " " + unit.group(1)
                : two.group(1);
        Double least = parsed(min, kind);
        Double most = parsed(max, kind);
        return least != null && most != null && least < most ? new RangeTyped(min, max) : null;
    }

    private static @Nullable Double parsed(String text, Quantity kind) {
        try {
            return kind.parse(text);
        } catch (UnitsFault e) {
            return null;
        }
    }

    /** As it is written under a key. */
    String asWritten(String key) {
        return String.format(Locale.ROOT, "\"%s\": {\"min\": \"%s\", \"max\": \"%s\"}", key, quoted(min), quoted(max));
    }

    private static String quoted(String text) {
        return text.replace("\\", "\\\\").replace("\"", "\\\"");
    }
}
