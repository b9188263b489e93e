package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import withy.app.JobAnswer.Foretold;
import withy.shop.Job.AsBuilt;
import withy.shop.Job.Event;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** What is said of a finished rod on the scale: the same difference that a reader gets who subtracts. */
class JobTextTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);
    private static final Foretold FORETOLD = new Foretold(96.0, 97.04, 2.6, 90, 91);

    private static String said(double weightG) {
        return JobText.asBuilt(new AsBuilt(weightG, 93.2), FORETOLD, UNITS);
    }

    @Test
    void aRodFarFromItsForecastIsTold() {
        assertEquals(
                "It weighs 101.3 g and balances 93 mm ahead of the reel foot. That is 4.3 g more than foretold: beyond give or take.",
                said(101.3));
        assertEquals(
                "It weighs 94.0 g and balances 93 mm ahead of the reel foot. That is 3.0 g less than foretold: beyond give or take.",
                said(94.0));
    }

    @Test
    void theToleranceItselfIsWithin() {
        assertEquals(
                "It weighs 99.6 g and balances 93 mm ahead of the reel foot. That is 2.6 g more than foretold: within give or take.",
                said(99.64));
        assertEquals(
                "It weighs 96.1 g and balances 93 mm ahead of the reel foot. That is 0.9 g less than foretold: within give or take.",
                said(96.1));
    }

    @Test
    void whatReadsAlikeIsAlike() {
        assertEquals(
                "It weighs 97.0 g and balances 93 mm ahead of the reel foot. That is what was foretold.", said(97.0));
    }

    @Test
    void withoutAForecastOrABalanceNothingIsMadeUp() {
        assertEquals("It weighs 97.0 g.", JobText.asBuilt(new AsBuilt(97, null), null, UNITS));
    }

    @Test
    void whatWasChosenAgainSaysWhatStandsInsteadOfWhatOnce() {
        assertEquals(
                "chosen again: b2 instead of a1; without hood; with keeper-3",
                JobText.event(new Event("2026-06-01", "changed", "without a1; a1 → b2; hood → null; null → keeper-3")));
        assertEquals(
                "chosen again: without a1; b2 instead of c3",
                JobText.event(new Event("2026-06-01", "changed", "without a1; c3 → b2")));
        assertEquals("taken back: chosen again", JobText.event(new Event("2026-06-01", "taken back", "changed")));
        assertEquals("taken back: glued", JobText.event(new Event("2026-06-01", "taken back", "glued")));
        assertEquals("chosen again: another brief", JobText.event(new Event("2026-06-01", "changed", "another brief")));
    }
}
