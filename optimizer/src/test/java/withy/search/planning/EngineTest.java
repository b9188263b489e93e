package withy.search.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Objects;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Layout;
import withy.rules.Rulebook;
import withy.search.SmallShop;

/** The engine against proof and enumeration, on small catalogues drawn from seeds. */
class EngineTest {
    /** Layouts completed and moves on stations within which the optimum must be reached. */
    private static final EngineSettings STATED = EngineSettings.STANDARD.with(1_000, 4_000);

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void withoutASeedTheOptimumIsReached(long seed) {
        SmallShop shop = SmallShop.of(seed);
        Query query = shop.query(Rulebook.standard());
        Solution proven = shop.proof(query);
        assertTrue(proven.proven(), () -> "seed " + seed);

        Improvement found = Engine.improve(shop.problem(query), null, STATED.with(1_000, 0), Watch.NONE);

        assertEquals(proven.score(), found.score(), () -> "seed " + seed);
        assertTrue(found.completed() <= 1_000, () -> "seed " + seed + ": " + found.completed() + " layouts");
        assertTrue(shop.legal(query, build(found)), () -> "seed " + seed);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 4, 5})
    void aRuleOutsideTheChainIsKeptAndTheOptimumFound(long seed) {
        SmallShop shop = SmallShop.of(seed);
        Query query = shop.narrow(TwoStationsAtMost.added());
        Problem problem = shop.problem(query, new Layout("blank", 240, HandleForm.SPLIT, 7));
        Enumeration all = Enumeration.of(problem);
        assertTrue(all.best() < Long.MAX_VALUE, () -> "seed " + seed + ": nothing legal in " + all.tried());

        Improvement found = Engine.improve(problem, null, STATED, Watch.NONE);

        assertEquals(all.best(), found.score(), () -> "seed " + seed + " among " + all.tried());
        assertTrue(shop.legal(query, build(found)), () -> "seed " + seed);
    }

    private static Build build(Improvement found) {
        return Objects.requireNonNull(found.build());
    }
}
