package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.PartKind;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.BlankShape;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Refusal;
import withy.rules.Rule;
import withy.rules.Rulebook;

/**
 * Each rule decides: without it a scenario that says so in {@code sensitiveToRules} gets a better rank 1, or becomes possible. A better build is
 * looked for only until the first is found: rules only take builds away, so rank 1 is then another.
 */
class RuleMattersTest {
    private static final LocalDate DAY = LocalDate.of(2026, 11, 25);
    private static final Path ROOT = Path.of(System.getProperty("withy.home", ".."));

    /** Scenarios that are answered soonest come first; each rule is asked of the first that names it. */
    private static final List<String> QUICKEST_FIRST = List.of(
            "surf-two-piece-short-pack",
            "breakwater-metal-jig",
            "harbour-jigging",
            "child-first-rod",
            "quay-squid-nice-wishes",
            "sea-trout-travel",
            "tiny-stream-ultralight",
            "rock-wrasse-strong-line",
            "harbour-lift-on-light-leader",
            "shelf-only-this-week",
            "salt-flats-wading",
            "estuary-imperial",
            "pier-mackerel-garfish",
            "big-handed",
            "brook-trout-cork",
            "kayak-estuary",
            "beach-surf",
            "own-seat-insisted",
            "very-small-budget");

    private static final int CANDIDATE_BLANKS = 10;

    private final Map<String, Solution> answers = new HashMap<>();

    @TestFactory
    Stream<DynamicTest> everyRuleDecidesSomeScenario() throws IOException {
        Map<String, String> asked = new LinkedHashMap<>();
        for (String scenario : QUICKEST_FIRST) {
            sensitive(scenario).forEach(rule -> asked.putIfAbsent(rule, scenario));
        }
        Catalog catalog = catalog("bench");
        return Rulebook.standard().rules().stream()
                .map(Rule::code)
                .map(rule -> DynamicTest.dynamicTest(rule, () -> {
                    assertTrue(asked.containsKey(rule), "no scenario is sensitive to it");
                    decides(catalog, Objects.requireNonNull(asked.get(rule)), rule);
                }));
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> everyScenarioIsSensitiveToTheRulesItNames() throws IOException {
        Catalog catalog = catalog("bench");
        List<DynamicTest> tests = new ArrayList<>();
        for (String scenario : QUICKEST_FIRST) {
            for (String rule : sensitive(scenario)) {
                tests.add(DynamicTest.dynamicTest(scenario + " " + rule, () -> decides(catalog, scenario, rule)));
            }
        }
        return tests.stream();
    }

    @Test
    void everyScenarioIsAsked() throws IOException {
        try (Stream<Path> folders = Files.list(ROOT.resolve("scenarios"))) {
            Set<String> all = new TreeSet<>(folders.filter(Files::isDirectory)
                    .map(folder -> folder.getFileName().toString())
                    .toList());
            assertEquals(all, new TreeSet<>(QUICKEST_FIRST));
        }
    }

    /** A customer's brief that can be met leaves a choice of blanks in a large shop: with a layout that the rules allow. */
    @TestFactory
    Stream<DynamicTest> tenBlanksAndMoreStayInTheWideCatalogue() throws IOException {
        Catalog wide = catalog("wide");
        return QUICKEST_FIRST.stream()
                .filter(scenario -> expected(scenario).get("possible").asBoolean())
                .map(scenario -> DynamicTest.dynamicTest(scenario, () -> {
                    long blanks = blanks(wide, brief(wide, scenario));
                    assertTrue(blanks >= CANDIDATE_BLANKS, "blanks: " + blanks);
                }));
    }

    private void decides(Catalog catalog, String scenario, String rule) throws IOException {
        Query query = Query.of(brief(catalog, scenario), Rulebook.standard());
        Solution with = answers.computeIfAbsent(scenario, name -> new Search(catalog).solve(query, Watch.NONE));
        assertTrue(with.proven(), "proven");
        AtomicBoolean better = new AtomicBoolean();
        Watch watch =
                new Watch(better::get, (build, objectives, score) -> better.compareAndSet(false, score < with.score()));
        Solution without =
                new Search(catalog).solve(query.withRulebook(Rulebook.standard().without(rule)), watch);
        assertTrue(without.score() < with.score(), () -> scenario + " is the same without " + rule);
    }

    private static long blanks(Catalog catalog, Brief brief) {
        Query query = Query.of(brief, Rulebook.standard());
        return new Search(catalog)
                .candidates(query).of(PartKind.BLANK, Blank.class).stream()
                        .filter(blank -> laidOut(catalog, query, blank))
                        .count();
    }

    private static boolean laidOut(Catalog catalog, Query query, Blank blank) {
        Brief brief = query.brief();
        BlankShape shape = BlankShape.of(blank);
        Refusal refusal = new Refusal();
        for (int foot : Search.feet(brief.reachMinMm(), brief.reachMaxMm(), Layout.GRID_MM)) {
            for (Brief.HandleForm form : Brief.HandleForm.values()) {
                for (int count = 3; count <= 16; count++) {
                    Layout layout = new Layout(blank.id(), foot, form, count);
                    query.rulebook().onLayout(Setting.of(catalog, brief, shape, layout), refusal.reset());
                    if (!refusal.refused()) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private static List<String> sensitive(String scenario) {
        List<String> rules = new ArrayList<>();
        expected(scenario).get("sensitiveToRules").forEach(rule -> rules.add(rule.asText()));
        return rules;
    }

    private static JsonNode expected(String scenario) {
        try {
            return new ObjectMapper()
                    .readTree(folder(scenario).resolve("expected.json").toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Brief brief(Catalog catalog, String scenario) throws IOException {
        return BriefReader.read(folder(scenario).resolve("brief.json"), new BriefContext(catalog.rates(), DAY))
                .orThrow();
    }

    private static Path folder(String scenario) {
        return ROOT.resolve("scenarios").resolve(scenario);
    }

    private static Catalog catalog(String name) throws IOException {
        return Objects.requireNonNull(
                CatalogReader.read(ROOT.resolve("catalog-samples").resolve(name), DAY)
                        .catalog());
    }
}
