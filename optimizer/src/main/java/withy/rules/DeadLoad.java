package withy.rules;

import withy.brief.Brief;

/** A fish swung aboard hangs on the knot as a dead load; common practice. */
public final class DeadLoad {
    /** Load of a fish swung aboard, of its weight. */
    static final double TIMES = 1.5;

    private DeadLoad() {}

    /** What the blank, and the leader less its knot, must bear, kg; 0 where fish are not lifted. */
    public static double ofKg(Brief brief) {
        return brief.landing() == Brief.Landing.LIFTED ? brief.largestFishKg() * TIMES : 0;
    }

    /** Breaking strength the leader needs (or the line where there is none), kg; 0 where fish are not lifted. */
    public static double leaderNeedsKg(Brief brief) {
        return ofKg(brief) / LineClass.KNOT_SHARE;
    }
}
