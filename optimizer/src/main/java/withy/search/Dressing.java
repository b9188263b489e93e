package withy.search;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Station;

/** What of one layout depends on the thread: the blank's own wraps, the train, the ends of the handle. */
final class Dressing {
    private static final long NONE = TrainGraph.NONE;

    /** Prices under which the train is kept in mind: one set, and the tests of a walk. */
    private static final int MOST_TRAINS = 16;

    final Stand stand;
    final Setting setting;
    final Consumables with;
    final int leastClass;
    private final Fitter fitter;
    private final Sums blankShare;
    private final long style;
    private final long missed;
    private final long fixedMilli;
    private @Nullable TrainGraph graph;
    private long besides;
    private @Nullable TrainCosts train;
    private final Map<Linear, TrainCosts> trains = new LinkedHashMap<>(8, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Linear, TrainCosts> eldest) {
            return size() > MOST_TRAINS;
        }
    };

    Dressing(Stand stand, Setting setting, Consumables with, int leastClass) {
        this.stand = stand;
        this.setting = setting;
        this.with = with;
        this.leastClass = leastClass;
        Ground ground = stand.ground;
        this.fitter = new Fitter(setting, with, ground.tariff);
        this.blankShare = Sums.of(fitter.blank());
        int n = setting.guideCount();
        this.style = ground.style.part(setting.blank(), setting.layout().form(), Station.BLANK, setting.blank(), n)
                + ground.style.part(setting.blank(), setting.layout().form(), Station.THREAD, with.thread(), n);
        this.missed = ground.wishes.layout(setting)
                + ground.wishes.part(Station.BLANK, setting.blank(), n)
                + ground.wishes.part(Station.THREAD, with.thread(), n)
                + ground.wishes.part(Station.FINISH, with.finish(), n)
                + ground.wishes.part(Station.ADHESIVE, with.adhesive(), n);
        this.fixedMilli = ground.tariff.fixedMilli(with, 0);
    }

    TrainGraph graph() {
        TrainGraph known = graph;
        if (known == null) {
            known = stand.train(setting, fitter, with);
            graph = known;
        }
        return known;
    }

    /** Sums of everything but handle and train. */
    Tally tally() {
        return new Tally().add(blankShare, style, missed).add(0, 0, 0, fixedMilli);
    }

    /** What guides cost but for their wraps, the same with every thread. */
    @Nullable
    BareTrains bare(Linear k) {
        return graph().bare(k, leastClass);
    }

    /**
     * Sets the prices; cost of everything but the handle, the train at its cheapest.
     *
     * @param bare what the guides cost but for their wraps ({@link TrainGraph#bare})
     */
    long price(Linear k, @Nullable BareTrains bare) {
        train = train(k, any -> bare);
        besides = tally().cost(k);
        return rest();
    }

    /**
     * The train under some prices; what was worked out of it lately is kept.
     *
     * @param bare what the guides cost under these but for their wraps
     */
    TrainCosts train(Linear k, Function<Linear, @Nullable BareTrains> bare) {
        TrainCosts known = trains.get(k);
        if (known == null) {
            known = graph().priced(k, leastClass, bare.apply(k));
            trains.put(k, known);
        }
        return known;
    }

    /** Cost of everything but the handle under the prices last set, the train at its cheapest. */
    long rest() {
        TrainCosts priced = train;
        return priced == null || TrainGraph.none(priced.best()) ? NONE : besides + priced.best();
    }

    /** The train under the prices last set. */
    TrainCosts train() {
        TrainCosts priced = train;
        if (priced == null) {
            throw new IllegalStateException("no prices set");
        }
        return priced;
    }
}
