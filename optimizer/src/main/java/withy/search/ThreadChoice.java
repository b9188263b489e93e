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
    /** Further than any tip, mm. */
    private static final double FURTHEST_MM = 6000;

    private ThreadChoice() {}

    /**
     * The threads that may be used, likeliest first.
     *
     * @param mayHangBehind true where weight on the blank might be wanted: then every thread is worth looking at
     */
    static List<WrapThread> on(Task task, Stations stations, Blank blank, boolean mayHangBehind) {
        List<WrapThread> all = new ArrayList<>();
        for (WrapThread thread : task.threads) {
            if (stations.allows(Station.THREAD, thread)) {
                all.add(thread);
            }
        }
        List<WrapThread> kept = new ArrayList<>();
        boolean burden = weightIsBurden(task);
        for (int i = 0; i < all.size(); i++) {
            if (mayHangBehind && !burden || beater(task, blank, all, i) < 0) {
                kept.add(all.get(i));
            }
        }
        kept.sort(Comparator.comparingLong(thread -> -worth(task, blank, thread)));
        return kept;
    }

    /**
     * For each thread one that beats it and is itself unbeaten, or itself: where weight ahead of the hand is a burden, no train with the thread costs
     * less than the same train with the other, and than that by what the other looks better.
     */
    static int[] beaters(Task task, Blank blank, List<WrapThread> threads) {
        int[] beaters = new int[threads.size()];
        for (int i = 0; i < beaters.length; i++) {
            int by = i;
            for (int next = beater(task, blank, threads, by); next >= 0; next = beater(task, blank, threads, by)) {
                by = next;
            }
            beaters[i] = by;
        }
        return beaters;
    }

    /** True where a milligram more ahead of the reel foot never makes a rod better, wherever it hangs. */
    private static boolean weightIsBurden(Task task) {
        if (task.bounds.outsideMgMm() != Long.MAX_VALUE) {
            return false;
        }
        long own = task.scoring.perOutsideMgMm();
        return leastPerMg(task, own) >= 0 && leastPerMg(task, -own) >= 0;
    }

    private static double leastPerMg(Task task, long slope) {
        Linear k = new Prices(slope, 0, 0, 0, 0).linear(task, 0);
        double arm = task.brief.rodType().spinningReel() ? 0 : 25;
        double vertex = -arm - k.perMgMm() / (2.0 * k.perMgMm2());
        double u = Math.max(0, Math.min(FURTHEST_MM, vertex));
        return k.perMg() + k.perMgMm() * u + k.perMgMm2() * (u + arm) * (u + arm);
    }

    /** A thread that is as thin, as light, as cheap and looks as well, or -1; of equal ones the first. */
    private static int beater(Task task, Blank blank, List<WrapThread> all, int i) {
        WrapThread one = all.get(i);
        for (int j = 0; j < all.size(); j++) {
            WrapThread other = all.get(j);
            if (j != i
                    && other.diameterMm() <= one.diameterMm()
                    && other.tex() / other.diameterMm() <= one.tex() / one.diameterMm()
                    && perCover(task, other) <= perCover(task, one)
                    && worth(task, blank, other) >= worth(task, blank, one)) {
                boolean equal = other.diameterMm() == one.diameterMm()
                        && other.tex() == one.tex()
                        && perCover(task, other) == perCover(task, one)
                        && worth(task, blank, other) == worth(task, blank, one);
                if (!equal || j < i) {
                    return j;
                }
            }
        }
        return -1;
    }

    /** Price of a covered length on one diameter, but for what all threads share. */
    private static double perCover(Task task, WrapThread thread) {
        return task.tariff.threadMilli(thread, thread.metresPerSpool() * 1000)
                / (thread.metresPerSpool() * thread.diameterMm());
    }

    /** Style and wishes, in the score's units. */
    private static long worth(Task task, Blank blank, WrapThread thread) {
        return task.scoring.perStyleCenti() * task.style.part(blank, HandleForm.SPLIT, Station.THREAD, thread, 1)
                - task.scoring.perMilliStep() * task.wishes.part(Station.THREAD, thread, 1);
    }
}
