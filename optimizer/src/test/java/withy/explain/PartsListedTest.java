package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.explain.TradeOffs.TradeOff;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Style;
import withy.rod.Rod;
import withy.rod.Station;

/** Drawers and the list of lighter parts: of balance and swing they tell what a hand notices. */
class PartsListedTest {
    private static final Set<Objective> FELT = Set.of(Objective.BALANCE, Objective.SWING_WEIGHT);
    private static final FewBuilds SHOP = FewBuilds.shop();

    private static Brief noticing(double times) {
        Map<Objective, Double> steps = new EnumMap<>(SHOP.brief().steps());
        FELT.forEach(objective -> steps.computeIfPresent(objective, (any, step) -> step * times));
        return Changed.with(SHOP.brief(), "steps", steps);
    }

    private int told;
    private int unsaid;

    private void hold(String sentence, List<TradeOff> tradeOffs) {
        for (TradeOff one : tradeOffs) {
            if (FELT.contains(one.objective()) && !one.same()) {
                assertEquals(one.noticeable(), sentence.contains(one.plain()), one.plain() + " in: " + sentence);
                told += one.noticeable() ? 1 : 0;
                unsaid += one.noticeable() ? 0 : 1;
            }
        }
    }

    /** The finer the step, the more is told; every line of every drawer and of the list of lighter parts. */
    @ParameterizedTest
    @CsvSource({"0.000001, true, false", "0.3, true, true", "1000000, false, true"})
    void fromTheStepOn(double times, boolean some, boolean hidden) {
        Inquiry inquiry = SHOP.inquiry(noticing(times));
        Found first = inquiry.first();
        assertNotNull(first);
        for (Station station : first.build().choices().keySet()) {
            Drawer.of(inquiry, first, station).lines().forEach(line -> hold(line.sentence(), line.tradeOffs()));
        }
        Drawer.of(inquiry, first, Station.BLANK).lines().forEach(line -> hold(line.sentence(), line.tradeOffs()));
        Ledger.of(inquiry, first).forEach(line -> hold(line.sentence(), line.tradeOffs()));
        assertEquals(some, told > 0, "told " + told);
        assertEquals(hidden, unsaid > 0, "unsaid " + unsaid);
    }

    /** A tenth of a gram from the butt to the tip: nothing else differs, and no hand feels it. */
    @Test
    void whereNothingElseDiffersItIsAsGoodAsTheSame() {
        Fixtures here = Fixtures.legal().part("cap", "facts.measuredG", 4.0).part("tip-top", "facts.measuredG", 0.3);
        Fixtures there = Fixtures.legal().part("cap", "facts.measuredG", 3.9).part("tip-top", "facts.measuredG", 0.4);
        Inquiry inquiry = FewBuilds.of(here).inquiry(here.theBrief());
        List<TradeOff> tradeOffs =
                TradeOffs.between(found(there).side(0), found(here).side(1), FewBuilds.METRIC);
        String all = Ledger.costs(inquiry, found(here), found(there), tradeOffs);
        assertTrue(all.contains("heavier to swing by 0.0003"), all);
        assertEquals("as good as the same", Ledger.noticed(inquiry, found(here), found(there), tradeOffs));
        List<TradeOff> none = TradeOffs.between(found(here).side(0), found(here).side(1), FewBuilds.METRIC);
        assertEquals("the same in every figure", Ledger.noticed(inquiry, found(here), found(here), none));
    }

    /** A step of the curve that costs nothing is told as that; any other with what it costs. */
    @Test
    void gramsThatCostNothing() {
        Fixtures here = Fixtures.legal().part("cap", "facts.measuredG", 4.0).part("tip-top", "facts.measuredG", 0.3);
        Fixtures there = Fixtures.legal().part("cap", "facts.measuredG", 3.9).part("tip-top", "facts.measuredG", 0.4);
        Inquiry inquiry = FewBuilds.of(here).inquiry(here.theBrief());
        List<TradeOff> tradeOffs =
                TradeOffs.between(found(there).side(0), found(here).side(1), FewBuilds.METRIC);
        String unfelt = Ledger.noticed(inquiry, found(here), found(there), tradeOffs);
        assertEquals("the next 3.0 g cost nothing you would notice", Curve.next("3.0 g", unfelt));
        List<TradeOff> none = TradeOffs.between(found(here).side(0), found(here).side(1), FewBuilds.METRIC);
        assertEquals(
                "the next 3.0 g cost nothing",
                Curve.next("3.0 g", Ledger.noticed(inquiry, found(here), found(here), none)));
        String felt = Ledger.costs(inquiry, found(here), found(there), tradeOffs);
        assertEquals("the next 3.0 g: " + felt, Curve.next("3.0 g", felt));
    }

    private static Found found(Fixtures fixture) {
        Rod rod = fixture.rod();
        Style style = new Style(fixture.catalog(), fixture.theBrief());
        ObjectiveVector vector = ObjectiveVector.of(rod, style, new NiceWishes(fixture.theBrief()));
        return new Found(fixture.build(), rod, vector, true, 0);
    }
}
