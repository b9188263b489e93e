package withy.machine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.mechanics.LineCase;
import withy.mechanics.OneThirdDrop;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rod.LineOffSpool;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;

/**
 * Guide trains for a rod's blank, reel and line, compared: the rod's own, and trains of one guide fewer, as many and one more spaced for the bend.
 *
 * @param trains the rod's own first, then fewest guides first
 * @param wants what each place of the train of as many guides asks of its guide; empty where it can't be spaced
 * @param fewerIsAsGood whether one guide fewer, spaced for the bend, clears the blank at both loads and turns the line no more (to a
 *     tenth) at its worst guide than the rod's own train does in the static test; null where there is no such train to compare
 */
public record TrainDesign(
        List<Train> trains, List<Want> wants, @Nullable Boolean fewerIsAsGood) {
    private static final double MG_PER_G = 1000;

    /** Rings by the trade table (common practice): stripper 0.35–0.5 of the lip, each reducer 0.55–0.75 of the ring before. */
    private static final double STRIPPER_LEAST = 0.35;

    private static final double STRIPPER_MOST = 0.5;
    /** First ring of a casting rod, sizes 8–12 of the trade table (rough), clear inner diameter, mm. */
    private static final double CASTING_LEAST_MM = 5.8;

    private static final double CASTING_MOST_MM = 9.1;
    private static final double REDUCER_LEAST = 0.55;
    private static final double REDUCER_MOST = 0.75;

    /** A turn of the line this much larger is taken for the same. ASSUMED. */
    private static final double TURN_SLACK = 1.1;

    public TrainDesign {
        trains = List.copyOf(trains);
        wants = List.copyOf(wants);
    }

    /**
     * One train on the rod.
     *
     * @param forBend true where it is spaced for the bend, false for the rod's own
     * @param rod the rod with it
     * @param guidesG guides with thread and finish, without the tip-top, g
     * @param working under the working load
     * @param staticTest level, with the weight that drops the tip of the rod by a third
     * @param hertz lowest frequency, NaN where none can be trusted
     */
    public record Train(boolean forBend, Rod rod, double guidesG, LineBend working, LineBend staticTest, double hertz) {
        /** Guides without the tip-top. */
        public int count() {
            return rod.setting().guideCount();
        }

        /** Least distance of line and blank under both loads, mm; NaN where there is no shape. */
        public double leastGapMm() {
            return Math.min(working.leastGapMm(), staticTest.leastGapMm());
        }

        /** Largest turn of the line in a guide in the static test, radians; NaN where there is no shape. */
        public double largestTurnRad() {
            return staticTest.largestTurnRad();
        }

        /** Whether the line clears the blank at both loads. */
        public boolean clears() {
            return leastGapMm() > 0;
        }
    }

    /**
     * What a place asks of its guide.
     *
     * @param number 1 = stripper
     * @param xMm from the butt, mm
     * @param heightMm blank's surface to ring centre so that the line runs straight off the spool, mm; 0 where any height does
     * @param ringIdMinMm clear inner diameter, mm; 0 for a runner
     * @param ringIdMaxMm likewise
     */
    public record Want(int number, double xMm, double heightMm, double ringIdMinMm, double ringIdMaxMm) {}

    /** Designs and compares. */
    public static TrainDesign of(Rod rod, BlankStiffness stiffness, Pose working) {
        OneThirdDrop.Outcome third = new RodBend(rod, stiffness).oneThirdDrop();
        Pose test = third instanceof OneThirdDrop.Outcome.Found found ? Pose.hung(found.weightG()) : working;
        BendSpacing spacing = BendSpacing.of(rod.setting(), stiffness);
        int count = rod.setting().guideCount();
        List<Train> trains = new ArrayList<>();
        trains.add(train(false, rod, stiffness, working, test));
        List<Want> wants = List.of();
        Train fewer = null;
        for (int n = Math.max(2, count - 1); n <= Math.min(Station.MOST_GUIDES, count + 1); n++) {
            Optional<double[]> x = spacing.positions(n);
            if (x.isPresent()) {
                Train train = train(true, with(rod, n, x.get()), stiffness, working, test);
                trains.add(train);
                fewer = n < count ? train : fewer;
                wants = n == count ? wants(rod.setting(), x.get()) : wants;
            }
        }
        Train own = trains.get(0);
        Boolean asGood = fewer == null || own.staticTest().held() == null
                ? null
                : (Boolean) (fewer.clears() && fewer.largestTurnRad() <= TURN_SLACK * own.largestTurnRad());
        return new TrainDesign(trains, wants, asGood);
    }

    private static Train train(boolean forBend, Rod rod, BlankStiffness stiffness, Pose working, Pose test) {
        RodBend bend = new RodBend(rod, stiffness);
        double guides = 0;
        for (int number = 1; number <= rod.setting().guideCount(); number++) {
            guides +=
                    rod.shares().getOrDefault(Station.guide(number), Share.NONE).massMg() / MG_PER_G;
        }
        return new Train(
                forBend, rod, guides, bend.line(working), bend.line(test), Quickness.finishedHz(rod, stiffness));
    }

    /** The rod with another count of guides at given places: the last runner doubled, or left out. */
    static Rod with(Rod rod, int count, double[] xMm) {
        Build build = rod.build();
        Layout old = build.layout();
        SortedMap<Station, Build.Choice> choices = new TreeMap<>(build.choices());
        for (int number = old.guideCount(); number > count; number--) {
            choices.remove(Station.guide(number));
        }
        Build.Choice last = choices.get(Station.guide(Math.min(count, old.guideCount())));
        for (int number = old.guideCount() + 1; number <= count && last != null; number++) {
            choices.put(Station.guide(number), last);
        }
        Layout layout = new Layout(old.blankId(), old.reelFootMm(), old.form(), count);
        Setting setting = Setting.of(
                        rod.setting().catalog(), rod.brief(), rod.setting().shape(), layout)
                .withGuidesAt(xMm);
        return Rod.measure(setting, new Build(layout, choices));
    }

    private static List<Want> wants(Setting setting, double[] xMm) {
        List<Want> wants = new ArrayList<>();
        Brief brief = setting.brief();
        boolean spinning = brief.rodType().spinningReel();
        double least = spinning ? STRIPPER_LEAST * brief.reel().lipDiameterMm() : CASTING_LEAST_MM;
        double most = spinning ? STRIPPER_MOST * brief.reel().lipDiameterMm() : CASTING_MOST_MM;
        double choke = LineOffSpool.chokeMm(setting);
        for (int i = 0; i < xMm.length; i++) {
            boolean runner = spinning ? xMm[i] >= choke : i > 0;
            double height = runner || !spinning ? 0 : LineOffSpool.heightMm(setting, xMm[i]) - setting.odAt(xMm[i]) / 2;
            wants.add(new Want(i + 1, xMm[i], Math.max(0, height), runner ? 0 : least, runner ? 0 : most));
            least *= REDUCER_LEAST;
            most *= REDUCER_MOST;
        }
        return wants;
    }

    /** Angle of the line off the reel against the blank's axis on the unbent rod, degrees; positive where it rises to the stripper. */
    public static double offReelDeg(Rod rod, BlankStiffness stiffness) {
        List<LineCase.Ring> rings = new RodBend(rod, stiffness).rings();
        if (rings.isEmpty()) {
            return Double.NaN;
        }
        double rise = LineOffSpool.leavesHeightMm(rod.setting())
                - Math.abs(rings.get(0).offsetMm());
        return Math.toDegrees(Math.atan2(rise, rings.get(0).sMm() - LineOffSpool.leavesMm(rod.setting())));
    }

    /** Ring positions from the butt, stripper first. */
    public static double[] placesMm(Rod rod) {
        double[] x = new double[rod.setting().guideCount()];
        Arrays.setAll(x, i -> rod.setting().guideMm(i + 1));
        return x;
    }
}
