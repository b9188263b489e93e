package withy.search;

import java.util.Comparator;
import withy.catalog.Decal;
import withy.catalog.Finish;
import withy.catalog.Keeper;
import withy.catalog.WrapThread;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rod.Wraps;

/** What thread and finish at the front end of a handle weigh at most, whatever keeper, inscription, thread, finish and blank. */
final class EndDress {
    /** No handle with all that belongs to its end reaches further ahead, mm. */
    static final double REACH_MM = 1500;

    /** Keeper and inscription stand nearer their handle's end, mm. */
    private static final double NEAR_MM = 150;

    /** For what wraps add at their ends, and for rounding. */
    private static final int MARGIN = 2;

    private EndDress() {}

    /** In mg. */
    static long mostMg(Ground ground) {
        Setting any = ground.anySetting();
        double thickest = 0;
        for (var blank : ground.blanks) {
            BlankShape shape = ground.shape(blank);
            thickest = Math.max(thickest, shape.profile().largestBetween(0, blank.lengthMm()));
        }
        double thicker = Math.max(1, thickest / any.odAt(any.footMm() + NEAR_MM));
        double most = 0;
        for (WrapThread thread : ground.threads) {
            for (Finish finish : ground.finishes) {
                Consumables with = new Consumables(thread, finish, ground.adhesives.get(0));
                Fitter fitter = new Fitter(any, with, ground.tariff);
                most = Math.max(most, keeper(ground, fitter) + decal(ground, fitter));
            }
        }
        return (long) Math.ceil(MARGIN * thicker * most);
    }

    private static double keeper(Ground ground, Fitter fitter) {
        double at = ground.anySetting().footMm();
        return ground.keepers.stream()
                .max(Comparator.comparingDouble(EndDress::coveredMm))
                .map(keeper -> fitter.keeper(keeper, at).massMg()
                        - fitter.keeperAlone(keeper, at).massMg())
                .orElse(0L);
    }

    private static double coveredMm(Keeper keeper) {
        return keeper.feet() * (keeper.footLengthMm() + Wraps.BEYOND_FOOT_MM);
    }

    private static double decal(Ground ground, Fitter fitter) {
        double at = ground.anySetting().footMm();
        return ground.decals.stream()
                .max(Comparator.comparingDouble(Decal::widthMm))
                .map(decal -> fitter.decal(decal, at).massMg() - decal.massMg())
                .orElse(0L);
    }
}
