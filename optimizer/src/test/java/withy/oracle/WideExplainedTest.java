package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.Brief.Lure;
import withy.brief.BriefContext;
import withy.brief.BriefDraft;
import withy.brief.BriefReader;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.sample.SampleCatalogs;
import withy.explain.Breach;
import withy.explain.Conflict;
import withy.explain.Finding;
import withy.explain.Flip;
import withy.explain.Found;
import withy.explain.Impossible;
import withy.explain.Inquiry;
import withy.explain.Ledger;
import withy.explain.Repair;
import withy.explain.WhyNot;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.Search;

/**
 * Explanations of seeded briefs on the wide catalogue. Each claim is put as a whole question to a search that knows nothing of those before and looks
 * for the best build, where explanations mostly ask whether there is any; the conditions are said here again.
 */
@Tag("long")
class WideExplainedTest {
    private static final long SEED = 20_261_126L;
    private static final int BRIEFS = 200;
    private static final List<PartKind> KINDS = List.of(
            PartKind.REEL_SEAT, PartKind.BLANK, PartKind.GRIP, PartKind.GUIDE, PartKind.TIP_TOP, PartKind.BUTT_CAP);

    private final Catalog catalog;
    private final List<Brief> scenarios = new ArrayList<>();

    WideExplainedTest() throws IOException {
        Path home = Path.of(System.getProperty("withy.home", ".."));
        this.catalog = Objects.requireNonNull(
                CatalogReader.read(home.resolve("catalog-samples").resolve("wide"), SampleCatalogs.AS_OF)
                        .catalog());
        try (Stream<Path> files = Files.walk(home.resolve("scenarios"))) {
            for (Path file :
                    files.filter(path -> path.endsWith("brief.json")).sorted().toList()) {
                Brief brief = BriefReader.read(file, new BriefContext(catalog.rates(), catalog.asOf()))
                        .brief();
                if (brief != null) {
                    scenarios.add(brief);
                }
            }
        }
        assertTrue(scenarios.size() > 10, "scenarios: " + scenarios.size());
    }

    @TestFactory
    Stream<DynamicTest> explanationsHold() {
        return LongStream.range(0, BRIEFS)
                .mapToObj(number -> DynamicTest.dynamicTest("brief " + number, () -> holds(number)));
    }

