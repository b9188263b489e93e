package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.Brief.Reel;
import withy.brief.BriefDraft;
import withy.brief.UsualReels;
import withy.catalog.Part;
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

    /** Where no handle goes on with whatever reel, nothing is built with the customer's or a usual one. */
    @Test
    void noHandleNoRod() {
        int none = 0;
        for (long seed = 0; seed < SEEDS; seed++) {
            SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
            Search search = new Search(shop.catalog());
            for (Part part : shop.catalog().byId().values()) {
                Query query = shop.query().forcing(Set.of(part.id()));
                if (!search.mayHold(query.withRulebook(query.rulebook().anyReel()), Watch.NONE)) {
                    none++;
                    assertNull(search.any(query, Watch.NONE).build());
                    for (Reel reel : UsualReels.of(query.brief().rodType())) {
                        BriefDraft draft = new BriefDraft(query.brief());
                        draft.reel(reel);
                        assertNull(search.any(query.withBrief(draft.brief()), Watch.NONE)
                                .build());
                    }
                }
            }
        }
        assertTrue(none >= 20, none + " times no handle");
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
                assertTrue(search.answers(query, build));
            }
        }
        Build soon = search.soon(query, Watch.NONE);
        assertEquals(none, soon == null);
        assertTrue(none || search.answers(query, Objects.requireNonNull(soon)));
    }

    /** A build answers a question where every build there is does; a part that is given is in some build where one is found. */
    @Test
    void whatAnswersIsWhatIsLegal() {
        int no = 0;
        for (long seed = 0; seed < SEEDS; seed++) {
            SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
            Search search = new Search(shop.catalog());
            Query query = shop.query();
            List<Legal> all = new Enumeration(shop.catalog(), query, true).legal();
            for (Legal one : all) {
                Build build = one.build();
                long price = Rod.measure(shop.catalog(), query.brief(), build)
                        .figures()
                        .priceMinor();
                assertTrue(search.answers(query, build));
                String own = build.partIds().iterator().next();
                assertTrue(search.answers(query.forcing(Set.of(own)), build));
                assertTrue(!search.answers(query.refusing(Set.of(own)), build));
                assertTrue(
                        !search.answers(query.withBrief(Changed.with(query.brief(), "budgetMinor", price - 1)), build));
            }
            for (Part part : shop.catalog().byId().values()) {
                Query forced = query.forcing(Set.of(part.id()));
                Build soon = search.soon(forced, Watch.NONE);
                assertTrue(soon == null || soon.partIds().contains(part.id()) && search.answers(forced, soon));
                boolean some =
                        all.stream().anyMatch(one -> one.build().partIds().contains(part.id()));
                assertEquals(some, search.any(forced, Watch.NONE).build() != null, seed + " " + part.id());
                assertTrue(!some || search.mayHold(forced, Watch.NONE), seed + " " + part.id());
                no += some ? 0 : 1;
            }
        }
        assertTrue(no >= 20, no + " times none");
    }
}
