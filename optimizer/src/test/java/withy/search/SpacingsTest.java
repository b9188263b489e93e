package withy.search;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** What a guide train costs at least near one reel position is no more than it costs there, and often more than it costs at least anywhere. */
class SpacingsTest {
    private static final int PRICES = 5;
    private static final int MOST_SITES = 4;

    @ParameterizedTest
    @ValueSource(strings = {"brook-trout-cork", "big-handed", "sea-trout-travel"})
    void floorsOfAStretchHoldThere(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard()));
        Random random = new Random(scenario.hashCode());
        int compared = 0;
        int tighter = 0;
        for (Site site : task.sites().stream()
                .filter(one -> !one.ends().isEmpty())
                .limit(MOST_SITES)
                .toList()) {
            for (int i = 0; i < PRICES; i++) {
                Linear k = new Linear(
                        random.nextInt(10_000), random.nextInt(100), random.nextInt(2), random.nextInt(10), 0, 0, 0);
                for (int count : site.counts()) {
                    for (int foot : task.ground.feet) {
                        Layout layout = new Layout(site.shape().blank().id(), foot, HandleForm.SPLIT, count);
                        Setting setting = Setting.of(catalog, task.brief, site.shape(), layout);
                        if (setting.spaced()) {
                            long anywhere = TrainGraph.least(site.trains(count, 1, k));
                            long near = TrainGraph.least(site.trainsNear(foot, count, 1, k));
                            tighter += anywhere < near ? 1 : 0;
                            for (Stand stand : site.stands(setting)) {
                                assertTrue(
                                        near <= TrainGraph.least(site.trains(stand, setting, 1, k)), layout + " " + k);
                                compared++;
                            }
                        }
                    }
                }
            }
        }
        assertTrue(compared > 100 && tighter > 0, compared + " compared, " + tighter + " tighter");
    }
}
