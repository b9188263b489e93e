package withy.search;

import java.util.ArrayList;
import java.util.List;
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
    private final int count;
    private final List<Train> trains = new ArrayList<>();
    private long best = NONE;

    TrainGraph(Task task, Setting setting, Fitter fitter, Stations stations, int leastClass) {
        this.task = task;
        this.setting = setting;
        this.count = setting.guideCount();
        Refusal refusal = new Refusal();
        for (GuideTable.Group group : task.guides.groups()) {
            Train train = new Train(group, fitter, stations, leastClass, refusal);
            if (train.possible()) {
                trains.add(train);
            }
        }
    }

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
        final long[][] moment;
        final long[][] inertia;
        final Share[][] wraps;
        final List<Option<TipTop>> tips = new ArrayList<>();
        final int[] tipIndex;
        final long[][] cost;
        final long[][] toGo;
        final long[] style;
        private long best;

        Train(GuideTable.Group group, Fitter fitter, Stations stations, int leastClass, Refusal refusal) {
            this.group = group;
            this.at = new int[count][];
            this.moment = new long[count][];
            this.inertia = new long[count][];
            this.cost = new long[count][];
            this.toGo = new long[count][];
            this.style = new long[group.guides.length];
            this.wraps = new Share[count][group.footShapes.size()];
            for (int g = 0; g < style.length; g++) {
                style[g] = task.style.part(
                        setting.blank(), setting.layout().form(), Station.guide(1), group.guides[g], count);
            }
            for (int i = 0; i < count; i++) {
                place(i, fitter, stations, leastClass, refusal);
            }
            List<Integer> index = new ArrayList<>();
            for (int t = 0; t < group.tipTops.length; t++) {
                TipTop tip = group.tipTops[t];
                if (tip.facts().durabilityClass() >= leastClass && stations.allows(Station.TIP_TOP, tip)) {
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

        private void place(int i, Fitter fitter, Stations stations, int leastClass, Refusal refusal) {
            int number = i + 1;
            Station station = Station.guide(number);
            double x = setting.guideMm(number);
            int[] fitting = new int[group.guides.length];
            int n = 0;
            for (int g = 0; g < group.guides.length; g++) {
                if (group.guides[g].facts().durabilityClass() >= leastClass
                        && stations.allows(station, group.guides[g])) {
                    task.rules.onPart(setting, new Placed(station, group.guides[g], x, 0), refusal.reset());
                    if (!refusal.refused()) {
                        fitting[n++] = g;
                    }
                }
            }
            at[i] = java.util.Arrays.copyOf(fitting, n);
            moment[i] = new long[n];
            inertia[i] = new long[n];
            for (int j = 0; j < n; j++) {
                moment[i][j] = fitter.momentMgMm(group.massMg[at[i][j]], x);
                inertia[i][j] = fitter.inertiaMgMm2(group.massMg[at[i][j]], x);
            }
            for (int s = 0; s < group.footShapes.size(); s++) {
                double[] shape = group.footShapes.get(s);
                wraps[i][s] = fitter.guideWraps((int) shape[0], shape[1], number);
            }
            cost[i] = new long[n];
            toGo[i] = new long[n];
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
            long[] wrapCost = new long[wraps[i].length];
            for (int s = 0; s < wrapCost.length; s++) {
                wrapCost[s] = k.of(wraps[i][s]);
            }
            for (int j = 0; j < at[i].length; j++) {
                int g = at[i][j];
                long missed = task.wishes.part(Station.guide(i + 1), group.guides[g], count);
                cost[i][j] = k.perMg() * group.massMg[g]
                        + k.perMgMm() * moment[i][j]
                        + k.perMgMm2() * inertia[i][j]
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
