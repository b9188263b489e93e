package withy.search;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.Arbor;
import withy.objectives.Solver.Query;
import withy.rod.Setting;
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

    /** True where some may be left out. */
    static boolean few(Query query, Aim aim) {
        return aim.bounds().outsideMgMm() == Long.MAX_VALUE
                && query.brief().refused().isEmpty()
                && query.fixed().isEmpty()
                && !weightMayBeWanted(aim);
    }

    static List<Arbor> of(Ground ground) {
        if (ground.wishes.mostCredit() > 0) {
            return ground.arbors;
        }
        List<Arbor> kept = new ArrayList<>();
        for (int i = 0; i < ground.arbors.size(); i++) {
            if (insisted(ground, ground.arbors.get(i)) || !beaten(ground, i)) {
                kept.add(ground.arbors.get(i));
            }
        }
        return kept;
    }

    /** True where another does as well; of two that do as well as each other the later one is beaten. */
    private static boolean beaten(Ground ground, int i) {
        Arbor one = ground.arbors.get(i);
        for (int j = 0; j < ground.arbors.size(); j++) {
            Arbor other = ground.arbors.get(j);
            if (i != j && asGood(ground, other, one) && (j < i || !asGood(ground, one, other))) {
                return true;
            }
        }
        return false;
    }

    private static boolean insisted(Ground ground, Arbor arbor) {
        return ground.brief.insisted().stream().anyMatch(wish -> wish.partId().equals(arbor.id()));
    }

    private static boolean weightMayBeWanted(Aim aim) {
        for (int side = -1; side <= 1; side++) {
            Linear k = new Prices(side * aim.scoring().perOutsideMgMm(), 0, 0, 0, 0).linear(aim, 0);
            if (k.leastPerMg(-SEAT_REACH_MM, SEAT_REACH_MM, Setting.armMm(aim.brief())) < 0) {
                return true;
            }
        }
        return false;
    }

    /** True where an arbor goes wherever the other goes, and costs and weighs no more. */
    private static boolean asGood(Ground ground, Arbor one, Arbor other) {
        return one.odMm() >= other.odMm()
                && one.idMm() <= other.idMm()
                && one.minWallMm() <= other.minWallMm()
                && one.lengthMm() >= other.lengthMm()
                && one.densityGMm3() <= other.densityGMm3()
                && ground.tariff.partMilli(one, 1) <= ground.tariff.partMilli(other, 1)
                && ground.tariff.workMilli(one) <= ground.tariff.workMilli(other)
                && one.facts().durabilityClass() >= other.facts().durabilityClass()
                && asMany(ground, one, other);
    }

    private static boolean asMany(Ground ground, Arbor one, Arbor other) {
        Supply of = Supply.of(one, ground.brief, ground.catalog.asOf());
        Supply ofOther = Supply.of(other, ground.brief, ground.catalog.asOf());
        return of.covers(MOST_PIECES) || !ofOther.orderable() && of.free() >= ofOther.free();
    }
}
