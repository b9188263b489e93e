package withy.catalog;

import java.util.Locale;

/** What a part is mainly made of; written in files in lower case with hyphens. */
public enum Material {
    CARBON,
    GLASS,
    COMPOSITE,
    CORK,
    RUBBER_CORK,
    EVA,
    WOOD,
    PLASTIC,
    CARBON_FILLED,
    ALUMINIUM,
    NICKEL_SILVER,
    STAINLESS,
    TITANIUM,
    BRASS,
    RUBBER,
    FOAM,
    GRAPHITE_FOAM,
    TAPE,
    NYLON,
    POLYESTER,
    SILK,
    METALLIC,
    EPOXY,
    URETHANE,
    PAPER;

    /** The word used in files. */
    public String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
