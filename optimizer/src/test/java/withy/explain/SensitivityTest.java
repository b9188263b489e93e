package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Scoring;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;

/** How firm an offer is: counted again here, weighting by weighting and step by step. */
class SensitivityTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));

    private static Scoring scoring() {
        return Scoring.of(BRIEF, SHOP.catalog().rates());
    }

    private static Found first(Inquiry inquiry) {
        Found first = inquiry.first();
        assertNotNull(first);
        return first;
    }

    /**
     * Spacings of the sorted radical inverses in bases 2 to 11; J. H. Halton, Numerische Mathematik 2 (1960) 84–90: of 1 they are 1/2, 1/3, 1/5, 1/7,
     * 1/11, of 6 they are 3/8, 2/9, 6/25 less …
     */
    @Test
    void weightingsAreHaltons() {
        double[] first = {1.0 / 11, 1.0 / 7 - 1.0 / 11, 1.0 / 5 - 1.0 / 7, 1.0 / 3 - 1.0 / 5, 1.0 / 6, 1.0 / 2};
        assertSpacings(first, Sensitivity.weighting(1));
        double[] cuts = {3.0 / 8, 2.0 / 9, 1.0 / 5 + 1.0 / 25, 6.0 / 7, 6.0 / 11};
        java.util.Arrays.sort(cuts);
        double[] sixth = {
            cuts[0], cuts[1] - cuts[0], cuts[2] - cuts[1], cuts[3] - cuts[2], cuts[4] - cuts[3], 1 - cuts[4]
        };
        assertSpacings(sixth, Sensitivity.weighting(6));
    }

    private static void assertSpacings(double[] expected, Map<Objective, Double> weighting) {
        for (Objective objective : Objective.values()) {
            assertEquals(expected[objective.ordinal()], weighting.get(objective), 1e-12, objective.key());
        }
    }

    private static List<Found> three(Inquiry inquiry) {
        return SHOP.legal(SHOP.catalog(), BRIEF).stream()
                .sorted(Comparator.comparingLong(one -> scoring().score(one.vector())))
                .filter(one -> !one.holds("cap-twin"))
                .limit(3)
                .map(one -> inquiry.measured(one.build()))
                .toList();
    }

    /** Shares add up to one and are counted again here; the nearest swap is tried at the value told and the one before it. */
    @Test
    void howFirmAnOfferIs() {
        Inquiry inquiry = SHOP.inquiry(BRIEF);
        List<Found> three = three(inquiry);
        Sensitivity firm = Sensitivity.of(inquiry, three);
        assertEquals(
                1.0, firm.shares().stream().mapToDouble(Double::doubleValue).sum(), 1e-12);
        int[] wins = new int[3];
        for (int i = 1; i <= Sensitivity.WEIGHTINGS; i++) {
            Scoring scoring = Scoring.of(BRIEF, SHOP.catalog().rates(), Sensitivity.weighting(i));
            long[] scores =
                    three.stream().mapToLong(one -> scoring.score(one.vector())).toArray();
            int best = 0;
            for (int b = 1; b < 3; b++) {
                best = scores[b] < scores[best] ? b : best;
            }
            wins[best]++;
        }
        for (int b = 0; b < 3; b++) {
            assertEquals(wins[b] / 4096.0, firm.shares().get(b), 1e-12);
        }
        Sensitivity.Swap swap = firm.swap();
        assertNotNull(swap);
        assertTrue(swapped(three, swap, swap.swaps()), "" + swap);
        assertFalse(swapped(three, swap, swap.keeps()), "" + swap);
        assertEquals(0.1, Math.abs(swap.swaps() - swap.keeps()), 1e-9);
        assertEquals(
                "build " + (swap.rank() + 1) + " would come before build " + swap.rank() + " if "
                        + Phrases.of("objective." + swap.objective().key()) + " counted " + Turning.number(swap.swaps())
                        + " instead of " + Turning.number(swap.now()),
                swap.sentence());
        double near = Math.abs(swap.swaps() - swap.now()) / (swap.now() + 1);
        for (Objective objective : Objective.values()) {
            double now = BRIEF.priority(objective);
            for (int step = 1; step * 0.1 / (now + 1) < near - 1e-9; step++) {
                for (double value : new double[] {now + step * 0.1, Math.max(0, now - step * 0.1)}) {
                    for (int rank = 1; rank < 3; rank++) {
                        Sensitivity.Swap other = new Sensitivity.Swap(rank, objective, now, now, value, "");
                        assertFalse(swapped(three, other, value), "nearer: " + other);
                    }
                }
            }
        }
    }

    private static boolean swapped(List<Found> three, Sensitivity.Swap swap, double value) {
        Brief brief = FewBuilds.weighing(BRIEF, Map.of(swap.objective(), value));
        Scoring scoring = Scoring.of(brief, SHOP.catalog().rates());
        return scoring.score(three.get(swap.rank()).vector())
                < scoring.score(three.get(swap.rank() - 1).vector());
    }

    /** A wish binds where a build that is only legal without it is better: here the budget keeps the light parts out. */
    @Test
    void whatBinds() {
        Brief rich = FewBuilds.weighing(BRIEF, Map.of(Objective.PRICE, 0.0, Objective.WEIGHT, 5.0));
        long most = SHOP.legal(SHOP.catalog(), rich).stream()
                .filter(one -> one.holds("blank-light"))
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
        Brief tight = Changed.with(rich, "budgetMinor", most - 1);
        Inquiry inquiry = SHOP.inquiry(tight);
        Found first = first(inquiry);
        Sensitivity firm = Sensitivity.of(inquiry, List.of(first));
        Sensitivity.Binding binding = firm.binding().stream()
                .filter(one -> one.wish().field().equals("budgetMinor"))
                .findFirst()
                .orElseThrow();
        for (Sensitivity.Binding one : firm.binding()) {
            assertTrue(inquiry.score(one.without().vector()) < inquiry.score(first.vector()), one.sentence());
            assertFalse(
                    Judge.legal(one.without().rod(), Rulebook.standard()), "no wish asks for it: " + one.sentence());
        }
        assertFalse(firm.binding().stream().anyMatch(one -> one.wish().field().equals("packedMaxMm")));
        assertTrue(inquiry.score(binding.without().vector()) < inquiry.score(first.vector()));
        assertTrue(binding.without().build().holds(java.util.Set.of("blank-light")));
        assertTrue(binding.sentence().contains("lighter"), binding.sentence());
        assertEquals(List.of(1.0), firm.shares());
        assertNull(firm.swap());
        for (TradeOffs.TradeOff tradeOff : binding.tradeOffs()) {
            boolean told = binding.sentence().contains(tradeOff.plain());
            assertEquals(tradeOff.noticeable(), told, tradeOff + " in: " + binding.sentence());
        }
        Map<Objective, Double> dear = new EnumMap<>(tight.steps());
        dear.replaceAll((objective, step) -> objective == Objective.PRICE ? step : 100 * step);
        Inquiry pricey = SHOP.inquiry(Changed.with(tight, "steps", dear));
        Sensitivity.Binding dearer = Sensitivity.of(pricey, List.of(first(pricey))).binding().stream()
                .filter(one -> one.wish().field().equals("budgetMinor"))
                .findFirst()
                .orElseThrow();
        assertTrue(dearer.sentence().contains("dearer"), dearer.sentence());
        for (TradeOffs.TradeOff tradeOff : dearer.tradeOffs()) {
            boolean told = dearer.sentence().contains(tradeOff.plain());
            assertEquals(tradeOff.better() && !tradeOff.same() || tradeOff.noticeable(), told, dearer.sentence());
        }
        Map<Objective, Double> coarse = new EnumMap<>(tight.steps());
        coarse.replaceAll((objective, step) -> 1e6);
        Inquiry blunt = SHOP.inquiry(Changed.with(tight, "steps", coarse));
        assertEquals(
                List.of("without the wish for at most " + blunt.money(most - 1)
                        + " to pay another rod would be the best, but no hand or purse would notice the difference"),
                Sensitivity.of(blunt, List.of(first(blunt))).binding().stream()
                        .filter(one -> one.wish().field().equals("budgetMinor"))
                        .map(Sensitivity.Binding::sentence)
                        .toList());
    }

    /** Where all that is gained is something nice, the rod is "one with" it. */
    @Test
    void whatBindsSomethingNice() {
        Fixtures wished = Fixtures.legal().brief("handle.keeper", new Wish<>(true, false, 5));
        FewBuilds shop = FewBuilds.of(wished).or(Station.KEEPER, "keeper");
        List<FewBuilds.Weighed> both = shop.legal(shop.catalog(), wished.theBrief());
        assertEquals(2, both.size());
        long cheaper = both.stream()
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
        Inquiry inquiry = shop.inquiry(Changed.with(wished.theBrief(), "budgetMinor", cheaper));
        Found first = first(inquiry);
        assertNull(first.build().partAt(Station.KEEPER));
        assertEquals(
                List.of("without the wish for at most " + inquiry.money(cheaper)
                        + " to pay the best rod would be one with a hook keeper, which would be nice"),
                Sensitivity.of(inquiry, List.of(first)).binding().stream()
                        .map(Sensitivity.Binding::sentence)
                        .toList());
    }

    /** Nobody wishes for a palm: here the light seat is too thin for it. */
    @Test
    void aPalmIsNoWish() {
        Fixtures wide = Fixtures.legal().brief("palmMm", 90.0);
        wide.copy("seat", "seat-thin").part("seat-thin", "facts.weightG", 5.0).part("seat-thin", "barrelOdMm", 21.2);
        FewBuilds shop = FewBuilds.of(wide).or(Station.SEAT, "seat-thin");
        Inquiry inquiry = shop.inquiry(wide.theBrief());
        Found first = first(inquiry);
        assertEquals("seat", first.build().partAt(Station.SEAT));
        List<String> told = Sensitivity.of(inquiry, List.of(first)).binding().stream()
                .map(Sensitivity.Binding::sentence)
                .toList();
        assertEquals(1, told.size(), told::toString);
        assertTrue(told.get(0).startsWith("were it not for a palm of 90 mm, the best rod would be "), told.get(0));
    }
}
