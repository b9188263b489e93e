package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Evidence;
import withy.explain.Finding;
import withy.explain.Finding.Outcome;
import withy.explain.Flip;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.explain.WhyNot;
import withy.fixture.Changed;
import withy.objectives.Scoring;
import withy.objectives.Solver.Watch;
import withy.oracle.Enumeration.Legal;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Why a part is not in the best build, against every build of small catalogues. */
class ExplainedTest {
    private static final int SEEDS = 16;
    private static final long MOST_BUILDS = 2_000;
    private static final int PARTS = 5;

    private static final Set<Outcome> SEEN = EnumSet.noneOf(Outcome.class);
    private static final Set<Flip.Kind> FLIPPED = EnumSet.noneOf(Flip.Kind.class);
    private static int asked;

    /** The questions were worth asking; only judged where all of them were asked. */
    @AfterAll
    static void questionsWereWorthAsking() {
        if (asked >= SEEDS) {
            // what a shop leaves out unless it is asked for is not in these catalogues: UnusualTest
            assertTrue(SEEN.containsAll(EnumSet.complementOf(EnumSet.of(Outcome.UNUSUAL))), "outcomes: " + SEEN);
            assertTrue(FLIPPED.containsAll(EnumSet.of(Flip.Kind.PRICE, Flip.Kind.WISH)), "flips: " + FLIPPED);
        }
    }

