package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.catalog.TipTop;
import withy.rod.Fitter;
import withy.rod.Setting;

/** The tip-tops that may end one group's train. */
final class TrainTips {
    private static final int[] NONE = {};

    private final GuideGroup group;
    private final Setting setting;
    private final Fitter fitter;
    /** Of each its index in the group. */
    private final int[] index;

    private @Nullable List<Option<TipTop>> options;

    /**
     * @param ends tip-tops of any of these may end the train
     */
    TrainTips(GuideGroup group, Setting setting, Fitter fitter, Stations stations, List<Ends.Group> ends) {
        this.group = group;
        this.setting = setting;
        this.fitter = fitter;
        this.index = ends.isEmpty() ? NONE : group.ending(setting, stations, ends);
    }

    int size() {
        return index.length;
    }

    TipTop tipTop(int tip) {
        return group.tipTops[index[tip]];
    }

    /** How deep its tube is ({@link GuideTable#tubeDepths()}). */
    int depth(int tip) {
        return group.tipDepth[index[tip]];
    }

    int ring(int tip) {
        return group.tipRing[index[tip]];
    }

    /** Dressed with the thread of the train. */
    Option<TipTop> get(int tip) {
        List<Option<TipTop>> known = options;
        if (known == null) {
            known = new ArrayList<>();
            double end = setting.blank().lengthMm();
            long[] style = group.tipStyles(setting);
            long[] missed = group.tipMissed(setting.guideCount());
            for (int i : index) {
                TipTop of = group.tipTops[i];
                known.add(new Option<>(of, end, of.addedMm(), Sums.of(fitter.tipTop(of)), style[i], missed[i]));
            }
            options = known;
        }
        return known.get(tip);
    }

    /** Cost of each; {@link TrainGraph#NONE} where one is of too low a class. */
    long[] costs(Linear k, int leastClass) {
        long[] costs = new long[index.length];
        for (int t = 0; t < costs.length; t++) {
            costs[t] = isOf(t, leastClass) ? get(t).cost(k) : TrainGraph.NONE;
        }
        return costs;
    }

    /** The same without what glues and dresses them. */
    long[] bare(Linear k, int leastClass) {
        double end = setting.blank().lengthMm();
        long[] style = group.tipStyles(setting);
        long[] missed = group.tipMissed(setting.guideCount());
        long[] costs = new long[index.length];
        for (int t = 0; t < costs.length; t++) {
            int i = index[t];
            long mg = group.tipTops[i].massMg();
            costs[t] = isOf(t, leastClass)
                    ? k.perMg() * mg
                            + k.perMgMm() * fitter.momentMgMm(mg, end)
                            + k.perMgMm2() * fitter.inertiaMgMm2(mg, end)
                            + k.perMilli() * group.tipCostMilli[i]
                            - k.perStyleCenti() * style[i]
                            + k.perMilliStep() * missed[i]
                    : TrainGraph.NONE;
        }
        return costs;
    }

    private boolean isOf(int tip, int leastClass) {
        return tipTop(tip).facts().durabilityClass() >= leastClass;
    }

    /** The cheapest of each ring. */
    long[] byRing(long[] costs) {
        long[] least = new long[group.tipRings];
        Arrays.fill(least, TrainGraph.NONE);
        for (int t = 0; t < costs.length; t++) {
            least[ring(t)] = Math.min(least[ring(t)], costs[t]);
        }
        return least;
    }
}
