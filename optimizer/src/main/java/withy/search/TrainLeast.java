package withy.search;

import java.util.Arrays;
import java.util.List;
import withy.rod.Fitter;
import withy.rod.Setting;

/**
 * A number no guide train of one placing costs less than, thread by thread, under prices that make weight a burden. Wraps cost by the length of their
 * foot: a straight line between two lengths, each share being so but for its rounding. Guides that another beats in everything are left out.
 */
final class TrainLeast {
    private static final long NONE = TrainGraph.NONE;

    /** Feet looked at together, so that rounding counts for little. */
    private static final int FEET = 10;

    private static final double SHORTEST_MM = 0;
    private static final double LONGEST_MM = 100;

    private final Setting setting;
    private final List<Fitter> fitters;
    private final TrainGraph graph;
    private final Sums[][] shortest;
    private final Sums[][] longest;
    private final int[][][] worthIt;
    private final TubeDressings tubes;

    /**
     * @param setting where the guides stand
     * @param fitters one a thread
     * @param graph the trains with some thread
     */
    TrainLeast(Setting setting, List<Fitter> fitters, TrainGraph graph) {
        this.setting = setting;
        this.fitters = fitters;
        this.graph = graph;
        this.tubes = graph.tubes(fitters);
        int count = setting.guideCount();
        this.shortest = new Sums[fitters.size()][count];
        this.longest = new Sums[fitters.size()][count];
        for (int t = 0; t < fitters.size(); t++) {
            for (int i = 0; i < count; i++) {
                shortest[t][i] = Sums.of(fitters.get(t).guideWraps(FEET, SHORTEST_MM, i + 1));
                longest[t][i] = Sums.of(fitters.get(t).guideWraps(FEET, LONGEST_MM, i + 1));
            }
        }
        List<TrainGraph.Train> trains = graph.trains();
        this.worthIt = new int[trains.size()][][];
        for (int n = 0; n < worthIt.length; n++) {
            worthIt[n] = trains.get(n).worthIt();
        }
    }

    /** The number of each thread; {@link TrainGraph#NONE} where no train is of the class. */
    long[] of(Linear k, int leastClass) {
        long[] least = new long[fitters.size()];
        Arrays.fill(least, NONE);
        long[][][] wraps = wraps(k);
        long[][] fewest = fewest(wraps);
        long[][] tubeCosts = tubes.costs(k);
        long[] fewestOnTube = TubeDressings.least(tubeCosts);
        BareTrains bare = new BareTrains(graph, k, leastClass);
        long[] floors = new long[worthIt.length];
        for (int n = 0; n < floors.length; n++) {
            floors[n] = floor(n, tubes.dressed(n, bare.tips(n), fewestOnTube), bare.of(n), fewest);
        }
        Ranked groups = new Ranked(floors);
        for (int r = 0; groups.has(r); r++) {
            int n = groups.at(r);
            for (int t = 0; t < least.length; t++) {
                if (floors[n] < least[t]) {
                    long[] dressed = tubes.dressed(n, bare.tips(n), tubeCosts[t]);
                    least[t] = Math.min(least[t], through(n, dressed, bare.of(n), wraps[t]));
                }
            }
        }
        return least;
    }

    /** The least that any thread's wraps cost. */
    private static long[][] fewest(long[][][] wraps) {
        long[][] fewest = new long[wraps[0].length][];
        for (int i = 0; i < fewest.length; i++) {
            fewest[i] = wraps[0][i].clone();
            for (long[][] of : wraps) {
                for (int s = 0; s < fewest[i].length; s++) {
                    fewest[i][s] = Math.min(fewest[i][s], of[i][s]);
                }
            }
        }
        return fewest;
    }

    /** A number no train of a group costs less than with any thread: every guide by itself the cheapest, whether or not they go together. */
    private long floor(int n, long[] tips, long[][] bare, long[][] wraps) {
        TrainGraph.Train train = graph.trains().get(n);
        long sum = TrainGraph.least(tips);
        for (int i = 0; i < bare.length && !TrainGraph.none(sum); i++) {
            long least = NONE;
            for (int j = 0; j < bare[i].length; j++) {
                if (!TrainGraph.none(bare[i][j])) {
                    least = Math.min(least, bare[i][j] + wraps[i][train.group.footShape[worthIt[n][i][j]]]);
                }
            }
            sum = TrainGraph.none(least) ? NONE : sum + least;
        }
        return sum;
    }

    /** Cost of the wraps of one foot: {@code atNought} and so much more a millimetre of foot, less what rounding can save. */
    private record Line(double atNought, double perMm, double rounding) {
        long of(GuideTable.Feet feet) {
            return (long) Math.floor(feet.count() * (atNought + perMm * feet.lengthMm()) - rounding);
        }
    }

    /** Cost of the wraps of each shape of feet ({@link TrainGraph#feet()}) at each number, thread by thread. */
    private long[][][] wraps(Linear k) {
        double rounding = 2.0 * (Math.abs(k.perMg()) + k.perMgMm() + k.perMgMm2() + k.perMilli());
        List<GuideTable.Feet> feet = graph.feet();
        long[][][] wraps = new long[fitters.size()][setting.guideCount()][feet.size()];
        for (int t = 0; t < wraps.length; t++) {
            for (int i = 0; i < wraps[t].length; i++) {
                double from = k.of(shortest[t][i]);
                double perMm = (k.of(longest[t][i]) - from) / (LONGEST_MM - SHORTEST_MM);
                Line line = new Line(from / FEET, perMm / FEET, rounding);
                for (int s = 0; s < feet.size(); s++) {
                    wraps[t][i][s] = line.of(feet.get(s));
                }
            }
        }
        return wraps;
    }

    /** From the tip back to the stripper. */
    private long through(int n, long[] tips, long[][] bare, long[][] wraps) {
        TrainGraph.Train train = graph.trains().get(n);
        GuideGroup group = train.group;
        long[] least = train.tips.byRing(tips);
        boolean[][] may = train.tipFollows();
        for (int i = bare.length - 1; i >= 0; i--) {
            long[] through = new long[group.rings];
            long[] onward = new long[group.rings];
            Arrays.fill(through, NONE);
            Arrays.fill(onward, Long.MIN_VALUE);
            boolean[] lastRow = {};
            long last = NONE;
            for (int j = 0; j < bare[i].length; j++) {
                int g = worthIt[n][i][j];
                int ring = group.ring[g];
                if (onward[ring] == Long.MIN_VALUE) {
                    last = may[ring] == lastRow ? last : TrainGraph.least(may[ring], least);
                    lastRow = may[ring];
                    onward[ring] = last;
                }
                if (!TrainGraph.none(bare[i][j]) && !TrainGraph.none(onward[ring])) {
                    long cost = bare[i][j] + wraps[i][group.footShape[g]];
                    through[ring] = Math.min(through[ring], cost + onward[ring]);
                }
            }
            least = through;
            may = i > 0 ? train.follows(i) : may;
        }
        return TrainGraph.least(least);
    }
}
