package withy.explain;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.sample.SampleCatalogs;
import withy.explain.Finding.Outcome;
import withy.objectives.Solver.Watch;
import withy.rod.Placed;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.Search;

/** Reasons on the sample lists that used to depend on which rod was met first, or were given up before their end. */
class SampleReasonsTest {
    private static final Path HOME = Path.of(System.getProperty("withy.home", ".."));

    private static Finding reason(String scenario, String part) throws IOException {
        return reason("wide", scenario, part);
    }

    private static Finding reason(String list, String scenario, String part) throws IOException {
        Catalog catalog = Objects.requireNonNull(
                CatalogReader.read(HOME.resolve("catalog-samples").resolve(list), SampleCatalogs.AS_OF)
                        .catalog());
        Brief brief = Objects.requireNonNull(BriefReader.read(
                        HOME.resolve("scenarios").resolve(scenario).resolve("brief.json"),
                        new BriefContext(catalog.rates(), catalog.asOf()))
                .brief());
        return WhyNot.reason(new Inquiry(catalog, brief, Search::new, Watch.NONE, FewBuilds.METRIC), Set.of(part));
    }

    /** Put in the place of the rear grip it leaves the butt open, too; a cap would mend that, but not that a split handle is wished. */
    @Test
    void aFullGripIsNotToldToLeaveTheButtOpen() throws IOException {
        Finding finding = reason("bench", "tiny-stream-ultralight", "fellcork-full-200");
        assertEquals(
                "Fellcork Full 200: it cannot go in. The handle does not have the form wished. What was asked for: a split handle.",
                finding.sentence());
    }

    /** The best rod there has no cap, which a cap would mend; what does not go away is that the grip is too long. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "estuary-imperial",
                "rock-wrasse-strong-line",
                "harbour-lift-on-light-leader",
                "own-seat-insisted",
                "quay-squid-nice-wishes"
            })
    void aGripThatIsTooLongIsNotToldToLeaveTheButtOpen(String scenario) throws IOException {
        Finding finding = reason(scenario, "ostermoor-surf-butt-200-nop541");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        Breach breach = Objects.requireNonNull(finding.breach());
        assertEquals("bare-blank", breach.verdict().check());
        var placed = Objects.requireNonNull(finding.opponent()).rod().placed();
        Placed butt = Objects.requireNonNull(placed.get(Station.BUTT_GRIP));
        Placed rear = Objects.requireNonNull(placed.get(Station.REAR_GRIP));
        long missing = Math.round(30 - (rear.fromMm() - butt.toMm()));
        assertTrue(missing > 0);
        assertTrue(
                finding.sentence()
                        .contains("It stands " + missing + " mm too near "
                                + rear.part().facts().name() + ": "),
                finding.sentence());
        assertFalse(finding.sentence().contains("left open"), finding.sentence());
    }

    /** One ceiling after another used up the effort before a rod was met that is worse in nothing. */
    @Test
    void aSeatThatIsDominatedUnderATightBudget() throws IOException {
        Finding finding = reason("very-small-budget", "marrick-brookside-walnut-nop185-16");
        assertEquals(Outcome.DOMINATED, finding.outcome(), finding.sentence());
        Found opponent = Objects.requireNonNull(finding.opponent());
        Found better = Objects.requireNonNull(finding.better());
        assertTrue(better.vector().dominates(opponent.vector()));
        assertTrue(Judge.legal(better.rod(), Rulebook.standard()));
        assertFalse(better.build().holds(Set.of("marrick-brookside-walnut-nop185-16")));
    }

    /** The same where there is none: with everything forbidden at once that is known to the end. */
    @Test
    void nothingIsAsGoodAsALongButtGripOnATravelRod() throws IOException {
        Finding finding = reason("sea-trout-travel", "ostermoor-surf-butt-200-nop541");
        assertEquals(Outcome.LOSES, finding.outcome());
        assertNotNull(finding.opponent());
        assertFalse(finding.sentence().contains("was not looked into"), finding.sentence());
    }

    /** The rod met first was better by hairs alone; nearer to the best rod there is one that is noticeably cheaper. */
    @Test
    void whatBeatsAHoodIsToldByWhatIsNoticed() throws IOException {
        Finding finding = reason("child-first-rod", "hollinbeck-featherlode-skeleton-hood-nop227-16");
        assertEquals(Outcome.DOMINATED, finding.outcome(), finding.sentence());
        Found opponent = Objects.requireNonNull(finding.opponent());
        Found better = Objects.requireNonNull(finding.better());
        assertTrue(better.vector().dominates(opponent.vector()));
        assertTrue(Judge.legal(better.rod(), Rulebook.standard()));
        assertFalse(finding.sentence().contains("too little to notice"), finding.sentence());
        assertTrue(finding.sentence().contains(" EUR cheaper"), finding.sentence());
    }

    /** On any blank it is too tight; how much is told of the best rod's own. */
    @ParameterizedTest
    @ValueSource(strings = {"big-handed", "rock-wrasse-strong-line"})
    void aCapThatIsTooTightIsMeasuredOnTheBestRodsBlank(String scenario) throws IOException {
        Finding finding = reason(scenario, "dunholme-reach-turned-cap-nop240-9x26");
        assertEquals(Outcome.BREAKS_RULE, finding.outcome());
        assertEquals(
                Objects.requireNonNull(finding.first()).build().layout().blankId(),
                Objects.requireNonNull(finding.opponent()).build().layout().blankId());
        assertTrue(finding.sentence().contains("too tight to go over the butt"), finding.sentence());
    }
}
