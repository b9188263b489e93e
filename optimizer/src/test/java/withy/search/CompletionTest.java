package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.Catalog;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Scenarios;
import withy.objectives.Solver.Query;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** A layout told what each thread costs at least has the same cheapest build, and walks every thread that may have a build below a limit, as one that looks at every thread. */
class CompletionTest {
    private static final int LAYOUTS = 12;
    private static final long NO_END = Long.MAX_VALUE;

    private int compared;
    private int met;
    private int spared;
    private int walked;

    @ParameterizedTest
    @ValueSource(strings = {"sea-trout-travel", "brook-trout-cork", "quay-squid-nice-wishes"})
    void theSameWithFloors(String name) throws IOException {
        Catalog catalog = SampleCatalogs.wide();
        Task task = SmallShop.task(catalog, Query.of(Scenarios.brief(name, catalog), Rulebook.standard()));
        NodeBounds bounds = new NodeBounds(task);
        Random random = new Random(name.hashCode());
        List<Site> sites = task.sites();
        Linear k = Prices.start(task.scoring).slope(0).linear(task.aim, task.margin(task.leastClass()));
        for (int i = 0; i < LAYOUTS; i++) {
            Site site = sites.get(random.nextInt(sites.size()));
            List<Layout> layouts = site.layouts();
            Layout layout = layouts.get(random.nextInt(layouts.size()));
            Setting setting = task.setting(site.shape(), layout).orElse(null);
            if (setting == null || !site.burdens(k)) {
                continue;
            }
            Node node =
                    Node.blank(0, site, task.leastClass(), Node.Stage.LOOKED, 0).layout(0, setting);
            for (Stand stand : site.stands(setting)) {
                compare(task, node, setting, stand, bounds, k);
            }
        }
        assertTrue(compared > 2, "layouts: " + compared);
        assertTrue(met >= compared, "builds: " + met);
        assertTrue(spared > 0, "threads that need not be looked at: " + spared);
        assertTrue(walked < 4 * (compared + spared), "threads walked: " + walked);
    }

    private void compare(Task task, Node node, Setting setting, Stand stand, NodeBounds bounds, Linear k) {
        List<Consumables> threads = node.site().threads();
        long[] floors = bounds.dressed(node, setting, stand, k, NO_END);
        List<Completion.Candidate> told = new ArrayList<>();
        List<Completion.Candidate> untold = new ArrayList<>();
        for (int t = 0; t < floors.length; t++) {
            if (threads.get(t).adhesive().equals(stand.fitter.with().adhesive())) {
                told.add(new Completion.Candidate(threads.get(t), floors[t]));
                untold.add(new Completion.Candidate(threads.get(t), Long.MIN_VALUE));
            }
        }
        int leastClass = node.leastClass();
        Completion every = new Completion(stand, setting, untold, leastClass, NO_END);
        Completion some = new Completion(stand, setting, told, k, leastClass, NO_END, new HashMap<>());
        long least = every.least(k, NO_END);
        assertEquals(least, some.least(k, NO_END));
        if (TrainGraph.none(least)) {
            return;
        }
        compared++;
        spared += some.unlooked();
        Set<String> cheapest = builds(task, every, k, least + 1);
        assertEquals(cheapest, builds(task, some, k, least + 1));
        assertTrue(!cheapest.isEmpty());
        met += cheapest.size();
        for (long euros : new long[] {0, 2, 6, 20}) {
            long limit = least + 1 + euros * 100_000 * task.scoring.perCostMilli();
            // one that need not be looked at may be walked where it is not known to cost more
            List<Consumables> may = threads(some, limit);
            assertTrue(may.containsAll(threads(every, limit)), euros + " euros dearer");
            walked += may.size();
            assertEquals(may.size(), new HashSet<>(may).size());
        }
        assertEquals(least, every.least(k, least + 1));
        assertEquals(least, some.least(k, least + 1));
        assertEquals(cheapest, builds(task, some, k, least + 1));
    }

    /** The threads whose builds are walked below a limit. */
    private static List<Consumables> threads(Completion completion, long limit) {
        List<Consumables> threads = new ArrayList<>();
        completion.builds(new Walk() {
            @Override
            public void thread(Dressing with) {
                threads.add(with.with);
            }

            @Override
            public long under() {
                return limit;
            }

            @Override
            public boolean whole() {
                return true;
            }
        });
        return threads;
    }

    private static Set<String> builds(Task task, Completion completion, Linear k, long limit) {
        Set<String> met = new TreeSet<>();
        completion.builds(new BuildWalk(
                task.aim, List.of(new Walk.Test(k, Long.MAX_VALUE)), limit, Long.MAX_VALUE, () -> false, one -> {
                    met.add(one.build().signature());
                    return limit;
                }));
        return met;
    }
}