    @TestFactory
    Stream<DynamicTest> whyNot() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    asked++;
                    whyNot(seed);
                }));
    }

    /** A seat like the chosen one, but heavier and dearer. */
    @Test
    void aWorseTwinIsDominated() {
        long seed = 0;
        SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
        Found first = inquiry(shop.catalog(), shop.query().brief()).first();
        while (first == null) {
            seed++;
            shop = SmallShop.of(seed, MOST_BUILDS);
            first = inquiry(shop.catalog(), shop.query().brief()).first();
        }
        Part seat = shop.catalog().find(first.build().partAt(withy.rod.Station.SEAT));
        Record twin = Changed.with((Record) seat, "facts.id", "twin");
        twin = Changed.with(twin, "facts.priceMinor", seat.facts().priceMinor() + 9_000);
        twin = Changed.with(twin, "facts.measuredG", seat.massMg() / 1000.0 + 12);
        List<Part> parts = new ArrayList<>(shop.catalog().byId().values());
        parts.add((Part) twin);
        Catalog more = new Catalog(shop.catalog().rates(), shop.catalog().asOf(), "more", parts);
        SmallShop.Case wider = new SmallShop.Case(more, shop.query());
        whyNot("twin", wider, "twin");
        assertTrue(SEEN.contains(Outcome.DOMINATED), "" + SEEN);
    }

    /** A hood that no seat takes: that there is none on the shelf is not why. */
    @Test
    void whatGoesNowhereIsNotToldAsSoldOut() {
        SmallShop.Case shop = SmallShop.of(116, MOST_BUILDS);
        Part hood = shop.catalog().all(PartKind.HOOD).get(0);
        SmallShop.Case none = soldOut(shop, hood);
        whyNot("hood " + hood.id(), none, hood.id());
        Finding finding = WhyNot.of(inquiry(none.catalog(), none.query().brief()), Set.of(hood.id()));
        assertEquals(Outcome.BREAKS_RULE, finding.outcome(), finding.sentence());
        assertNull(finding.breach());
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> whyNotOnManyMore() {
        return LongStream.range(SEEDS, 400)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> whyNot(seed)));
    }

    static Inquiry inquiry(Catalog catalog, Brief brief) {
        return new Inquiry(catalog, brief, Search::new, Watch.NONE, new QuantityText(UnitSystem.METRIC));
    }

    private static void whyNot(long seed) {
        SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
        Random random = new Random(seed);
        List<Part> parts = List.copyOf(shop.catalog().byId().values());
        for (int i = 0; i < PARTS; i++) {
            Part part = parts.get(random.nextInt(parts.size()));
            SmallShop.Case changed = switch (i) {
                case 0 -> refusing(shop, part);
                case 1 -> soldOut(shop, part);
                case 2 -> sturdier(shop);
                default -> shop;
            };
            whyNot("seed " + seed + ", " + i + ", part " + part.id(), changed, part.id());
        }
    }

    private static void whyNot(String told, SmallShop.Case shop, String id) {
        Finding finding = WhyNot.of(inquiry(shop.catalog(), shop.query().brief()), Set.of(id));
        SEEN.add(finding.outcome());
        soonest(told, shop, id, finding);
        grounds(told, shop, finding);
        List<Legal> all = new Enumeration(shop.catalog(), shop.query(), true).legal();
        List<Legal> with = new Enumeration(shop.catalog(), shop.query().forcing(Set.of(id)), true).legal();
        switch (finding.outcome()) {
            case BREAKS_RULE, NOT_IN_STOCK -> RefusedHolds.check(told, shop, finding, with);
            case CHOSEN, EQUAL, UNUSUAL, DOMINATED, LOSES -> legal(told, shop, finding, all, with);
        }
        for (Flip flip : finding.flips()) {
            FlipsHold.check(told + ", " + flip, shop, id, finding, flip);
            if (!Double.isNaN(flip.wins())) {
                FLIPPED.add(flip.kind());
            }
        }
    }

    /** What is told first is a part of the whole answer. */
    private static void soonest(String told, SmallShop.Case shop, String id, Finding finding) {
        Finding soonest = WhyNot.soonest(inquiry(shop.catalog(), shop.query().brief()), Set.of(id));
        assertEquals(finding.outcome(), soonest.outcome(), told);
        assertEquals(finding.sentence(), soonest.sentence(), told);
        assertEquals(finding.breach(), soonest.breach(), told);
        assertEquals(finding.forcedBy(), soonest.forcedBy(), told);
        assertTrue(finding.alsoBroken().containsAll(soonest.alsoBroken()), told);
        assertTrue(finding.grounds().containsAll(soonest.grounds()), told);
    }

    private static SmallShop.Case refusing(SmallShop.Case shop, Part part) {
        List<PartWish> refused = new ArrayList<>(shop.query().brief().refused());
        refused.add(new PartWish(part.id(), true, 0));
        return new SmallShop.Case(
                shop.catalog(), shop.query().withBrief(Changed.with(shop.query().brief(), "refused", refused)));
    }

    /** None on the shelf, and it takes three weeks to come. */
    private static SmallShop.Case soldOut(SmallShop.Case shop, Part part) {
        Catalog none = FlipsHold.with(
                FlipsHold.with(shop.catalog(), part.id(), "facts.stock", 0), part.id(), "facts.leadDays", 21);
        LocalDate day = shop.catalog().asOf().plusDays(14);
        Brief brief = Changed.with(Changed.with(shop.query().brief(), "wantedBy", day), "owned", Set.of());
        return new SmallShop.Case(none, shop.query().withBrief(brief));
    }

    /** Asked for a class more, so that some parts no longer do. */
    private static SmallShop.Case sturdier(SmallShop.Case shop) {
        Brief brief = shop.query().brief();
        int more = Math.min(5, brief.durabilityClass() + 1);
        return new SmallShop.Case(shop.catalog(), shop.query().withBrief(Changed.with(brief, "durabilityClass", more)));
    }

    /** Reasons cite wishes of the brief, rules of the book and parts of the catalogue, nothing else and never each other. */
    private static void grounds(String told, SmallShop.Case shop, Finding finding) {
        assertFalse(finding.grounds().isEmpty(), told);
        Set<String> rules = new TreeSet<>();
        Rulebook.standard().rules().forEach(rule -> rules.add(rule.code()));
        for (Evidence ground : finding.grounds()) {
            boolean known = switch (ground.kind()) {
                case FACT -> shop.catalog().find(ground.ref()) != null;
                case RULE -> rules.contains(ground.ref());
                case WISH -> !ground.ref().isEmpty();
            };
            assertTrue(known, told + ": " + ground);
        }
    }

    private static void legal(String told, SmallShop.Case shop, Finding finding, List<Legal> all, List<Legal> with) {
        assertFalse(with.isEmpty(), told);
        Scoring scoring = Scoring.of(shop.query().brief(), shop.catalog().rates());
        Found first = Objects.requireNonNull(finding.first(), told);
        Found opponent = Objects.requireNonNull(finding.opponent(), told);
        if (all.isEmpty()) {
            assertEquals(Outcome.CHOSEN, finding.outcome(), told);
            assertEquals(first, opponent, told);
            return;
        }
        assertEquals(Compared.least(all, scoring), scoring.score(first.vector()), told + finding);
        assertEquals(Compared.least(with, scoring), scoring.score(opponent.vector()), told);
        if (finding.outcome() == Outcome.CHOSEN) {
            assertTrue(Compared.least(with, scoring) <= Compared.least(all, scoring), told);
            return;
        }
        assertFalse(Compared.holds(first.build(), finding.parts()), told);
        boolean noticed = Compared.noticed(shop, first, opponent);
        assertEquals(finding.outcome() != Outcome.EQUAL, noticed, told);
        if (noticed) {
            boolean dominated = all.stream()
                    .anyMatch(one ->
                            Compared.better(one.vector(), opponent.vector()) && Compared.meets(opponent, one.build()));
            assertEquals(finding.outcome() == Outcome.DOMINATED, dominated, told);
        }
        if (finding.better() != null) {
            assertTrue(Compared.better(finding.better().vector(), opponent.vector()), told);
            assertTrue(Compared.meets(opponent, finding.better().build()), told + ": a nice wish is missed");
            assertTrue(Judge.legal(finding.better().rod(), Rulebook.standard()), told);
        }
    }
}
