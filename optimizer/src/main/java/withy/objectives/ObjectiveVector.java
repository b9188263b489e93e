package withy.objectives;

import withy.brief.Objective;
import withy.rod.LoadBearing;
import withy.rod.Rod;

/**
 * The six objectives of one rod in the whole numbers the search adds up.
 *
 * @param weightMg finished weight without reel, mg
 * @param outsideMgMm moment outside the wanted balance zone, mg·mm
 * @param inertiaMgMm2 swing weight about the hand, mg·mm²
 * @param costMilli cost before margin and tax, thousandths of a minor unit (the customer's price follows from it alone)
 * @param styleCenti style, hundredths of a point
 * @param durabilityClasses classes of the weakest load-bearing part above what was asked
 * @param missedMilliSteps nice wishes missed, thousandths of a step
 */
public record ObjectiveVector(
        long weightMg,
        long outsideMgMm,
        long inertiaMgMm2,
        long costMilli,
        long styleCenti,
        long durabilityClasses,
        long missedMilliSteps) {

    /** Of a measured rod. */
    public static ObjectiveVector of(Rod rod, Style style, NiceWishes wishes) {
        return new ObjectiveVector(
                rod.total().massMg(),
                rod.balance().outsideMgMm(),
                rod.total().inertiaMgMm2(),
                rod.costMilli(),
                style.of(rod),
                LoadBearing.weakestClass(rod) - (long) rod.brief().durabilityClass(),
                wishes.missedMilliSteps(rod));
    }

    /** Value of one objective in its whole-number unit. */
    public long value(Objective objective) {
        return switch (objective) {
            case WEIGHT -> weightMg;
            case BALANCE -> outsideMgMm;
            case SWING_WEIGHT -> inertiaMgMm2;
            case PRICE -> costMilli;
            case STYLE -> styleCenti;
            case DURABILITY -> durabilityClasses;
        };
    }

    /** Value with the sign turned where more is better: less is always better. */
    public long loss(Objective objective) {
        return objective.moreIsBetter() ? -value(objective) : value(objective);
    }

    /** True where this is at least as good in all six and better in one. */
    public boolean dominates(ObjectiveVector other) {
        boolean better = false;
        for (Objective objective : Objective.values()) {
            if (loss(objective) > other.loss(objective)) {
                return false;
            }
            better |= loss(objective) < other.loss(objective);
        }
        return better;
    }
}
