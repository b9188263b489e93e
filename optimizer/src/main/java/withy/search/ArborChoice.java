package withy.search;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.Arbor;
import withy.rules.Supply;

/**
 * The arbors worth looking at: one can be left out when another goes wherever it goes and is as light and as cheap. None is left out where weight
 * under the hand may be wanted, or where the question names arbors.
 */
final class ArborChoice {
    /** Furthest a seat reaches from the foot centre, mm. */
    private static final double SEAT_REACH_MM = 150;

    /** Pieces no rod needs more of. */
    private static final int MOST_PIECES = 3;

    private ArborChoice() {}

    static List<Arbor> of(Task task) {
        if (task.bounds.outsideMgMm() != Long.MAX_VALUE
                || task.wishes.mostCredit() > 0
                || !task.brief.refused().isEmpty()
                || !task.query.fixed().isEmpty()
                || !task.query.forced().isEmpty()
                || weightMayBeWanted(task)) {
            return task.arbors;
        }
        List<Arbor> kept = new ArrayList<>();
        for (int i = 0; i < task.arbors.size(); i++) {
            boolean beaten = false;
            for (int j = 0; j < task.arbors.size() && !beaten; j++) {
                Arbor one = task.arbors.get(i);
                Arbor other = task.arbors.get(j);
                beaten = i != j && asGood(task, other, one) && (j < i || !asGood(task, one, other));
            }
            if (!beaten) {
                kept.add(task.arbors.get(i));
            }
        }
        return kept;
    }

    private static boolean weightMayBeWanted(Task task) {
        double arm = task.brief.rodType().spinningReel() ? 0 : 25;
        for (int side = -1; side <= 1; side++) {
            Linear k = new Prices(side * task.scoring.perOutsideMgMm(), 0, 0, 0, 0).linear(task, 0);
            if (k.leastPerMg(-SEAT_REACH_MM, SEAT_REACH_MM, arm) < 0) {
                return true;
            }
        }
        return false;
    }

    /** True where an arbor goes wherever the other goes, and costs and weighs no more. */
    private static boolean asGood(Task task, Arbor one, Arbor other) {
        return one.odMm() >= other.odMm()
                && one.idMm() <= other.idMm()
                && one.minWallMm() <= other.minWallMm()
                && one.lengthMm() >= other.lengthMm()
                && one.densityGMm3() <= other.densityGMm3()
                && task.tariff.partMilli(one, 1) <= task.tariff.partMilli(other, 1)
                && task.tariff.workMilli(one) <= task.tariff.workMilli(other)
                && one.facts().durabilityClass() >= other.facts().durabilityClass()
                && asMany(task, one, other);
    }

    private static boolean asMany(Task task, Arbor one, Arbor other) {
        Supply of = Supply.of(one, task.brief, task.catalog.asOf());
        Supply ofOther = Supply.of(other, task.brief, task.catalog.asOf());
        return of.covers(MOST_PIECES) || !ofOther.orderable() && of.free() >= ofOther.free();
    }
}
