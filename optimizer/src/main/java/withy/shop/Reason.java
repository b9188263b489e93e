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

    /** The word in the ledger. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }
}
