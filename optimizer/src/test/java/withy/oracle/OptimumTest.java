package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.Build;
import withy.rod.GuidePlan;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.search.Search;

/** The search against every build there is, on seeded small catalogues: same optimum, proven, or proven that there is none. */
class OptimumTest {
    private static final long SEEDS = 200;
    private static final long USUAL = 30_000;
    private static final long LARGE = 400_000;

    private static int asked;
    private static int possible;
    private static int bound;
    private static int tenThousand;
    private static int fewerGuides;

    /** Builds at most on the catalogue of a seed: every fortieth is a large one. */
    private static long builds(long seed) {
        return seed % 40 == 9 ? LARGE : USUAL;
    }

    @TestFactory
    Stream<DynamicTest> bestOfAll() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop.Case shop = SmallQuestion.of(seed, builds(seed));
                    Enumeration.Found found = compare("seed " + seed, shop);
                    asked++;
                    possible += found.best() != null ? 1 : 0;
                    bound += shop.query().brief().budgetMinor() != null ? 1 : 0;
                    tenThousand += found.builds() >= 10_000 ? 1 : 0;
                    fewerGuides += fewerThanUsual(shop, found.best()) ? 1 : 0;
                }));
    }

    /** The questions are worth asking; only judged where all of them were asked. */
    @AfterAll
    static void questionsWereWorthAsking() {
        if (asked == SEEDS) {
            assertTrue(possible >= 120, "with a legal build: " + possible);
            assertTrue(bound >= 50, "with a budget that binds: " + bound);
            assertTrue(tenThousand >= 140, "with 10,000 builds or more: " + tenThousand);
            assertTrue(fewerGuides >= 5, "with fewer guides than usual, the line clearing the blank: " + fewerGuides);
        }
    }

    private static boolean fewerThanUsual(SmallShop.Case shop, @Nullable Build best) {
        if (best == null) {
            return false;
        }
        Rod rod = Rod.measure(shop.catalog(), shop.query().brief(), best);
        int usual = GuidePlan.fewestGuides(
                rod.brief().rodType(), rod.setting().blank().lengthMm());
        return rod.setting().guideCount() < usual;
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> bestOfAllOnManyMore() {
        return LongStream.range(SEEDS, 4000)
                .mapToObj(seed -> DynamicTest.dynamicTest(
                        "seed " + seed, () -> compare("seed " + seed, SmallQuestion.of(seed, builds(seed)))));
    }

    /** A plate that the brief insists on is set though no inscription is asked for. */
    @Test
    void aPlateInsistedOnIsSet() {
        assertNotNull(compare("seed 1073", SmallQuestion.of(1073, USUAL)).best());
    }

    /** A seat that goes on with one hood or none is not left out because nothing fills it with another. */
    @Test
    void whatFillsASeatWithOneHoodOnly() {
        assertNotNull(compare("seed 2403", SmallQuestion.of(2403, builds(2403))).best());
    }

    /** Leaving out the trains of a handle that its own rules refuse changes nothing. */
    @Test
    void enumerationLeavesNothingOut() {
        for (long seed = 1; seed < 6; seed++) {
            SmallShop.Case shop = SmallShop.of(seed, 12_000);
            Enumeration.Found quick = new Enumeration(shop.catalog(), shop.query(), true).run();
            Enumeration.Found whole = new Enumeration(shop.catalog(), shop.query(), false).run();
            assertEquals(whole.score(), quick.score(), "seed " + seed);
            assertEquals(whole.builds(), whole.measured(), "seed " + seed);
        }
    }

    static Enumeration.Found compare(String what, SmallShop.Case shop) {
        Enumeration.Found found = new Enumeration(shop.catalog(), shop.query(), true).run();
        Solution solution = new Search(shop.catalog()).solve(shop.query(), Watch.NONE);
        String told = what + ", best " + found.best() + ", search " + solution.build();
        assertTrue(solution.proven(), () -> what + " is not proven");
        if (found.best() == null) {
            assertNull(solution.build(), told);
            return found;
        }
        assertNotNull(solution.build(), told);
        assertEquals(found.score(), solution.score(), told);
        assertEquals(solution.score(), solution.bound(), told);
        legal(what, shop, solution);
        return found;
    }

    /** What the search gives is legal, and scores and measures what it says. */
    private static void legal(String what, SmallShop.Case shop, Solution solution) {
        Build build = solution.build();
        if (build == null) {
            return;
        }
        Rod rod = Rod.measure(shop.catalog(), shop.query().brief(), build);
        assertTrue(Judge.legal(rod, shop.query().rulebook()), () -> what + " is illegal: " + build);
        Style style = new Style(shop.catalog(), shop.query().brief());
        ObjectiveVector vector =
                ObjectiveVector.of(rod, style, new NiceWishes(shop.query().brief()));
        assertEquals(vector, solution.objectives(), what);
        Scoring scoring = Scoring.of(
                shop.query().brief(), shop.catalog().rates(), shop.query().priorities());
        assertEquals(scoring.score(vector), solution.score(), what);
    }
}
