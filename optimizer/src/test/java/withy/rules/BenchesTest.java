package withy.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.Test;
import withy.brief.Brief.Landing;
import withy.catalog.Part;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Verdict.Outcome;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Benches, rulebook, supply and sentences around the rules. */
class BenchesTest {
    private static Verdict verdict(Fixtures fixture, String rule, String check, Outcome outcome) {
        return Judge.judge(fixture.rod(), Rulebook.standard()).stream()
                .filter(v -> v.rule().equals(rule) && v.check().equals(check) && v.outcome() == outcome)
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theFirstRefusalIsKeptWithItsNumbers() {
        Fixtures fixture =
                Fixtures.legal().part("seat", "facts.corrosionClass", 1).part("seat", "facts.stock", 0);
        Refusal refusal = new Refusal();
        Part seat = fixture.partOf("seat");
        Rulebook.standard().onCandidate(fixture.theBrief(), fixture.catalog(), seat, refusal);
        assertTrue(refusal.refused());
        assertEquals(
                new Verdict("salt", "corrosion-class", Outcome.FAIL, 1, 2, Unit.CLASS, List.of("seat")),
                refusal.verdict());
        Rulebook.standard()
                .onCandidate(fixture.theBrief(), fixture.catalog(), fixture.partOf("check"), refusal.reset());
        assertFalse(refusal.refused());
        assertThrows(IllegalStateException.class, refusal::verdict);
    }

    @Test
    void anUnknownRatingIsRefusedAsUnknown() {
        Fixtures fixture = Fixtures.legal().brief("landing", Landing.LIFTED);
        Refusal refusal = new Refusal();
        Judge.ask(fixture.rod(), Rulebook.standard(), refusal);
        assertEquals(Outcome.UNKNOWN, refusal.verdict().outcome());
        assertEquals("lift", refusal.ruleCode());
        assertFalse(Judge.legal(fixture.rod(), Rulebook.standard()));
        assertTrue(Judge.legal(fixture.rod(), Rulebook.standard().without("lift")));
    }

    @Test
    void whatIsBrokenIsWhatTheJudgeRefusesInItsOrder() {
        Fixtures fixture = Fixtures.legal()
                .brief("landing", Landing.LIFTED)
                .part("blank", "ownLureMaxG", 10)
                .part("seat", "facts.corrosionClass", 1)
                .part("seat", "facts.stock", 0);
        List<Verdict> refused = Judge.judge(fixture.rod(), Rulebook.standard()).stream()
                .filter(v -> !v.outcome().legal())
                .toList();
        assertTrue(refused.size() >= 4, refused.toString());
        assertEquals(refused, Judge.broken(fixture.rod(), Rulebook.standard()));
        assertEquals(List.of(), Judge.broken(Fixtures.legal().rod(), Rulebook.standard()));
    }

    @Test
    void aRulebookWithoutAnUnknownRuleSaysWhichThereAre() {
        String message = assertThrows(
                        IllegalArgumentException.class,
                        () -> Rulebook.standard().without("lifts"))
                .getMessage();
        assertTrue(message.contains("'lifts'") && message.contains("lure-range, ") && message.contains("\nMaybe "));
    }

    @Test
    void theBuildersOwnRatingGoesBeforeTheMakers() {
        Fixtures fixture = Fixtures.legal().part("blank", "ownLureMaxG", 10).part("blank", "ownLureMinG", 9);
        assertEquals(
                10, verdict(fixture, "lure-range", "heaviest", Outcome.FAIL).limit());
        assertEquals(9, verdict(fixture, "lure-range", "usual", Outcome.FAIL).limit());
    }

    @Test
    void aShockLeaderDoesNotCountAgainstTheBlank() {
        Fixtures fixture = Fixtures.legal().brief("line.gauge", null).brief("leader.strengthKg", 30);
        Verdict weakest = verdict(fixture, "line-class", "weakest", Outcome.FAIL);
        // the braid of 6.8 kg is the weaker: 6.8 × 0.8
        assertEquals(5.44, weakest.measured(), 1e-9);
    }

    @Test
    void aBareRodIsRefusedForWhatIsMissingAndNothingThrows() {
        Fixtures fixture = Fixtures.legal();
        for (Station station : List.copyOf(fixture.build().choices().keySet())) {
            fixture.empty(station);
        }
        List<String> failed = Judge.judge(fixture.rod(), Rulebook.standard()).stream()
                .filter(v -> !v.outcome().legal())
                .map(v -> v.rule() + "." + v.check())
                .toList();
        assertTrue(
                failed.containsAll(List.of(
                        "tip-top.present",
                        "handle.seat-present",
                        "handle.rear-grip-present",
                        "handle.butt-grip-present",
                        "handle.butt-closed",
                        "handle.adhesive",
                        "guide-train.filled",
                        "guide-train.thread",
                        "guide-train.finish")),
                failed::toString);
    }

    @Test
    void supplyCountsShelfPacksAndDays() {
        Fixtures fixture = Fixtures.legal().part("guide-5", "facts.stock", 2).part("guide-5", "facts.packQty", 5);
        LocalDate today = Fixtures.TODAY;
        Supply shelf = Supply.of(fixture.partOf("guide-5"), fixture.theBrief(), today);
        assertEquals(new Supply(2, false, 5), shelf);
        assertTrue(shelf.covers(2));
        assertFalse(shelf.covers(3));
        // wanted on 1 April, 30 days after 2 March
        fixture.part("guide-5", "facts.leadDays", 30);
        Supply inTime = Supply.of(fixture.partOf("guide-5"), fixture.theBrief(), today);
        assertTrue(inTime.covers(40));
        assertFalse(Supply.of(fixture.partOf("guide-5"), fixture.theBrief(), today.plusDays(1))
                .covers(3));
        fixture.brief("wantedBy", null);
        assertTrue(Supply.of(fixture.partOf("guide-5"), fixture.theBrief(), today.plusDays(1))
                .covers(3));
        assertEquals(
                List.of(0, 0, 5, 5, 10),
                List.of(1, 2, 3, 7, 8).stream().map(inTime::toOrder).toList());
        fixture.brief("owned", Set.of("guide-5"));
        assertEquals(new Supply(1, false, 1), Supply.of(fixture.partOf("guide-5"), fixture.theBrief(), today));
    }

    @Test
    void arborsCutFromSeveralPiecesAreCounted() {
        // two rings of 25 mm from pieces of 30 mm: two pieces (common practice)
        Fixtures fixture = Fixtures.legal()
                .put(Station.SEAT_ARBORS, "arbor")
                .part("seat", "boreMm", 17)
                .part("arbor", "lengthMm", 30)
                .part("arbor", "facts.stock", 1);
        Verdict short1 = verdict(fixture, "stock", "all-pieces", Outcome.FAIL);
        assertEquals(List.of("arbor"), short1.parts());
        assertEquals(2, short1.measured());
    }

    @Test
    void limitsAreComparedOnTheGrid() {
        assertTrue(Protocol.within(56.504, 56.5, Unit.MM));
        assertFalse(Protocol.within(56.506, 56.5, Unit.MM));
        assertFalse(Protocol.within(Double.NaN, 1, Unit.MM));
        assertFalse(Protocol.within(1, Double.NaN, Unit.MM));
    }

    @Test
    void aSentenceNamesThePartAndTheNumbersInAnyLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            Fixtures fixture =
                    Fixtures.legal().part("seat", "footLengthMaxMm", 56.25).brief("budgetMinor", 10050L);
            Sentences sentences = new Sentences(fixture.catalog());
            assertEquals(
                    "The reel foot of 56.5 mm with its play is too long for Tarn seat, which takes up to 56.25 mm.",
                    sentences.of(verdict(fixture, "reel-fit", "foot-longest", Outcome.FAIL)));
            Sentences imperial = new Sentences(fixture.catalog(), new QuantityText(UnitSystem.IMPERIAL));
            // 56.5 / 25.4 and 56.25 / 25.4
            assertEquals(
                    "The reel foot of 2.2244\" with its play is too long for Tarn seat, which takes up to 2.2146\".",
                    imperial.of(verdict(fixture, "reel-fit", "foot-longest", Outcome.FAIL)));
            String price = sentences.of(verdict(fixture, "budget", "price", Outcome.FAIL));
            assertTrue(price.endsWith(" EUR is above the budget of 100.50 EUR."), price);
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void tipTopSizesAreCountedOnTheTradesList() {
        assertEquals(0, RingSizes.between(5, 5));
        assertEquals(0, RingSizes.between(6, 5));
        assertEquals(1, RingSizes.between(8, 10));
        assertEquals(3, RingSizes.between(5, 7));
    }

    @Test
    void aRingBehindTheSeatMeetsBothItsNeighbours() {
        Rod rod = Fixtures.legal().put(Station.REAR_CHECK, "check").rod();
        List<String> steps = Judge.judge(rod, Rulebook.standard()).stream()
                .filter(v -> v.check().equals("step-at-ring"))
                .map(v -> String.join(" ", v.parts()))
                .toList();
        assertEquals(List.of("check seat", "rear-grip check", "seat check"), steps);
    }

    /** A bore of 14 mm leaves half of what is over it; the thinnest of rear, middle and front counts. */
    @Test
    void theThinnestWallOfAGripCounts() {
        double[][] sizes = {{22, 26, 24, 4}, {24, 26, 22, 4}, {26, 20, 26, 3}};
        for (double[] size : sizes) {
            Fixtures fixture = Fixtures.legal().part("rear-grip", "boreMm", 14).part("rear-grip", "reamMaxMm", 18);
            fixture.part("rear-grip", "rearOdMm", size[0]).part("rear-grip", "midOdMm", size[1]);
            fixture.part("rear-grip", "frontOdMm", size[2]);
            Verdict wall = Judge.judge(fixture.rod(), Rulebook.standard()).stream()
                    .filter(v -> v.check().equals("wall") && v.parts().contains("rear-grip"))
                    .findFirst()
                    .orElseThrow();
            assertEquals(size[3], wall.measured(), 1e-9);
        }
    }

    /** Common practice: one and a half times its weight, over a knot that keeps 0.8 of the leader. */
    @Test
    void aFishSwungAboardHangsOnTheKnot() {
        Fixtures fixture = Fixtures.legal();
        assertEquals(0, DeadLoad.ofKg(fixture.theBrief()));
        assertEquals(0, DeadLoad.leaderNeedsKg(fixture.theBrief()));
        fixture.brief("landing", Landing.LIFTED);
        assertEquals(2.25, DeadLoad.ofKg(fixture.theBrief()), 1e-12);
        assertEquals(2.8125, DeadLoad.leaderNeedsKg(fixture.theBrief()), 1e-12);
    }

    @Test
    void aRefusalTellsWhatItMeasured() {
        Fixtures fixture = Fixtures.legal().part("seat", "facts.corrosionClass", 1);
        Refusal refusal = new Refusal();
        Rulebook.standard().onCandidate(fixture.theBrief(), fixture.catalog(), fixture.partOf("seat"), refusal);
        assertEquals("corrosion-class", refusal.check());
        assertEquals(1, refusal.measured());
        assertEquals(2, refusal.limit());
    }

    /** Half an ounce is 14.175 g, which nobody says; where it is a hair's breadth off the rating it has to be said. */
    @Test
    void aLureIsToldAsABuilderSaysItUnlessThatHidesAMiss() {
        Fixtures fixture = Fixtures.legal().brief("lure.usualG", 14.17476);
        assertEquals("14.2 g", lure(fixture, UnitSystem.METRIC));
        assertEquals("1/2 oz", lure(fixture, UnitSystem.IMPERIAL));
        fixture.part("blank", "lureMinG", 14.19);
        assertEquals("14.175 g", lure(fixture, UnitSystem.METRIC));
        assertEquals("0.5 oz", lure(fixture, UnitSystem.IMPERIAL));
    }

    private static String lure(Fixtures fixture, UnitSystem system) {
        Verdict usual = Judge.judge(fixture.rod(), Rulebook.standard()).stream()
                .filter(v -> v.rule().equals("lure-range") && v.check().equals("usual"))
                .findFirst()
                .orElseThrow();
        String said = new Sentences(fixture.catalog(), new QuantityText(system)).of(usual);
        return said.replaceFirst("The usual lure of (.*?) is .*", "$1");
    }
}
