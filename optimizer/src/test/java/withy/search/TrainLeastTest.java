package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief.HandleForm;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Rulebook;

/** No thread's train costs less than is said of it before it is worked: told for every thread, whichever comes first, by the exact trains. */
class TrainLeastTest {
    private static final int PRICES = 40;
    private static final int MOST_SITES = 3;

    private static int compared;
    private static int besidesFirst;

    @TestFactory
    Stream<DynamicTest> neverAboveTheExactTrain() {
        return Stream.of(
                        "brook-trout-cork",
                        "quay-squid-nice-wishes",
                        "sea-trout-travel",
                        "harbour-jigging",
                        "beach-surf")
                .map(name -> DynamicTest.dynamicTest(name, () -> {
                    Catalog catalog = SampleCatalogs.wide();
                    Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard()));
                    Random random = new Random(name.hashCode());
                    task.sites().stream()
                            .filter(site -> !site.ends().isEmpty())
                            .limit(MOST_SITES)
                            .forEach(site -> compare(task, site, random));
                }));
    }

    /** There were trains to compare, with more threads than one. */
    @AfterAll
    static void enoughWereCompared() {
        assertTrue(compared >= 500, "compared: " + compared);
        assertTrue(besidesFirst >= 200, "with another thread than the first: " + besidesFirst);
    }

    private static void compare(Task task, Site site, Random random) {
        Ground ground = task.ground;
        for (int count : site.counts()) {
            Layout layout = new Layout(site.shape().blank().id(), ground.lastFoot(), HandleForm.SPLIT, count);
            Setting setting = Setting.of(ground.catalog, ground.brief, site.shape(), layout);
            for (Stand stand : site.stands(setting)) {
                for (int i = 0; i < PRICES; i++) {
                    Linear k = new Linear(
                            random.nextInt(-4_000, 10_000),
                            random.nextInt(100),
                            random.nextInt(2),
                            random.nextInt(10),
                            random.nextInt(1000),
                            0,
                            0);
                    compare(ground, site, stand, setting, k);
                }
            }
        }
    }

    private static void compare(Ground ground, Site site, Stand stand, Setting setting, Linear k) {
        if (!site.burdens(k)) {
            return;
        }
        long[] each = site.trains(stand, setting, 1, k);
        List<Consumables> threads = site.threads();
        for (int t = 0; t < each.length; t++) {
            Consumables with = threads.get(t);
            TrainGraph trains = stand.train(setting, new Fitter(setting, with, ground.tariff), with);
            long exact = trains.priced(k, 1).best();
            assertEquals(trains.priced(k, 1, null).best(), exact, () -> "of all groups, with no floors, " + k);
            if (!TrainGraph.none(exact)) {
                int n = setting.guideCount();
                long looks = k.perStyleCenti()
                        * ground.style.part(setting.blank(), HandleForm.SPLIT, Station.THREAD, with.thread(), n);
                assertTrue(
                        each[t] <= exact - looks,
                        with.thread().id() + " " + (each[t] - exact + looks) + " above, " + k);
                compared++;
                besidesFirst += t > 0 ? 1 : 0;
            }
        }
    }
}
