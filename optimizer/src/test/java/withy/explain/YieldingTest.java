package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.explain.Finding.Outcome;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.rules.Rule;
import withy.rules.Rulebook;
import withy.rules.Verdict;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Which rules must give way for a part, and what is plain from brief and part alone. */
class YieldingTest {
    private static Finding why(FewBuilds shop, Brief brief, String... parts) {
        return WhyNot.of(shop.inquiry(brief), Set.of(parts));
    }

    private static Set<String> rules(Finding finding) {
        Set<String> rules = new TreeSet<>();
        rules.add(finding.breach().verdict().rule());
        finding.alsoBroken().forEach(also -> rules.add(also.verdict().rule()));
        return rules;
    }

    /** Without these rules there is a rod with the part, and with any one of them kept there is none. */
    private static void fewest(FewBuilds shop, Brief brief, Finding finding, String part) {
        Set<String> rules = rules(finding);
        Query forced = Query.of(brief, Rulebook.standard()).forcing(Set.of(part));
        Inquiry inquiry = shop.inquiry(brief);
        assertNotNull(inquiry.best(forced.withRulebook(inquiry.rulebooks().without(rules))), "without " + rules);
        for (String kept : rules) {
            Set<String> others = new TreeSet<>(rules);
            others.remove(kept);
            assertNull(
                    inquiry.best(forced.withRulebook(inquiry.rulebooks().without(others))),
                    kept + " need not give way");
        }
    }

    /** Nowhere could it have what the best rod has without breaking another rule. */
    private static void nearest(Inquiry inquiry, Finding finding) {
        Build best = finding.first().build();
        Build build = finding.opponent().build();
        int alike = 0;
        for (Station station : best.choices().keySet()) {
            Build nearer = build.with(station, best.choices().get(station));
            boolean same = nearer.equals(build);
            alike += same ? 1 : 0;
            Set<String> broken = new TreeSet<>();
            Breach.all(inquiry.measured(nearer).rod(), FewBuilds.METRIC)
                    .forEach(breach -> broken.add(breach.verdict().rule()));
            boolean kept = nearer.holds(finding.parts()) && rules(finding).containsAll(broken);
            assertTrue(same || !kept, station + " could be nearer: " + broken);
        }
        assertTrue(alike > best.choices().size() / 2, "alike at " + alike);
    }

    /** The seat put in where the seat is breaks the purse, too; on the cheaper blank it does not, so only the seat's own rule gives way. */
    @Test
    void noMoreRulesThanMust() {
        Fixtures fixture = Fixtures.legal().copy("blank", "blank-light").part("blank-light", "facts.weightG", 30.0);
        fixture.part("blank-light", "facts.priceMinor", 15_000)
                .copy("seat", "narrow")
                .part("narrow", "boreMm", 7.0);
        fixture.part("narrow", "facts.priceMinor", 5_000).part("narrow", "facts.model", "narrow");
        FewBuilds shop = FewBuilds.of(fixture).onBlanks("blank-light").or(Station.SEAT, "narrow");
        Brief free = FewBuilds.weighing(
                Changed.with(fixture.theBrief(), "budgetMinor", null), Map.of(Objective.WEIGHT, 9.0));
        Found light = shop.inquiry(free).first();
        assertNotNull(light);
        assertEquals("blank-light", light.build().layout().blankId());
        Brief brief = Changed.with(free, "budgetMinor", light.rod().figures().priceMinor() + 100);
        Finding finding = why(shop, brief, "narrow");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertFalse(rules(finding).contains("budget"), "" + rules(finding));
        fewest(shop, brief, finding, "narrow");
        assertTrue(finding.opponent().build().holds(Set.of("narrow", "blank")), "the cheaper blank");
        assertTrue(Breach.all(finding.opponent().rod(), FewBuilds.METRIC).contains(finding.breach()));
        nearest(shop.inquiry(brief), finding);
        for (String rule : rules(finding)) {
            assertTrue(finding.grounds().contains(Evidence.rule(rule)), rule);
        }
    }

    /** Sold out and too dear at once: the purse is told first, the shelf beside it. */
    @Test
    void twoRulesAtOnce() {
        Fixtures fixture = Fixtures.legal().copy("seat", "gold").part("gold", "facts.priceMinor", 90_000);
        fixture.part("gold", "facts.stock", 0)
                .part("gold", "facts.leadDays", 60)
                .part("gold", "facts.model", "gold");
        FewBuilds shop = FewBuilds.of(fixture).or(Station.SEAT, "gold");
        Finding finding = why(shop, fixture.theBrief(), "gold");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertEquals(Set.of("budget", "stock"), rules(finding));
        assertEquals("budget", finding.breach().verdict().rule());
        fewest(shop, fixture.theBrief(), finding, "gold");
        assertEquals(
                "Tarn gold: it cannot go in. The price of 1571.92 EUR is above the budget of 600.00 EUR.",
                finding.sentence());
        assertEquals(
                List.of(
                        Evidence.fact("gold"),
                        Evidence.rule("stock"),
                        Evidence.rule("budget"),
                        Evidence.wish("budgetMinor")),
                finding.grounds());
        assertTrue(finding.flips().isEmpty(), "one wish is not enough: " + finding.flips());
    }

    /** A grip for the whole handle where all there is is split, a fore grip nobody can put in: no rod carries it. */
    @ParameterizedTest
    @CsvSource({"full-grip", "fore-grip"})
    void noRodCarriesIt(String part) {
        FewBuilds shop = FewBuilds.shop();
        Finding finding = why(shop, shop.brief(), part);
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertEquals("Tarn " + part + ": no rod of these lists can carry it.", finding.sentence());
        assertNull(finding.breach());
        assertTrue(finding.flips().isEmpty());
        for (Rule rule : Rulebook.standard().rules()) {
            assertTrue(part.equals("fore-grip") || finding.grounds().contains(Evidence.rule(rule.code())), rule.code());
        }
    }