    /** The scenarios as they are first, then changed ones. */
    private Brief brief(long number, Random random) {
        Brief from = scenarios.get((int) (number % scenarios.size()));
        if (number < scenarios.size()) {
            return from;
        }
        double heavier = 0.75 + random.nextDouble() * 0.6;
        double longer = random.nextInt(5) * 20 - 40;
        double reach = random.nextInt(7) * 5 - 15;
        Lure lure = from.lure();
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            priorities.put(objective, (double) random.nextInt(5));
        }
        return new BriefDraft(from)
                .lure(new Lure(lure.lightestG() * heavier, lure.usualG() * heavier, lure.heaviestG() * heavier))
                .length(from.lengthMinMm() + longer - 20, from.lengthMaxMm() + longer + 20)
                .reach(from.reachMinMm() + reach, from.reachMaxMm() + reach)
                .classes(
                        Math.max(1, Math.min(5, from.durabilityClass() + random.nextInt(3) - 1)), from.corrosionClass())
                .priorities(priorities)
                .brief();
    }

    /** One brief: a part that is not in the best rod, a purse too small, and at times the ledger. */
    String holds(long number) {
        Random random = new Random(SEED + number);
        Brief brief = brief(number, random);
        Inquiry inquiry = ExplainedTest.inquiry(catalog, brief);
        Found first = inquiry.first();
        if (first == null) {
            return "brief " + number + ": " + impossible("brief " + number, brief);
        }
        List<Part> parts = catalog.all(KINDS.get((int) (number % KINDS.size())));
        String id = parts.get(random.nextInt(parts.size())).id();
        Finding finding = WhyNot.of(inquiry, Set.of(id));
        String told = "brief " + number + ", " + id;
        reason(told, brief, id, finding);
        for (Flip flip : finding.flips()) {
            flip(told + ", " + flip, brief, id, finding, flip);
        }
        String poor = "";
        if (number % 3 == 0) {
            long little = Math.round(first.rod().figures().priceMinor() * (0.2 + random.nextDouble() * 0.4));
            Brief purse = new BriefDraft(brief).budget(little).brief();
            poor = some(query(purse)) == null ? impossible(told + ", poor", purse) : "";
        }
        if (number % 5 == 0) {
            ledger(told, brief, first, Ledger.of(inquiry, first));
        }
        return told + " " + finding.outcome() + " flips " + finding.flips().size() + " " + poor;
    }

    private Query query(Brief brief) {
        return Query.of(brief, Rulebook.standard());
    }

    private Solution solved(Catalog shop, Query query) {
        Solution solution = new Search(shop).solve(query, Watch.NONE);
        assertTrue(solution.proven(), "not proven: " + query);
        return solution;
    }

    private @Nullable Build best(Brief brief) {
        return solved(catalog, query(brief)).build();
    }

    /**
     * Some build or none. A build is its own proof, so the first one found ends the question, but that there is none must be proven. Where there is a
     * budget the cheapest build is asked for as if there were none, and its price held against it.
     */
    private @Nullable Build some(Query query) {
        Long budget = query.brief().budgetMinor();
        boolean bites = budget != null
                && query.rulebook().rules().stream()
                        .anyMatch(rule -> rule.code().equals("budget"));
        Brief free = new BriefDraft(query.brief()).budget(null).brief();
        Query asked = bites ? query.withBrief(free).withPriorities(Inquiry.only(Objective.PRICE)) : query;
        AtomicReference<Build> first = new AtomicReference<>();
        Watch watch = new Watch(() -> first.get() != null, (build, objectives, score) -> {
            if (!bites || Rod.measure(catalog, free, build).figures().priceMinor() <= budget) {
                first.compareAndSet(null, build);
            }
        });
        Solution solution = new Search(catalog).solve(asked, watch);
        assertTrue(first.get() != null || solution.proven(), "neither a build nor the proof of none: " + query);
        return first.get();
    }

    private void reason(String told, Brief brief, String id, Finding finding) {
        Solution with = solved(catalog, query(brief).forcing(Set.of(id)));
        switch (finding.outcome()) {
            case CHOSEN -> assertTrue(Compared.holds(Objects.requireNonNull(best(brief)), Set.of(id)), told);
            case EQUAL, UNUSUAL, DOMINATED, LOSES -> {
                assertFalse(Compared.holds(Objects.requireNonNull(best(brief)), Set.of(id)), told);
                assertEquals(
                        with.objectives(),
                        Objects.requireNonNull(finding.opponent()).vector(),
                        told);
                Found better = finding.better();
                assertTrue(
                        better == null
                                || Judge.legal(better.rod(), Rulebook.standard())
                                        && Compared.better(
                                                better.vector(),
                                                finding.opponent().vector())
                                        && Compared.meets(finding.opponent(), better.build()),
                        told);
            }
            case BREAKS_RULE, NOT_IN_STOCK -> refused(told, brief, id, finding, with);
        }
    }

    private void refused(String told, Brief brief, String id, Finding finding, Solution with) {
        assertEquals(null, with.build(), told);
        Breach breach = finding.breach();
        if (breach == null) {
            return;
        }
        Set<String> broken = new TreeSet<>(Set.of(breach.verdict().rule()));
        finding.alsoBroken().forEach(also -> broken.add(also.verdict().rule()));
        assertNotNull(without(brief, id, broken), told + ": still nothing without " + broken);
        for (String rule : broken) {
            Set<String> others = new TreeSet<>(broken);
            others.remove(rule);
            assertEquals(null, without(brief, id, others), told + ": " + rule + " need not give way");
        }
        Rod rod = Objects.requireNonNull(finding.opponent()).rod();
        assertTrue(Judge.judge(rod, Rulebook.standard()).contains(breach.verdict()), told);
    }

    private @Nullable Build without(Brief brief, String id, Set<String> rules) {
        Rulebook book = Rulebook.standard();
        for (String rule : rules) {
            book = book.without(rule);
        }
        return some(Query.of(brief, book).forcing(Set.of(id)));
    }

    private void flip(String told, Brief brief, String id, Finding finding, Flip flip) {
        if (Double.isNaN(flip.wins())) {
            return;
        }
        boolean refused = finding.breach() != null;
        switch (flip.kind()) {
            case PRIORITY -> {
                assertTrue(wins(catalog, weighed(brief, flip, flip.wins()), id), told);
                assertFalse(wins(catalog, weighed(brief, flip, flip.loses()), id), told);
            }
            case PRICE -> {
                assertTrue(wins(with(id, "facts.priceMinor", Math.round(flip.wins())), query(brief), id), told);
                assertFalse(wins(with(id, "facts.priceMinor", Math.round(flip.loses())), query(brief), id), told);
            }
            case WEIGHT -> {
                assertTrue(wins(with(id, "facts.measuredG", flip.wins()), query(brief), id), told);
                assertFalse(wins(with(id, "facts.measuredG", flip.loses()), query(brief), id), told);
            }
            case WISH -> {
                Query wins = query(Said.of(brief, flip.subject(), flip.now(), flip.wins()));
                Query loses = query(Said.of(brief, flip.subject(), flip.now(), flip.loses()));
                if (refused) {
                    assertNotNull(some(wins.forcing(Set.of(id))), told);
                    assertEquals(null, some(loses.forcing(Set.of(id))), told);
                } else {
                    assertTrue(wins(catalog, wins, id), told);
                    assertFalse(wins(catalog, loses, id), told);
                }
            }
        }
    }

    private Query weighed(Brief brief, Flip flip, double priority) {
        Map<Objective, Double> priorities = new EnumMap<>(brief.priorities());
        for (Objective one : Objective.values()) {
            if (one.key().equals(flip.subject())) {
                priorities.put(one, priority);
            }
        }
        return query(brief).withPriorities(priorities);
    }

    private Catalog with(String id, String path, Object value) {
        List<Part> parts = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            parts.add(part.id().equals(id) ? (Part) Changed.with((Record) part, path, value) : part);
        }
        return new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts);
    }

    private boolean wins(Catalog shop, Query query, String id) {
        Build build = solved(shop, query).build();
        return build != null && Compared.holds(build, Set.of(id));
    }

    private String impossible(String told, Brief brief) {
        Impossible answer = Impossible.of(ExplainedTest.inquiry(catalog, brief));
        for (Conflict conflict : answer.conflicts()) {
            Set<String> kept = new TreeSet<>();
            conflict.wishes().forEach(wish -> kept.add(wish.field() + " " + wish.about()));
            assertFalse(possible(brief, kept), told + ": together " + kept);
            for (String wish : kept) {
                Set<String> rest = new TreeSet<>(kept);
                rest.remove(wish);
                assertTrue(possible(brief, rest), told + ": " + kept + " without " + wish);
            }
        }
        for (Repair repair : answer.repairs()) {
            assertTrue(Judge.legal(repair.build().rod(), Rulebook.standard()), told + ", " + repair.sentence());
            Repair.Change change = repair.changes().get(0);
            if (repair.changes().size() == 1 && !Double.isNaN(change.to())) {
                Brief enough = Said.of(brief, change.field(), change.from(), change.to());
                Brief shy = Said.of(brief, change.field(), change.from(), change.shy());
                assertNotNull(some(query(enough)), told + ", " + repair.sentence());
                assertEquals(null, some(query(shy)), told + ", shy of " + repair.sentence());
            }
        }
        return answer.conflicts().size() + " conflicts " + answer.repairs().size() + " repairs";
    }

    private boolean possible(Brief brief, Set<String> kept) {
        for (Brief one : Unasked.but(brief, kept)) {
            if (some(query(one)) != null) {
                return true;
            }
        }
        return false;
    }

    /** Lines that are said to be legal are, and save what they are said to; the others break the rule that is told. */
    private void ledger(String told, Brief brief, Found first, List<Ledger.Line> lines) {
        assertFalse(lines.isEmpty(), told);
        for (Ledger.Line line : lines) {
            Found found = line.found();
            Breach breach = line.breach();
            if (found != null) {
                Rod rod = Rod.measure(catalog, brief, found.build());
                double saves = first.rod().figures().weightG() - rod.figures().weightG();
                assertEquals(saves, line.savesG(), 2e-3, told + ", " + line);
                boolean said = breach == null
                        ? Judge.legal(rod, Rulebook.standard())
                        : Judge.judge(rod, Rulebook.standard()).contains(breach.verdict());
                assertTrue(said, told + ", " + line);
            }
        }
    }
}
