package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.WrapThread;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * Numbers the guide train and its thread cannot cost less than on a blank, whatever the reel position: the exact train with every guide as near
 * the reel foot as any reel position brings it. Under prices that grow ahead of the hand no real train is cheaper.
 */
final class TrainFloors {
    /** What wraps can weigh less where the blank is thinner than at the place taken, mg; generous for all guides together. */
    private static final double WRAPS_SLACK_MG = 100;

    /** The same of each guide where guides need not be spaced evenly, so that they move far with the reel. */
    private static final double UNEVEN_SLACK_MG = 250;

    /** Floors kept. */
    private static final int MOST_FLOORS = 512;

    private final Ground ground;
    private final Site site;
    /** True where guides stand only where they can be spaced evenly. */
    private final boolean evenly;

    private final Map<Integer, Placing> placings = new HashMap<>();
    private final Map<Key, long[]> floors = new LinkedHashMap<>(64, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, long[]> eldest) {
            return size() > MOST_FLOORS;
        }
    };

    /** Of one blank. */
    TrainFloors(Ground ground, Site site) {
        this.ground = ground;
        this.site = site;
        this.evenly = ground.ruled("guide-train");
    }

    /**
     * Guides as near the reel foot as any reel position brings them.
     *
     * @param setting a setting with the guides there
     * @param trains the trains there with the threads that none beats, in their order; null where no guides can stand
     * @param beaters for each thread the one that beats it, or itself
     */
    private record Placing(Setting setting, @Nullable TrainLeast trains, int[] beaters) {}

    private record Key(int count, int leastClass, Linear prices) {}

    /** True where these prices allow such a floor. */
    static boolean works(Linear k) {
        return k.perMg() >= 0 && k.perMgMm() >= 0 && k.perMgMm2() >= 0;
    }

    /** The floors for one count of guides, one a thread worth looking at. */
    long[] of(int count, int leastClass, Linear k) {
        return floors.computeIfAbsent(
                new Key(count, leastClass, k.withoutConstant()), key -> now(count, leastClass, k));
    }

    private long[] now(int count, int leastClass, Linear k) {
        Placing placing = placings.computeIfAbsent(count, this::nearest);
        Setting setting = placing.setting;
        List<Consumables> with = site.threads();
        long[] each = new long[with.size()];
        TrainLeast trains = placing.trains;
        if (trains == null) {
            Arrays.fill(each, TrainGraph.NONE);
            return each;
        }
        double last = setting.guideMm(count) - setting.footMm();
        double slackMg = evenly ? WRAPS_SLACK_MG : UNEVEN_SLACK_MG * count;
        long slack = (long) (k.leastPerMg(last, last, 0) * slackMg);
        long[] least = trains.of(k, leastClass);
        int unbeaten = 0;
        for (int t = 0; t < each.length; t++) {
            if (placing.beaters[t] == t) {
                long train = least[unbeaten++];
                each[t] = TrainGraph.none(train) ? train : train - looks(setting, with.get(t), k) - slack;
            }
        }
        // a thread that another beats costs at least as much, and more by what it looks worse
        for (int t = 0; t < each.length; t++) {
            int by = placing.beaters[t];
            if (by != t) {
                long worse = looks(setting, with.get(by), k) - looks(setting, with.get(t), k);
                each[t] = TrainGraph.none(each[by]) ? each[by] : each[by] + Math.max(0, worse);
            }
        }
        return each;
    }

    private Placing nearest(int count) {
        Setting furthest = null;
        double[] nearest = new double[count];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        for (int foot : ground.feet) {
            Setting setting = site.setting(foot, count);
            if (setting.spaced() || !evenly) {
                furthest = setting;
                for (int n = 1; n <= count; n++) {
                    nearest[n - 1] = Math.min(nearest[n - 1], setting.guideMm(n) - foot);
                }
            }
        }
        if (furthest == null) {
            return new Placing(site.setting(ground.firstFoot(), count), null, new int[0]);
        }
        for (int n = 0; n < count; n++) {
            nearest[n] += furthest.footMm();
        }
        Setting setting = furthest.withGuidesAt(nearest);
        List<Consumables> with = site.threads();
        int[] beaters = beaters(with);
        List<Fitter> fitters = new ArrayList<>();
        List<TrainGraph> graphs = new ArrayList<>();
        for (int t = 0; t < beaters.length; t++) {
            if (beaters[t] == t) {
                Fitter fitter = new Fitter(setting, with.get(t), ground.tariff);
                fitters.add(fitter);
                graphs.add(new TrainGraph(ground, setting, fitter, site.stations(), site.ends()));
            }
        }
        TrainLeast trains = graphs.isEmpty() ? null : new TrainLeast(setting, fitters, graphs);
        return new Placing(setting, trains, beaters);
    }

    /** By the thread; only between equal finishes and adhesives. */
    private int[] beaters(List<Consumables> with) {
        int[] own = new int[with.size()];
        Arrays.setAll(own, t -> t);
        boolean one = with.stream()
                        .map(c -> c.finish().id() + c.adhesive().id())
                        .distinct()
                        .count()
                == 1;
        List<WrapThread> threads = with.stream().map(Consumables::thread).toList();
        return one ? ThreadChoice.beaters(ground, site.shape().blank(), threads) : own;
    }

    private long looks(Setting setting, Consumables with, Linear k) {
        int n = setting.guideCount();
        long style = ground.style.part(setting.blank(), setting.layout().form(), Station.THREAD, with.thread(), n);
        return k.perStyleCenti() * style - k.perMilliStep() * ground.wishes.part(Station.THREAD, with.thread(), n);
    }
}
