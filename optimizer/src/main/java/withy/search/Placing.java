package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Setting;

/** Guides at certain places on a blank: numbers no train there costs less than, thread by thread. */
final class Placing {
    private final Ground ground;
    private final Setting setting;
    private final Threads threads;

    private final List<Consumables> unbeaten = new ArrayList<>();
    private final List<Fitter> fitters = new ArrayList<>();
    /** The trains with the threads that none beats, in their order; null where there is none. */
    private final @Nullable TrainLeast trains;

    private @Nullable ThinnerWraps thinner;
    private @Nullable Asked known;

    /**
     * @param setting a setting with the guides there
     * @param threads those worth looking at
     * @param graphs makes the trains with one of the threads
     */
    Placing(Ground ground, Setting setting, Threads threads, Graphs graphs) {
        this.ground = ground;
        this.setting = setting;
        this.threads = threads;
        for (int t = 0; t < threads.size(); t++) {
            if (threads.beater(t) == t) {
                Consumables with = threads.with(t);
                unbeaten.add(with);
                fitters.add(new Fitter(setting, with, ground.tariff));
            }
        }
        this.trains = unbeaten.isEmpty()
                ? null
                : new TrainLeast(setting, fitters, graphs.of(fitters.get(0), unbeaten.get(0)));
    }

    /** Makes the trains with one thread. */
    interface Graphs {
        TrainGraph of(Fitter fitter, Consumables with);
    }

    /** The numbers last asked for. */
    private record Asked(int leastClass, Linear prices, long[] each) {}

    /** Guides stand for others that may stand elsewhere: for each number the place where the blank is thinnest. */
    Placing thinnestAt(double[] xMm) {
        thinner = new ThinnerWraps(
                setting,
                xMm,
                fitters,
                (there, t) -> new Fitter(there, unbeaten.get(t), ground.tariff),
                ground.guides.footShapes());
        return this;
    }

    /** The numbers under prices that make weight a burden, one a thread worth looking at. */
    long[] floors(int leastClass, Linear k) {
        Linear prices = k.withoutConstant();
        Asked before = known;
        if (before == null || before.leastClass != leastClass || !before.prices.equals(prices)) {
            before = new Asked(leastClass, prices, now(leastClass, prices));
            known = before;
        }
        return before.each;
    }

    private long[] now(int leastClass, Linear k) {
        long[] each = new long[threads.size()];
        TrainLeast of = trains;
        if (of == null) {
            Arrays.fill(each, TrainGraph.NONE);
            return each;
        }
        long[] least = of.of(k, leastClass);
        int next = 0;
        for (int t = 0; t < each.length; t++) {
            if (threads.beater(t) == t) {
                long saved = thinner == null ? 0 : thinner.most(next, k);
                long train = least[next++];
                each[t] = TrainGraph.none(train) ? train : train - threads.looks(t, k) - saved;
            }
        }
        // a thread that another beats costs at least as much, and more by what it looks worse
        for (int t = 0; t < each.length; t++) {
            int by = threads.beater(t);
            if (by != t) {
                long worse = threads.looks(by, k) - threads.looks(t, k);
                each[t] = TrainGraph.none(each[by]) ? each[by] : each[by] + Math.max(0, worse);
            }
        }
        return each;
    }
}
