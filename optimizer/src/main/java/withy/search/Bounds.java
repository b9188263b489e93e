package withy.search;

import java.util.Map;
import withy.brief.Objective;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.rod.Tariff;

/**
 * Sums with a ceiling, in the whole numbers of {@link ObjectiveVector}; {@link Long#MAX_VALUE} where there is none.
 *
 * @param weightMg largest weight
 * @param outsideMgMm largest moment outside the balance zone
 * @param inertiaMgMm2 largest swing weight
 * @param costMilli largest cost: the budget's or a question's
 * @param styleCenti least style; {@link Long#MIN_VALUE} where there is none
 * @param marginClasses least durability margin; {@link Long#MIN_VALUE} where there is none
 */
record Bounds(long weightMg, long outsideMgMm, long inertiaMgMm2, long costMilli, long styleCenti, long marginClasses) {

    static Bounds of(Query query, Tariff tariff) {
        long cost = ceiling(query.ceilings(), Objective.PRICE);
        Long budget = query.brief().budgetMinor();
        boolean budgeted =
                query.rulebook().rules().stream().anyMatch(rule -> rule.code().equals("budget"));
        if (budget != null && budgeted) {
            cost = Math.min(cost, tariff.costWithin(budget));
        }
        return new Bounds(
                ceiling(query.ceilings(), Objective.WEIGHT),
                ceiling(query.ceilings(), Objective.BALANCE),
                ceiling(query.ceilings(), Objective.SWING_WEIGHT),
                cost,
                floor(query.ceilings(), Objective.STYLE),
                floor(query.ceilings(), Objective.DURABILITY));
    }

    /** True where a build keeps all of them. */
    boolean keeps(ObjectiveVector v) {
        return v.weightMg() <= weightMg
                && v.outsideMgMm() <= outsideMgMm
                && v.inertiaMgMm2() <= inertiaMgMm2
                && v.costMilli() <= costMilli
                && v.styleCenti() >= styleCenti
                && v.durabilityClasses() >= marginClasses;
    }

    private static long ceiling(Map<Objective, Long> ceilings, Objective objective) {
        Long value = ceilings.get(objective);
        return value == null ? Long.MAX_VALUE : value;
    }

    /** Ceilings on a loss are floors on what is better in plenty. */
    private static long floor(Map<Objective, Long> ceilings, Objective objective) {
        Long value = ceilings.get(objective);
        return value == null ? Long.MIN_VALUE : -value;
    }
}
