package withy.brief;

import withy.brief.Brief.Reel;
import withy.catalog.RodType;

/**
 * Reels by size class. Foot, mass with line and lip are the middles of the trade table's ranges (from memory), thickness and width too; stem
 * heights are ASSUMED. Sizes between two rows take the nearer row.
 */
public enum ReelTable {
    S1000(500, 1000, 49.5, 2.6, 9.5, 175, 40, 52),
    S2500(2000, 2500, 55, 2.8, 10.5, 225, 45, 57),
    S4000(3000, 4000, 60.5, 3.0, 11, 275, 49.5, 62),
    S6000(5000, 6000, 66.5, 3.4, 12, 415, 57, 72),
    S10000(8000, 10_000, 73, 3.9, 12.5, 610, 67, 82),
    S14000(14_000, 30_000, 81, 4.2, 13, 800, 78.5, 90),
    /** Low-profile casting reels, by sizes up to 250; the lip is the spool's width. */
    LOW_PROFILE(50, 250, 56, 2.8, 10.5, 190, 25, 22),
    /** Round casting reels, by sizes above 250. */
    ROUND(300, 800, 60, 3.2, 11.5, 315, 32, 32);

    /** Centre of mass ahead of the foot's centre, mm: spinning reels [from memory]; casting reels sit over it. */
    private static final double SPINNING_OFFSET_MM = 15;

    private final int from;
    private final int to;
    private final double footMm;
    private final double thickMm;
    private final double wideMm;
    private final double massG;
    private final double lipMm;
    private final double stemMm;

    ReelTable(
            int from, int to, double footMm, double thickMm, double wideMm, double massG, double lipMm, double stemMm) {
        this.from = from;
        this.to = to;
        this.footMm = footMm;
        this.thickMm = thickMm;
        this.wideMm = wideMm;
        this.massG = massG;
        this.lipMm = lipMm;
        this.stemMm = stemMm;
    }

    /** The least size reels of a rod type are sold in; less than that is something else, such as a weight. */
    public static int leastSize(RodType type) {
        int least = Integer.MAX_VALUE;
        for (ReelTable row : values()) {
            least = row.casting() == type.spinningReel() ? least : Math.min(least, row.from);
        }
        return least;
    }

    /** Row nearest to a size told by the customer. */
    public static ReelTable of(RodType type, int size) {
        ReelTable best = type.spinningReel() ? S1000 : LOW_PROFILE;
        for (ReelTable row : values()) {
            if (row.casting() != type.spinningReel() && row.distance(size) < best.distance(size)) {
                best = row;
            }
        }
        return best;
    }

    /** Size usual with a lure [common practice]. */
    static int usualSize(RodType type, double usualLureG, double heaviestLureG) {
        return switch (type) {
            case SURF_SPINNING -> heaviestLureG > 160 ? 14_000 : 10_000;
            case CASTING -> heaviestLureG > 60 ? 300 : 150;
            case SPINNING -> usualLureG <= 4 ? 1000 : usualLureG <= 16 ? 2500 : usualLureG <= 30 ? 4000 : 6000;
        };
    }

    /** A reel of this row in full. */
    public Reel reel(int size) {
        return new Reel(size, footMm, thickMm, wideMm, massG, casting() ? 0 : SPINNING_OFFSET_MM, lipMm, stemMm);
    }

    private boolean casting() {
        return this == LOW_PROFILE || this == ROUND;
    }

    private int distance(int size) {
        return size < from ? from - size : Math.max(0, size - to);
    }
}
