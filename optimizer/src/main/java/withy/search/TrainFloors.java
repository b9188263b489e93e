package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import withy.rod.Setting;

/**
 * Numbers the guide train and its thread cannot cost less than on a blank, whatever the reel position: the exact train with every guide as near
 * the reel foot as any reel position brings it. Under prices that grow ahead of the hand no real train is cheaper.
 */
final class TrainFloors {
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
        return placings.computeIfAbsent(count, this::nearest).floors(leastClass, k);
    }

    /** The same with one reel position and the ends of one stand, exactly but for the rounding of wraps. */
    long[] at(Stand stand, Setting setting, int leastClass, Linear k) {
        return stand.placing(setting.guideCount(), () -> {
                    return new Placing(ground, site, setting, (fitter, with) -> stand.train(setting, fitter, with));
                })
                .floors(leastClass, k);
    }

    private Placing nearest(int count) {
        Setting furthest = null;
        double[] nearest = new double[count];
        double[] thinnest = new double[count];
        double[] thinnestOd = new double[count];
        Arrays.fill(nearest, Double.POSITIVE_INFINITY);
        Arrays.fill(thinnestOd, Double.POSITIVE_INFINITY);
        for (int foot : ground.feet) {
            Setting setting = site.setting(foot, count);
            if (setting.spaced() || !evenly) {
                furthest = setting;
                for (int n = 0; n < count; n++) {
                    double x = setting.guideMm(n + 1);
                    double od = setting.odAt(x);
                    nearest[n] = Math.min(nearest[n], x - foot);
                    thinnest[n] = od < thinnestOd[n] ? x : thinnest[n];
                    thinnestOd[n] = Math.min(thinnestOd[n], od);
                }
            }
        }
        if (furthest == null) {
            return Placing.none(ground, site, site.setting(ground.firstFoot(), count));
        }
        for (int n = 0; n < count; n++) {
            nearest[n] += furthest.footMm();
        }
        Setting setting = furthest.withGuidesAt(nearest);
        return new Placing(ground, site, setting, (fitter, with) -> {
                    return new TrainGraph(ground, setting, fitter, site.stations(), site.ends());
                })
                .thinnestAt(thinnest);
    }
}
