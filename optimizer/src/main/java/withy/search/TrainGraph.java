package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.rod.Build;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * The guide train of one layout: for each guide number the guides that may stand there, and from each the cheapest way on to the tip (a dynamic
 * programme from the tip back to the stripper, one a group).
 */
final class TrainGraph {
    static final long NONE = Long.MAX_VALUE / 4;

    private static final int[] NOTHING = {};

    private final Ground ground;
    private final Setting setting;
    private final Fitter fitter;
    private final List<Ends.Group> ends;
    private final int count;
    private final @Nullable Sums[][] wraps;
    private final List<Train> trains = new ArrayList<>();
    private @Nullable TubeDressings tubes;

    /**
     * @param ends tip-tops of any of these may end the train
     */
    TrainGraph(Ground ground, Setting setting, Fitter fitter, Stations stations, List<Ends.Group> ends) {
        this.ground = ground;
        this.setting = setting;
        this.fitter = fitter;
        this.ends = ends;
        this.count = setting.guideCount();
        this.wraps = new Sums[count][ground.guides.footShapes().size()];
        for (GuideGroup group : ground.guides.groups()) {
            Train train = new Train(group, stations);
            if (train.possible()) {
                trains.add(train);
            }
        }
    }

    /** Thread and finish on feet of one shape at one number; groups share shapes. */
    private Sums wrapsOn(int i, int shape) {
        Sums known = wraps[i][shape];
        if (known == null) {
            GuideTable.Feet feet = ground.guides.footShapes().get(shape);
            known = Sums.of(fitter.guideWraps(feet.count(), feet.lengthMm(), i + 1));
            wraps[i][shape] = known;
        }
        return known;
    }

    /** What dresses tip-tops with each of some threads. */
    TubeDressings tubes(List<Fitter> fitters) {
        return new TubeDressings(fitters, ground.guides.tubeDepths(), trains);
    }

    /** The same with the thread of the train. */
    TubeDressings tubes() {
        TubeDressings known = tubes;
        if (known == null) {
            known = tubes(List.of(fitter));
            tubes = known;
        }
        return known;
    }

    List<Train> trains() {
        return trains;
    }

    /** Works the ways on out under some prices, with guides and tip-top of at least one class. */
    TrainCosts priced(Linear k, int leastClass) {
        return priced(k, leastClass, bare(k, leastClass));
    }

    /** The same where it is known what the guides cost but for their wraps. */
    TrainCosts priced(Linear k, int leastClass, @Nullable BareTrains bare) {
        return new TrainCosts(this, k, leastClass, bare);
    }

    /** What the guides cost but for their wraps; null where these prices may make weight welcome. */
    @Nullable
    BareTrains bare(Linear k, int leastClass) {
        return ground.burdens(k, nearestMm()) ? new BareTrains(this, k, leastClass) : null;
    }

    /** Where the nearest guide or the tip stands, told from the reel foot, mm. */
    private double nearestMm() {
        double nearest = setting.blank().lengthMm();
        for (int number = 1; number <= count; number++) {
            nearest = Math.min(nearest, setting.guideMm(number));
        }
        return nearest - setting.footMm();
    }

    int count() {
        return count;
    }

    /** Shapes of feet, as guides refer to them ({@link GuideGroup#footShape}). */
    List<GuideTable.Feet> feet() {
        return ground.guides.footShapes();
    }

    /** Least of some costs; {@link #NONE} where there are none. */
    static long least(long[] costs) {
        long least = NONE;
        for (long cost : costs) {
            least = Math.min(least, cost);
        }
        return least;
    }

    /** Least of those of some costs that may be; {@link #NONE} where none may. */
    static long least(boolean[] may, long[] costs) {
        long least = NONE;
        for (int i = 0; i < costs.length; i++) {
            if (may[i] && costs[i] < least) {
                least = costs[i];
            }
        }
        return least;
    }

    /** Both together; {@link #NONE} where either is that. */
    static long sum(long a, long b) {
        return none(a) || none(b) ? NONE : a + b;
    }

    static boolean none(long cost) {
        return cost >= NONE / 2;
    }

    /** One group's train. */
    final class Train {
        final GuideGroup group;
        /** Guides that may stand at each number. */
        final int[][] at;

