package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.explain.FewBuilds.Weighed;
import withy.explain.Finding.Outcome;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Station;

/** Why no legal build holds a part, held against the list of all builds there are. */
class RefusedTest {
    private static final FewBuilds SHOP = FewBuilds.shop().or(Station.TIP_TOP, "tip-loose");
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));

    private static List<Weighed> legal(Brief brief) {
        return SHOP.legal(SHOP.catalog(), brief);
    }

    private static Finding why(Brief brief, String part) {
        return WhyNot.of(SHOP.inquiry(brief), Set.of(part));
    }

    /** One place for two caps. */
    @Test
    void twoCapsContendForOnePlace() {
        Finding finding = WhyNot.of(SHOP.inquiry(BRIEF), Set.of("cap-light", "cap"));
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertEquals(
                "Tarn cap and Tarn cap-light: they cannot go in together. There is only one place for them on a rod.",
                finding.sentence());
        assertNull(finding.opponent());
        assertTrue(finding.grounds().contains(Evidence.rule("handle")));
    }

    /** Sold out, and the next come after the day it is wanted by. */
    @Test
    void whatComesTooLate() {
        Finding finding = why(BRIEF, "cap-sold");
        assertEquals(Outcome.NOT_IN_STOCK, finding.outcome());
        assertNotNull(finding.breach());
        assertEquals("stock", finding.breach().verdict().rule());
        LocalDate comes = LocalDate.of(2026, 3, 2).plusDays(45);
        String expected = "Tarn cap-sold: 1 needed, 0 on the shelf; ordered today, more come on " + comes
                + ", and the rod is wanted by 2026-04-01.";
        assertEquals(expected, finding.sentence());
        assertTrue(finding.grounds().contains(Evidence.rule("stock")));
        assertEquals(List.of(), finding.alsoBroken());
        Flip later = finding.flips().stream()
                .filter(flip -> flip.subject().equals("wantedBy"))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of(15.0, 14.0), List.of(later.wins(), later.loses()), "1 April and 15 days is 16 April");
        Finding never = why(Changed.with(BRIEF, "wantedBy", null), "cap-sold");
        assertTrue(never.outcome() != Outcome.NOT_IN_STOCK || never.sentence().contains("no more can be had"));
    }

    /** A tip-top too wide for both tips, whatever is wished. */
    @Test
    void aRuleThatNoWishAsksFor() {
        Finding finding = why(BRIEF, "tip-loose");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertNotNull(finding.breach());
        assertTrue(finding.forcedBy().isEmpty(), "" + finding.forcedBy());
        assertTrue(
                finding.sentence()
                        .startsWith("Tarn tip-loose: it cannot go on a rod of this type, whatever is wished. "),
                finding.sentence());
        Found opponent = finding.opponent();
        assertNotNull(opponent);
        assertTrue(opponent.build().holds(Set.of("tip-loose")));
        assertTrue(Breach.all(opponent.rod(), FewBuilds.METRIC).contains(finding.breach()));
        assertTrue(finding.grounds()
                .contains(Evidence.rule(finding.breach().verdict().rule())));
        assertTrue(finding.flips().isEmpty());
    }

    /** Tubes and tips alone settle it: nothing is searched for, unless the rule that looks at them is left out. */
    @Test
    void aTipTopThatGoesOntoNoBlankIsNotSearchedFor() {
        List<Query> asked = new ArrayList<>();
        Inquiry inquiry = new Inquiry(
                SHOP.catalog(),
                BRIEF,
                catalog -> (query, watch) -> {
                    asked.add(query);
                    return new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, true, 0);
                },
                Watch.NONE,
                FewBuilds.METRIC);
        Query loose = inquiry.query().forcing(Set.of("tip-loose"));
        assertNull(inquiry.best(loose));
        assertFalse(inquiry.possible(loose));
        assertEquals(List.of(), asked);
        Query fits = inquiry.query().forcing(Set.of("tip-top"));
        assertNull(inquiry.best(fits));
        Query free = loose.withRulebook(inquiry.rulebooks().without(Set.of("tip-top")));
        assertNull(inquiry.best(free));
        assertEquals(List.of(fits, free), asked);
    }

    /** A part for which the handle that is wished has no place is not searched for, unless the rule that says so is left out. */
    @Test
    void whatTheWishedHandleHasNoPlaceForIsNotSearchedFor() {
        Fixtures fixture = Fixtures.legal();
        Wish<HandleForm> full = new Wish<>(HandleForm.FULL, true, 0);
        Wish<HandleForm> split = new Wish<>(HandleForm.SPLIT, true, 0);
        outOfPlace(fixture, Changed.with(fixture.theBrief(), "handle.form", full), "rear-grip", "butt-grip");
        outOfPlace(fixture, Changed.with(fixture.theBrief(), "handle.form", split), "full-grip");
        outOfPlace(
                fixture, Changed.with(fixture.theBrief(), "handle.foreGrip", new Wish<>(false, true, 0)), "fore-grip");
        outOfPlace(fixture, Changed.with(fixture.theBrief(), "handle.keeper", new Wish<>(false, true, 0)), "keeper");
    }

    /** Neither while it is a must, nor is it left unasked where it is only nice. */
    private static void outOfPlace(Fixtures fixture, Brief brief, String... parts) {
        List<Query> asked = new ArrayList<>();
        Inquiry inquiry = new Inquiry(
                fixture.catalog(),
                brief,
                catalog -> (query, watch) -> {
                    asked.add(query);
                    return new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, true, 0);
                },
                Watch.NONE,
                FewBuilds.METRIC);
        for (String part : parts) {
            Query query = inquiry.query().forcing(Set.of(part));
            assertNull(inquiry.best(query));
            assertFalse(inquiry.possible(query));
            assertEquals(List.of(), asked, part);
            assertNull(inquiry.best(query.withRulebook(inquiry.rulebooks().without(Set.of("handle")))));
            assertNull(inquiry.best(query.withBrief(fixture.theBrief())));
            assertEquals(2, asked.size(), part);
            asked.clear();
        }
    }

    /** A hook keeper where none may be: of all that is broken with it what is told is the wish against it. */
    @Test
    void aKeeperThatIsNotToBe() {
        Fixtures plain = Fixtures.legal().brief("handle.keeper", new Wish<>(false, true, 0));
        FewBuilds shop = FewBuilds.of(plain.layout("reelFootMm", 100).put(Station.KEEPER, "keeper"));
        Finding finding = WhyNot.of(shop.inquiry(plain.theBrief()), Set.of("keeper"));
        Breach breach = finding.breach();
        assertNotNull(breach);
        assertEquals("keeper-wish", breach.verdict().check(), finding.sentence());
        assertEquals(List.of("keeper"), breach.verdict().parts());
    }

    /** A part the customer refused outright: that wish asks for it, and giving it up lets the part in. */
    @Test
    void aPartThatIsRefused() {
        Brief refusing = Changed.with(BRIEF, "refused", List.of(new PartWish("seat-light", true, 0)));
        Finding finding = why(refusing, "seat-light");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertEquals(
                List.of("refused seat-light"),
                finding.forcedBy().stream()
                        .map(asked -> asked.field() + " " + asked.about())
                        .toList());
        assertTrue(finding.grounds().contains(Evidence.wish("refused")));
    }

    /** Too dear for the budget, as every seat-light is: how much more there would have to be is the cheapest build with it. */
    @Test
    void theBudgetThatLetsAPartIn() {
        long cheapest = legal(Changed.with(BRIEF, "budgetMinor", null)).stream()
                .filter(one -> one.holds("seat-light"))
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
        Brief poor = Changed.with(BRIEF, "budgetMinor", cheapest - 700);
        Finding finding = why(poor, "seat-light");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertNotNull(finding.breach());
        assertEquals("budget", finding.breach().verdict().rule());
        assertEquals(
                List.of("budgetMinor"),
                finding.forcedBy().stream().map(Conflict.Asked::field).toList());
        Flip more = finding.flips().stream()
                .filter(flip -> flip.subject().equals("budgetMinor"))
                .findFirst()
                .orElseThrow();
        assertEquals(List.of((double) cheapest, cheapest - 1.0), List.of(more.wins(), more.loses()));
        assertFalse(legal(poor).isEmpty(), "there are cheaper rods");
    }

    private static Weighed best(Brief brief, List<Weighed> all, String part) {
        Weighed best = FewBuilds.best(all, Scoring.of(brief, SHOP.catalog().rates()), one -> one.holds(part));
        assertNotNull(best);
        return best;
    }

    /** Against every part of the shop, with the budget anywhere between too little and plenty: the outcome agrees with the list. */
    @Test
    void everyPartUnderManyBudgets() {
        List<Outcome> seen = new ArrayList<>();
        for (long budget = 44_000; budget <= 84_000; budget += 20_000) {
            Brief brief = Changed.with(BRIEF, "budgetMinor", budget);
            List<Weighed> all = legal(brief);
            for (String part : List.of("cap-light", "cap-gilded", "seat-light", "blank-light", "keeper")) {
                Finding finding = WhyNot.reason(SHOP.inquiry(brief), Set.of(part));
                seen.add(finding.outcome());
                boolean any = all.stream().anyMatch(one -> one.holds(part));
                assertEquals(!any, finding.outcome() == Outcome.BREAKS_RULE, budget + " " + part);
                if (any) {
                    boolean wins = SHOP.wins(SHOP.catalog(), brief, part);
                    assertTrue(wins || finding.outcome() != Outcome.CHOSEN, budget + " " + part);
                    assertEquals(
                            best(brief, all, part).vector(), finding.opponent().vector(), budget + " " + part);
                }
            }
        }
        assertTrue(seen.contains(Outcome.BREAKS_RULE) && seen.contains(Outcome.LOSES), "" + seen);
    }
}
