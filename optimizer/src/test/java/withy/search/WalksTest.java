package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** Comparing beginnings finds a build as good as walking past every one does, in every layout of small catalogues, with and without a budget. */
class WalksTest {
    private static final long NO_END = Long.MAX_VALUE;
    private static final int ALL = Integer.MAX_VALUE;

    private static int compared;
    private static int found;

    @TestFactory
    Stream<DynamicTest> sameBest() {
        return LongStream.range(0, 12)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    Query query = shop.query(Rulebook.standard());
                    Task task = SmallShop.task(shop.catalog(), query);
                    for (Site site : task.ground.sites()) {
                        for (Layout layout : site.layouts()) {
                            Setting setting = Setting.of(shop.catalog(), query.brief(), site.shape(), layout);
                            for (Stand stand : site.stands(setting)) {
                                compare(task, site, setting, stand, "seed " + seed + ", " + layout);
                            }
                        }
                    }
                }));
    }

    @AfterAll
    static void enoughWereCompared() {
        assertTrue(compared >= 100, "layouts: " + compared);
        assertTrue(found >= 50, "with a build: " + found);
    }

    private static void compare(Task task, Site site, Setting setting, Stand stand, String told) {
        int leastClass = task.brief.durabilityClass();
        Dual.Outcome few = outcome(task, site, setting, stand, leastClass, 0);
        Dual.Outcome every = outcome(task, site, setting, stand, leastClass, NO_END);
        assertEquals(score(every), score(few), told);
        assertTrue(few.whole() && every.whole(), told);
        compared++;
        found += every.best() == null ? 0 : 1;
    }

    private static long score(Dual.Outcome outcome) {
        Task.Judged best = outcome.best();
        return best == null ? NO_END : best.score();
    }

    private static Dual.Outcome outcome(
            Task task, Site site, Setting setting, Stand stand, int leastClass, long fewSteps) {
        List<Completion.Candidate> with = new ArrayList<>();
        for (Consumables one : site.threads()) {
            if (one.adhesive().equals(stand.fitter.with().adhesive())) {
                with.add(new Completion.Candidate(one, Long.MIN_VALUE));
            }
        }
        Completion completion = new Completion(stand, setting, with, leastClass, NO_END);
        // in the middle of the zone the bound is loose, which makes long walks
        Prices start = Prices.start(task.scoring).slope(0);
        return new Dual(task, completion, site.shape(), leastClass, Watch.NONE, NO_END, ALL, fewSteps)
                .walk(start, NO_END);
    }
}
