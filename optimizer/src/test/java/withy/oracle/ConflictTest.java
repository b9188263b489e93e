package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.List;
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
import withy.explain.Conflict;
import withy.explain.FirstTooMuch;
import withy.explain.Found;
import withy.explain.Impossible;
import withy.explain.Inquiry;
import withy.explain.Neighbours;
import withy.explain.Repair;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.oracle.Enumeration.Legal;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;

/** Wishes that do not go together, and their repairs, against every build of small catalogues. */
class ConflictTest {
    private static final int SEEDS = 4;
    private static final long MOST_BUILDS = 100;

    /** An order in which wishes may be said; parts by name come before all, money before what makes a rod heavy. */
    private static final List<String> TURN = List.of(
            "insisted",
            "refused",
            "hand",
            "reel",
            "lengthMm",
            "pieces",
            "packedMaxMm",
            "wantedBy",
            "largestFish",
            "landing",
            "line.strength",
            "line.kind",
            "leader.strength",
            "leader.knot",
            "lure.usual",
            "water",
            "reachMm",
            "handle.form",
            "handle.foreGrip",
            "handle.trigger",
            "handle.movingHood",
            "handle.keeper",
            "handle.action",
            "handle.mixedGrips",
            "budgetMinor",
            "lure.heaviest",
            "durabilityClass");

    /** What guides stand by. */
    private static final Set<String> TACKLE = Set.of(
            "landing ",
            "largestFish ",
            "lure.usual ",
            "lure.heaviest ",
            "line.strength ",
            "line.kind ",
            "leader.strength ",
            "leader.knot ",
            "reel ");

    private static int asked;
    private static int conflicts;
    private static int repairs;

    /** Only judged where all were asked. */
    @AfterAll
    static void questionsWereWorthAsking() {
        if (asked >= SEEDS) {
            assertTrue(conflicts >= SEEDS && repairs >= SEEDS, "conflicts " + conflicts + ", repairs " + repairs);
        }
    }

