package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.Rates;
import withy.catalog.RodType;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.Offer;
import withy.search.Proposal;
import withy.search.Search;

/** Measuring and judging against the second implementation of every figure and every rule, on legal and illegal builds. */
class SecondLookTest {
    private static final Path HOME = Path.of(System.getProperty("withy.home", ".."));
    private static final LocalDate DAY = LocalDate.of(2026, 9, 15);

    /** How often the search may look up before it gives its best so far: steps, not time. The first legal build will do. */
    private static final int MOST_LOOKS = 100;

    private static final int CHANGED = 60;

    /** Parts from which on a catalogue is thinned to find a build. */
    private static final int LARGE = 1000;

    private static int asked;
    private static int compared;

    /** Told only where everything ran: enough builds were looked at twice. */
    @AfterAll
    static void enoughWereCompared() {
        if (asked >= 98) {
            assertTrue(compared >= 4500, "builds compared: " + compared);
        }
    }

    @TestFactory
    Stream<DynamicTest> scenarios() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (String name : List.of("bench", "wide")) {
            Catalog catalog = Objects.requireNonNull(
                    CatalogReader.read(HOME.resolve("catalog-samples").resolve(name), DAY)
                            .catalog());
            Map<RodType, Build> legal = new EnumMap<>(RodType.class);
            for (Path folder : folders()) {
                Brief brief = BriefReader.read(folder.resolve("brief.json"), new BriefContext(catalog.rates(), DAY))
                        .orThrow();
                tests.add(DynamicTest.dynamicTest(
                        name + " " + folder.getFileName(), () -> scenario(catalog, brief, legal)));
            }
        }
        return tests.stream();
    }

    /** Every build that would be shown to a customer, on both catalogues. */
    @TestFactory
    @Tag("long")
    Stream<DynamicTest> everyBuildOfTheAnswer() throws IOException {
        List<DynamicTest> tests = new ArrayList<>();
        for (String name : List.of("bench", "wide")) {
            Catalog catalog = Objects.requireNonNull(
                    CatalogReader.read(HOME.resolve("catalog-samples").resolve(name), DAY)
                            .catalog());
            Search search = new Search(catalog);
            for (Path folder : folders()) {
                Brief brief = BriefReader.read(folder.resolve("brief.json"), new BriefContext(catalog.rates(), DAY))
                        .orThrow();
                tests.add(DynamicTest.dynamicTest(
                        name + " " + folder.getFileName(), () -> everyBuild(search, catalog, brief)));
            }
        }
        return tests.stream();
    }

    private static void everyBuild(Search search, Catalog catalog, Brief brief) {
        SecondLook look = new SecondLook(catalog, brief);
        for (Proposal proposal : Offer.three(search, Query.of(brief, Rulebook.standard()), Watch.NONE)) {
            Build build = proposal.build();
            assertTrue(Judge.legal(Rod.measure(catalog, brief, build), Rulebook.standard()), build::signature);
            assertEquals(List.of(), look.differences(build), build::signature);
        }
    }

    private static List<Path> folders() throws IOException {
        try (Stream<Path> all = Files.list(HOME.resolve("scenarios"))) {
            return all.filter(Files::isDirectory).sorted().toList();
        }
    }

    /** Where no build is found at once, the last legal one of the rod type is changed instead. */
    private static void scenario(Catalog catalog, Brief brief, Map<RodType, Build> legal) {
        asked++;
        Build build = answer(catalog, brief).build();
        if (build != null) {
            Rod rod = Rod.measure(catalog, brief, build);
            assertTrue(Judge.legal(rod, Rulebook.standard()), () -> "illegal: " + build);
            assertEquals(List.of(), new SecondLook(catalog, brief).differences(build), build::signature);
            legal.put(brief.rodType(), build);
        }
        Build base = legal.get(brief.rodType());
        if (base != null) {
            boolean odd = brief.name().hashCode() % 2 != 0;
            Brief asked = odd ? Changed.with(brief, "guidesByClearance", true) : brief;
            changed(catalog, asked, base, brief.name().hashCode());
        }
    }

    private static Solution answer(Catalog catalog, Brief brief) {
        AtomicInteger looks = new AtomicInteger();
        Watch watch = new Watch(
                () -> looks.incrementAndGet() > MOST_LOOKS, (build, objectives, score) -> looks.set(MOST_LOOKS));
        return new Search(thinned(catalog)).solve(Query.of(brief, Rulebook.standard()), watch);
    }

    /** Of a large catalogue a seventh, which makes a legal build quick to find; changes then draw on the whole. */
    private static Catalog thinned(Catalog catalog) {
        if (catalog.size() < LARGE) {
            return catalog;
        }
        Rates rates = catalog.rates();
        List<Part> kept = catalog.byId().values().stream()
                .filter(part -> part.id().hashCode() % 7 == 0
                        || part.kind() == PartKind.BLANK
                        || part.id().equals(rates.houseFinish())
                        || part.id().equals(rates.houseAdhesive()))
                .toList();
        return new Catalog(rates, catalog.asOf(), catalog.hash(), kept);
    }

    @TestFactory
    Stream<DynamicTest> smallShops() {
        return LongStream.range(0, 60)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    asked++;
                    SmallShop.Case shop = SmallShop.of(seed, 30_000);
                    Brief brief = shop.query().brief();
                    Build best = answer(shop.catalog(), brief).build();
                    if (best != null) {
                        assertEquals(
                                List.of(), new SecondLook(shop.catalog(), brief).differences(best), best::signature);
                        changed(shop.catalog(), brief, best, seed);
                    }
                }));
    }

    private static void changed(Catalog catalog, Brief brief, Build base, long seed) {
        Mutation mutation = new Mutation(catalog, new Random(seed));
        SecondLook look = new SecondLook(catalog, brief);
        for (int i = 0; i < CHANGED; i++) {
            Build build = mutation.of(base);
            compared++;
            int turn = i;
            assertEquals(List.of(), look.differences(build), () -> "seed " + seed + ", change " + turn + ": " + build);
        }
    }
}
