package withy.search;

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

    private @Nullable Option<TipTop> @Nullable [] options;

    /**
     * @param ends tip-tops of any of these may end the train
     */
    TrainTips(GuideGroup group, Setting setting, Fitter fitter, Stations stations, List<Ends.Group> ends) {
        this.group = group;
        this.setting = setting;
        this.fitter = fitter;
        this.index = ends.isEmpty() ? NONE : group.tips.ending(setting, stations, ends);
    }

    int size() {
        return index.length;
    }

    TipTop tipTop(int tip) {
        return group.tips.tops[index[tip]];
    }

    /** How deep its tube is ({@link GuideTable#tubeDepths()}). */
    int depth(int tip) {
        return group.tips.depth[index[tip]];
    }

    int ring(int tip) {
        return group.tips.ring[index[tip]];
    }

    /** Dressed with the thread of the train. */
    Option<TipTop> get(int tip) {
        @Nullable Option<TipTop>[] known = options;
        if (known == null) {
            known = none(index.length);
            options = known;
        }
        Option<TipTop> option = known[tip];
        if (option == null) {
            int i = index[tip];
            TipTop of = group.tips.tops[i];
            double end = setting.blank().lengthMm();
            long style = group.tips.styles(setting)[i];
            long missed = group.tips.missed(setting.guideCount())[i];
            option = new Option<>(of, end, of.addedMm(), Sums.of(fitter.tipTop(of)), style, missed);
            known[tip] = option;
        }
        return option;
    }

    @SuppressWarnings("unchecked") // an array of a generic type
    private static @Nullable Option<TipTop>[] none(int length) {
        return new Option[length];
    }

    /** Cost of each; {@link TrainGraph#NONE} where one is of too low a class. */
    long[] costs(Linear k, int leastClass) {
        long[] costs = new long[index.length];
        for (int t = 0; t < costs.length; t++) {
            costs[t] = isOf(t, leastClass) ? get(t).cost(k) : TrainGraph.NONE;
        }
        return costs;
    }

    /**
     * The cheapest of each ring; {@link TrainGraph#NONE} where there is none.
     *
     * @param floors numbers the tip-tops cost no less than; only where one is below the others of its ring is the tip-top looked at
     */
    long[] cheapest(Linear k, long[] floors) {
        long[] least = byRing(floors);
        long[] cheapest = new long[group.tips.rings];
        Arrays.fill(cheapest, TrainGraph.NONE);
        for (int t = 0; t < floors.length; t++) {
            if (floors[t] == least[ring(t)] && !TrainGraph.none(floors[t])) {
                cheapest[ring(t)] = Math.min(cheapest[ring(t)], get(t).cost(k));
            }
        }
        for (int t = 0; t < floors.length; t++) {
            if (floors[t] < cheapest[ring(t)] && floors[t] > least[ring(t)]) {
                cheapest[ring(t)] = Math.min(cheapest[ring(t)], get(t).cost(k));
            }
        }
        return cheapest;
    }

    /** The same without what glues and dresses them. */
    long[] bare(Linear k, int leastClass) {
        double end = setting.blank().lengthMm();
        long[] style = group.tips.styles(setting);
        long[] missed = group.tips.missed(setting.guideCount());
        long[] costs = new long[index.length];
        for (int t = 0; t < costs.length; t++) {
            int i = index[t];
            long mg = group.tips.tops[i].massMg();
            costs[t] = isOf(t, leastClass)
                    ? k.perMg() * mg
                            + k.perMgMm() * fitter.momentMgMm(mg, end)
                            + k.perMgMm2() * fitter.inertiaMgMm2(mg, end)
                            + k.perMilli() * group.tips.costMilli[i]
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
        long[] least = new long[group.tips.rings];
        Arrays.fill(least, TrainGraph.NONE);
        for (int t = 0; t < costs.length; t++) {
            least[ring(t)] = Math.min(least[ring(t)], costs[t]);
        }
        return least;
    }
}
