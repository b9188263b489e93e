package withy.search;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.rod.Fitter;

/** What glues and dresses the tip-tops of the trains of one placing costs at least, thread by thread: the same for all with a tube so deep. */
final class TubeDressings {
    private final List<TrainGraph.Train> trains;
    /** By thread and depth ({@link GuideTable#tubeDepths()}); null where no tip-top of the trains is so deep. */
    private final @Nullable Sums[][] shares;

    /**
     * @param fitters one a thread
     * @param depthsMm how deep tubes are ({@link GuideTable#tubeDepths()}), mm
     * @param trains the trains with any of them
     */
    TubeDressings(List<Fitter> fitters, List<Double> depthsMm, List<TrainGraph.Train> trains) {
        this.trains = trains;
        this.shares = new Sums[fitters.size()][depthsMm.size()];
        for (TrainGraph.Train train : trains) {
            for (int tip = 0; tip < train.tips.size(); tip++) {
                int depth = train.tips.depth(tip);
                for (int t = 0; t < shares.length && shares[t][depth] == null; t++) {
                    shares[t][depth] = Sums.of(fitters.get(t).tubeDressing(depthsMm.get(depth)));
                }
            }
        }
    }

    /** Cost of each thread on a tube of each depth, less what rounding by itself can add, under prices that make weight a burden. */
    long[][] costs(Linear k) {
        long rounding = 2 * (k.perMgMm() + k.perMgMm2());
        long[][] costs = new long[shares.length][];
        for (int t = 0; t < costs.length; t++) {
            costs[t] = new long[shares[t].length];
            for (int d = 0; d < costs[t].length; d++) {
                Sums share = shares[t][d];
                costs[t][d] = share == null ? TrainGraph.NONE : k.of(share) - rounding;
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
        TrainTips tips = trains.get(train).tips;
        long[] dressed = new long[bare.length];
        for (int t = 0; t < bare.length; t++) {
            dressed[t] = TrainGraph.none(bare[t]) ? bare[t] : bare[t] + costs[tips.depth(t)];
        }
        return dressed;
    }
}
