package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withy.brief.Brief.HandleForm;
import withy.mechanics.GuideSpacing;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * Numbers the guide train and its thread cannot cost less than on a blank, whatever the reel position: the exact train at the furthest reel
 * position that spaces such a train. There every guide is nearest the hand and the blank under it thinnest, so under prices that grow ahead of
 * the hand no other position is cheaper; where a ferrule shifts guides, what a shift can save is taken off.
 */
final class TrainFloors {
    /** Guides that stand in one ferrule's way, at most; the second only near the tip, where it is light. */
    private static final double GUIDES_A_FERRULE = 1.5;

    /** Thread and finish on one guide, mg; generous. */
    private static final double WRAPS_MG = 600;

    private static final double HALF_FOOT_MM = 15;

    private final Task task;
    private final Map<Key, long[]> floors = new HashMap<>();

    TrainFloors(Task task) {
        this.task = task;
    }

    private record Key(String blankId, Stations stations, int leastClass, int count, int version) {}

    /** True where these prices allow such a floor. */
    static boolean works(Linear k) {
        return k.perMg() >= 0 && k.perMgMm() >= 0 && k.perMgMm2() >= 0;
    }

    /**
     * The floors for one count, one a thread.
     *
     * @param feet reel positions, rising
     * @param with threads worth looking at
     */
    long[] of(
            BlankShape shape,
            Stations stations,
            int leastClass,
            int count,
            int version,
            Linear k,
            List<Integer> feet,
            List<Consumables> with) {
        Key key = new Key(shape.blank().id(), stations, leastClass, count, version);
        long[] known = floors.get(key);
        if (known == null) {
            known = now(shape, stations, leastClass, count, k, feet, with);
            floors.put(key, known);
        }
        return known;
    }

    private long[] now(
            BlankShape shape,
            Stations stations,
            int leastClass,
            int count,
            Linear k,
            List<Integer> feet,
            List<Consumables> with) {
        for (int i = feet.size() - 1; i >= 0; i--) {
            Layout layout = new Layout(shape.blank().id(), feet.get(i), HandleForm.SPLIT, count);
            Setting setting = Setting.of(task.catalog, task.brief, shape, layout);
            if (setting.spaced()) {
                double arm = setting.footMm() - setting.handMm();
                double furthest = shape.blank().lengthMm() - setting.footMm() + arm;
                double perMgMm = k.perMgMm() + 2.0 * k.perMgMm2() * furthest;
                long slack = (long) (perMgMm * shiftsMgMm(shape));
                long[] each = new long[with.size()];
                for (int t = 0; t < each.length; t++) {
                    long train = train(setting, with.get(t), stations, leastClass, k);
                    each[t] = TrainGraph.none(train) ? train : train - slack;
                }
                return each;
            }
        }
        long[] none = new long[with.size()];
        Arrays.fill(none, TrainGraph.NONE);
        return none;
    }

    /** Mass times distance that ferrules can move guides. */
    private double shiftsMgMm(BlankShape shape) {
        double sum = 0;
        for (BlankShape.Joint joint : shape.joints()) {
            double most = (joint.toMm() - joint.fromMm()) / 2 + GuideSpacing.FERRULE_CLEARANCE_MM + HALF_FOOT_MM;
            sum += most * (task.guides.heaviestMg() + WRAPS_MG) * GUIDES_A_FERRULE;
        }
        return sum;
    }

    private long train(Setting setting, Consumables with, Stations stations, int leastClass, Linear k) {
        Fitter fitter = new Fitter(setting, with, task.tariff);
        long train = new TrainGraph(task, setting, fitter, stations, leastClass).price(k);
        if (TrainGraph.none(train)) {
            return train;
        }
        int n = setting.guideCount();
        long style = task.style.part(setting.blank(), setting.layout().form(), Station.THREAD, with.thread(), n);
        return train
                - k.perStyleCenti() * style
                + k.perMilliStep() * task.wishes.part(Station.THREAD, with.thread(), n);
    }
}
