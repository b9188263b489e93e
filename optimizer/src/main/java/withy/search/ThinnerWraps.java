package withy.search;

import java.util.List;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Share;

/**
 * What the wraps of a train can save where some reel position puts guides on a thinner place of the blank than they were taken to stand at. A wrap takes what
 * the diameter under its ring says; nothing is saved at a number that was taken to stand where the blank is thinnest for it.
 */
final class ThinnerWraps {
    /** What rounding can add to a difference, mg and thousandths of a minor unit. */
    private static final long ROUNDING = 4;

    private final Setting placed;
    private final long[][] mg;
    private final long[][] milli;

    /**
     * @param placed where the guides are taken to stand
     * @param thinnestMm for each number the place of any reel position where the blank is thinnest
     * @param fitters one a thread, at the places taken
     * @param at makes the fitter of a thread at other places
     * @param feet shapes of feet there are
     */
    ThinnerWraps(Setting placed, double[] thinnestMm, List<Fitter> fitters, At at, List<GuideTable.Feet> feet) {
        this.placed = placed;
        this.mg = new long[fitters.size()][thinnestMm.length];
        this.milli = new long[fitters.size()][thinnestMm.length];
        int most = feet.stream().mapToInt(GuideTable.Feet::count).max().orElse(0);
        double longest =
                feet.stream().mapToDouble(GuideTable.Feet::lengthMm).max().orElse(0);
        Setting thin = placed.withGuidesAt(thinnestMm);
        for (int t = 0; t < mg.length; t++) {
            Fitter thinner = null;
            for (int n = 0; n < thinnestMm.length; n++) {
                if (placed.odAt(thinnestMm[n]) < placed.odAt(placed.guideMm(n + 1))) {
                    thinner = thinner == null ? at.fitter(thin, t) : thinner;
                    Share there = fitters.get(t).guideWraps(most, longest, n + 1);
                    Share less = thinner.guideWraps(most, longest, n + 1);
                    mg[t][n] = there.massMg() - less.massMg() + ROUNDING;
                    milli[t][n] = there.costMilli() - less.costMilli() + ROUNDING;
                }
            }
        }
    }

    /** Fitters of the threads at any places. */
    interface At {
        Fitter fitter(Setting setting, int thread);
    }

    /** The most that the wraps of one thread can cost less, under prices that make weight a burden. */
    long most(int thread, Linear k) {
        double armMm = placed.footMm() - placed.handMm();
        double saved = 0;
        for (int n = 0; n < mg[thread].length; n++) {
            if (mg[thread][n] > 0) {
                double perMg = k.perMgAt(placed.guideMm(n + 1) - placed.footMm(), armMm);
                saved += perMg * mg[thread][n] + (double) k.perMilli() * milli[thread][n];
            }
        }
        return (long) Math.ceil(saved);
    }
}
