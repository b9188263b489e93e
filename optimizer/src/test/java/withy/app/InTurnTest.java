package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import withy.app.DrawerAnswer.DrawerLine;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.explain.Inquiry;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.rules.Rulebook;
import withy.search.Search;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Answers that are told as far as they are known: whatever comes later stands below what was told. */
class InTurnTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);

    private static Catalog catalog;
    private static Brief brief;
    private static SearchChooser chooser;
    private static Answer answer;

    @BeforeAll
    static void offer() throws IOException {
        catalog = SampleCatalogs.wide();
        brief = Scenarios.brief("beach-surf", catalog);
        chooser = new SearchChooser(catalog);
        answer = Propose.run(catalog, brief, chooser, UNITS, Progress.NONE);
        assertEquals(3, answer.builds().size());
    }

    private static Inquiry inquiry() {
        return Explain.inquiry(catalog, brief, any -> chooser, UNITS, Progress.NONE);
    }

    private static List<DrawerLine> fitting(DrawerAnswer drawer) {
        return drawer.parts().stream().filter(line -> line.breaks() == null).toList();
    }

    @Test
    void blanksAreToldBestFirstAndNoneComesToStandAboveAnother() {
        for (BuildSheet sheet : answer.builds()) {
            Build build = BuildReader.written(sheet, catalog);
            List<DrawerAnswer> told = new ArrayList<>();
            DrawerAnswer whole = Explain.drawer(inquiry(), build, Station.BLANK, told::add);
            assertNotNull(whole);
            assertTrue(fitting(whole).size() > 4, "enough blanks to be told in turn");
            assertTrue(told.size() >= 3, "told on the way: " + told.size());
            for (DrawerAnswer some : told) {
                List<DrawerLine> fitting = fitting(some);
                assertEquals(fitting(whole).subList(0, fitting.size()), fitting, "rank " + sheet.rank());
                assertTrue(whole.parts().containsAll(some.parts()), "what is refused is refused to the end");
            }
            assertTrue(fitting(told.get(0)).size() < fitting(told.get(2)).size(), "it grows");
            assertTrue(
                    told.get(0).parts().size() > fitting(told.get(0)).size(), "what the brief refuses is told at once");
            assertEquals(whole, Explain.drawer(inquiry(), build, Station.BLANK), "the same as asked in one go");
        }
    }

    /** A name may tell more of a rod where one that came later has the same name. */
    private static List<BuildSheet.FigureLines> figures(Around around) {
        return around.lines().stream().map(Around.Line::figures).toList();
    }

    @Test
    void otherRodsComeBelowThoseThatWereTold() {
        List<Around> told = new ArrayList<>();
        Around whole = Around.of(catalog, brief, chooser, answer.builds(), UNITS, Progress.NONE, told::add);
        assertEquals(List.of(0, 6, 11, 16), told.stream().map(Around::asked).toList());
        for (Around some : told) {
            List<BuildSheet.FigureLines> before = figures(some);
            assertEquals(figures(whole).subList(0, before.size()), before, "after " + some.asked());
        }
        assertTrue(whole.lines().size() > told.get(1).lines().size(), "there is more than the favoured ones");
        assertEquals(
                whole, Around.of(catalog, brief, chooser, answer.builds(), UNITS, Progress.NONE, any -> {}), "again");
    }

    @Test
    void whatWasFoundBeforeItWasStoppedIsKept() {
        AtomicInteger looks = new AtomicInteger();
        Progress soon = new Progress() {
            @Override
            public boolean stopped() {
                return looks.incrementAndGet() > 40;
            }

            @Override
            public void better(double weightG, long priceMinor) {
                // nobody looks on
            }
        };
        Around some = Around.of(catalog, brief, chooser, answer.builds(), UNITS, soon, any -> {});
        assertTrue(some.interrupted());
        assertTrue(some.lines().size() >= 3, "the offer is there whatever happens");
    }

    @Test
    void whetherAnyHandleGoesOnIsPassedOnToTheSearch() throws IOException {
        Query plain = Query.of(brief, Rulebook.standard());
        assertTrue(chooser.mayHold(plain, Watch.NONE));
        Set<String> seats = new java.util.TreeSet<>();
        catalog.all(withy.catalog.PartKind.REEL_SEAT).forEach(seat -> seats.add(seat.id()));
        Query none = plain.refusing(seats);
        assertFalse(new Search(catalog).mayHold(none, Watch.NONE), "no seat, no handle");
        assertFalse(chooser.mayHold(none, Watch.NONE));
    }
}
