package withy.brief;

import withy.catalog.RodType;

/** Reel foot centre to butt end by kind of rod, mm [common practice, trade table]. */
enum ReachTable {
    ULTRALIGHT(180, 230, "an ultralight rod"),
    LIGHT(210, 260, "a light spinning rod"),
    GENERAL(230, 290, "a single-handed lure rod"),
    TWO_HANDED(320, 420, "a two-handed lure rod"),
    CASTING(220, 280, "a single-handed casting rod"),
    CASTING_TWO_HANDED(300, 400, "a two-handed casting rod"),
    KAYAK(220, 260, "a kayak rod"),
    SURF(600, 750, "a surf rod");

    private final double minMm;
    private final double maxMm;
    private final String word;

    ReachTable(double minMm, double maxMm, String word) {
        this.minMm = minMm;
        this.maxMm = maxMm;
        this.word = word;
    }

    static ReachTable of(RodType type, boolean kayak, double heaviestLureG, boolean twoHanded) {
        if (type == RodType.SURF_SPINNING) {
            return SURF;
        }
        if (type == RodType.CASTING) {
            return twoHanded ? CASTING_TWO_HANDED : CASTING;
        }
        if (twoHanded) {
            return TWO_HANDED;
        }
        if (kayak) {
            return KAYAK;
        }
        return heaviestLureG <= 7 ? ULTRALIGHT : heaviestLureG <= 14 ? LIGHT : GENERAL;
    }

    double minMm() {
        return minMm;
    }

    double maxMm() {
        return maxMm;
    }

    /** The kind of rod in words. */
    String word() {
        return word;
    }
}