    /** Parts for one place contend; guides and checks stand at several, parts of different places do not meet. */
    @ParameterizedTest
    @CsvSource({
        "cap, cap-light, true",
        "rear-grip, full-grip, true",
        "butt-grip, rear-grip, false",
        "guide-5, guide-6, false",
        "seat, seat-light, true",
        "cap, seat-light, false",
        "fore-grip, rear-grip, false",
        "blank, blank-light, true"
    })
    void partsThatContend(String one, String other, boolean contend) {
        FewBuilds shop = FewBuilds.shop();
        Finding finding = WhyNot.reason(shop.inquiry(shop.brief()), Set.of(one, other));
        assertEquals(
                contend, finding.sentence().contains("There is only one place for them on a rod"), finding.sentence());
    }

    /** No more of it can be had: no day is given for it, or it is the customer's own. */
    @Test
    void whatNeverComes() {
        Fixtures fixture = Fixtures.legal()
                .copy("cap", "gone")
                .part("gone", "facts.stock", 0)
                .part("gone", "facts.model", "gone");
        FewBuilds shop = FewBuilds.of(fixture).or(Station.BUTT_CAP, "gone");
        Finding finding = why(shop, fixture.theBrief(), "gone");
        assertEquals(Outcome.NOT_IN_STOCK, finding.outcome());
        assertEquals("Tarn gone: 1 needed, 0 on the shelf, and no more can be had.", finding.sentence());
        assertEquals(Set.of("stock"), rules(finding));
    }

    /** A blank that the wished length rules out: that wish is what asks for it, no other. */
    @Test
    void theWishesThatForceIt() {
        Fixtures fixture = Fixtures.legal()
                .copy("blank", "long")
                .part("long", "lengthMm", 2300.0)
                .part("long", "facts.model", "long");
        FewBuilds shop = FewBuilds.of(fixture).onBlanks("long");
        Finding finding = why(shop, fixture.theBrief(), "long");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertEquals(
                List.of("lengthMm"),
                finding.forcedBy().stream().map(Conflict.Asked::field).toList());
        assertEquals(
                "Tarn long: it cannot go in. It alone is 2300 mm long; the whole rod may be 2150 mm at most.",
                finding.sentence());
        assertEquals(Evidence.fact("long"), finding.grounds().get(0));
        assertTrue(finding.grounds().contains(Evidence.rule("length"))
                && finding.grounds().contains(Evidence.wish("lengthMm")));
        List<Outright.Own> own = Outright.own(shop.inquiry(fixture.theBrief()), Set.of("long", "cap"));
        assertEquals(
                List.of("long"),
                own.stream().map(one -> one.part().id()).distinct().toList());
        Query plain = Query.of(fixture.theBrief(), Rulebook.standard());
        Verdict broken = own.get(0).breach().verdict();
        assertTrue(Outright.refuses(fixture.catalog(), plain, broken, fixture.partOf("long")));
        assertFalse(Outright.refuses(fixture.catalog(), plain, broken, fixture.partOf("blank")));
        assertFalse(Outright.refuses(
                fixture.catalog(),
                plain.withRulebook(Rulebook.standard().without(broken.rule())),
                broken,
                fixture.partOf("long")));
    }

    private int asked;

    private Inquiry counting(Fixtures fixture, Brief brief) {
        Solver solver = (query, watch) -> {
            asked++;
            return new Solution(null, null, Long.MAX_VALUE, Long.MAX_VALUE, true, 1);
        };
        return new Inquiry(fixture.catalog(), brief, other -> solver, Watch.NONE, new QuantityText(UnitSystem.METRIC));
    }

    /** What brief and part alone rule out is not searched for: a refused part that must be in, an insisted one, every blank there is. */
    @Test
    void whatIsPlainIsNotSearchedFor() {
        Fixtures fixture = Fixtures.legal().copy("blank", "long").part("long", "lengthMm", 2300.0);
        Brief brief = fixture.theBrief();
        Inquiry plain = counting(fixture, brief);
        assertNull(plain.first());
        assertEquals(1, asked, "there is a blank, so it is searched for");
        assertNull(plain.best(plain.query().forcing(Set.of("long"))));
        assertFalse(plain.possible(plain.query().forcing(Set.of("long"))));
        assertEquals(1, asked);
        assertNull(plain.best(plain.query().forcing(Set.of("cap", "nowhere"))));
        assertEquals(2, asked);
        Brief insisting = Changed.with(brief, "insisted", List.of(new PartWish("long", true, 0)));
        Inquiry must = counting(fixture, insisting);
        assertNull(must.first());
        assertEquals(2, asked);
        assertNull(must.best(must.query().withRulebook(Rulebook.standard().without("must"))));
        assertEquals(3, asked, "where nothing must be in, it is searched for");
        Brief nice = Changed.with(brief, "insisted", List.of(new PartWish("long", false, 1)));
        assertNull(counting(fixture, nice).first());
        assertEquals(4, asked);
        Brief tiny = Changed.with(Changed.with(brief, "lengthMinMm", 1000.0), "lengthMaxMm", 1100.0);
        assertNull(counting(fixture, tiny).first());
        assertEquals(4, asked, "no blank is that short");
        Brief kept = Changed.with(brief, "handle.keeper", new Wish<>(true, true, 0));
        assertNull(counting(fixture, kept).first());
        assertEquals(5, asked);
    }
}
