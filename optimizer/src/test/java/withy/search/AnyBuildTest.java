package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.objectives.Solver.Query;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** Some build costs less than a limit where the cheapest does, under prices that make weight a burden or welcome; what is asked first changes nothing. */
class AnyBuildTest {
    private static final long NO_END = Long.MAX_VALUE;
    private static final int EVERY = 13;
    private static final int FURTHEST_MM = 400;

    private static int compared;

    @TestFactory
    Stream<DynamicTest> someIsFoundWhereTheCheapestIs() {
        return LongStream.range(0, 6)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    Query query = shop.query(Rulebook.standard());
                    Task task = SmallShop.task(shop.catalog(), query);
                    Random random = new Random(seed);
                    for (Site site : task.sites()) {
                        List<Layout> layouts = site.layouts();
                        for (int i = 0; i < layouts.size(); i += EVERY) {
                            Setting setting = Setting.of(shop.catalog(), query.brief(), site.shape(), layouts.get(i));
                            for (Linear k : prices(random)) {
                                compare(task, site, setting, k, "seed " + seed + ", " + layouts.get(i) + ", " + k);
                            }
                        }
                    }
                }));
    }

    @AfterAll
    static void enoughWereCompared() {
        assertTrue(compared >= 100, "layouts and prices: " + compared);
    }

    /** Each sum by itself, the moment ahead of a place and behind it, and some of all. */
    private static List<Linear> prices(Random random) {
        int mm = random.nextInt(FURTHEST_MM);
        return List.of(
                Prices.only(Prices.Kind.WEIGHT),
                Prices.only(Prices.Kind.COST),
                Prices.only(Prices.Kind.STYLE),
                new Linear(-mm, 1, 0, 0, 0, 0, 0),
                new Linear(mm, -1, 0, 0, 0, 0, 0),
                new Linear(1 + random.nextInt(1000), 1, 1, random.nextInt(100), random.nextInt(100), 0, 0));
    }

    private static void compare(Task task, Site site, Setting setting, Linear k, String told) {
        for (int s = 0; s < site.stands(setting).size(); s++) {
            long least = completion(task, site, setting, s).least(k, NO_END);
            if (TrainGraph.none(least)) {
                assertFalse(afresh(task, site, setting, s).any(k, NO_END), told);
                continue;
            }
            for (long more : new long[] {0, 1, 1000, Math.abs(least)}) {
                assertEquals(more > 0, completion(task, site, setting, s).any(k, least + more), told);
                Completion afresh = afresh(task, site, setting, s);
                assertEquals(more > 0, afresh.any(k, least + more), told);
                assertEquals(least, afresh.least(k, NO_END), told);
                compared++;
            }
        }
    }

    private static Completion completion(Task task, Site site, Setting setting, int stand) {
        return completion(task, site, setting, site.stands(setting).get(stand));
    }

    /** On a stand of which nothing is known. */
    private static Completion afresh(Task task, Site site, Setting setting, int stand) {
        Stand known = site.stands(setting).get(stand);
        Stand afresh = new Stand(known.shelf, site.stations(), setting, known.fitter, known.ends);
        return completion(task, site, setting, afresh);
    }

    private static Completion completion(Task task, Site site, Setting setting, Stand stand) {
        List<Completion.Candidate> with = new ArrayList<>();
        for (Consumables one : site.threads()) {
            if (one.adhesive().equals(stand.fitter.with().adhesive())) {
                with.add(new Completion.Candidate(one, Long.MIN_VALUE));
            }
        }
        return new Completion(stand, setting, with, task.brief.durabilityClass(), NO_END);
    }
}
