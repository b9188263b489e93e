package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.oracle.Enumeration.Legal;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.search.Search;

/** Some build or the proof that there is none, against every build of small catalogues. */
class AnyTest {
    private static final int SEEDS = 24;
    private static final long MOST_BUILDS = 400;

    @TestFactory
    Stream<DynamicTest> someBuildOrNone() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> someBuildOrNone(seed)));
    }

    /** As asked, with just enough money, and with the least coin less than that. */
    private static void someBuildOrNone(long seed) {
        SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
        Query query = shop.query();
        List<Legal> all = new Enumeration(shop.catalog(), query, true).legal();
        some(shop, query, all.isEmpty());
        if (!all.isEmpty()) {
            Brief brief = query.brief();
            long cheapest = all.stream()
                    .mapToLong(one -> Rod.measure(shop.catalog(), brief, one.build())
                            .figures()
                            .priceMinor())
                    .min()
                    .orElseThrow();
            some(shop, query.withBrief(Changed.with(brief, "budgetMinor", cheapest)), false);
            some(shop, query.withBrief(Changed.with(brief, "budgetMinor", cheapest - 1)), true);
        }
    }

    private static void some(SmallShop.Case shop, Query query, boolean none) {
        Search search = new Search(shop.catalog());
        Solution first = search.any(query, Watch.NONE);
        for (Solution solution : List.of(first, search.any(query, Watch.NONE))) {
            assertEquals(none, solution.build() == null);
            assertEquals(none, solution.proven());
            if (!none) {
                Build build = Objects.requireNonNull(solution.build());
                assertTrue(Judge.legal(Rod.measure(shop.catalog(), query.brief(), build), query.rulebook()));
            }
        }
    }
}
