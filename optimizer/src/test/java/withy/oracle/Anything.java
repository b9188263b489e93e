package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertTrue;

import withy.catalog.Catalog;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.search.Search;

/**
 * Whether anything answers a question. Without a rule or a wish even a small catalogue may have more builds than can be measured one by one (without the rule of
 * the guide train any guide follows any): then a search that knows nothing of earlier questions is asked for the best, where explanations ask for any.
 */
final class Anything {
    /** Builds that are measured one by one. */
    static final long MOST_MEASURED = 100_000;

    private Anything() {}

    /** True where some build is legal. */
    static boolean answers(Catalog catalog, Query query) {
        Enumeration all = new Enumeration(catalog, query, true);
        if (all.count() <= MOST_MEASURED) {
            return !all.some().isEmpty();
        }
        Solution best = new Search(catalog).solve(query, Watch.NONE);
        assertTrue(best.build() != null || best.proven(), "neither a build nor the proof of none: " + query);
        return best.build() != null;
    }
}
