package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import withy.app.Explain;
import withy.app.Progress;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Material;
import withy.catalog.Rates;
import withy.catalog.SeatEnd;
import withy.explain.Finding.Outcome;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Watch;
import withy.report.LighterText;
import withy.report.WhyNotText;
import withy.rod.Station;
import withy.search.Search;

/** Reasons as a builder reads them to a customer: what comes with what, what stands instead, and nothing twice. */
class ReadAloudTest {
    private static final FewBuilds SHOP = FewBuilds.shop();
    private static final Brief BRIEF = FewBuilds.weighing(SHOP.brief(), Map.of(Objective.PRICE, 2.0));
    private static final Currency EUR = Currency.getInstance("EUR");

    private static Finding why(Brief brief, String part) {
        return WhyNot.reason(SHOP.inquiry(brief), Set.of(part));
    }

    private static String told(Brief brief, String part) {
        return oneLine(WhyNotText.of(Explain.whyNot(SHOP.inquiry(brief), Set.of(part)), FewBuilds.METRIC, EUR));
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    /** A hand is no wish, and a material that is refused is nothing else. */
    @Test
    void whatComesWithATackleAndWhatWasAskedFor() {
        assertEquals(
                "Tarn seat-light: it cannot go in. Its barrel, 22 mm, is too thin for the palm, which likes it from 23.5 mm. That comes"
                        + " with a palm of 110 mm.",
                why(Changed.with(BRIEF, "palmMm", 110.0), "seat-light").sentence());
        Finding material = why(
                Changed.with(
                        BRIEF,
                        "look.refusedMaterials",
                        Set.of(SHOP.catalog().find("seat-light").facts().material())),
                "seat-light");
        assertTrue(
                material.sentence()
                        .matches(
                                "Tarn seat-light: it cannot go in\\. Its material was refused by the customer\\. What was"
                                        + " asked for: no [a-z -]+ anywhere\\."),
                material.sentence());
    }

    /** Every material that may be refused is a thing. */
    @Test
    void materialsAreThings() {
        Brief refusing = Changed.with(
                BRIEF, "look.refusedMaterials", Set.of(Material.CARBON_FILLED, Material.METALLIC, Material.CORK));
        assertEquals(
                Set.of("no carbon-filled plastic anywhere", "no metallic thread anywhere", "no cork anywhere"),
                Demands.of(SHOP.inquiry(refusing)).stream()
                        .filter(demand -> demand.key().equals("look.refusedMaterials"))
                        .map(Demand::words)
                        .collect(Collectors.toSet()));
    }

    /** A full handle that is wished is not told again where a butt grip has no place on it. */
    @Test
    void aFullHandleIsSaidOnce() {
        Fixtures full = Fixtures.legal().brief("handle.form", new Wish<>(HandleForm.FULL, true, 0));
        Finding finding = WhyNot.reason(
                new Inquiry(full.catalog(), full.theBrief(), Search::new, Watch.NONE, FewBuilds.METRIC),
                Set.of("butt-grip"));
        assertEquals(
                "Tarn butt-grip: it cannot go in. A full handle is one grip from the seat to the butt, so a butt grip has no place on"
                        + " it.",
                finding.sentence());
        assertEquals(
                List.of("handle.form"),
                finding.forcedBy().stream().map(Conflict.Asked::field).toList());
    }

    /** A seat too short for the reel, whose hood is at the wrong end as well: what each comes with is told of each, and each must give way. */
    @Test
    void everyCheckHasItsOwnWish() {
        Fixtures short45 = Fixtures.legal().copy("seat", "short").part("short", "facts.model", "short");
        short45.part("short", "footLengthMaxMm", 52.0).part("seat", "movingHood", SeatEnd.REAR);
        short45.part("short", "movingHood", SeatEnd.FRONT)
                .brief("handle.movingHood", new Wish<>(SeatEnd.REAR, true, 0));
        Finding finding =
                WhyNot.of(FewBuilds.of(short45).or(Station.SEAT, "short").inquiry(short45.theBrief()), Set.of("short"));
        assertTrue(finding.sentence().contains(" is too long for it, which takes up to 52 mm. "), finding.sentence());
        assertEquals(
                List.of("reel"),
                finding.forcedBy().stream().map(Conflict.Asked::field).toList());
        assertEquals(
                List.of("Its moving hood is not at the end that is wished."),
                finding.alsoBroken().stream()
                        .map(also -> Phrases.sentence(Phrases.afterName("Tarn short", also.sentence())))
                        .toList());
        assertEquals(List.of(), finding.flips());
    }

    /** What is told second begins small, but for names. */
    @Test
    void whatStandsAgainstItBesides() {
        Brief poor = Changed.with(Changed.with(BRIEF, "corrosionClass", 4), "budgetMinor", 9_000L);
        String text = told(poor, "seat-light");
        assertTrue(text.contains(" Besides, the price of "), text);
        String hand = told(Changed.with(Changed.with(BRIEF, "corrosionClass", 4), "palmMm", 110.0), "seat-light");
        assertTrue(hand.contains(" Besides, Tarn seat-light is of corrosion class 3; the water asks for 4."), hand);
    }

    /** Where the purse lets a keeper in only with a plainer cap, the lighter cap is not what stands in the keeper's place. */
    @Test
    void onlyPartsOfItsKindStandInItsPlace() {
        Fixtures dear = Fixtures.legal().part("keeper", "facts.priceMinor", 8_000);
        dear.copy("cap", "cap-light").part("cap-light", "facts.measuredG", null);
        dear.part("cap-light", "facts.weightG", 1.0).part("cap-light", "facts.priceMinor", 1_900);
        FewBuilds shop = FewBuilds.of(dear).or(Station.BUTT_CAP, "cap-light").or(Station.KEEPER, "keeper");
        Brief level = Changed.with(Changed.with(dear.theBrief(), "zoneNearMm", -500.0), "zoneFarMm", 900.0);
        Brief light = FewBuilds.weighing(level, Map.of(Objective.WEIGHT, 99.0));
        long withKeeper = shop.legal(shop.catalog(), light).stream()
                .filter(one -> one.holds("keeper") && one.holds("cap"))
                .mapToLong(one -> one.rod().figures().priceMinor())
                .min()
                .orElseThrow();
        Finding finding = WhyNot.reason(shop.inquiry(Changed.with(light, "budgetMinor", withKeeper)), Set.of("keeper"));
        assertEquals(Outcome.DOMINATED, finding.outcome(), finding.sentence());
        assertNotNull(finding.better());
        assertTrue(finding.better().build().holds(Set.of("cap-light")), finding.sentence());
        assertTrue(
                finding.sentence()
                        .startsWith(shop.catalog().find("keeper").facts().name()
                                + ": the best rod is at least as good in everything, and "),
                finding.sentence());
    }

    /** What nobody would notice is not told in figures where it is the whole answer; below they are all there. */
    @Test
    void whatNobodyNoticesHasNoFigures() {
        Brief coarse = Changed.with(BRIEF, "steps", Map.copyOf(coarse()));
        assertEquals(
                "Tarn seat-light: take it if it pleases. The best rod with it differs by nothing a hand or a purse would notice.",
                why(coarse, "seat-light").sentence());
        String text = told(coarse, "seat-light");
        assertTrue(text.contains("· 92.40 EUR dearer (too little to notice)"), text);
        assertEquals(
                "Tarn cap-twin: take it if it pleases. The best rod with it is the same in every figure.",
                why(BRIEF, "cap-twin").sentence());
    }

    private static Map<Objective, Double> coarse() {
        return Map.of(
                Objective.WEIGHT, 1e6,
                Objective.BALANCE, 1e6,
                Objective.SWING_WEIGHT, 1e6,
                Objective.PRICE, 1e6,
                Objective.STYLE, 1e6,
                Objective.DURABILITY, 1e6);
    }

    /** The weight of the lightest is said once, and how it is known; of the best rod and of the one with the part what else there could be. */
    @Test
    void proofsSayNothingTwice() {
        String lighter =
                oneLine(LighterText.of(Explain.lighter(SHOP.inquiry(BRIEF), Progress.NONE), FewBuilds.METRIC, EUR));
        assertTrue(
                lighter.contains(
                        " Proven: every blank, reel position and number of guides was worked through, or shown to be heavier"
                                + " whatever else is chosen."),
                lighter);
        assertEquals(1, lighter.split("that keeps every rule", -1).length - 1, lighter);
        String text = told(BRIEF, "seat-light");
        assertTrue(
                text.contains(
                        " Proven: these lists make no better rod than the best, and none with it that is better than this one."
                                + " Every blank, reel position and number of guides was worked through, or shown to be worse whatever else is"
                                + " chosen."),
                text);
        assertFalse(text.contains("with them"), text);
    }

    /** Of balance and swing weight the lightest rod and the curve tell what a hand notices, and nothing finer. */
    @Test
    void lighterRodsTellOfBalanceWhatAHandNotices() {
        int told = 0;
        int unsaid = 0;
        for (double step : new double[] {0.0005, 1e6}) {
            Map<Objective, Double> steps = new EnumMap<>(BRIEF.steps());
            steps.put(Objective.SWING_WEIGHT, step);
            Lighter lighter = Lighter.of(SHOP.inquiry(Changed.with(BRIEF, "steps", steps)), point -> {});
            assertNotNull(lighter);
            List<Curve.Point> points = new ArrayList<>(lighter.curve());
            points.add(new Curve.Point(0, lighter.lightest(), lighter.tradeOffs(), lighter.sentence()));
            for (Curve.Point point : points) {
                for (TradeOffs.TradeOff tradeOff : point.tradeOffs()) {
                    boolean felt =
                            Set.of(Objective.BALANCE, Objective.SWING_WEIGHT).contains(tradeOff.objective());
                    if (felt && !tradeOff.same()) {
                        assertEquals(
                                tradeOff.noticeable(), point.sentence().contains(tradeOff.plain()), point.sentence());
                        told += tradeOff.noticeable() ? 1 : 0;
                        unsaid += tradeOff.noticeable() ? 0 : 1;
                    }
                }
            }
        }
        assertTrue(told > 0 && unsaid > 0, told + " told, " + unsaid + " not");
    }

    /** One of several letters will do. */
    @Test
    void oneOfSeveralThreads() {
        Catalog shop = SHOP.catalog();
        Rates rates =
                Changed.with(shop.rates(), "threadLetters", Map.of(SHOP.brief().rodType(), List.of("C", "D")));
        Catalog surf = new Catalog(rates, shop.asOf(), "other", shop.byId().values());
        Inquiry inquiry = new Inquiry(surf, SHOP.brief(), Search::new, Watch.NONE, FewBuilds.METRIC);
        assertEquals(
                "spinning rods are wrapped here with thread C or D", Unusual.instead(inquiry, surf.find("thread")));
    }
}
