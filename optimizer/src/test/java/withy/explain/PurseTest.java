package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.explain.FewBuilds.Weighed;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rules.Rulebook;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** What too small a purse comes to, against the cheapest build of the list; and what an inquiry remembers. */
class PurseTest {
    private static final FewBuilds SHOP = FewBuilds.shop();

    private static long cheapest(Brief brief, String with) {
        Brief free = Changed.with(brief, "budgetMinor", null);
        return SHOP.legal(SHOP.catalog(), free).stream()
                .filter(one -> with.isEmpty() || one.holds(with))
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
    }

    /** The price of the cheapest rod is enough and a cent less is not, whatever would be nice. */
    @Test
    void thePriceOfTheCheapest() {
        Brief plain = SHOP.brief();
        Brief nice = Changed.with(
                Changed.with(plain, "insisted", List.of(new PartWish("seat-light", false, 50))),
                "handle.keeper",
                new Wish<>(true, false, 50));
        for (Brief brief : List.of(plain, nice)) {
            long least = cheapest(brief, "");
            Brief poor = Changed.with(brief, "budgetMinor", least - 1_234);
            Impossible told = Impossible.of(SHOP.inquiry(poor));
            assertTrue(told.wishesAreToBlame() && told.allConflicts());
            assertEquals(1, told.conflicts().size());
            Conflict conflict = told.conflicts().get(0);
            Inquiry inquiry = SHOP.inquiry(poor);
            assertEquals(
                    "These lists hold no rod for this wish: at most " + inquiry.money(least - 1_234) + " to pay.",
                    conflict.sentence());
            assertNotNull(conflict.nearest());
            assertEquals(least, conflict.nearest().rod().figures().priceMinor(), "the cheapest is nearest");
            assertEquals("budget", conflict.breach().verdict().rule());
            Repair repair = told.repairs().stream()
                    .filter(one -> one.changes().get(0).field().equals("budgetMinor"))
                    .findFirst()
                    .orElseThrow();
            Repair.Change change = repair.changes().get(0);
            assertEquals(
                    List.of(least - 1_234.0, (double) least, least - 1.0),
                    List.of(change.from(), change.to(), change.shy()));
            assertEquals("12.34 EUR more to spend, " + inquiry.money(least) + " in all", repair.sentence());
            assertEquals(least, repair.build().rod().figures().priceMinor());
            assertEquals(1_234.0 / (least - 1_234), repair.size(), 1e-12);
        }
    }

    /** A keeper that must be in and a purse for a rod without one: two wishes that do not go together, and either can give way. */
    @Test
    void aKeeperTooMuchForThePurse() {
        Brief kept = Changed.with(SHOP.brief(), "handle.keeper", new Wish<>(true, true, 0));
        long without = cheapest(SHOP.brief(), "");
        long with = cheapest(SHOP.brief(), "keeper");
        assertTrue(with > without + 1);
        Brief brief = Changed.with(kept, "budgetMinor", with - 1);
        Impossible told = Impossible.of(SHOP.inquiry(brief));
        assertEquals(1, told.conflicts().size());
        Conflict conflict = told.conflicts().get(0);
        List<String> asked =
                conflict.wishes().stream().map(Conflict.Asked::field).toList();
        assertTrue(asked.containsAll(Set.of("handle.keeper", "budgetMinor")), "" + asked);
        assertTrue(conflict.sentence().contains("a hook keeper and at most "), conflict.sentence());
        List<String> fields =
                told.repairs().stream().map(one -> one.changes().get(0).field()).toList();
        assertEquals("budgetMinor", fields.get(0), "the cent first");
        assertEquals(
                "0.01 EUR more to spend, " + SHOP.inquiry(brief).money(with) + " in all",
                told.repairs().get(0).sentence());
        assertNull(told.repairs()
                .get(fields.indexOf("handle.keeper"))
                .build()
                .rod()
                .partAt(withy.rod.Station.KEEPER));
    }

    /** One, two or three that do not go together are told as such. */
    @Test
    void threeThatDoNotGoTogether() {
        Impossible three = Impossible.of(Planted.inquiry(
                Planted.brief(), b -> !Planted.kept(b).containsAll(Set.of("water", "pieces", "budgetMinor"))));
        Impossible two = Impossible.of(
                Planted.inquiry(Planted.brief(), b -> !Planted.kept(b).containsAll(Set.of("water", "pieces"))));
        String pair = two.conflicts().get(0).sentence();
        assertEquals("These two do not go together: 2 pieces and corrosion class 2 for the water.", pair);
        assertEquals(1, three.conflicts().size());
        assertTrue(three.conflicts().get(0).sentence().startsWith("These do not all go together: "));
        assertEquals(3, three.conflicts().get(0).wishes().size());
    }

