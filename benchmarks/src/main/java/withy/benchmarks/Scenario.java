package withy.benchmarks;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.stream.Stream;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefOverrides;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.rod.Tariff;
import withy.rules.Rulebook;

/**
 * A brief read for one shop.
 *
 * @param name folder of the scenario
 * @param brief the brief
 */
record Scenario(String name, Brief brief) {
    /** A budget that binds: this share of what the best build costs. */
    static final double BINDING_SHARE = 0.9;

    /** Scenarios that go first, so that a short run sees a light rod, salt, wishes, casting, surf. */
    static final List<String> FIRST = List.of(
            "kayak-estuary",
            "tiny-stream-ultralight",
            "quay-squid-nice-wishes",
            "harbour-jigging",
            "beach-surf",
            "sea-trout-travel");

    /** All scenarios of the repository in the order of their names, but those that name a part the catalogue does not have. */
    static List<Scenario> all(Path home, Catalog catalog) throws IOException {
        List<Path> folders;
        try (Stream<Path> found = Files.list(home.resolve("scenarios"))) {
            folders = found.filter(Files::isDirectory).sorted().toList();
        }
        List<Scenario> scenarios = new ArrayList<>();
        for (Path folder : folders) {
            Brief brief = BriefReader.read(folder.resolve("brief.json"), context(catalog))
                    .orThrow();
            if (named(brief).allMatch(id -> catalog.find(id) != null)) {
                scenarios.add(new Scenario(folder.getFileName().toString(), brief));
            }
        }
        return scenarios;
    }

    /** The same, those first that a short run should see. */
    static List<Scenario> inOrder(Path home, Catalog catalog) throws IOException {
        List<Scenario> all = new ArrayList<>(all(home, catalog));
        List<Scenario> ordered = new ArrayList<>();
        FIRST.forEach(
                name -> all.stream().filter(one -> one.name().equals(name)).forEach(ordered::add));
        all.removeAll(ordered);
        ordered.addAll(all);
        return ordered;
    }

    private static Stream<String> named(Brief brief) {
        return Stream.concat(
                brief.owned().stream(),
                Stream.concat(brief.insisted().stream(), brief.refused().stream())
                        .map(Brief.PartWish::partId));
    }

    Query query() {
        return Query.of(brief, Rulebook.standard());
    }

    /** The same brief with a budget that its best build breaks. */
    Scenario binding(Catalog catalog, ObjectiveVector best) {
        long priceMinor = new Tariff(catalog.rates(), brief).priceMinor(best.costMilli());
        long budgetMinor = (long) Math.floor(priceMinor * BINDING_SHARE);
        BriefOverrides budget = new BriefOverrides(Map.of(), budgetMinor, new TreeSet<>(), new TreeSet<>());
        return new Scenario(name, budget.apply(brief, context(catalog)));
    }

    private static BriefContext context(Catalog catalog) {
        return new BriefContext(catalog.rates(), catalog.asOf());
    }
}