        final TrainTips tips;
        /** True where there may be too few pieces of a guide. */
        final boolean mayRunShort;

        private final long[] style;
        private final long[] missed;
        private int @Nullable [][] worthIt;

        Train(GuideGroup group, Stations stations) {
            this.group = group;
            this.at = new int[count][];
            this.style = group.styles(setting);
            this.missed = group.missed(count);
            for (int i = 0; i < count; i++) {
                at[i] = standing(i, stations);
            }
            List<Ends.Group> ending = guided() ? ends : List.of();
            tips = new TrainTips(group, setting, fitter, stations, ending);
            mayRunShort = possible() && group.fewestPieces < count && runsShort();
        }

        private boolean runsShort() {
            for (int[] guides : at) {
                for (int g : guides) {
                    if (group.pieces[g] < count) {
                        return true;
                    }
                }
            }
            return false;
        }

        private int[] standing(int i, Stations stations) {
            int[] standing = group.standing(setting, i + 1);
            Station station = Station.guide(i + 1);
            Build.Choice given = stations.givenAt(station);
            if (given != null && !group.has(given.partId())) {
                return NOTHING;
            }
            if (given == null && !stations.empty().contains(station) && group.hasNone(stations.without())) {
                return standing;
            }
            return Arrays.stream(standing)
                    .filter(g -> stations.allows(station, group.guides[g]))
                    .toArray();
        }

        /** The same of each number without those that another beats wherever weight is a burden. */
        int[][] worthIt() {
            int[][] known = worthIt;
            if (known == null) {
                known = new int[count][];
                for (int i = 0; i < count; i++) {
                    boolean all = at[i].length == group.standing(setting, i + 1).length;
                    known[i] = all ? group.worthIt(setting, i + 1) : group.unbeaten(setting, at[i]);
                }
                worthIt = known;
            }
            return known;
        }

        boolean possible() {
            return tips.size() > 0;
        }

        /** False where nothing may stand at some number: then no tip-top is looked at. */
        private boolean guided() {
            return Arrays.stream(at).allMatch(guides -> guides.length > 0);
        }

        /** Pieces there are of a guide. */
        int pieces(int guide) {
            return group.pieces[guide];
        }

        /** Whether a guide may stand next ahead of another at a number (counted from 0). */
        boolean mayFollow(int i, int guide, int next) {
            return group.follows(setting, i + 1)[group.ring[guide]][group.ring[next]];
        }

        /** Whether one of the tips may stand ahead of a guide. */
        boolean mayEnd(int guide, int tip) {
            return group.tips.follows(setting)[group.ring[guide]][tips.ring(tip)];
        }

        /** Adds the guide of an index at a number (counted from 0) to what else is there. */
        void add(int i, int index, Tally to) {
            int g = at[i][index];
            double x = setting.guideMm(i + 1);
            long mg = group.massMg[g];
            to.add(mg, fitter.momentMgMm(mg, x), fitter.inertiaMgMm2(mg, x), group.costMilli[g]);
            to.add(wrapsOn(i, group.footShape[g]), style[g], missed[g]);
        }

        /** Ring of a guide. */
        int ring(int guide) {
            return group.ring[guide];
        }

        boolean[][] tipFollows() {
            return group.tips.follows(setting);
        }

        boolean[][] follows(int i) {
            return group.follows(setting, i);
        }

        /** Cost of a guide at a number (counted from 0), its wraps not counted. */
        long bare(int i, int g, Linear k) {
            double x = setting.guideMm(i + 1);
            long mg = group.massMg[g];
            return k.of(mg, fitter.momentMgMm(mg, x), fitter.inertiaMgMm2(mg, x), group.costMilli[g])
                    - k.perStyleCenti() * style[g]
                    + k.perMilliStep() * missed[g];
        }

        /** The same of each of some guides; {@link #NONE} where one is of too low a class. */
        long[] bare(int i, int[] guides, Linear k, int leastClass) {
            long[] bare = new long[guides.length];
            for (int j = 0; j < guides.length; j++) {
                bare[j] = group.durabilityClass[guides[j]] < leastClass ? NONE : bare(i, guides[j], k);
            }
            return bare;
        }

        long wraps(int i, int g, Linear k) {
            return k.of(wrapsOn(i, group.footShape[g]));
        }
    }
}
