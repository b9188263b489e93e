package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** Where weight is welcome at the front end of a handle, thread and finish there are credited with at least what they may be worth. */
class EndDressTest {
    private static final int GUIDES = 7;

    /** A milligram costs nothing 100 mm ahead of the reel foot, and the more the further out. */
    private static final Linear WELCOME_NEAR = new Linear(-5_000_000, 50_000, 0, 1, 100, 0, 0);

    private static final Linear BURDEN = new Linear(5_000_000, 50_000, 0, 1, 100, 0, 0);

    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "brook-trout-cork", "child-first-rod"})
    void noThreadCostsLess(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.bench();
        Query query = Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard());
        Task task = SmallShop.task(catalog, query);
        int compared = 0;
        int welcome = 0;
        for (Site site : task.sites()) {
            assertTrue(site.burdens(WELCOME_NEAR));
            Setting setting = site.spacings().at(task.ground.firstFoot() + 10, GUIDES);
            for (Stand stand : site.stands(setting)) {
                FrontEnds ends = new FrontEnds(stand, WELCOME_NEAR);
                long floor = stand.shelf.priced(WELCOME_NEAR).keeperFloor;
                for (double ahead = stand.shelf.shortestFrontMm; ahead < 100; ahead += 5) {
                    double front = setting.footMm() + ahead;
                    long least = ends.cost(null, front);
                    assertTrue(floor <= least, () -> "the shelf's floor above by " + (floor - least));
                    for (Consumables with : site.threads()) {
                        long cost = ends.cost(new Fitter(setting, with, task.ground.tariff), front);
                        assertTrue(least <= cost, () -> site.shape().blank().id() + " " + with + ": " + (least - cost));
                        compared++;
                    }
                    welcome += task.ground.endDress(WELCOME_NEAR, ahead) < 0 ? 1 : 0;
                    assertEquals(0, task.ground.endDress(BURDEN, ahead));
                }
            }
        }
        assertTrue(compared >= 50, "compared: " + compared);
        assertTrue(welcome >= 15, "welcome: " + welcome);
    }

    /** Where a milligram is welcome even at the nearest guide, nothing is said. */
    @ParameterizedTest
    @ValueSource(strings = "kayak-estuary")
    void welcomeAtTheGuides(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.bench();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard()));
        for (Site site : task.sites()) {
            assertFalse(site.burdens(new Linear(-60_000_000, 50_000, 0, 1, 100, 0, 0)));
            assertFalse(site.burdens(new Linear(5_000_000, -1, 0, 1, 100, 0, 0)));
        }
    }
}