    @TestFactory
    Stream<DynamicTest> asksTooMuch() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> asksTooMuch(seed)));
    }

    @TestFactory
    @Tag("long")
    Stream<DynamicTest> asksTooMuchOnManyMore() {
        return LongStream.range(SEEDS, 120)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> asksTooMuch(seed)));
    }

    /** Without a reel seat nothing can be built whatever is wished. */
    @Test
    void aCatalogueThatFitsNothingIsToldApart() {
        SmallShop.Case shop = SmallShop.of(3, MOST_BUILDS);
        List<Part> parts = shop.catalog().byId().values().stream()
                .filter(part -> part.kind() != PartKind.REEL_SEAT)
                .toList();
        Catalog none = new Catalog(shop.catalog().rates(), shop.catalog().asOf(), "none", parts);
        Impossible told = Impossible.of(ExplainedTest.inquiry(none, shop.query().brief()));
        assertFalse(told.wishesAreToBlame());
        assertEquals(List.of(), told.conflicts());
        assertEquals(List.of(), told.repairs());
    }

    private static void asksTooMuch(long seed) {
        SmallShop.Case shop = SmallShop.of(seed, MOST_BUILDS);
        List<Legal> all = new Enumeration(shop.catalog(), shop.query(), true).legal();
        if (all.isEmpty()) {
            return;
        }
        asked++;
        neighbours(shop, all.size());
        Brief brief = tooMuch(shop, all, seed);
        firstTooMuch("seed " + seed, shop.catalog(), brief);
        Impossible told = Impossible.of(ExplainedTest.inquiry(shop.catalog(), brief));
        String what = "seed " + seed;
        assertTrue(told.wishesAreToBlame(), what);
        assertFalse(told.conflicts().isEmpty(), what);
        for (Conflict conflict : told.conflicts()) {
            conflicts++;
            Set<String> kept = new TreeSet<>();
            conflict.wishes().forEach(wish -> kept.add(wish.field() + " " + wish.about()));
            assertFalse(possible(shop.catalog(), brief, kept), what + ": together " + kept);
            for (String wish : kept) {
                Set<String> rest = new TreeSet<>(kept);
                rest.remove(wish);
                assertTrue(mayBe(shop.catalog(), brief, rest, wish), what + ": " + kept + " without " + wish);
            }
        }
        for (Repair repair : told.repairs()) {
            repairs++;
            repair(what + ", " + repair.sentence(), shop, brief, repair);
        }
    }

    /** What is counted around the best build are legal builds: never more of them than there are. */
    private static void neighbours(SmallShop.Case shop, int all) {
        Inquiry inquiry = ExplainedTest.inquiry(shop.catalog(), shop.query().brief());
        Found best = inquiry.first();
        assertNotNull(best);
        int counted = Neighbours.of(inquiry, best);
        assertTrue(counted >= 1 && counted <= all, counted + " of " + all);
    }

    /** With all wishes before it something can be built, with it nothing. */
    private static void firstTooMuch(String what, Catalog catalog, Brief brief) {
        Conflict.Asked first =
                FirstTooMuch.of(ExplainedTest.inquiry(catalog, brief), Comparator.comparingInt(TURN::indexOf));
        assertNotNull(first, what);
        assertTrue(TURN.contains(first.field()), first.field());
        Set<String> kept = new TreeSet<>();
        TURN.subList(0, TURN.indexOf(first.field())).forEach(field -> kept.add(field + " "));
        for (PartWish wish : brief.insisted()) {
            kept.add("insisted " + wish.partId());
        }
        for (PartWish wish : brief.refused()) {
            kept.add("refused " + wish.partId());
        }
        assertTrue(mayBe(catalog, brief, kept, ""), what + ": before " + first.field());
        kept.add(first.field() + " ");
        assertFalse(possible(catalog, brief, kept), what + ": with " + first.field());
    }

    /** Money just too short, or a class more with a heavier lure than any blank takes. */
    private static Brief tooMuch(SmallShop.Case shop, List<Legal> all, long seed) {
        Brief brief = shop.query().brief();
        if (seed % 2 == 1) {
            Brief heavy = Changed.with(brief, "lure.heaviestG", 400);
            return Changed.with(heavy, "durabilityClass", 5);
        }
        long cheapest = all.stream()
                .mapToLong(one -> Rod.measure(shop.catalog(), brief, one.build())
                        .figures()
                        .priceMinor())
                .min()
                .orElseThrow();
        return Changed.with(brief, "budgetMinor", cheapest - 1);
    }

    private static void repair(String told, SmallShop.Case shop, Brief brief, Repair repair) {
        Rod rod = repair.build().rod();
        assertTrue(Judge.legal(rod, Rulebook.standard()), told);
        if (repair.changes().size() != 1 || Double.isNaN(repair.changes().get(0).to())) {
            return;
        }
        Repair.Change change = repair.changes().get(0);
        Brief enough = Said.of(brief, change.field(), change.from(), change.to());
        Brief shy = Said.of(brief, change.field(), change.from(), change.shy());
        assertTrue(some(shop.catalog(), enough), told);
        assertFalse(some(shop.catalog(), shy), told + ", shy");
    }

    private static boolean some(Catalog catalog, Brief brief) {
        return Anything.answers(catalog, Query.of(brief, Rulebook.standard()));
    }

    /**
     * The same where wishes given up need not be: with another line or reel guides stand elsewhere, and wraps may cost some cents more there. So a rod is looked for that
     * is asked all of its tackle, too.
     */
    private static boolean mayBe(Catalog catalog, Brief brief, Set<String> kept, String givenUp) {
        Set<String> tackled = new TreeSet<>(kept);
        tackled.addAll(TACKLE);
        tackled.remove(givenUp);
        return possible(catalog, brief, kept) || possible(catalog, brief, tackled);
    }

    /** True where something can be built for a brief that asks only this. */
    private static boolean possible(Catalog catalog, Brief brief, Set<String> kept) {
        for (Brief one : Unasked.but(brief, kept)) {
            if (some(catalog, one)) {
                return true;
            }
        }
        return false;
    }
}
