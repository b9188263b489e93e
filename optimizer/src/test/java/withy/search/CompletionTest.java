package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
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

/** A layout told what each thread costs at least has the same cheapest build, and the same builds below a limit, as one that looks at every thread. */
class CompletionTest {
    private static final int LAYOUTS = 12;
    private static final long NO_END = Long.MAX_VALUE;

    private int compared;
    private int met;
    private int spared;

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
        assertTrue(met > 5, "builds: " + met);
        assertTrue(spared > 0, "threads that need not be looked at: " + spared);
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
        for (long more : new long[] {1, task.scoring.perCostMilli() * 500}) {
            Set<String> all = builds(task, every, k, least + more);
            assertEquals(all, builds(task, some, k, least + more));
            assertTrue(!all.isEmpty());
            met += all.size();
        }
        for (long more : new long[] {1, task.scoring.perCostMilli() * 500}) {
            assertEquals(least, every.least(k, least + more));
            assertEquals(least, some.least(k, least + more));
            assertEquals(builds(task, every, k, least + more), builds(task, some, k, least + more));
        }
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
