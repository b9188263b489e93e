package withy.search;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.function.Executable;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Figures;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/**
 * Every scenario on the curated catalogue: proven best or proven impossible, legal when judged again, and near what a builder would state.
 *
 * <p>The stated ranges are common practice, no source. The best build for the brief's priorities may be a little lighter than what a builder would
 * pick, so weight is held to {@value #LIGHTEST_SHARE} of the range's lower end; reach to the cap's thickness.
 */
class ScenarioTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
    private static final Path ROOT = Path.of("..").toAbsolutePath().normalize();
    private static final double LIGHTEST_SHARE = 0.95;
    private static final double CAP_MM = 5;

    @TestFactory
    Stream<DynamicTest> onTheCuratedCatalogue() throws IOException {
        Catalog catalog = Objects.requireNonNull(
                CatalogReader.read(ROOT.resolve("catalog-samples/bench"), DAY).catalog());
        Search search = new Search(catalog);
        List<Path> folders = new ArrayList<>();
        try (Stream<Path> all = Files.list(ROOT.resolve("scenarios"))) {
            all.filter(Files::isDirectory).forEach(folders::add);
        }
        assertTrue(folders.size() >= 14, "scenarios are missing: " + folders.size());
        return new TreeSet<>(folders)
                .stream()
                        .map(folder -> DynamicTest.dynamicTest(
                                folder.getFileName().toString(), () -> check(search, catalog, folder)));
    }

    private static void check(Search search, Catalog catalog, Path folder) throws IOException {
        Brief brief = BriefReader.read(folder.resolve("brief.json"), new BriefContext(catalog.rates(), DAY))
                .orThrow();
        JsonNode expected =
                new ObjectMapper().readTree(folder.resolve("expected.json").toFile());
        Solution solution = search.solve(Query.of(brief, Rulebook.standard()), Watch.NONE);
        assertTrue(solution.proven(), "proven");
        if (!expected.get("possible").asBoolean()) {
            assertNull(solution.build(), "no legal build");
            return;
        }
        assertNotNull(solution.build(), "a legal build");
        assertEquals(solution.score(), solution.bound(), "gap");
        Rod rod = Rod.measure(catalog, brief, solution.build());
        assertTrue(Judge.legal(rod, Rulebook.standard()), "legal");
        Figures figures = rod.figures();
        JsonNode ranges = expected.get("ranges");
        List<Executable> checks = new ArrayList<>();
        checks.add(() -> within(ranges, "rodWeightG", figures.weightG(), LIGHTEST_SHARE, 0));
        checks.add(() ->
                within(ranges, "blankWeightG", rod.setting().blank().facts().weightG(), 1, 0));
        checks.add(() -> within(
                ranges, "seatSize", part(rod, Station.SEAT, ReelSeat.class).size(), 1, 0));
        checks.add(() -> within(
                ranges,
                "stripperRingSize",
                part(rod, Station.guide(1), Guide.class).ringSize(),
                1,
                0));
        checks.add(() -> within(ranges, "priceMinor", figures.priceMinor(), 1, 0));
        checks.add(() -> within(ranges, "guideCount", rod.setting().guideCount(), 1, 0));
        checks.add(() -> within(ranges, "reelToButtMm", figures.reelToButtMm(), 1, CAP_MM));
        checks.add(() -> within(ranges, "finishedLengthMm", figures.finishedLengthMm(), 1, 0));
        checks.add(() -> within(ranges, "packedLengthMm", figures.packedLengthMm(), 1, 0));
        checks.add(() -> gripMaterial(expected, rod));
        assertAll(checks);
    }

    private static void within(JsonNode ranges, String figure, double value, double lowShare, double more) {
        JsonNode range = ranges.path(figure);
        double low = range.path("min").asDouble(Double.NEGATIVE_INFINITY);
        double high = range.path("max").asDouble(Double.POSITIVE_INFINITY);
        double least = Double.isInfinite(low) ? low : low * lowShare - more;
        assertTrue(value >= least && value <= high + more, figure + " " + value + " outside " + low + " to " + high);
    }

    private static <P extends Part> P part(Rod rod, Station station, Class<P> type) {
        return type.cast(Objects.requireNonNull(rod.partAt(station)));
    }

    private static void gripMaterial(JsonNode expected, Rod rod) {
        if (expected.has("gripMaterials")) {
            String material = Objects.requireNonNull(rod.partAt(Station.REAR_GRIP))
                    .facts()
                    .material()
                    .word();
            List<String> usual = new ArrayList<>();
            expected.get("gripMaterials").forEach(word -> usual.add(word.asText()));
            assertTrue(usual.contains(material), material + " not in " + usual);
        }
    }
}
