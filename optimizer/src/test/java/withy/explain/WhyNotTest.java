package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.PartWish;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.PartFacts;
import withy.explain.FewBuilds.Weighed;
import withy.explain.Finding.Outcome;
import withy.fixture.Changed;
import withy.objectives.Scoring;

/** Why a part is not in, held against the list of all builds there are. */
class WhyNotTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));

    private static List<Weighed> legal(Brief brief) {
        return SHOP.legal(SHOP.catalog(), brief);
    }

    private static Weighed best(Brief brief, String with) {
        Scoring scoring = Scoring.of(brief, SHOP.catalog().rates());
        Weighed best = FewBuilds.best(legal(brief), scoring, one -> with.isEmpty() || one.holds(with));
        assertNotNull(best, "with " + with);
        return best;
    }

    private static Finding why(Brief brief, String part) {
        return WhyNot.of(SHOP.inquiry(brief), Set.of(part));
    }

    /** Against the list: the two builds, and that nothing dominates a part that only loses. */
    private static Finding compared(Brief brief, String part, Outcome outcome) {
        Finding finding = why(brief, part);
        assertEquals(outcome, finding.outcome(), finding.sentence());
        Found first = finding.first();
        Found opponent = finding.opponent();
        assertNotNull(first);
        assertNotNull(opponent);
        assertEquals(best(brief, "").vector(), first.vector());
        assertEquals(best(brief, part).vector(), opponent.vector());
        boolean dominated = legal(brief).stream().anyMatch(one -> one.vector().dominates(opponent.vector()));
        if (outcome == Outcome.DOMINATED) {
            assertTrue(dominated);
            assertNotNull(finding.better());
            assertTrue(finding.better().vector().dominates(opponent.vector()));
        } else if (outcome == Outcome.LOSES) {
            assertFalse(dominated);
            assertNull(finding.better());
        }
        assertEquals(6, finding.tradeOffs().size());
        assertEquals(Evidence.fact(part), finding.grounds().get(0));
        assertEquals(Evidence.wish("priorities"), finding.grounds().get(1));
        assertTrue(
                finding.sentence().startsWith(SHOP.catalog().find(part).facts().name() + ": "), finding.sentence());
        return finding;
    }

    @Test
    void aPartOfTheBestIsChosen() {
        Finding finding = why(BRIEF, "cap");
        assertEquals(Outcome.CHOSEN, finding.outcome());
        assertEquals(finding.first(), finding.opponent());
        assertEquals("Tarn cap: already in the best rod.", finding.sentence());
        assertEquals(List.of(Evidence.fact("cap")), finding.grounds());
        assertTrue(finding.flips().isEmpty() && finding.tradeOffs().isEmpty());
    }

    /** The same cap under another name. */
    @Test
    void aTwinIsEqual() {
        Finding finding = compared(BRIEF, "cap-twin", Outcome.EQUAL);
        assertTrue(finding.sentence().contains(Phrases.of("whynot.same")), finding.sentence());
        assertTrue(finding.flips().isEmpty());
    }

    /** The cap again, far dearer: at the price of the cap it would be as good. */
    @Test
    void theGildedCapIsDominated() {
        Finding finding = compared(BRIEF, "cap-gilded", Outcome.DOMINATED);
        assertTrue(finding.sentence().contains("is at least as good in everything"), finding.sentence());
        assertTrue(finding.sentence().contains("the rod with Tarn cap"), finding.sentence());
        flips(BRIEF, finding, "cap-gilded");
        assertTrue(finding.flips().stream().noneMatch(flip -> flip.kind() == Flip.Kind.PRIORITY));
        assertTrue(finding.flips().stream().anyMatch(flip -> flip.kind() == Flip.Kind.PRICE));
    }

    /** Lighter and dearer: each flip is solved again here on the list, at the value told and one step before. */
    @Test
    void lightPartsLoseForTheirPrice() {
        for (String part : List.of("seat-light", "blank-light")) {
            Finding finding = compared(BRIEF, part, Outcome.LOSES);
            assertTrue(
                    finding.sentence().contains("dearer") && finding.sentence().contains("lighter"),
                    finding.sentence());
            assertTrue(
                    finding.sentence().indexOf("dearer") < finding.sentence().indexOf("lighter"),
                    "what it costs comes first");
            List<Flip.Kind> kinds =
                    finding.flips().stream().map(Flip::kind).distinct().toList();
            assertTrue(kinds.contains(Flip.Kind.PRICE) && kinds.contains(Flip.Kind.PRIORITY), "" + kinds);
            flips(BRIEF, finding, part);
        }
    }

    private static void flips(Brief brief, Finding finding, String part) {
        double before = 0;
        for (Flip flip : finding.flips()) {
            if (flip.kind() == Flip.Kind.PRIORITY) {
                double far = Math.abs(flip.wins() - flip.now()) / (flip.now() + 1);
                assertTrue(far >= before, "nearest first: " + flip);
                before = far;
            }
            if (Double.isNaN(flip.wins())) {
                assertFalse(wins(brief, flip, part, 0), "" + flip);
            } else {
                assertTrue(wins(brief, flip, part, flip.wins()), "" + flip);
                assertFalse(strictly(brief, flip, part, flip.loses()), "" + flip);
            }
        }
    }

    private static boolean wins(Brief brief, Flip flip, String part, double value) {
        return switch (flip.kind()) {
            case PRIORITY -> SHOP.wins(SHOP.catalog(), prioritised(brief, flip, value), part);
            case PRICE -> SHOP.wins(priced(part, Math.round(value)), brief, part);
            case WEIGHT -> SHOP.wins(scaled(part, value), brief, part);
            case WISH -> SHOP.wins(SHOP.catalog(), said(brief, flip.subject(), value), part);
        };
    }

    /** The part is in every best build: none without it scores as little. */
    private static boolean strictly(Brief brief, Flip flip, String part, double value) {
        Brief asked = flip.kind() == Flip.Kind.PRIORITY
                ? prioritised(brief, flip, value)
                : flip.kind() == Flip.Kind.WISH ? said(brief, flip.subject(), value) : brief;
        Catalog catalog = flip.kind() == Flip.Kind.PRICE
                ? priced(part, Math.round(value))
                : flip.kind() == Flip.Kind.WEIGHT ? scaled(part, value) : SHOP.catalog();
        Scoring scoring = Scoring.of(asked, catalog.rates());
        List<Weighed> all = SHOP.legal(catalog, asked);
        Weighed with = FewBuilds.best(all, scoring, one -> one.holds(part));
        Weighed rest = FewBuilds.best(all, scoring, one -> !one.holds(part));
        return with != null && (rest == null || scoring.score(with.vector()) < scoring.score(rest.vector()));
    }

    private static Brief prioritised(Brief brief, Flip flip, double value) {
        for (Objective objective : Objective.values()) {
            if (objective.key().equals(flip.subject())) {
                return FewBuilds.weighing(brief, Map.of(objective, value));
            }
        }
        throw new AssertionError("no objective " + flip.subject());
    }

    private static Brief said(Brief brief, String field, double value) {
        return switch (field) {
            case "budgetMinor" -> Changed.with(brief, "budgetMinor", Math.round(value));
            case "durabilityClass" -> Changed.with(brief, "durabilityClass", value);
            case "lure.heaviest" -> Changed.with(brief, "lure.heaviestG", value);
            case "lure.usual" -> Changed.with(brief, "lure.usualG", value);
            default -> throw new AssertionError("no number in " + field);
        };
    }

    private static Catalog priced(String part, long minor) {
        Catalog now = SHOP.catalog();
        PartFacts facts = now.find(part).facts();
        return now.changed(Map.of(part, Changed.with(facts, "priceMinor", minor)), "other");
    }

    private static Catalog scaled(String part, double grams) {
        Catalog now = SHOP.catalog();
        PartFacts facts = now.find(part).facts();
        return now.changed(Map.of(part, facts.withScale(grams, facts.weightTolG())), "other");
    }

    /** A nice wish missed is a loss that is told; a part that is wished and would be nice counts likewise. */
    @Test
    void niceWishesMissedAreTold() {
        Brief nice = Changed.with(BRIEF, "handle.keeper", new Wish<>(true, false, 3));
        Brief alone = Changed.with(nice, "refused", List.of(new PartWish("seat-light", false, 0.5)));
        Finding finding = compared(alone, "seat-light", Outcome.LOSES);
        assertEquals(
                List.of("refused"), finding.missed().stream().map(Missed::field).toList());
        assertTrue(finding.sentence().contains(" and one that would be nicer without it."), finding.sentence());
        assertEquals(List.of(), finding.met());
        assertTrue(finding.grounds().contains(Evidence.wish("refused")));
        assertTrue(best(nice, "").holds("keeper"), "the wish is worth a keeper");
    }

    /** Too small a wish to turn the scale is told all the same: it is what the customer would get for it. */
    @Test
    void niceWishesMetAreTold() {
        Brief nice = Changed.with(BRIEF, "insisted", List.of(new PartWish("seat-light", false, 0.1)));
        Finding finding = compared(nice, "seat-light", Outcome.LOSES);
        assertEquals(
                "Tarn seat-light: it can be built in, but the best rod with it is 92.40 EUR dearer. In return it is 9.0 g"
                        + " lighter and has the Tarn seat-light, which would be nice.",
                finding.sentence());
        assertEquals(
                List.of("insisted"), finding.met().stream().map(Missed::field).toList());
        assertEquals(List.of(), finding.missed());
        assertTrue(finding.grounds().contains(Evidence.wish("insisted")));
        Brief alone = Changed.with(BRIEF, "insisted", List.of(new PartWish("cap-gilded", false, 0.1)));
        Finding gilded = why(alone, "cap-gilded");
        assertEquals(Outcome.LOSES, gilded.outcome());
        assertTrue(
                gilded.sentence().endsWith("In return it has the Tarn cap-gilded, which would be nice."),
                gilded.sentence());
    }

    /** What the shop pays more is a third dearer to the customer (10 % and 20 %, together 1.32): 70 EUR are 92.40. Losses first, by what is ranked first. */
    @Test
    void sentencesByHand() {
        assertEquals(
                "Tarn seat-light: it can be built in, but the best rod with it is 92.40 EUR dearer. In return it is 9.0 g"
                        + " lighter.",
                why(BRIEF, "seat-light").sentence());
        assertEquals(
                "Tarn blank-light: it can be built in, but the best rod with it is 224.40 EUR dearer. In return it is 11.0 g lighter"
                        + " and lighter to swing by 0.0067 kg·m².",
                why(BRIEF, "blank-light").sentence());
        assertEquals(
                "Tarn cap-gilded: the rod with Tarn cap instead is at least as good in everything, and 102.96 EUR cheaper.",
                why(BRIEF, "cap-gilded").sentence());
        Brief swing = FewBuilds.weighing(BRIEF, Map.of(Objective.SWING_WEIGHT, 1.5, Objective.BALANCE, 2.5));
        String ranked = why(swing, "blank-light").sentence();
        assertTrue(
                ranked.contains("dearer. In return it is lighter to swing by 0.0067 kg·m² and 11.0 g lighter."),
                ranked);
    }

    /** Two parts at once are outdone by a rod with one of them, though the best rod is worse than theirs in weight. */
    @Test
    void aRodThatIsNotTheBestMayOutdoThem() {
        Finding finding = WhyNot.of(SHOP.inquiry(BRIEF), Set.of("seat-light", "cap-gilded"));
        assertEquals(Outcome.DOMINATED, finding.outcome(), finding.sentence());
        assertNotNull(finding.better());
        assertTrue(finding.better().build().holds(Set.of("seat-light", "cap")));
        assertTrue(finding.first().vector().weightMg()
                > finding.opponent().vector().weightMg());
        assertTrue(
                finding.flips().stream().noneMatch(flip -> flip.kind() == Flip.Kind.PRICE),
                "whose price it would be is open");
        assertEquals(
                "Tarn cap-gilded and Tarn seat-light: the rod with Tarn cap instead is at least as good in everything, and 102.96 EUR"
                        + " cheaper.",
                finding.sentence());
    }

    /** A part that alone makes a rod possible is chosen, since without it there is none. */
    @Test
    void theOnlyRodThereIs() {
        Brief brief = Changed.with(BRIEF, "insisted", List.of(new PartWish("cap-sold", true, 0)));
        Finding finding = why(Changed.with(brief, "wantedBy", LocalDate.of(2026, 5, 30)), "cap-sold");
        assertEquals(Outcome.CHOSEN, finding.outcome(), finding.sentence());
    }
}
