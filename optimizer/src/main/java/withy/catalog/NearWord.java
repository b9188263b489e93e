package withy.catalog;

import java.util.Collection;

/** Finds the known word a mistyped one was most likely meant to be (restricted Damerau–Levenshtein distance). */
public final class NearWord {
    private NearWord() {}

    /** The nearest of the known words, or empty where none is near: at most one mistake in three letters. */
    public static String to(String word, Collection<String> known) {
        String best = "";
        int least = Math.max(1, word.length() / 3) + 1;
        for (String candidate : known) {
            int distance = distance(word, candidate);
            if (distance < least) {
                least = distance;
                best = candidate;
            }
        }
        return best;
    }

    static int distance(String a, String b) {
        int[][] table = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            table[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            table[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int cost = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                int least = Math.min(Math.min(table[i - 1][j], table[i][j - 1]) + 1, table[i - 1][j - 1] + cost);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    least = Math.min(least, table[i - 2][j - 2] + 1);
                }
                table[i][j] = least;
            }
        }
        return table[a.length()][b.length()];
    }
}
