package withy.search;

import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import withy.rod.Setting;

/**
 * Numbers the guide train and its thread cannot cost less than on a blank, whatever the reel position: the exact train with every guide as near
 * the reel foot as any reel position brings it. Under prices that make weight a burden ({@link Site#burdens}) no real train is cheaper.
 */
final class TrainFloors {
    /** Floors kept. */
    private static final int MOST_FLOORS = 512;

    private final Ground ground;
    private final Site site;
    private final Map<Where, Optional<Placing>> placings = new HashMap<>();
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
    }

    /** A count of guides with the reel in one stretch ({@link Spacings#stretch}). */
    private record Where(int count, int stretch) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Where that && count == that.count && stretch == that.stretch;
        }

        @Override
        public int hashCode() {
            return 31 * count + stretch;
        }
    }

    private record Key(Where where, int leastClass, Linear prices) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Key that
                    && leastClass == that.leastClass
                    && where.equals(that.where)
                    && prices.equals(that.prices);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * where.hashCode() + leastClass) + prices.hashCode();
        }
    }

    /** The floors for one count of guides, one a thread worth looking at. */
    long[] of(int count, int leastClass, Linear k) {
        return of(new Where(count, Spacings.ANYWHERE), leastClass, k);
    }

    /** The same with the reel foot near one place. */
    long[] near(int foot, int count, int leastClass, Linear k) {
        return of(new Where(count, site.spacings().stretch(foot, count)), leastClass, k);
    }

    private long[] of(Where where, int leastClass, Linear k) {
        return floors.computeIfAbsent(
                new Key(where, leastClass, k.withoutConstant()), key -> now(where, leastClass, k));
    }

    private long[] now(Where where, int leastClass, Linear k) {
        Placing placing = placings.computeIfAbsent(where, any -> Optional.ofNullable(nearest(where)))
                .orElse(null);
        if (placing != null) {
            return placing.floors(leastClass, k);
        }
        long[] none = new long[site.dressed().size()];
        Arrays.fill(none, TrainGraph.NONE);
        return none;
    }

    /** The same with one reel position and the ends of one stand, exactly but for the rounding of wraps. */
    long[] at(Stand stand, Setting setting, int leastClass, Linear k) {
        return stand.placing(setting.guideCount(), () -> {
                    return new Placing(
                            ground, setting, site.dressed(), (fitter, with) -> stand.train(setting, fitter, with));
                })
                .floors(leastClass, k);
    }

    /** Guides as near the reel foot as any reel position of a stretch brings them; null where none can stand. */
    private @Nullable Placing nearest(Where where) {
        Spacings.Nearest nearest = site.spacings().nearest(where.count(), where.stretch());
        if (nearest == null) {
            return null;
        }
        Setting setting = nearest.setting();
        return new Placing(ground, setting, site.dressed(), (fitter, with) -> {
                    return new TrainGraph(ground, setting, fitter, site.stations(), site.ends());
                })
                .thinnestAt(nearest.thinnestMm());
    }
}
