package withy.shop;

import java.util.Locale;

/** Why pieces moved. */
public enum Reason {
    COUNTED,
    ORDERED,
    RECEIVED,
    PROMISED,
    RELEASED,
    USED,
    BROKEN,
    RETURNED,
    CANCELLED;

    /** The reason of a word in the ledger. */
    static Reason of(String word) {
        return valueOf(word.toUpperCase(Locale.ROOT));
    }

    /** The word in the ledger. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
