package withy.search.planning;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rules.Rulebook;
import withy.search.Search;
import withy.search.SmallShop;

/** The engine against proof and enumeration, on small catalogues drawn from seeds. */
class EngineTest {
    /** Layouts completed and moves on stations within which the optimum must be reached. */
    private static final EngineSettings STATED = EngineSettings.STANDARD.with(1_000, 4_000);

    private static final Layout LAYOUT = new Layout("blank", 240, HandleForm.SPLIT, 7);

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15})
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
        Problem problem = shop.problem(query, LAYOUT);
        Enumeration all = Enumeration.of(problem);
        assertTrue(all.best() < Long.MAX_VALUE, () -> "seed " + seed + ": nothing legal in " + all.tried());

        Improvement found = Engine.improve(problem, null, STATED, Watch.NONE);

        assertEquals(all.best(), found.score(), () -> "seed " + seed + " among " + all.tried());
        assertTrue(shop.legal(query, build(found)), () -> "seed " + seed);
    }

    /** The kernel says nothing here: moves on stations must come from a worse build to the best by themselves. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 4})
    void movesOnStationsImproveASeed(long seed) {
        SmallShop shop = SmallShop.of(seed);
        Query query = shop.narrow(TwoStationsAtMost.added());
        Problem problem = shop.problem(query, LAYOUT);
        Enumeration all = Enumeration.of(problem);
        Build best = build(Engine.improve(problem, null, STATED, Watch.NONE));
        Build worse = worst(shop, query, problem, worst(shop, query, problem, best));
        assertTrue(shop.score(query, worse) > all.best(), () -> "seed " + seed + ": no worse build to begin with");

        Problem silent = shop.withKernel(problem, (layout, without, under) -> null);
        Improvement found = Engine.improve(silent, worse, EngineSettings.STANDARD.with(0, 20_000), Watch.NONE);

        assertEquals(all.best(), found.score(), () -> "seed " + seed + " among " + all.tried());
    }

    @Test
    void whatCannotBeProvenIsAnsweredWithItsGap() {
        SmallShop shop = SmallShop.of(2);
        Query query = shop.query(OneMakerForKeeperAndCheck.added());
        Solution given = shop.proof(query);
        assertFalse(given.proven());
        List<Long> told = new ArrayList<>();

        Solution solution = new Search(shop.catalog(), STATED)
                .solve(query, new Watch(() -> false, (build, objectives, score) -> told.add(score)));

        Build build = Objects.requireNonNull(solution.build());
        assertTrue(shop.legal(query, build));
        assertFalse(solution.proven());
        assertTrue(solution.bound() < solution.score());
        assertTrue(solution.score() < given.score(), () -> solution.score() + " is no better than " + given.score());
        assertEquals(shop.score(query, build), solution.score());
        assertEquals(solution.score(), told.get(told.size() - 1));
    }

    @Test
    void equalInputGivesEqualAnswers() {
        SmallShop shop = SmallShop.of(2);
        Query query = shop.query(OneMakerForKeeperAndCheck.added());
        EngineSettings settings = EngineSettings.STANDARD.with(200, 2_000);

        Improvement once = Engine.improve(shop.problem(query), null, settings, Watch.NONE);
        Improvement again = Engine.improve(shop.problem(query), null, settings, Watch.NONE);

        assertEquals(once, again);
        assertTrue(once.measured() > 100, () -> once.measured() + " builds were measured");
    }

    @Test
    void everyScoreIsTheSameWhenWorkedOutAnew() {
        SmallShop shop = SmallShop.of(2);
        Query query = shop.query(TwoStationsAtMost.added());
        EngineSettings settings = EngineSettings.STANDARD.with(60, 600);

        Improvement checked = Engine.improve(shop.problem(query), null, settings.checking(), Watch.NONE);

        assertEquals(
                Engine.improve(shop.problem(query), null, settings, Watch.NONE).build(), checked.build());
        assertTrue(shop.legal(query, build(checked)));
    }

    @Test
    void anInterruptionEndsItWithTheBestSoFar() {
        SmallShop shop = SmallShop.of(4);
        Query query = shop.query(Rulebook.standard());
        int[] asked = {0};
        Watch soon = new Watch(() -> ++asked[0] > 100, (build, objectives, score) -> {});

        Improvement found = Engine.improve(shop.problem(query), null, STATED, soon);

        assertTrue(found.completed() < 110, () -> found.completed() + " layouts were completed");
        assertTrue(shop.legal(query, build(found)));
    }

    /** The worst legal build that differs in one station. */
    private static Build worst(SmallShop shop, Query query, Problem problem, Build from) {
        Build worst = from;
        for (Slot slot : problem.slots()) {
            for (Choice choice : slot.choices()) {
                Build other = from.with(slot.station(), choice);
                if (slot.station().number() <= LAYOUT.guideCount()
                        && shop.legal(query, other)
                        && shop.score(query, other) > shop.score(query, worst)) {
                    worst = other;
                }
            }
        }
        return worst;
    }

    private static Build build(Improvement found) {
        return Objects.requireNonNull(found.build());
    }
}
