package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rules.Rulebook;

/** What is told of builds without one part by way of those without another is what is found when it is asked by itself. */
class LackingTest {
    private static final int PARTS = 9;

    private static int asked;
    private static int shared;

    @TestFactory
    Stream<DynamicTest> asAskedByItself() {
        Stream<DynamicTest> small = LongStream.range(0, 12)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    compare(shop.catalog(), shop.query(Rulebook.standard()));
                }));
        Stream<DynamicTest> wide = Stream.of("quay-squid-nice-wishes", "harbour-jigging", "child-first-rod")
                .map(name -> DynamicTest.dynamicTest(name, () -> wide(name)));
        return Stream.concat(small, wide);
    }

    private static void wide(String name) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        compare(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard()));
    }

    private static void compare(Catalog catalog, Query query) {
        Search search = new Search(catalog);
        Set<String> used = new TreeSet<>();
        Set<String> refused = new TreeSet<>();
        Random random = new Random(1);
        for (int i = 0; i < 3; i++) {
            Build build = search.solve(query.refusing(refused), Watch.NONE).build();
            if (build != null) {
                used.addAll(build.partIds());
                List<String> ids = new ArrayList<>(build.partIds());
                refused.add(ids.get(random.nextInt(ids.size())));
            }
        }
        List<String> all = new ArrayList<>(used);
        Collections.shuffle(all, random);
        List<String> ids = all.subList(0, Math.min(PARTS, all.size()));
        List<Solution> each = new Lacking(new Search(catalog), query, Watch.NONE).each(ids);
        assertEquals(ids.size(), each.size());
        for (int i = 0; i < ids.size(); i++) {
            Solution alone = new Search(catalog).solve(query.refusing(Set.of(ids.get(i))), Watch.NONE);
            Solution told = each.get(i);
            assertEquals(alone.score(), told.score(), ids.get(i));
            assertEquals(alone.proven(), told.proven(), ids.get(i));
            Build build = told.build();
            assertTrue(build == null || !build.partIds().contains(ids.get(i)), ids.get(i));
            asked++;
            shared += each.indexOf(told) < i ? 1 : 0;
        }
    }

    @AfterAll
    static void enoughWereAsked() {
        assertTrue(asked > 30, "asked: " + asked);
        assertTrue(shared > 10, "told by another: " + shared);
    }
}
