package withy.search;

import java.util.Arrays;

/** Of rings that the same may follow one and the same row is kept, so that what follows them is looked at once. */
final class EqualRows {
    private EqualRows() {}

    /** Puts the first of equal rows in the place of the others. */
    static void share(boolean[][] rows) {
        for (int i = 1; i < rows.length; i++) {
            for (int before = i - 1; before >= 0; before--) {
                if (Arrays.equals(rows[i], rows[before])) {
                    rows[i] = rows[before];
                    break;
                }
            }
        }
    }
}
