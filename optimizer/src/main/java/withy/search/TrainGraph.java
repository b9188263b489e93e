package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.TipTop;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * The guide train of one layout: for each guide number the guides that may stand there, and from each the cheapest way on to the tip (a dynamic
 * programme from the tip back to the stripper, one a group).
 */
final class TrainGraph {
    static final long NONE = Long.MAX_VALUE / 4;

    private final Task task;
    private final Setting setting;
    private final Fitter fitter;
    private final Ends.@Nullable Group ends;
    private final int count;
    private final List<Map<Feet, Share>> wraps;
    private final List<Train> trains = new ArrayList<>();
    private long best = NONE;

    TrainGraph(
            Task task, Setting setting, Fitter fitter, Stations stations, int leastClass, Ends.@Nullable Group ends) {
        this.task = task;
        this.setting = setting;
        this.fitter = fitter;
        this.ends = ends;
        this.count = setting.guideCount();
        this.wraps = new ArrayList<>(count);
        for (int i = 0; i < count; i++) {
            wraps.add(new HashMap<>());
        }
        Refusal refusal = new Refusal();
        for (GuideTable.Group group : task.guides.groups()) {
            Train train = new Train(group, stations, leastClass, refusal);
            if (train.possible()) {
                trains.add(train);
            }
        }
    }

    /** Thread and finish on feet of one shape at one number; groups share shapes. */
    private Share wraps(int i, double[] shape) {
        return wraps.get(i)
                .computeIfAbsent(
                        new Feet((int) shape[0], shape[1]),
                        feet -> fitter.guideWraps(feet.count, feet.lengthMm, i + 1));
    }

    private record Feet(int count, double lengthMm) {}

    List<Train> trains() {
        return trains;
    }

    /** Sets the prices and works the ways on out again; the cheapest whole train, or a number no build reaches. */
    long price(Linear k) {
        best = NONE;
        for (Train train : trains) {
            best = Math.min(best, train.price(k));
        }
        return best;
    }

    /** Cost of the cheapest whole train under the prices last set. */
    long best() {
        return best;
    }

    static boolean none(long cost) {
        return cost >= NONE / 2;
    }

    /** One group's train. */
    final class Train {
        final GuideTable.Group group;
        final int[][] at;
        final List<Option<TipTop>> tips = new ArrayList<>();
        final int[] tipIndex;
        final long[][] cost;
        final long[][] toGo;
        final long[] style;
        private long best;

        Train(GuideTable.Group group, Stations stations, int leastClass, Refusal refusal) {
            this.group = group;
            this.at = new int[count][];
            this.cost = new long[count][];
            this.toGo = new long[count][];
            this.style = new long[group.guides.length];
            for (int g = 0; g < style.length; g++) {
                style[g] = task.style.part(
                        setting.blank(), setting.layout().form(), Station.guide(1), group.guides[g], count);
            }
            for (int i = 0; i < count; i++) {
                at[i] = standing(i, stations, leastClass);
                cost[i] = new long[at[i].length];
                toGo[i] = new long[at[i].length];
            }
            List<Integer> index = new ArrayList<>();
            for (int t = 0; t < group.tipTops.length; t++) {
                TipTop tip = group.tipTops[t];
                if (tip.facts().durabilityClass() >= leastClass
                        && stations.allows(Station.TIP_TOP, tip)
                        && (ends == null || ends.has(tip))) {
                    double end = setting.blank().lengthMm();
                    task.rules.onPart(setting, new Placed(Station.TIP_TOP, tip, end, tip.addedMm()), refusal.reset());
                    if (!refusal.refused()) {
                        tips.add(Work.option(
                                task, setting, Station.TIP_TOP, tip, end, tip.addedMm(), fitter.tipTop(tip)));
                        index.add(t);
                    }
                }
            }
            tipIndex = index.stream().mapToInt(Integer::intValue).toArray();
        }

        private int[] standing(int i, Stations stations, int leastClass) {
            int[] standing = group.standing(setting, i + 1, leastClass);
            Station station = Station.guide(i + 1);
            if (stations.givenAt(station) == null
                    && !stations.empty().contains(station)
                    && stations.without().isEmpty()) {
                return standing;
            }
            return Arrays.stream(standing)
                    .filter(g -> stations.allows(station, group.guides[g]))
                    .toArray();
        }

        boolean possible() {
            for (int[] guides : at) {
                if (guides.length == 0) {
                    return false;
                }
            }
            return !tips.isEmpty();
        }

        long best() {
            return best;
        }

        /** Cost of the cheapest train; NONE where there is none. */
        long price(Linear k) {
            for (Option<TipTop> tip : tips) {
                tip.price(k);
            }
            boolean[][] tipMay = group.tipFollows(setting);
            for (int i = count - 1; i >= 0; i--) {
                priceAt(i, k);
                boolean[][] may = i + 1 < count ? group.follows(setting, i + 1) : tipMay;
                for (int j = 0; j < at[i].length; j++) {
                    toGo[i][j] = i + 1 < count ? next(i, may[at[i][j]]) : tip(may[at[i][j]]);
                }
            }
            best = NONE;
            for (int j = 0; j < at[0].length; j++) {
                best = toGo[0][j] < NONE ? Math.min(best, cost[0][j] + toGo[0][j]) : best;
            }
            return best;
        }

        private void priceAt(int i, Linear k) {
            long[] wrapCost = new long[group.footShapes.size()];
            for (int s = 0; s < wrapCost.length; s++) {
                wrapCost[s] = k.of(wraps(i, group.footShapes.get(s)));
            }
            double x = setting.guideMm(i + 1);
            boolean wished =
                    task.wishes.mostCredit() > 0 || !task.brief.refused().isEmpty();
            for (int j = 0; j < at[i].length; j++) {
                int g = at[i][j];
                long mg = group.massMg[g];
                long missed = wished ? task.wishes.part(Station.guide(i + 1), group.guides[g], count) : 0;
                cost[i][j] = k.perMg() * mg
                        + k.perMgMm() * fitter.momentMgMm(mg, x)
                        + k.perMgMm2() * fitter.inertiaMgMm2(mg, x)
                        + k.perMilli() * group.costMilli[g]
                        - k.perStyleCenti() * style[g]
                        + k.perMilliStep() * missed
                        + wrapCost[group.footShape[g]];
            }
        }

        private long next(int i, boolean[] may) {
            long least = NONE;
            int[] following = at[i + 1];
            for (int j = 0; j < following.length; j++) {
                long through = cost[i + 1][j] + toGo[i + 1][j];
                if (toGo[i + 1][j] < NONE && through < least && may[following[j]]) {
                    least = through;
                }
            }
            return least;
        }

        private long tip(boolean[] may) {
            long least = NONE;
            for (int t = 0; t < tipIndex.length; t++) {
                if (tips.get(t).cost < least && may[tipIndex[t]]) {
                    least = tips.get(t).cost;
                }
            }
            return least;
        }
    }
}
