package withy.rod;

import java.util.SortedMap;
import java.util.TreeMap;

/**
 * How far the balance point may be off because pieces differ in weight: the first order of b = Σ m·x / M, so Δb = Σ Δm·(x − b) / M, with
 * the tolerances of the weight. Pieces of one model share a catalogue error and add first, models by the root of the sum of squares, as
 * for the weight. Where the mass lies inside a part is taken as known.
 */
public final class BalanceTolerance {
    private BalanceTolerance() {}

    /** ± of the bare rod's balance point, mm. */
    public static double bareMm(Rod rod) {
        return mm(
                rod,
                rod.total().massMg(),
                (double) rod.total().momentMgMm() / rod.total().massMg());
    }

    /** ± of the balance point with the brief's reel on, mm; the reel's weight is taken as told. */
    public static double withReelMm(Rod rod) {
        return mm(rod, rod.balance().massMg(), rod.balance().pointMm());
    }

    /**
     * @param allMg what balances, mg
     * @param pointMm where, mm ahead of the reel foot
     */
    private static double mm(Rod rod, long allMg, double pointMm) {
        SortedMap<String, Double> byModel = new TreeMap<>();
        double workMg = 0;
        double workMoment = 0;
        for (Placed placed : rod.placed().values()) {
            Share share = rod.shares().getOrDefault(placed.station(), Share.NONE);
            if (share.massMg() > 0) {
                double arm = (double) share.momentMgMm() / share.massMg() - pointMm;
                byModel.merge(placed.part().id(), FiguresOf.pieceG(rod, placed) * arm, Double::sum);
                workMg += share.massMg() - share.partMg();
                workMoment += (share.massMg() - share.partMg()) * arm;
            }
        }
        double work = workMg == 0 ? 0 : rod.setting().catalog().rates().workmanshipToleranceG() * workMoment / workMg;
        double squares = work * work;
        for (double moment : byModel.values()) {
            squares += moment * moment;
        }
        return Math.sqrt(squares) * 1000 / allMg;
    }
}
