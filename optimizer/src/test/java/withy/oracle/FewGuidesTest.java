package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Changed;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rules.Rulebook;
import withy.search.Search;

/** The search where there are fewer pieces of a guide than a train would take, against every build there is; and that it gets to its end on a large list. */
class FewGuidesTest {
    private static final long SEEDS = 80;
    private static final long BUILDS = 12_000;
    private static final long MOST_STEPS = 3_000;

    private static int asked;
    private static int changed;

    @TestFactory
    Stream<DynamicTest> bestOfAllWithFewPieces() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop.Case shop = SmallShop.of(seed, BUILDS);
                    SmallShop.Case few = few(seed, shop);
                    Enumeration.Found found = OptimumTest.compare("seed " + seed, few);
                    Build plenty = new Search(shop.catalog())
                            .solve(shop.query(), Watch.NONE)
                            .build();
                    asked++;
                    changed += differs(plenty, found.best()) ? 1 : 0;
                }));
    }

    @AfterAll
    static void piecesWereShort() {
        if (asked == SEEDS) {
            assertTrue(changed >= 20, "answers that fewer pieces change: " + changed);
        }
    }

    private static boolean differs(@Nullable Build one, @Nullable Build other) {
        return one == null ? other != null : !one.equals(other);
    }

    /** The same shop with one to five pieces of each guide. */
    private static SmallShop.Case few(long seed, SmallShop.Case shop) {
        Random random = new Random(seed * 53 + 1);
        Map<String, PartFacts> facts = new LinkedHashMap<>();
        for (Part part : shop.catalog().all(PartKind.GUIDE)) {
            PartFacts own = part.facts().withStock(1 + random.nextInt(5));
            facts.put(part.id(), Changed.with(own, "leadDays", null));
        }
        return new SmallShop.Case(shop.catalog().changed(facts, "few " + seed), shop.query());
    }

    /** Where the guides of the best trains are short, it was given up after twenty thousand builds with too many of one guide. */
    @Test
    void trainsWithTooManyOfAGuideAreNotWalked() throws IOException {
        Path home = Path.of(System.getProperty("withy.home", ".."));
        Catalog wide = CatalogReader.read(home.resolve("catalog-samples/wide"), SampleCatalogs.AS_OF)
                .catalog();
        assertNotNull(wide);
        Map<String, PartFacts> facts = new LinkedHashMap<>();
        for (Part part : wide.all(PartKind.GUIDE)) {
            facts.put(part.id(), Changed.with(part.facts().withStock(3), "leadDays", null));
        }
        Catalog few = wide.changed(facts, "three of each guide");
        for (String scenario : List.of("quay-squid-nice-wishes", "sea-trout-travel")) {
            Brief brief = Scenarios.brief(scenario, few);
            AtomicLong steps = new AtomicLong();
            Watch watch = new Watch(() -> steps.incrementAndGet() > MOST_STEPS, (build, objectives, score) -> {});
            Solution solution = new Search(few).solve(Query.of(brief, Rulebook.standard()), watch);
            assertTrue(solution.proven(), scenario + " after " + steps + " steps: " + solution);
        }
    }
}
