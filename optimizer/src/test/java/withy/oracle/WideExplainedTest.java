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
import java.util.stream.LongStream;
import java.util.stream.Stream;
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
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;

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
    private final FreshQuestions fresh;
    private final List<Brief> scenarios = new ArrayList<>();

    WideExplainedTest() throws IOException {
        Path home = Path.of(System.getProperty("withy.home", ".."));
        this.catalog = Objects.requireNonNull(
                CatalogReader.read(home.resolve("catalog-samples").resolve("wide"), SampleCatalogs.AS_OF)
                        .catalog());
        this.fresh = new FreshQuestions(catalog);
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
            poor = fresh.some(FreshQuestions.query(purse)) == null ? impossible(told + ", poor", purse) : "";
        }
        if (number % 5 == 0) {
            ledger(told, brief, first, Ledger.of(inquiry, first));
        }
        return told + " " + finding.outcome() + " flips " + finding.flips().size() + " " + poor;
    }

    private void reason(String told, Brief brief, String id, Finding finding) {
        Solution with =
                FreshQuestions.solved(catalog, FreshQuestions.query(brief).forcing(Set.of(id)));
        switch (finding.outcome()) {
            case CHOSEN -> assertTrue(Compared.holds(Objects.requireNonNull(fresh.best(brief)), Set.of(id)), told);
            case EQUAL, UNUSUAL, DOMINATED, LOSES -> {
                assertFalse(Compared.holds(Objects.requireNonNull(fresh.best(brief)), Set.of(id)), told);
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
        assertNotNull(fresh.without(brief, id, broken), told + ": still nothing without " + broken);
        for (String rule : broken) {
            Set<String> others = new TreeSet<>(broken);
            others.remove(rule);
            assertEquals(null, fresh.without(brief, id, others), told + ": " + rule + " need not give way");
        }
        Rod rod = Objects.requireNonNull(finding.opponent()).rod();
        assertTrue(Judge.judge(rod, Rulebook.standard()).contains(breach.verdict()), told);
    }

    private void flip(String told, Brief brief, String id, Finding finding, Flip flip) {
        if (Double.isNaN(flip.wins())) {
            return;
        }
        boolean refused = finding.breach() != null;
        switch (flip.kind()) {
            case PRIORITY -> {
                assertTrue(FreshQuestions.wins(catalog, weighed(brief, flip, flip.wins()), id), told);
                assertFalse(FreshQuestions.wins(catalog, weighed(brief, flip, flip.loses()), id), told);
            }
            case PRICE -> {
                assertTrue(
                        FreshQuestions.wins(
                                fresh.with(id, "facts.priceMinor", Math.round(flip.wins())),
                                FreshQuestions.query(brief),
                                id),
                        told);
                assertFalse(
                        FreshQuestions.wins(
                                fresh.with(id, "facts.priceMinor", Math.round(flip.loses())),
                                FreshQuestions.query(brief),
                                id),
                        told);
            }
            case WEIGHT -> {
                assertTrue(
                        FreshQuestions.wins(
                                fresh.with(id, "facts.measuredG", flip.wins()), FreshQuestions.query(brief), id),
                        told);
                assertFalse(
                        FreshQuestions.wins(
                                fresh.with(id, "facts.measuredG", flip.loses()), FreshQuestions.query(brief), id),
                        told);
            }
            case WISH -> {
                Query wins = FreshQuestions.query(Said.of(brief, flip.subject(), flip.now(), flip.wins()));
                Query loses = FreshQuestions.query(Said.of(brief, flip.subject(), flip.now(), flip.loses()));
                if (refused) {
                    assertNotNull(fresh.some(wins.forcing(Set.of(id))), told);
                    assertEquals(null, fresh.some(loses.forcing(Set.of(id))), told);
                } else {
                    assertTrue(FreshQuestions.wins(catalog, wins, id), told);
                    assertFalse(FreshQuestions.wins(catalog, loses, id), told);
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
        return FreshQuestions.query(brief).withPriorities(priorities);
    }

    private String impossible(String told, Brief brief) {
        Impossible answer = Impossible.of(ExplainedTest.inquiry(catalog, brief));
        for (Conflict conflict : answer.conflicts()) {
            Set<String> kept = new TreeSet<>();
            conflict.wishes().forEach(wish -> kept.add(wish.field() + " " + wish.about()));
            assertFalse(fresh.possible(brief, kept), told + ": together " + kept);
            for (String wish : kept) {
                Set<String> rest = new TreeSet<>(kept);
                rest.remove(wish);
                assertTrue(fresh.possible(brief, rest), told + ": " + kept + " without " + wish);
            }
        }
        for (Repair repair : answer.repairs()) {
            assertTrue(Judge.legal(repair.build().rod(), Rulebook.standard()), told + ", " + repair.sentence());
            Repair.Change change = repair.changes().get(0);
            if (repair.changes().size() == 1 && !Double.isNaN(change.to())) {
                Brief enough = Said.of(brief, change.field(), change.from(), change.to());
                Brief shy = Said.of(brief, change.field(), change.from(), change.shy());
                assertNotNull(fresh.some(FreshQuestions.query(enough)), told + ", " + repair.sentence());
                assertEquals(null, fresh.some(FreshQuestions.query(shy)), told + ", shy of " + repair.sentence());
            }
        }
        return answer.conflicts().size() + " conflicts " + answer.repairs().size() + " repairs";
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
