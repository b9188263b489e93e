package withy.search;

import withy.brief.Brief.HandleForm;
import withy.catalog.Adhesive;
import withy.catalog.Blank;
import withy.catalog.Finish;
import withy.rod.BlankShape;
import withy.rod.Consumables;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * What a blank costs with the reel and all that every rod needs, under any prices.
 *
 * @param shape the blank
 * @param armMm how far behind the foot centre the rod swings about the hand, mm
 * @param milli blank, work on every rod, sundries, the cheapest adhesive and finish, thousandths of a minor unit
 * @param style style points of the blank, hundredths
 * @param missed nice wishes every rod on it has missed at least, but for what its other parts are credited, thousandths of a step
 * @param wraps what goes on its joints
 */
record BlankCost(BlankShape shape, double armMm, long milli, long style, long missed, JointWraps wraps) {

    static BlankCost of(Ground ground, BlankShape shape) {
        Blank blank = shape.blank();
        long milli = ground.tariff.partMilli(blank, 1)
                + ground.tariff.everyRodMilli(shape.joints().size())
                + (ground.threads.isEmpty() ? 0 : fixedMilli(ground));
        long style = ground.style.part(blank, HandleForm.SPLIT, Station.BLANK, blank, 1);
        return new BlankCost(
                shape, Setting.armMm(ground.brief), milli, style, missed(ground, blank), ground.jointWraps);
    }

    /** A number it costs no less than at one reel position, mm from the butt, whatever thread and finish. */
    long at(int foot, Linear k) {
        return bare(foot, k) + wraps.floor(shape, foot, armMm, k);
    }

    /** The same without the wraps of its joints. */
    private long bare(int foot, Linear k) {
        double moment = (shape.mass().firstGmm() - shape.mass().massG() * foot) * 1000;
        double inertia = shape.mass().inertiaGmm2(foot - armMm) * 1000;
        return k.constant()
                + k.perMg() * shape.blank().massMg()
                + (long) (k.perMgMm() * moment)
                + (long) (k.perMgMm2() * inertia)
                + k.perMilli() * milli
                - k.perStyleCenti() * style
                + k.perMilliStep() * missed;
    }

    private static long missed(Ground ground, Blank blank) {
        long finish = Long.MAX_VALUE;
        for (Finish one : ground.finishes) {
            finish = Math.min(finish, ground.wishes.part(Station.FINISH, one, 1));
        }
        long adhesive = Long.MAX_VALUE;
        for (Adhesive one : ground.adhesives) {
            adhesive = Math.min(adhesive, ground.wishes.part(Station.ADHESIVE, one, 1));
        }
        return ground.wishes.blank(blank) + ground.wishes.part(Station.BLANK, blank, 1) + finish + adhesive;
    }

    /** Cheapest sundries, adhesive and finish. */
    private static long fixedMilli(Ground ground) {
        long least = Long.MAX_VALUE;
        for (Finish finish : ground.finishes) {
            for (Adhesive adhesive : ground.adhesives) {
                least = Math.min(
                        least, ground.tariff.fixedMilli(new Consumables(ground.threads.get(0), finish, adhesive), 0));
            }
        }
        return least;
    }
}
