package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.Brief.Wish;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.Search;

/** The search against OR-Tools CP-SAT, a solver that shares nothing with it but what rules and measurements say of single parts and pairs. */
class CpSatTest {
    private static final Path HOME = Path.of(System.getProperty("withy.home", ".."));
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);

    /** A short rod, two casting rods, one of them with a fore grip. */
    private static final List<String> QUICK =
            List.of("breakwater-metal-jig", "harbour-jigging", "tiny-stream-ultralight");

    /** Four pieces, a fish that is lifted, nice wishes: a minute each. */
    private static final List<String> SLOW =
            List.of("sea-trout-travel", "pier-mackerel-garfish", "quay-squid-nice-wishes");

    @TestFactory
    Stream<DynamicTest> oneLayoutOfAScenario() throws IOException {
        return oneLayoutOf(QUICK);
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> oneLayoutOfMoreScenarios() throws IOException {
        return oneLayoutOf(SLOW);
    }

    private static Stream<DynamicTest> oneLayoutOf(List<String> scenarios) throws IOException {
        Catalog catalog = Objects.requireNonNull(
                CatalogReader.read(HOME.resolve("catalog-samples/bench"), DAY).catalog());
        Search search = new Search(catalog);
        return scenarios.stream()
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Path file = HOME.resolve("scenarios").resolve(name).resolve("brief.json");
                    Brief brief = BriefReader.read(file, new BriefContext(catalog.rates(), DAY))
                            .orThrow();
                    oneLayout(catalog, search, brief, 0);
                    oneLayout(catalog, search, brief, -10);
                }));
    }

    /** On the layout of rank 1, or on one with the reel elsewhere. */
    private static void oneLayout(Catalog catalog, Search search, Brief brief, int shiftMm) {
        Build plain = Objects.requireNonNull(
                search.solve(Query.of(brief, Rulebook.standard()), Watch.NONE).build());
        Layout layout = plain.layout();
        Brief formed = Changed.with(brief, "handle.form", new Wish<>(layout.form(), true, 0));
        Choice thread = Objects.requireNonNull(plain.choices().get(Station.THREAD));
        Map<Station, Choice> given = Map.of(Station.BLANK, Choice.of(layout.blankId()), Station.THREAD, thread);
        int foot = layout.reelFootMm() + shiftMm;
        Query query = Query.of(formed, Rulebook.standard()).fixing(given, Set.of(), foot);
        Solution solution = search.solve(query, Watch.NONE);
        assertTrue(solution.proven(), "proven");
        CpSatRod.Found best = best(catalog, query, EveryLayout.of(catalog, query, blank(catalog, layout.blankId())));
        same(best, solution);
        if (shiftMm == 0) {
            assertNotNull(best.build(), "rank 1 itself is legal");
        }
    }

    @TestFactory
    Stream<DynamicTest> allLayoutsOfASmallCatalogue() {
        return LongStream.range(0, 8)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop.Case shop = SmallShop.of(seed, 30_000);
                    List<Setting> layouts = EveryLayout.of(shop.catalog(), shop.query());
                    Solution solution = new Search(shop.catalog()).solve(shop.query(), Watch.NONE);
                    assertTrue(solution.proven(), "proven");
                    same(best(shop.catalog(), shop.query(), layouts), solution);
                }));
    }

    private static void same(CpSatRod.Found best, Solution solution) {
        String told = "constraint model "
                + (best.build() == null ? "none" : best.build().signature()) + ", search "
                + (solution.build() == null ? "none" : solution.build().signature());
        assertEquals(best.score(), solution.score(), told);
    }

    private static CpSatRod.Found best(Catalog catalog, Query query, List<Setting> layouts) {
        CpSatRod.Found best = new CpSatRod.Found(null, Long.MAX_VALUE);
        for (Setting setting : layouts) {
            CpSatRod.Found found = CpSatRod.solve(catalog, query, setting, EveryLayout.consumables(catalog, query));
            best = found.score() < best.score() ? found : best;
        }
        return best;
    }

    private static Blank blank(Catalog catalog, String id) {
        return (Blank) Objects.requireNonNull(catalog.find(id));
    }
}
