package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** What the command line changes in a brief, and only that. */
class BriefOverridesTest {

    private static BriefOverrides read(
            List<String> priorities, String budget, List<String> with, List<String> without) {
        BriefOverrides.Reading reading = BriefOverrides.read(priorities, budget, with, without, ShopRates.CONTEXT);
        assertEquals(List.of(), reading.faults());
        BriefOverrides overrides = reading.overrides();
        assertNotNull(overrides);
        return overrides;
    }

    @Test
    void noneChangesNothing() {
        Brief brief = ShopRates.brief(FullBrief.JSON);
        assertEquals(brief, BriefOverrides.none().apply(brief, ShopRates.CONTEXT));
    }

    @Test
    void aPriorityIsReplacedAndNoLongerADefault() {
        Brief brief = ShopRates.brief("{}");
        Brief changed =
                read(List.of("weight=5", "style=0"), null, List.of(), List.of()).apply(brief, ShopRates.CONTEXT);
        assertEquals(5, changed.priority(Objective.WEIGHT));
        assertEquals(0, changed.priority(Objective.STYLE));
        assertEquals(2, changed.priority(Objective.BALANCE));
        assertEquals(brief.defaultsUsed().size() - 2, changed.defaultsUsed().size());
        assertTrue(changed.defaultsUsed().stream().noneMatch(sentence -> sentence.contains("priority of weight")));
        assertEquals(ShopRates.brief("{\"priorities\": {\"weight\": 5, \"style\": 0}}"), changed);
    }

    @Test
    void aBudgetMovesThePriceStepThatFollowedIt() {
        Brief changed = read(List.of(), "650", List.of(), List.of()).apply(ShopRates.brief("{}"), ShopRates.CONTEXT);
        assertEquals(ShopRates.brief("{\"budget\": 650}"), changed);
        Brief again = read(List.of(), "900 EUR", List.of(), List.of()).apply(changed, ShopRates.CONTEXT);
        assertEquals(ShopRates.brief("{\"budget\": 900}"), again);
    }

    @Test
    void aPriceStepOfTheBriefsOwnStays() {
        Brief changed = read(List.of(), "650", List.of(), List.of())
                .apply(ShopRates.brief("{\"steps\": {\"priceMinor\": 1234}}"), ShopRates.CONTEXT);
        assertEquals(1234, changed.step(Objective.PRICE));
        assertEquals(65_000L, changed.budgetMinor());
    }

    @Test
    void partsMoveBetweenTheLists() {
        Brief brief = ShopRates.brief(
                "{\"insisted\": [\"seat-1\", {\"part\": \"grip-1\", \"need\": \"nice\"}], \"owned\": [\"seat-1\"], \"refused\": [\"guide-1\"]}");
        Brief changed = read(List.of(), null, List.of("guide-1", "grip-1"), List.of("seat-1"))
                .apply(brief, ShopRates.CONTEXT);
        assertEquals(
                List.of(new Brief.PartWish("grip-1", true, 0), new Brief.PartWish("guide-1", true, 0)),
                changed.insisted());
        assertEquals(List.of(new Brief.PartWish("seat-1", true, 0)), changed.refused());
        assertEquals(Set.of(), changed.owned());
    }

    @Test
    void allFaultsComeAtOnce() {
        BriefOverrides.Reading reading = BriefOverrides.read(
                List.of("wieght=5", "weight", "weight=-1", "weight=abc", "price=1e9", "=3"),
                "12 USD",
                List.of("Seat 1", "cap-1"),
                List.of("cap-1", ""),
                ShopRates.CONTEXT);
        assertNull(reading.overrides());
        assertEquals(
                List.of(
                        "--priority",
                        "--priority",
                        "--priority",
                        "--priority",
                        "--priority",
                        "--priority",
                        "--budget",
                        "--with",
                        "--without",
                        "--without"),
                reading.faults().stream().map(BriefFault::path).toList());
        assertEquals("Maybe \"weight\" was meant.", reading.faults().get(0).maybe());
        assertEquals(
                "--priority: weight=-1; allowed is weight= and a number, 0 to 100.\nMaybe weight=5 was meant.",
                reading.faults().get(2).message());
        for (BriefFault fault : reading.faults()) {
            assertFalse(fault.allowed().isBlank());
        }
    }

    @Test
    void aBudgetOfNothingIsAFault() {
        BriefOverrides.Reading reading = BriefOverrides.read(List.of(), "0", List.of(), List.of(), ShopRates.CONTEXT);
        assertEquals(
                "--budget: 0; allowed is an amount above 0, such as 650.00 EUR.\nMaybe a digit is missing or one too many.",
                reading.faults().get(0).message());
    }
}
