package withy.search;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Changed;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Rulebook;

/** Where the lengths alone say that there is no room for a handle, no handle goes on any blank. */
class RoomTest {
    /** The longest full grip; without it a reel may stand too far from the butt, too. */
    private static final String LONGEST = "nethermill-surf-full-650";

    /** With a reach that begins too near the butt for any handle. */
    @ParameterizedTest
    @CsvSource({
        "child-first-rod, 90, 260",
        "harbour-jigging, 90, 260",
        "kayak-estuary, 200, 640",
        "beach-surf, 150, 420"
    })
    void noHandleStandsWhereThereIsNoRoom(String scenario, double shortest, double longest) throws IOException {
        Catalog catalog = SampleCatalogs.bench();
        Brief brief = Scenarios.brief(scenario, catalog);
        brief = Changed.with(Changed.with(brief, "reachMinMm", shortest), "reachMaxMm", longest);
        Task task = SmallShop.task(catalog, Query.of(brief, Rulebook.standard()).refusing(Set.of(LONGEST)));
        Linear k = Prices.start(task.scoring).linear(task.aim, task.margin(task.leastClass()));
        int cramped = 0;
        int held = 0;
        for (Site site : task.sites()) {
            for (HandleForm form : HandleForm.values()) {
                Room room = site.shelf(form).room;
                for (int foot : task.ground.feet) {
                    Layout layout = new Layout(site.shape().blank().id(), foot, form, Station.MOST_GUIDES);
                    Setting setting = Setting.of(catalog, brief, site.shape(), layout);
                    for (Stand stand : site.stands(setting)) {
                        boolean holds = SomeHandle.on(stand.priced(k), task.leastClass());
                        if (room.at(foot)) {
                            held += holds ? 1 : 0;
                        } else {
                            cramped++;
                            assertFalse(holds, layout.toString());
                        }
                    }
                }
                assertTrue(room.somewhere() || task.ground.feet.stream().noneMatch(room::at), form.toString());
            }
        }
        assertTrue(cramped > 0 && held > 0, cramped + " without room, " + held + " with a handle");
    }
}
