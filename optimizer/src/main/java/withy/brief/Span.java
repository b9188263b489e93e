package withy.brief;

import org.jspecify.annotations.Nullable;

/**
 * A range as told: both ends, one end, or one figure alone.
 *
 * @param min least, or null where not told
 * @param max most, or null where not told
 * @param single true where one figure was told, which then is both ends
 */
record Span(@Nullable Double min, @Nullable Double max, boolean single) {
    static final Span UNTOLD = new Span(null, null, false);

    boolean told() {
        return min != null || max != null;
    }
}
