package withy.search;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Rates;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.rod.Balance;
import withy.rod.Build;
import withy.rod.Tariff;

/** Whether a build is worth showing beside the best one of a brief, and for what. */
final class Worth {
    /** Most that an alternative may be worse in the brief's own score, as a share of rank 1's. ASSUMED. */
    static final double MOST_REGRET = 0.12;

    private final Brief brief;
    private final Rates rates;
    private final Scoring own;

    /** By the priorities of a question. */
    Worth(Query query, Rates rates) {
        this.brief = query.brief();
        this.rates = rates;
        this.own = Scoring.of(brief, rates, query.priorities());
    }

    /** A build that was found, unless it costs too much of rank 1's score; without a strength where it is noticeably better in nothing. */
    List<Proposal> candidates(Solution found, Proposal best) {
        Build build = found.build();
        ObjectiveVector vector = found.objectives();
        if (build == null || vector == null) {
            return List.of();
        }
        long score = own.score(vector);
        return score - best.score() > MOST_REGRET * Math.abs(best.score())
                ? List.of()
                : List.of(new Proposal(
                        0,
                        build,
                        vector,
                        score,
                        found.bound(),
                        found.score() - found.bound(),
                        found.proven(),
                        strength(vector, best.objectives())));
    }

    /** The objective in which one beats the other by most steps, more than one; null where there is none. */
    private @Nullable Objective strength(ObjectiveVector one, ObjectiveVector other) {
        Objective strength = null;
        double most = 1;
        for (Objective objective : Objective.values()) {
            double steps = (other.loss(objective) - one.loss(objective)) / step(objective);
            if (steps > most) {
                most = steps;
                strength = objective;
            }
        }
        return strength;
    }

    /** A noticeable step in the whole-number unit of the objective. */
    private double step(Objective objective) {
        double step = brief.step(objective);
        return switch (objective) {
            case WEIGHT -> step * 1000;
            case BALANCE -> step / Balance.NMM_PER_MGMM;
            case SWING_WEIGHT -> step * 1e12;
            case PRICE -> step * Tariff.MILLI / new Tariff(rates, brief).factor();
            case STYLE -> step * 100;
            case DURABILITY -> step * 0.999;
        };
    }
}
