package withy.catalog;

import java.util.Locale;

/** What a guide ring is made of; written in files in lower case with hyphens. */
public enum RingMaterial {
    SILICON_CARBIDE,
    ALUMINA,
    ZIRCONIA,
    SILICON_NITRIDE,
    STEEL,
    TITANIUM;

    /** The word used in files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
