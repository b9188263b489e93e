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
 */
final class ThreadChoice {
    private ThreadChoice() {}

    /** Likeliest first. */
    static List<WrapThread> on(Task task, Stations stations, Blank blank) {
        List<WrapThread> all = new ArrayList<>();
        for (WrapThread thread : task.threads) {
            if (stations.allows(Station.THREAD, thread)) {
                all.add(thread);
            }
        }
        List<WrapThread> kept = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            if (!beaten(task, blank, all, i)) {
                kept.add(all.get(i));
            }
        }
        kept.sort(Comparator.comparingLong(thread -> -worth(task, blank, thread)));
        return kept;
    }

    private static boolean beaten(Task task, Blank blank, List<WrapThread> all, int i) {
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
                    return true;
                }
            }
        }
        return false;
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
