package withy.web;

import java.util.Locale;

/**
 * What is looked for by a few words: each must stand somewhere in the name or the id, in any order and whatever its capitals.
 *
 * @param query as typed; empty finds everything
 */
record ByWords(String query) {
    boolean in(String name, String id) {
        String text = (name + " " + id).toLowerCase(Locale.ROOT);
        for (String word : query.strip().toLowerCase(Locale.ROOT).split("\\s+", -1)) {
            if (!text.contains(word)) {
                return false;
            }
        }
        return true;
    }

    /** True where the name holds them side by side. */
    boolean asTyped(String name) {
        return name.toLowerCase(Locale.ROOT).contains(query.strip().toLowerCase(Locale.ROOT));
    }
}
