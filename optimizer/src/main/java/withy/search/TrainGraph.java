package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.catalog.TipTop;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;

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
    private final @Nullable Share[][] wraps;
    private final List<Train> trains = new ArrayList<>();
    private long best = NONE;

    TrainGraph(
            Task task, Setting setting, Fitter fitter, Stations stations, int leastClass, Ends.@Nullable Group ends) {
        this.task = task;
        this.setting = setting;
        this.fitter = fitter;
        this.ends = ends;
        this.count = setting.guideCount();
        this.wraps = new Share[count][task.guides.footShapes().size()];
        for (GuideTable.Group group : task.guides.groups()) {
            Train train = new Train(group, stations, leastClass);
            if (train.possible()) {
                trains.add(train);
            }
        }
    }

    /** Thread and finish on feet of one shape at one number; groups share shapes. */
    private Share wraps(int i, int shape) {
        Share known = wraps[i][shape];
        if (known == null) {
            GuideTable.Feet feet = task.guides.footShapes().get(shape);
            known = fitter.guideWraps(feet.count(), feet.lengthMm(), i + 1);
            wraps[i][shape] = known;
        }
        return known;
    }

    List<Train> trains() {
        return trains;
    }

    /** Sets the prices and works the ways on out again; the cheapest whole train, or a number no build reaches. */
    long price(Linear k) {
        long[][] wrapCost = new long[count][];
        for (int i = 0; i < count; i++) {
            wrapCost[i] = new long[wraps[i].length];
            Arrays.fill(wrapCost[i], NONE);
        }
        best = NONE;
        for (Train train : trains) {
            best = Math.min(best, train.price(k, wrapCost));
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
        /** Guides that may stand at each number. */
        final int[][] at;

        final List<Option<TipTop>> tips = new ArrayList<>();
        final int[] tipIndex;
        final long[][] cost;
        /** Cheapest way on from a ring at each number. */
        private final long[][] onward;

        private final long[] style;
        private final long[] missed;
        private long best;

        Train(GuideTable.Group group, Stations stations, int leastClass) {
            this.group = group;
            this.at = new int[count][];
            this.cost = new long[count][];
            this.onward = new long[count][group.rings];
            this.style = group.styles(setting);
            this.missed = group.missed(count);
            for (int i = 0; i < count; i++) {
                at[i] = standing(i, stations, leastClass);
                cost[i] = new long[at[i].length];
            }
            int[] fitting = group.tipsOn(setting);
            int[] index = new int[fitting.length];
            int n = 0;
            double end = setting.blank().lengthMm();
            for (int t : fitting) {
                TipTop tip = group.tipTops[t];
                if (tip.facts().durabilityClass() >= leastClass
                        && stations.allows(Station.TIP_TOP, tip)
                        && (ends == null || ends.has(tip))) {
                    tips.add(Work.option(task, setting, Station.TIP_TOP, tip, end, tip.addedMm(), fitter.tipTop(tip)));
                    index[n++] = t;
                }
            }
            tipIndex = Arrays.copyOf(index, n);
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

        /** Cost of the cheapest way on to the tip from a guide at a number (counted from 0). */
        long toGo(int i, int guide) {
            return onward[i][group.ring[guide]];
        }

        /** Whether a guide may stand next ahead of another at a number (counted from 0). */
        boolean mayFollow(int i, int guide, int next) {
            return group.follows(setting, i + 1)[group.ring[guide]][group.ring[next]];
        }

        /** Whether one of the tips may stand ahead of a guide. */
        boolean mayEnd(int guide, int tip) {
            return group.tipFollows(setting)[group.ring[guide]][group.tipRing[tipIndex[tip]]];
        }

        /** Cost of the cheapest train; NONE where there is none. */
        long price(Linear k, long[][] wrapCost) {
            long[] least = new long[group.tipRings];
            Arrays.fill(least, NONE);
            for (int t = 0; t < tipIndex.length; t++) {
                Option<TipTop> tip = tips.get(t);
                tip.price(k);
                least[group.tipRing[tipIndex[t]]] = Math.min(least[group.tipRing[tipIndex[t]]], tip.cost);
            }
            boolean[][] may = group.tipFollows(setting);
            for (int i = count - 1; i >= 0; i--) {
                for (int r = 0; r < group.rings; r++) {
                    onward[i][r] = least(may[r], least);
                }
                priceAt(i, k, wrapCost[i]);
                least = through(i);
                may = i > 0 ? group.follows(setting, i) : may;
            }
            best = NONE;
            for (long cheapest : least) {
                best = Math.min(best, cheapest);
            }
            return best;
        }

        private static long least(boolean[] may, long[] of) {
            long least = NONE;
            for (int r = 0; r < of.length; r++) {
                if (may[r] && of[r] < least) {
                    least = of[r];
                }
            }
            return least;
        }

        /** Cheapest guide of each ring at a number with the way on. */
        private long[] through(int i) {
            long[] through = new long[group.rings];
            Arrays.fill(through, NONE);
            for (int j = 0; j < at[i].length; j++) {
                int ring = group.ring[at[i][j]];
                long on = onward[i][ring];
                if (!none(on) && cost[i][j] + on < through[ring]) {
                    through[ring] = cost[i][j] + on;
                }
            }
            return through;
        }

        private void priceAt(int i, Linear k, long[] wrapCost) {
            double x = setting.guideMm(i + 1);
            for (int j = 0; j < at[i].length; j++) {
                int g = at[i][j];
                int shape = group.footShape[g];
                if (wrapCost[shape] == NONE) {
                    wrapCost[shape] = k.of(wraps(i, shape));
                }
                long mg = group.massMg[g];
                cost[i][j] = k.perMg() * mg
                        + k.perMgMm() * fitter.momentMgMm(mg, x)
                        + k.perMgMm2() * fitter.inertiaMgMm2(mg, x)
                        + k.perMilli() * group.costMilli[g]
                        - k.perStyleCenti() * style[g]
                        + k.perMilliStep() * missed[g]
                        + wrapCost[shape];
            }
        }
    }
}
