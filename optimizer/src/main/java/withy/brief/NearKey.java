package withy.brief;

import java.util.Collection;
import java.util.Locale;

/** Which known word a mistyped one was most likely meant to be. */
final class NearKey {
    private NearKey() {}

    /** A line that starts "Maybe ": the nearest known word, or that none is near. */
    static String maybe(String word, Collection<String> known) {
        String best = "";
        int least = 1 + Math.max(1, word.length() / 3);
        for (String candidate : known) {
            int distance = distance(word.toLowerCase(Locale.ROOT), candidate.toLowerCase(Locale.ROOT));
            if (distance < least || startsWith(candidate, word) && best.isEmpty()) {
                least = Math.min(least, distance);
                best = candidate;
            }
        }
        return best.isEmpty()
                ? "Maybe it is a slip, or belongs elsewhere: no known word is near it."
                : "Maybe \"" + best + "\" was meant.";
    }

    private static boolean startsWith(String candidate, String word) {
        return word.length() >= 3 && candidate.startsWith(word)
                || candidate.length() >= 3 && word.startsWith(candidate);
    }

    /** Letters to change, add or drop (Levenshtein 1966). */
    private static int distance(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int change = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(change, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
