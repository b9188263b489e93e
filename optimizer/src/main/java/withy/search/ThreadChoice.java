package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.WrapThread;
import withy.rod.Station;

/**
 * The threads worth looking at on a blank. Of two threads one can be left out when the other is as thin, as light and as cheap for a covered
 * length, and looks at least as well: thread mass of a covered length grows with tex / diameter and with the diameter, finish with the diameter.
 * None is left out where weight on the blank may be worth having: the balance counts for much, or has a ceiling.
 */
final class ThreadChoice {
    private ThreadChoice() {}

    /**
     * The threads that may be used, likeliest first.
     *
     * @param mayHangBehind true where weight on the blank might be wanted: then every thread is worth looking at
     */
    static List<WrapThread> on(Ground ground, Stations stations, Blank blank, boolean mayHangBehind) {
        List<WrapThread> all = new ArrayList<>();
        for (WrapThread thread : ground.threads) {
            if (stations.allows(Station.THREAD, thread)) {
                all.add(thread);
            }
        }
        List<WrapThread> kept = new ArrayList<>();
        boolean burden = ground.weightIsBurden;
        for (int i = 0; i < all.size(); i++) {
            if (mayHangBehind && !burden || beater(ground, blank, all, i) < 0) {
                kept.add(all.get(i));
            }
        }
        kept.sort(Comparator.comparingLong((WrapThread thread) -> -style(ground, blank, thread))
                .thenComparingLong(thread -> missed(ground, thread)));
        return kept;
    }

    /**
     * For each thread one that beats it and is itself unbeaten, or itself: where weight ahead of the hand is a burden, no train with the thread costs
     * less than the same train with the other, and than that by what the other looks better.
     */
    static int[] beaters(Ground ground, Blank blank, List<WrapThread> threads) {
        int[] beaters = new int[threads.size()];
        for (int i = 0; i < beaters.length; i++) {
            int by = i;
            for (int next = beater(ground, blank, threads, by); next >= 0; next = beater(ground, blank, threads, by)) {
                by = next;
            }
            beaters[i] = by;
        }
        return beaters;
    }

    /** A thread that is as thin, as light, as cheap and looks as well, or -1; of equal ones the first. */
    private static int beater(Ground ground, Blank blank, List<WrapThread> all, int i) {
        for (int j = 0; j < all.size(); j++) {
            boolean asGood = asGood(ground, blank, all.get(j), all.get(i));
            if (j != i && asGood && (j < i || !asGood(ground, blank, all.get(i), all.get(j)))) {
                return j;
            }
        }
        return -1;
    }

    private static boolean asGood(Ground ground, Blank blank, WrapThread one, WrapThread other) {
        return one.diameterMm() <= other.diameterMm()
                && one.tex() / one.diameterMm() <= other.tex() / other.diameterMm()
                && perCover(ground, one) <= perCover(ground, other)
                && style(ground, blank, one) >= style(ground, blank, other)
                && missed(ground, one) <= missed(ground, other);
    }

    /** Price of a covered length on one diameter, but for what all threads share. */
    private static double perCover(Ground ground, WrapThread thread) {
        return ground.tariff.threadMilli(thread, thread.metresPerSpool() * 1000)
                / (thread.metresPerSpool() * thread.diameterMm());
    }

    private static long style(Ground ground, Blank blank, WrapThread thread) {
        return ground.style.part(blank, HandleForm.SPLIT, Station.THREAD, thread, 1);
    }

    private static long missed(Ground ground, WrapThread thread) {
        return ground.wishes.part(Station.THREAD, thread, 1);
    }
}
