package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Layout;
import withy.rules.Rulebook;

/** Whether some handle costs less than a limit is answered as by the cheapest of all, whatever was asked of the stand before. */
class AnyHandleTest {
    private static final int LAYOUTS = 30;
    private static final int ASKED = 8;

    private int some;
    private int none;

    @ParameterizedTest
    @ValueSource(strings = {"kayak-estuary", "quay-squid-nice-wishes", "brook-trout-cork"})
    void asByTheCheapest(String scenario) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Query query = Query.of(Scenarios.brief(scenario, catalog), Rulebook.standard());
        Task task = SmallShop.task(catalog, query);
        Task other = SmallShop.task(catalog, query);
        Random random = new Random(scenario.hashCode());
        List<Linear> prices = List.of(
                Prices.only(Prices.Kind.WEIGHT),
                Prices.only(Prices.Kind.COST),
                Prices.only(Prices.Kind.STYLE),
                Prices.start(task.scoring).linear(task.aim, 0));
        for (int i = 0; i < LAYOUTS; i++) {
            int s = random.nextInt(task.sites().size());
            Site site = task.sites().get(s);
            List<Layout> layouts = site.layouts();
            Layout layout = layouts.get(random.nextInt(layouts.size()));
            task.setting(site.shape(), layout).ifPresent(setting -> {
                List<Stand> stands = site.stands(setting);
                List<Stand> others = other.sites().get(s).stands(setting);
                for (int t = 0; t < stands.size(); t++) {
                    for (Linear k : prices) {
                        compare(stands.get(t), others.get(t), task.leastClass(), k, random);
                    }
                }
            });
        }
        assertTrue(some > 20, "with a handle: " + some);
        assertTrue(none > 20, "without: " + none);
    }

    private void compare(Stand asked, Stand cheapest, int leastClass, Linear k, Random random) {
        long least = cheapest.leastUndressed(k, leastClass, TrainGraph.NONE);
        for (int i = 0; i < ASKED; i++) {
            long far = Math.abs(least / 8) + 2;
            long limit = TrainGraph.none(least) ? random.nextLong(1_000_000) : least + random.nextLong(-far, far);
            assertEquals(least < limit, asked.anyUndressed(k, leastClass, limit), "below " + limit + " of " + least);
            if (random.nextInt(4) == 0) {
                long told = asked.leastUndressed(k, leastClass, limit);
                assertTrue(told >= limit || told == least, "asked about the least between");
            }
            some += least < limit ? 1 : 0;
            none += least < limit ? 0 : 1;
        }
    }
}
