package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/**
 * The set of wishes that is guessed from what builds break is the one that leaving out one wish after another comes to, the last first, each time asked of a search that is new: over
 * scenarios and seeded briefs, with parts that no build holds.
 */
class GuessedConflictsTest {
    private static final long SEED = 20_261_129L;

    private static final List<String> SCENARIOS =
            List.of("estuary-imperial", "pier-mackerel-garfish", "big-handed", "child-first-rod", "beach-surf");

    private int compared;

    @TestFactory
    Stream<DynamicTest> ofScenarios() throws IOException {
        Catalog catalog = SampleCatalogs.bench();
        return SCENARIOS.stream()
                .map(name -> DynamicTest.dynamicTest(
                        name, () -> compare(catalog, Scenarios.brief(name, catalog), new Random(SEED), 12, 1)));
    }

    /** Parts that are refused for several wishes at once. */
    @ParameterizedTest
    @CsvSource({
        "estuary-imperial, dunholme-reach-burl-arbor-24-nop336, 2",
        "pier-mackerel-garfish, ostermoor-check-nickel-nop265-9p5, 4",
        "child-first-rod, ferrowick-check-alu-nop258-6p5, 2",
        "big-handed, ostermoor-surf-fore-200-nop437, 2"
    })
    void ofSeveralWishes(String scenario, String part, int wishes) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Set<String> set = compare(catalog, Scenarios.brief(scenario, catalog), part);
        assertEquals(wishes, set.size(), set.toString());
    }

    /** The same with other lengths, reaches and palms. */
    @Tag("long")
    @TestFactory
    Stream<DynamicTest> ofSeededBriefs() throws IOException {
        Catalog catalog = SampleCatalogs.bench();
        return Stream.iterate(0, seed -> seed + 1)
                .limit(60)
                .map(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    Random random = new Random(SEED + seed);
                    BriefDraft draft = new BriefDraft(Scenarios.brief(SCENARIOS.get(seed % SCENARIOS.size()), catalog));
                    Brief brief = draft.brief();
                    double longer = (random.nextInt(5) - 2) * 50;
                    double further = (random.nextInt(5) - 2) * 10;
                    draft.length(brief.lengthMinMm() + longer, brief.lengthMaxMm() + longer);
                    draft.reach(brief.reachMinMm() + further, brief.reachMaxMm() + further);
                    draft.palm(75 + random.nextInt(30));
                    compare(catalog, draft.brief(), random, 12, 0);
                }));
    }

    private void compare(Catalog catalog, Brief brief, Random random, int parts, int least) {
        compared = 0;
        for (int i = 0; i < parts; i++) {
            PartKind kind = PartKind.values()[i % PartKind.values().length];
            List<Part> all = new ArrayList<>(catalog.all(kind));
            all.sort(Comparator.comparing(Part::id));
            compared +=
                    compare(catalog, brief, all.get(random.nextInt(all.size())).id())
                                    .isEmpty()
                            ? 0
                            : 1;
        }
        assertTrue(compared >= least, compared + " compared");
    }

    /** The set; none where the part may go in, or nothing is possible with it whatever is wished. */
    private static Set<String> compare(Catalog catalog, Brief brief, String part) {
        Inquiry inquiry = inquiry(catalog, brief);
        Query with = inquiry.query().forcing(Set.of(part));
        List<Demand> demands = Demands.of(inquiry);
        Conflicts guessed = new Conflicts(inquiry, with, demands);
        if (inquiry.first() == null || inquiry.best(with) != null || !guessed.possibleAtAll()) {
            return Set.of();
        }
        List<Demand> found = guessed.find(1).sets().get(0);
        Set<String> kept = new TreeSet<>();
        found.forEach(demand -> kept.add(demand.key() + demand.about()));
        assertEquals(leftOut(catalog, brief, part), kept, part);
        return kept;
    }

    /** What is left where each wish is left out without which there is still nothing. */
    private static Set<String> leftOut(Catalog catalog, Brief brief, String part) {
        List<Demand> kept = new ArrayList<>(Demands.of(inquiry(catalog, brief)));
        for (int wish = kept.size() - 1; wish >= 0; wish--) {
            Inquiry inquiry = inquiry(catalog, brief);
            List<Demand> all = Demands.of(inquiry);
            Demand left = kept.remove(wish);
            List<Demand> dropped = all.stream()
                    .filter(one -> kept.stream().noneMatch(two -> same(one, two)))
                    .toList();
            Query with = inquiry.query().forcing(Set.of(part));
            boolean possible = Demands.without(inquiry, with, dropped).stream().anyMatch(inquiry::possible);
            if (possible) {
                kept.add(wish, left);
            }
        }
        Set<String> keys = new TreeSet<>();
        kept.forEach(demand -> keys.add(demand.key() + demand.about()));
        return keys;
    }

    private static boolean same(Demand one, Demand two) {
        return one.key().equals(two.key()) && one.about().equals(two.about());
    }

    private static Inquiry inquiry(Catalog catalog, Brief brief) {
        Search search = new Search(catalog);
        return new Inquiry(
                catalog,
                brief,
                other -> other == catalog ? search : new Search(other),
                Watch.NONE,
                new QuantityText(UnitSystem.METRIC));
    }
}
