package withy.search;

import java.util.Arrays;
import java.util.List;
import withy.catalog.TipTop;
import withy.rod.Fitter;
import withy.rod.Share;

/** What glues and dresses the tip-tops of the trains of one placing costs at least, thread by thread: the same for all with a tube so deep. */
final class TubeDressings {
    private final double[] depths;
    private final Share[][] shares;
    /** Of each tip-top of each train, which depth. */
    private final int[][] depthOf;

    /**
     * @param fitters one a thread
     * @param trains the trains with any of them
     */
    TubeDressings(List<Fitter> fitters, List<TrainGraph.Train> trains) {
        double[][] each = trains.stream().map(train -> depths(train.tips)).toArray(double[][]::new);
        this.depths = Arrays.stream(each)
                .flatMapToDouble(Arrays::stream)
                .distinct()
                .sorted()
                .toArray();
        this.depthOf = new int[each.length][];
        for (int n = 0; n < each.length; n++) {
            depthOf[n] = Arrays.stream(each[n])
                    .mapToInt(depth -> Arrays.binarySearch(depths, depth))
                    .toArray();
        }
        this.shares = new Share[fitters.size()][depths.length];
        for (int t = 0; t < shares.length; t++) {
            for (int d = 0; d < depths.length; d++) {
                shares[t][d] = fitters.get(t).tubeDressing(depths[d]);
            }
        }
    }

    private static double[] depths(TrainTips tips) {
        double[] depths = new double[tips.size()];
        for (int t = 0; t < depths.length; t++) {
            TipTop tip = tips.tipTop(t);
            depths[t] = tip.tubeDepthMm();
        }
        return depths;
    }

    /** Cost of each thread on a tube of each depth, less what rounding by itself can add, under prices that make weight a burden. */
    long[][] costs(Linear k) {
        long rounding = 2 * (k.perMgMm() + k.perMgMm2());
        long[][] costs = new long[shares.length][depths.length];
        for (int t = 0; t < costs.length; t++) {
            for (int d = 0; d < depths.length; d++) {
                costs[t][d] = k.of(shares[t][d]) - rounding;
            }
        }
        return costs;
    }

    /** The least of any thread. */
    static long[] least(long[][] costs) {
        long[] least = costs[0].clone();
        for (long[] of : costs) {
            for (int d = 0; d < least.length; d++) {
                least[d] = Math.min(least[d], of[d]);
            }
        }
        return least;
    }

    /** The tip-tops of a train with their dressing. */
    long[] dressed(int train, long[] bare, long[] costs) {
        long[] dressed = new long[bare.length];
        for (int t = 0; t < bare.length; t++) {
            dressed[t] = TrainGraph.none(bare[t]) ? bare[t] : bare[t] + costs[depthOf[train][t]];
        }
        return dressed;
    }
}