    @Test
    void namesAndMoney() {
        Inquiry inquiry = SHOP.inquiry(SHOP.brief());
        assertEquals("123.45 EUR", inquiry.money(12_345));
        assertEquals("Tarn cap", inquiry.name("cap"));
        assertEquals("nowhere", inquiry.name("nowhere"));
        assertEquals("Tarn cap", inquiry.spoken("cap"));
        assertEquals(Phrases.of("material.cork"), inquiry.spoken("cork"));
        assertEquals("nowhere", inquiry.spoken("nowhere"));
        assertEquals(Map.of(Objective.PRICE, 1.0), Inquiry.only(Objective.PRICE), "no other is named");
        assertEquals(Evidence.fact("x").ref(), Evidence.rule("x").ref());
        assertFalse(Evidence.fact("x").equals(Evidence.rule("x")));
    }

    private static Inquiry unsure(boolean build, boolean proven) {
        Fixtures fixture = Fixtures.legal();
        Solver solver = (query, watch) -> {
            Found found = FewBuilds.of(fixture).inquiry(fixture.theBrief()).measured(fixture.build());
            return build
                    ? new Solution(found.build(), found.vector(), 5_000_000_000_000L, 2_000_000_000_000L, proven, 1)
                    : new Solution(null, null, Long.MAX_VALUE, 0, proven, 1);
        };
        return new Inquiry(
                fixture.catalog(),
                fixture.theBrief(),
                other -> solver,
                Watch.NONE,
                new QuantityText(UnitSystem.METRIC));
    }

    /** What was given up before its end is open; a build found settles whether there is any. */
    @Test
    void whatIsLeftOpen() {
        Inquiry found = unsure(true, false);
        assertNotNull(found.any(found.query()));
        assertFalse(found.open());
        Found best = found.bestFor(found.query());
        assertNotNull(best);
        assertEquals(3.0, best.mayBeOffSteps(), 1e-12);
        assertFalse(best.proven());
        assertTrue(found.open());
        Inquiry none = unsure(false, false);
        assertNull(none.any(none.query()));
        assertTrue(none.open());
        Inquiry never = unsure(false, true);
        assertNull(never.any(never.query()));
        assertFalse(never.open() || never.possible(never.query()));
        assertNull(never.bestFor(never.query()));
        Inquiry part = unsure(true, false);
        part.solvedWith(Fixtures.legal().partOf("cap"), part.query());
        assertTrue(part.open());
        Inquiry sure = unsure(true, true);
        sure.solvedWith(Fixtures.legal().partOf("cap"), sure.query());
        assertFalse(sure.open());
        Found proven = sure.bestFor(sure.query());
        assertNotNull(proven);
        assertEquals(0.0, proven.mayBeOffSteps());
    }

    /** Rules without some are the same book each time; what measures another brief measures its looks. */
    @Test
    void whatAnInquiryKeeps() {
        Inquiry inquiry = SHOP.inquiry(SHOP.brief());
        Rulebook less = inquiry.rulebooks().without(Set.of("budget", "stock"));
        assertSame(less, inquiry.rulebooks().without(Set.of("stock", "budget")));
        assertTrue(less.rules().stream()
                .noneMatch(rule -> rule.code().equals("stock") || rule.code().equals("budget")));
        assertSame(inquiry.rulebooks().anyHand(less), inquiry.rulebooks().anyHand(less));
        Brief cork = Changed.with(
                SHOP.brief(), "look", new Brief.Look("", Set.of(withy.catalog.Material.CORK), Set.of(), List.of(), ""));
        Weighed one = SHOP.legal(SHOP.catalog(), cork).get(0);
        assertEquals(one.vector(), inquiry.measuredFor(cork, one.build()).vector());
        assertEquals(
                inquiry.measured(one.build()).vector(),
                inquiry.measuredFor(SHOP.brief(), one.build()).vector());
        assertFalse(one.vector().equals(inquiry.measured(one.build()).vector()), "cork is liked only there");
        Found first = inquiry.first();
        assertNotNull(first);
        assertTrue(first.build().holds(Set.of("seat", first.build().layout().blankId())));
        assertFalse(first.build().holds(Set.of("seat", "cap-sold")));
    }
}
