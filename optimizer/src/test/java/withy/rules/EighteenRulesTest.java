package withy.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.rules.Cases.Case;
import withy.rules.Cases.Kind;
import withy.rules.Verdict.Outcome;

/** Every check of every rule: broken, at its limit, kept, not applicable. */
class EighteenRulesTest {
    static final Cases CASES = cases();

    private static Cases cases() {
        Cases cases = new Cases();
        TackleCases.lureAndLine(cases);
        TackleCases.length(cases);
        TackleCases.strength(cases);
        TackleCases.ringsAndReel(cases);
        RodCases.seatAndGrip(cases);
        RodCases.rings(cases);
        RodCases.handleWishes(cases);
        RodCases.handle(cases);
        RodCases.whole(cases);
        RodCases.train(cases);
        TackleCases.shop(cases);
        TackleCases.must(cases);
        return cases;
    }

    @Test
    void theRodOfTheFixtureIsLegalWithoutAWarning() {
        List<Verdict> verdicts = Judge.judge(Fixtures.legal().rod(), Rulebook.standard());
        assertEquals(
                List.of(),
                verdicts.stream()
                        .filter(v -> v.outcome() != Outcome.PASS && v.outcome() != Outcome.NOT_APPLICABLE)
                        .toList());
        assertTrue(Judge.legal(Fixtures.legal().fullHandle().rod(), Rulebook.standard()));
        assertTrue(Judge.legal(Fixtures.legal().casting().rod(), Rulebook.standard()));
    }

    @TestFactory
    Stream<DynamicTest> checks() {
        return CASES.all().stream().map(c -> DynamicTest.dynamicTest(c.id() + " " + c.kind(), () -> verify(c)));
    }

    private static void verify(Case c) {
        Rod rod = rod(c);
        List<Verdict> everything = raw(rod);
        List<Verdict> said = everything.stream()
                .filter(v -> v.rule().equals(c.rule()) && v.check().equals(c.check()))
                .toList();
        Set<Outcome> outcomes = EnumSet.noneOf(Outcome.class);
        said.forEach(v -> outcomes.add(v.outcome()));
        Outcome expected = switch (c.kind()) {
            case KEPT, LIMIT -> Outcome.PASS;
            case BROKEN -> Outcome.FAIL;
            case UNKNOWN -> Outcome.UNKNOWN;
            case WARNED -> Outcome.WARNING;
            case NOT_APPLICABLE -> Outcome.NOT_APPLICABLE;
        };
        assertTrue(outcomes.contains(expected), () -> "said " + said);
        if (c.kind() != Kind.BROKEN) {
            assertFalse(outcomes.contains(Outcome.FAIL), () -> "said " + said);
        }
        if (c.kind() == Kind.KEPT || c.kind() == Kind.LIMIT) {
            assertFalse(outcomes.contains(Outcome.WARNING), () -> "said " + said);
        }
        if (c.kind() == Kind.LIMIT) {
            assertTrue(said.stream().anyMatch(EighteenRulesTest::exact), () -> "said " + said);
        }
        boolean legal = everything.stream().allMatch(v -> v.outcome().legal());
        assertEquals(legal, Judge.legal(rod, Rulebook.standard()), "the quick bench agrees with the one that writes");
    }

    private static boolean exact(Verdict v) {
        return v.unit().quantise(v.measured()) == v.unit().quantise(v.limit());
    }

    @Test
    void everyCheckHasItsFourCases() {
        Map<String, Set<Kind>> had = new TreeMap<>();
        CASES.all()
                .forEach(c -> had.computeIfAbsent(c.id(), k -> EnumSet.noneOf(Kind.class))
                        .add(c.kind()));
        SortedSet<String> numeric = new TreeSet<>();
        SortedSet<String> neverApplicable = new TreeSet<>();
        SortedSet<String> emitted = emitted(numeric, neverApplicable);
        SortedSet<String> lacking = new TreeSet<>();
        for (String id : emitted) {
            Set<Kind> kinds = had.getOrDefault(id, Set.of());
            if (!kinds.contains(Kind.BROKEN) && !kinds.contains(Kind.WARNED)) {
                lacking.add(id + " broken");
            }
            if (!kinds.contains(Kind.KEPT)) {
                lacking.add(id + " kept");
            }
            if (numeric.contains(id) && !kinds.contains(Kind.LIMIT)) {
                lacking.add(id + " at the limit");
            }
            if (!kinds.contains(Kind.NOT_APPLICABLE) && !CASES.always().contains(id)) {
                lacking.add(id + " not applicable");
            }
        }
        assertEquals(new TreeSet<>(), lacking);
        assertEquals(had.keySet(), emitted);
        neverApplicable.retainAll(CASES.always());
        assertEquals(new TreeSet<>(), neverApplicable, "said to concern every rod, but found not applicable");
    }

    @Test
    void everyOutcomeHasItsSentenceAndEverySentenceItsOutcome() {
        SortedSet<String> keys = new TreeSet<>();
        heard().forEach(said -> said.forEach(v -> keys.add(Sentences.key(v))));
        SortedSet<String> written = new TreeSet<>(Sentences.messages().keySet());
        written.removeIf(key -> !key.startsWith("rule."));
        assertEquals(written, keys);
    }

    @Test
    void everySentenceIsFilled() {
        for (Case c : CASES.all()) {
            Fixtures fixture = Fixtures.legal();
            c.change().accept(fixture);
            Sentences sentences = new Sentences(fixture.catalog());
            for (Verdict verdict : raw(fixture.rod())) {
                String sentence = sentences.of(verdict);
                assertFalse(
                        sentence.contains("{") || sentence.contains("  ") || sentence.contains("NaN"),
                        () -> Sentences.key(verdict) + ": " + sentence);
            }
        }
    }

    @Test
    void eighteenRulesSpeakOfEveryRodInTheirOrder() {
        List<String> codes =
                Rulebook.standard().rules().stream().map(Rule::code).toList();
        assertEquals(
                List.of(
                        "lure-range",
                        "line-class",
                        "length",
                        "durability",
                        "lift",
                        "knot-clearance",
                        "ring-for-line",
                        "reel-fit",
                        "seat-on-blank",
                        "grip-on-blank",
                        "ring-fit",
                        "tip-top",
                        "handle",
                        "guide-train",
                        "salt",
                        "budget",
                        "stock",
                        "must"),
                codes);
        List<String> spoken = Judge.judge(Fixtures.legal().rod(), Rulebook.standard()).stream()
                .map(Verdict::rule)
                .distinct()
                .toList();
        assertEquals(codes, spoken);
    }

    private static SortedSet<String> emitted(Set<String> numeric, Set<String> notApplicable) {
        SortedSet<String> emitted = new TreeSet<>();
        for (List<Verdict> said : heard()) {
            for (Verdict v : said) {
                String id = v.rule() + "." + v.check();
                emitted.add(id);
                if (!Double.isNaN(v.measured())) {
                    numeric.add(id);
                }
                if (v.outcome() == Outcome.NOT_APPLICABLE) {
                    notApplicable.add(id);
                }
            }
        }
        return emitted;
    }

    private static Rod rod(Case c) {
        Fixtures fixture = Fixtures.legal();
        c.change().accept(fixture);
        return fixture.rod();
    }

    /** What is said in every case; never kept, so that one test's rods are not another's. */
    private static List<List<Verdict>> heard() {
        return CASES.all().stream().map(c -> raw(rod(c))).toList();
    }

    private static List<Verdict> raw(Rod rod) {
        Protocol protocol = new Protocol();
        Judge.ask(rod, Rulebook.standard(), protocol);
        return protocol.everything();
    }
}
