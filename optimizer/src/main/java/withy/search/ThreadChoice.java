package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.WrapThread;
import withy.rod.BlankShape;
import withy.rod.Station;

/**
 * The threads worth looking at on a blank. Of two threads one can be left out when the other is as thin, as light and as cheap for a covered
 * length, and looks at least as well: thread mass of a covered length grows with tex / diameter and with the diameter, finish with the diameter.
 * None is left out where weight on the blank may be worth having: the balance counts for much, or has a ceiling. Not for several threads at once.
 */
final class ThreadChoice {
    private final Ground ground;
    private final Map<Asked, List<WrapThread>> known = new HashMap<>();
    private final Map<Beside, int[]> beaters = new HashMap<>();
    private final Map<Asked, Threads> dressed = new HashMap<>();

    ThreadChoice(Ground ground) {
        this.ground = ground;
    }

    /** Blanks of one standing are dressed alike. */
    private record Asked(Object blank, Stations stations, boolean everyThread) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Asked that
                    && everyThread == that.everyThread
                    && blank.equals(that.blank)
                    && stations.equals(that.stations);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * blank.hashCode() + stations.hashCode()) + ((everyThread) ? 1 : 0);
        }
    }

    private record Beside(Object blank, List<String> threads) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Beside that && blank.equals(that.blank) && threads.equals(that.threads);
        }

        @Override
        public int hashCode() {
            return 31 * blank.hashCode() + threads.hashCode();
        }
    }

    /**
     * The threads that may be used, likeliest first.
     *
     * @param mayHangBehind true where weight on the blank might be wanted: then every thread is worth looking at
     */
    List<WrapThread> on(Stations stations, Blank blank, boolean mayHangBehind) {
        Asked asked = asked(stations, blank, mayHangBehind);
        return known.computeIfAbsent(asked, any -> List.copyOf(now(stations, blank, asked.everyThread)));
    }

    private Asked asked(Stations stations, Blank blank, boolean mayHangBehind) {
        return new Asked(ground.style.standing(blank), stations, mayHangBehind && !ground.weightIsBurden);
    }

    /** The same with finish and adhesive. */
    Threads dressed(Stations stations, BlankShape shape) {
        boolean mayHangBehind = !ground.weightIsBurden && ground.hang.mayBeBehind(shape);
        return dressed.computeIfAbsent(
                asked(stations, shape.blank(), mayHangBehind),
                any -> Threads.of(ground, stations, shape.blank(), on(stations, shape.blank(), mayHangBehind)));
    }

    private List<WrapThread> now(Stations stations, Blank blank, boolean everyThread) {
        List<WrapThread> all = new ArrayList<>();
        for (WrapThread thread : ground.threads) {
            if (stations.allows(Station.THREAD, thread)) {
                all.add(thread);
            }
        }
        List<WrapThread> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (everyThread || beater(blank, all, i) < 0) {
                kept.add(all.get(i));
            }
        }
        kept.sort(Comparator.comparingLong((WrapThread thread) -> -style(blank, thread))
                .thenComparingLong(thread -> missed(thread)));
        return kept;
    }

    /**
     * For each thread one that beats it and is itself unbeaten, or itself: where weight ahead of the hand is a burden, no train with the thread costs
     * less than the same train with the other, and than that by what the other looks better.
     */
    int[] beaters(Blank blank, List<WrapThread> threads) {
        List<String> ids = threads.stream().map(WrapThread::id).toList();
        return beaters.computeIfAbsent(
                new Beside(ground.style.standing(blank), ids), any -> beatersNow(blank, threads));
    }

    private int[] beatersNow(Blank blank, List<WrapThread> threads) {
        int[] beaters = new int[threads.size()];
        for (int i = 0; i < beaters.length; i++) {
            int by = i;
            for (int next = beater(blank, threads, by); next >= 0; next = beater(blank, threads, by)) {
                by = next;
            }
            beaters[i] = by;
        }
        return beaters;
    }

    /** A thread that is as thin, as light, as cheap and looks as well, or -1; of equal ones the first. */
    private int beater(Blank blank, List<WrapThread> all, int i) {
        for (int j = 0; j < all.size(); j++) {
            boolean asGood = asGood(blank, all.get(j), all.get(i));
            if (j != i && asGood && (j < i || !asGood(blank, all.get(i), all.get(j)))) {
                return j;
            }
        }
        return -1;
    }

    private boolean asGood(Blank blank, WrapThread one, WrapThread other) {
        return one.diameterMm() <= other.diameterMm()
                && one.tex() / one.diameterMm() <= other.tex() / other.diameterMm()
                && perCover(one) <= perCover(other)
                && style(blank, one) >= style(blank, other)
                && missed(one) <= missed(other);
    }

    /** Price of a covered length on one diameter, but for what all threads share. */
    private double perCover(WrapThread thread) {
        return ground.tariff.threadMilli(thread, thread.metresPerSpool() * 1000)
                / (thread.metresPerSpool() * thread.diameterMm());
    }

    /** Style points of a thread on a blank. */
    long style(Blank blank, WrapThread thread) {
        return ground.style.part(blank, HandleForm.SPLIT, Station.THREAD, thread, 1);
    }

    private long missed(WrapThread thread) {
        return ground.wishes.part(Station.THREAD, thread, 1);
    }
}
