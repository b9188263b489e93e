package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import withy.brief.Brief.HandleForm;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * Numbers the guide train and its thread cannot cost less than on a blank, whatever the reel position: the exact train with every guide as near
 * the reel foot as any reel position brings it. Under prices that grow ahead of the hand no real train is cheaper.
 */
final class TrainFloors {
    /** What wraps can weigh less where the blank is thinner than at the place taken, mg; generous for all guides together. */
    private static final double WRAPS_SLACK_MG = 100;

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
        Setting furthest = null;
        double[] nearest = new double[count];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        for (int foot : feet) {
            Layout layout = new Layout(shape.blank().id(), foot, HandleForm.SPLIT, count);
            Setting setting = Setting.of(task.catalog, task.brief, shape, layout);
            if (setting.spaced()) {
                furthest = setting;
                for (int n = 1; n <= count; n++) {
                    nearest[n - 1] = Math.min(nearest[n - 1], setting.guideMm(n) - foot);
                }
            }
        }
        if (furthest != null) {
            for (int n = 0; n < count; n++) {
                nearest[n] += furthest.footMm();
            }
            Setting optimistic = furthest.withGuidesAt(nearest);
            long slack = (long) (k.leastPerMg(nearest[count - 1], nearest[count - 1], 0) * WRAPS_SLACK_MG);
            return each(optimistic, with, stations, leastClass, k, slack);
        }
        long[] none = new long[with.size()];
        Arrays.fill(none, TrainGraph.NONE);
        return none;
    }

    /** Threads that another beats are not worked out: they cost at least as much, and more by what they look worse. */
    private long[] each(
            Setting setting, List<Consumables> with, Stations stations, int leastClass, Linear k, long slack) {
        int[] beaters = beaters(setting, with);
        long[] each = new long[with.size()];
        for (int t = 0; t < each.length; t++) {
            if (beaters[t] == t) {
                long train = train(setting, with.get(t), stations, leastClass, k);
                each[t] = TrainGraph.none(train) ? train : train - slack;
            }
        }
        for (int t = 0; t < each.length; t++) {
            int by = beaters[t];
            if (by != t) {
                long worse = looks(setting, with.get(by), k) - looks(setting, with.get(t), k);
                each[t] = TrainGraph.none(each[by]) ? each[by] : each[by] + Math.max(0, worse);
            }
        }
        return each;
    }

    /** By the thread; only between equal finishes and adhesives. */
    private int[] beaters(Setting setting, List<Consumables> with) {
        int[] own = new int[with.size()];
        Arrays.setAll(own, t -> t);
        boolean one = with.stream()
                        .map(c -> c.finish().id() + c.adhesive().id())
                        .distinct()
                        .count()
                == 1;
        return one
                ? ThreadChoice.beaters(
                        task,
                        setting.blank(),
                        with.stream().map(Consumables::thread).toList())
                : own;
    }

    private long looks(Setting setting, Consumables with, Linear k) {
        int n = setting.guideCount();
        long style = task.style.part(setting.blank(), setting.layout().form(), Station.THREAD, with.thread(), n);
        return k.perStyleCenti() * style - k.perMilliStep() * task.wishes.part(Station.THREAD, with.thread(), n);
    }

    private long train(Setting setting, Consumables with, Stations stations, int leastClass, Linear k) {
        Fitter fitter = new Fitter(setting, with, task.tariff);
        long train = new TrainGraph(task, setting, fitter, stations, leastClass, null)
                .priced(k)
                .best();
        if (TrainGraph.none(train)) {
            return train;
        }
        return train - looks(setting, with, k);
    }
}
