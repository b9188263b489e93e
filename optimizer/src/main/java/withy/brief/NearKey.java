package withy.brief;

import java.util.Collection;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import withy.catalog.NearWord;

/** Which known key or word a mistyped one was most likely meant to be. */
final class NearKey {
    private static final int SHORTEST_START = 3;

    private NearKey() {}

    /** A line that starts "Maybe ": the nearest known word, capitals aside, or that none is near. */
    static String maybe(String word, Collection<String> known) {
        Map<String, String> lower = new TreeMap<>();
        for (String candidate : known) {
            lower.put(candidate.toLowerCase(Locale.ROOT), candidate);
        }
        String typed = word.toLowerCase(Locale.ROOT);
        String near = NearWord.to(typed, lower.keySet());
        String best = near.isEmpty() ? sameStart(typed, lower) : lower.get(near);
        return best == null || best.isEmpty()
                ? "Maybe it is a slip, or belongs elsewhere: no known word is near it."
                : "Maybe \"" + best + "\" was meant.";
    }

    private static String sameStart(String typed, Map<String, String> lower) {
        for (Map.Entry<String, String> known : lower.entrySet()) {
            int common = Math.min(typed.length(), known.getKey().length());
            if (common >= SHORTEST_START && typed.regionMatches(0, known.getKey(), 0, common)) {
                return known.getValue();
            }
        }
        return "";
    }
}
