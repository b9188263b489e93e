package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
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
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Breach;
import withy.explain.Curve;
import withy.explain.Evidence;
import withy.explain.Finding;
import withy.explain.Finding.Outcome;
import withy.explain.Flip;
import withy.explain.Found;
import withy.explain.Inquiry;
import withy.explain.Ledger;
import withy.explain.Lighter;
import withy.explain.WhyNot;
import withy.fixture.Changed;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.oracle.Enumeration.Legal;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Explanations against every build of small catalogues. */
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

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> whyNotOnManyMore() {
        return LongStream.range(SEEDS, 400)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> whyNot(seed)));
    }

    @TestFactory
    Stream<DynamicTest> lighter() {
        return LongStream.range(100, 100 + SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> lighter(seed)));
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> lighterOnManyMore() {
        return LongStream.range(400, 600)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> lighter(seed)));
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
            case BREAKS_RULE, NOT_IN_STOCK -> refused(told, shop, finding, with);
            case CHOSEN, EQUAL, UNUSUAL, DOMINATED, LOSES -> legal(told, shop, finding, all, with);
        }
        for (Flip flip : finding.flips()) {
            flip(told + ", " + flip, shop, id, finding, flip);
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
        Catalog none = with(with(shop.catalog(), part.id(), "facts.stock", 0), part.id(), "facts.leadDays", 21);
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

    private static void refused(String told, SmallShop.Case shop, Finding finding, List<Legal> with) {
        assertEquals(List.of(), with, told);
        Breach breach = finding.breach();
        if (breach == null) {
            return;
        }
        Set<String> broken = new TreeSet<>();
        broken.add(breach.verdict().rule());
        finding.alsoBroken().forEach(also -> broken.add(also.verdict().rule()));
        assertEquals(finding.outcome() == Outcome.NOT_IN_STOCK, broken.equals(Set.of("stock")), told + broken);
        assertFalse(without(shop, finding.parts(), broken).isEmpty(), told + ": still nothing without " + broken);
        for (String rule : broken) {
            Set<String> others = new TreeSet<>(broken);
            others.remove(rule);
            assertTrue(without(shop, finding.parts(), others).isEmpty(), told + ": " + rule + " need not give way");
        }
        Found opponent = assertNotNullHere(finding.opponent(), told);
        boolean measured = Judge.judge(opponent.rod(), Rulebook.standard()).contains(breach.verdict());
        assertTrue(measured, told + ": the judge does not say " + breach.verdict());
        Set<String> kept = new TreeSet<>();
        finding.forcedBy().forEach(wish -> kept.add(wish.field() + " " + wish.about()));
        if (finding.outcome() == Outcome.BREAKS_RULE) {
            forced(
                    told + ": " + breach.verdict() + " for " + kept,
                    shop,
                    finding,
                    kept,
                    breach.verdict().rule());
        }
    }

    /** With nothing asked but the wishes that force it, the build with the parts breaks the rule all the same. */
    private static void forced(String told, SmallShop.Case shop, Finding finding, Set<String> kept, String rule) {
        Build build = assertNotNullHere(finding.opponent(), told).build();
        for (Brief brief : ConflictTest.Unasked.but(shop.query().brief(), kept)) {
            Rod rod = Rod.measure(shop.catalog(), brief, build);
            boolean broken = Judge.judge(rod, Rulebook.standard()).stream()
                    .anyMatch(one -> one.rule().equals(rule) && !one.outcome().legal());
            assertTrue(broken, told);
        }
    }

    private static List<Legal> without(SmallShop.Case shop, Set<String> parts, Set<String> rules) {
        Rulebook book = Rulebook.standard();
        for (String rule : rules) {
            book = book.without(rule);
        }
        return new Enumeration(shop.catalog(), shop.query().forcing(parts).withRulebook(book), true).some();
    }

    private static void legal(String told, SmallShop.Case shop, Finding finding, List<Legal> all, List<Legal> with) {
        assertFalse(with.isEmpty(), told);
        Scoring scoring = Scoring.of(shop.query().brief(), shop.catalog().rates());
        Found first = assertNotNullHere(finding.first(), told);
        Found opponent = assertNotNullHere(finding.opponent(), told);
        if (all.isEmpty()) {
            assertEquals(Outcome.CHOSEN, finding.outcome(), told);
            assertEquals(first, opponent, told);
            return;
        }
        assertEquals(least(all, scoring), scoring.score(first.vector()), told + finding);
        assertEquals(least(with, scoring), scoring.score(opponent.vector()), told);
        if (finding.outcome() == Outcome.CHOSEN) {
            assertTrue(least(with, scoring) <= least(all, scoring), told);
            return;
        }
        assertFalse(holds(first.build(), finding.parts()), told);
        boolean noticed = noticed(shop, first, opponent);
        assertEquals(finding.outcome() != Outcome.EQUAL, noticed, told);
        if (noticed) {
            boolean dominated = all.stream()
                    .anyMatch(one -> better(one.vector(), opponent.vector()) && meets(opponent, one.build()));
            assertEquals(finding.outcome() == Outcome.DOMINATED, dominated, told);
        }
        if (finding.better() != null) {
            assertTrue(better(finding.better().vector(), opponent.vector()), told);
            assertTrue(meets(opponent, finding.better().build()), told + ": a nice wish is missed");
            assertTrue(Judge.legal(finding.better().rod(), Rulebook.standard()), told);
        }
    }

    /** A step of any objective (weight beyond the tolerances too), or a nice wish that only one of them meets. */
    private static boolean noticed(SmallShop.Case shop, Found first, Found opponent) {
        Brief brief = shop.query().brief();
        Rod a = opponent.rod();
        Rod b = first.rod();
        double weight = Math.abs(a.figures().weightG() - b.figures().weightG());
        double tolerance =
                Math.hypot(a.figures().weightToleranceG(), b.figures().weightToleranceG());
        double outside =
                Math.abs(a.figures().balanceOutsideZoneNmm() - b.figures().balanceOutsideZoneNmm());
        double swing = Math.abs(a.figures().swingWeightKgM2() - b.figures().swingWeightKgM2());
        double price = Math.abs(a.figures().priceMinor() - b.figures().priceMinor());
        double style = Math.abs(opponent.vector().styleCenti() - first.vector().styleCenti()) / 100.0;
        double classes =
                Math.abs(opponent.vector().durabilityClasses() - first.vector().durabilityClasses());
        double hair = 1 - 1e-9;
        return weight >= brief.step(Objective.WEIGHT) * hair && weight > tolerance
                || outside >= brief.step(Objective.BALANCE) * hair
                || swing >= brief.step(Objective.SWING_WEIGHT) * hair
                || price >= brief.step(Objective.PRICE)
                || style >= brief.step(Objective.STYLE) * hair
                || classes >= brief.step(Objective.DURABILITY)
                || !meets(first, opponent.build())
                || !meets(opponent, first.build());
    }

    /** True where a build misses no nice wish that another meets, told by what each wish alone costs. */
    static boolean meets(Found first, Build opponent) {
        Brief brief = first.rod().brief();
        for (Brief one : OneWish.each(brief)) {
            long mine = new withy.objectives.NiceWishes(one)
                    .missedMilliSteps(Rod.measure(first.rod().setting().catalog(), one, opponent));
            long best = new withy.objectives.NiceWishes(one)
                    .missedMilliSteps(Rod.measure(first.rod().setting().catalog(), one, first.build()));
            if (mine > 0 && best == 0) {
                return false;
            }
        }
        return brief.insisted().stream()
                .map(wish -> Set.of(wish.partId()))
                .noneMatch(part -> holds(first.build(), part) && !holds(opponent, part));
    }

    static boolean better(ObjectiveVector one, ObjectiveVector other) {
        boolean strictly = one.missedMilliSteps() < other.missedMilliSteps();
        for (Objective objective : Objective.values()) {
            if (one.loss(objective) > other.loss(objective)) {
                return false;
            }
            strictly |= one.loss(objective) < other.loss(objective);
        }
        return strictly && one.missedMilliSteps() <= other.missedMilliSteps();
    }

    static long least(List<Legal> builds, Scoring scoring) {
        return builds.stream()
                .mapToLong(one -> scoring.score(one.vector()))
                .min()
                .orElse(Long.MAX_VALUE);
    }

    static boolean holds(Build build, Set<String> parts) {
        Set<String> ids = new HashSet<>(Set.of(build.layout().blankId()));
        build.choices().values().forEach(choice -> ids.add(choice.partId()));
        return ids.containsAll(parts);
    }

    // ---- flips, on both sides

    private static void flip(String told, SmallShop.Case shop, String part, Finding finding, Flip flip) {
        if (Double.isNaN(flip.wins())) {
            if (flip.kind() == Flip.Kind.PRICE) {
                Catalog free = priced(shop.catalog(), part, 0);
                assertFalse(wins(free, shop.query(), part), told);
            }
            return;
        }
        FLIPPED.add(flip.kind());
        switch (flip.kind()) {
            case PRIORITY -> {
                assertTrue(wins(shop.catalog(), weighed(shop, flip.subject(), flip.wins()), part), told);
                assertTrue(ties(shop.catalog(), weighed(shop, flip.subject(), flip.loses()), part), told);
            }
            case PRICE -> {
                Catalog wins = priced(shop.catalog(), part, Math.round(flip.wins()));
                Catalog loses = priced(shop.catalog(), part, Math.round(flip.loses()));
                assertTrue(wins(wins, shop.query(), part), told);
                assertTrue(ties(loses, shop.query(), part), told);
            }
            case WEIGHT -> {
                assertTrue(wins(scaled(shop.catalog(), part, flip.wins()), shop.query(), part), told);
                assertTrue(ties(scaled(shop.catalog(), part, flip.loses()), shop.query(), part), told);
            }
            case WISH -> {
                Query wins =
                        shop.query().withBrief(Said.of(shop.query().brief(), flip.subject(), flip.now(), flip.wins()));
                Query loses =
                        shop.query().withBrief(Said.of(shop.query().brief(), flip.subject(), flip.now(), flip.loses()));
                if (finding.breach() == null) {
                    assertTrue(wins(shop.catalog(), wins, part), told);
                    assertTrue(ties(shop.catalog(), loses, part), told);
                } else {
                    assertFalse(
                            new Enumeration(shop.catalog(), wins.forcing(Set.of(part)), true)
                                    .some()
                                    .isEmpty(),
                            told);
                    assertTrue(
                            new Enumeration(shop.catalog(), loses.forcing(Set.of(part)), true)
                                    .some()
                                    .isEmpty(),
                            told);
                }
            }
        }
    }

    private static Query weighed(SmallShop.Case shop, String objective, double priority) {
        Map<Objective, Double> priorities = new EnumMap<>(shop.query().brief().priorities());
        for (Objective one : Objective.values()) {
            if (one.key().equals(objective)) {
                priorities.put(one, priority);
            }
        }
        return shop.query().withPriorities(priorities);
    }

    private static Catalog priced(Catalog catalog, String part, long minor) {
        return with(catalog, part, "facts.priceMinor", minor);
    }

    private static Catalog scaled(Catalog catalog, String part, double grams) {
        return with(catalog, part, "facts.measuredG", grams);
    }

    private static Catalog with(Catalog catalog, String id, String path, Object value) {
        List<Part> parts = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            parts.add(part.id().equals(id) ? (Part) Changed.with((Record) part, path, value) : part);
        }
        return new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts);
    }

    /** A best build holds the part. */
    private static boolean wins(Catalog catalog, Query query, String part) {
        return compare(catalog, query, part) >= 0;
    }

    /** A best build does without the part. */
    private static boolean ties(Catalog catalog, Query query, String part) {
        return compare(catalog, query, part) <= 0;
    }

    /** How much better the best build with the part is than the best without. */
    private static long compare(Catalog catalog, Query query, String part) {
        Scoring scoring = Scoring.of(query.brief(), catalog.rates(), query.priorities());
        List<Legal> all = new Enumeration(catalog, query, true).legal();
        List<Legal> with =
                all.stream().filter(one -> holds(one.build(), Set.of(part))).toList();
        List<Legal> rest =
                all.stream().filter(one -> !holds(one.build(), Set.of(part))).toList();
        return Long.compare(least(rest, scoring), least(with, scoring));
    }

    // ---- lighter

    private static void lighter(long seed) {
        SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
        List<Legal> all = new Enumeration(shop.catalog(), shop.query(), true).legal();
        List<Curve.Point> told = new ArrayList<>();
        Lighter lighter = Lighter.of(inquiry(shop.catalog(), shop.query().brief()), told::add);
        String seeded = "seed " + seed;
        if (all.isEmpty()) {
            assertNull(lighter, seeded);
            return;
        }
        assertNotNull(lighter, seeded);
        Scoring scoring = Scoring.of(shop.query().brief(), shop.catalog().rates());
        long lightest =
                all.stream().mapToLong(one -> one.vector().weightMg()).min().orElseThrow();
        assertEquals(lightest, lighter.lightest().vector().weightMg(), seeded);
        assertEquals(told, lighter.curve(), seeded);
        for (Curve.Point point : lighter.curve()) {
            long most = Math.round(point.mostG() * 1000);
            List<Legal> within =
                    all.stream().filter(one -> one.vector().weightMg() <= most).toList();
            assertEquals(least(within, scoring), scoring.score(point.found().vector()), seeded + ", within " + most);
        }
        assertEquals(
                lightest,
                lighter.curve().get(lighter.curve().size() - 1).found().vector().weightMg(),
                seeded);
        ledger(seeded, shop, lighter, scoring);
    }

    private static void ledger(String seeded, SmallShop.Case shop, Lighter lighter, Scoring scoring) {
        long best = scoring.score(lighter.first().vector());
        for (Ledger.Line line : lighter.ledger()) {
            String told = seeded + ", " + line.station() + " " + line.part();
            Part now = shop.catalog().find(lighter.first().build().partAt(line.station()));
            Part part = shop.catalog().find(line.part());
            assertTrue(part.massMg() < now.massMg(), told);
            Found found = line.found();
            if (line.breach() == null) {
                assertTrue(Judge.legal(assertNotNullHere(found, told).rod(), Rulebook.standard()), told);
                assertTrue(scoring.score(found.vector()) >= best, told);
                assertTrue(found.vector().weightMg() < lighter.first().vector().weightMg(), told);
            } else if (found != null) {
                assertTrue(
                        Judge.judge(found.rod(), Rulebook.standard())
                                .contains(line.breach().verdict()),
                        told);
            }
            if (line.station().place() == withy.rod.Station.Place.SEAT && line.breach() != null) {
                assertTrue(noSeatFits(shop, lighter.first().build(), part), told);
            }
        }
    }

    /** With every hood and every arbor, or none. */
    private static boolean noSeatFits(SmallShop.Case shop, Build build, Part seat) {
        List<String> hoods = new ArrayList<>(List.of(""));
        shop.catalog().all(PartKind.HOOD).forEach(hood -> hoods.add(hood.id()));
        List<String> arbors = new ArrayList<>(List.of(""));
        shop.catalog().all(PartKind.ARBOR).forEach(arbor -> arbors.add(arbor.id()));
        Build with = build.with(withy.rod.Station.SEAT, Build.Choice.of(seat.id()));
        for (String hood : hoods) {
            for (String arbor : arbors) {
                Build one = set(set(with, withy.rod.Station.HOOD, hood), withy.rod.Station.SEAT_ARBORS, arbor);
                if (Judge.legal(Rod.measure(shop.catalog(), shop.query().brief(), one), Rulebook.standard())) {
                    return false;
                }
            }
        }
        return true;
    }

    private static Build set(Build build, withy.rod.Station station, String id) {
        return id.isEmpty() ? build.without(station) : build.with(station, Build.Choice.of(id));
    }

    private static <T> T assertNotNullHere(@org.jspecify.annotations.Nullable T value, String told) {
        assertNotNull(value, told);
        return value;
    }
}
