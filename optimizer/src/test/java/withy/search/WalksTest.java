package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Objective;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Consumables;
import withy.rod.Layout;
import withy.rod.Setting;
import withy.rules.Rulebook;

/** Walking past every build finds none better than comparing beginnings does, in layouts of small catalogues, with and without a budget. */
class WalksTest {
    private static final long NO_END = Long.MAX_VALUE;
    private static final int ALL = Integer.MAX_VALUE;

    /** More classes than a build can be credited beyond its node. */
    private static final long MOST_CLASSES = 10;

    /** Above every score. */
    private static final long FAR = Long.MAX_VALUE / 8;

    private static final double SLACK = 0.02;

    private static final List<Objective> SUMS =
            List.of(Objective.WEIGHT, Objective.BALANCE, Objective.SWING_WEIGHT, Objective.PRICE, Objective.STYLE);

    private static int compared;
    private static int underCeilings;
    private static int begunNear;
    private static int stopped;

    @TestFactory
    Stream<DynamicTest> sameBest() {
        return LongStream.range(0, 5)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    Query query = withoutDurability(shop.query(Rulebook.standard()));
                    Task task = SmallShop.task(shop.catalog(), query);
                    for (Site site : task.sites()) {
                        for (Layout layout : some(site.layouts())) {
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
        assertTrue(compared >= 20, "layouts: " + compared);
        assertTrue(begunNear >= 10, "begun near the best: " + begunNear);
        assertTrue(underCeilings >= 10, "under ceilings: " + underCeilings);
        assertTrue(stopped >= 10, "stopped between two rounds: " + stopped);
    }

    private static List<Layout> some(List<Layout> layouts) {
        return IntStream.range(0, layouts.size())
                .filter(i -> i % 9 == 0)
                .mapToObj(layouts::get)
                .toList();
    }

    /** A node credits every build with its least class; without a weight on classes that is its whole score. */
    private static Query withoutDurability(Query query) {
        Map<Objective, Double> priorities = new EnumMap<>(query.priorities());
        priorities.put(Objective.DURABILITY, 0.0);
        return query.withPriorities(priorities);
    }

    private static void compare(Task task, Site site, Setting setting, Stand stand, String told) {
        Prices own = Prices.start(task.scoring);
        Dual.Outcome solved = dual(task, site, setting, stand, NO_END).solve(own, NO_END);
        if (solved.best() == null) {
            return;
        }
        // in the middle of the zone the bound is loose, which makes a long walk
        long under = solved.best().score() + MOST_CLASSES * task.scoring.perClass() + 1;
        Dual.Outcome few = dual(task, site, setting, stand, 0).walk(own.slope(0), under);
        long best = score(few);
        Task.Judged met = few.best();
        if (met != null && met.vector().durabilityClasses() == 0) {
            // begun so near the best build that few are left: those are walked at once, or where that is too long after
            // more rounds
            for (long fewSteps : new long[] {0, NO_END}) {
                Dual.Outcome near = dual(task, site, setting, stand, fewSteps).solve(solved.prices(), best + 1);
                assertEquals(best, score(near), told);
            }
            begunNear++;
        }
        Dual.Outcome every = dual(task, site, setting, stand, NO_END).walk(solved.prices(), best);
        assertEquals(NO_END, score(every), () -> told + ": better than " + best);
        assertTrue(few.whole() && every.whole(), told);
        compared++;
    }

    /** What a thread that was left out scores at least is no weight: of the others the lightest build counts. */
    @Test
    void whatIsLeftOutHasNoWeight() {
        SmallShop shop = SmallShop.of(0);
        Task task = SmallShop.task(shop.catalog(), shop.query(Rulebook.standard()));
        Site site = task.sites().get(0);
        Setting setting = Setting.of(
                shop.catalog(), task.brief, site.shape(), site.layouts().get(0));
        Stand stand = site.stands(setting).get(0);
        Consumables thread = site.threads().get(0);
        Completion.Candidate in = new Completion.Candidate(thread, Long.MIN_VALUE);
        Completion.Candidate out = new Completion.Candidate(thread, 1);
        int leastClass = task.brief.durabilityClass();
        Linear weight = Prices.only(Prices.Kind.WEIGHT);
        Completion alone = new Completion(stand, setting, List.of(in), leastClass, 1);
        long lightest = alone.least(weight, NO_END);
        assertTrue(lightest > 1 && !TrainGraph.none(lightest), "mg: " + lightest);
        Completion both = new Completion(stand, setting, List.of(in, out), leastClass, 1);
        assertEquals(lightest, both.least(weight, NO_END));
        assertEquals(1, both.price(Prices.start(task.scoring).linear(task.aim, 0), NO_END));
    }

    /** Under ceilings on every sum, a little above what some build of the layout has: what several of them together shut out is nothing that keeps each. */
    @TestFactory
    Stream<DynamicTest> sameBestUnderCeilings() {
        return LongStream.range(0, 4)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop shop = SmallShop.of(seed);
                    Query query = withoutDurability(shop.query(Rulebook.standard()));
                    Task task = SmallShop.task(shop.catalog(), query);
                    for (Site site : task.sites()) {
                        for (Layout layout : some(site.layouts())) {
                            underCeilings(shop, query, task, site, layout, new Random(seed));
                        }
                    }
                }));
    }

    private static void underCeilings(
            SmallShop shop, Query query, Task plain, Site site, Layout layout, Random random) {
        Setting setting = Setting.of(shop.catalog(), query.brief(), site.shape(), layout);
        Prices start = Prices.start(plain.scoring);
        Task.Judged any = dual(plain, site, setting, site.stands(setting).get(0), NO_END)
                .solve(start, NO_END)
                .best();
        if (any == null) {
            return;
        }
        Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
        for (Objective objective : SUMS) {
            long loss = any.vector().loss(objective);
            ceilings.put(objective, loss + (long) (Math.abs(loss) * SLACK * random.nextDouble()));
        }
        Map<Objective, Double> others = new EnumMap<>(Objective.class);
        SUMS.forEach(objective -> others.put(objective, random.nextDouble()));
        others.put(Objective.WEIGHT, 0.0); // a class counts at least as a gram
        Task task = SmallShop.task(shop.catalog(), query.withPriorities(others).under(ceilings));
        Site same = task.sites().stream()
                .filter(one -> one.shape().equals(site.shape()))
                .findFirst()
                .orElseThrow();
        Stand stand = same.stands(setting).get(0);
        Prices middle = Prices.start(task.scoring).slope(0);
        Dual.Outcome labels = dual(task, same, setting, stand, 0).walk(middle, FAR);
        Dual.Outcome every = dual(task, same, setting, stand, NO_END).walk(middle, FAR);
        assertTrue(labels.whole() && every.whole());
        assertEquals(score(every), score(labels), layout + ", " + ceilings);
        underCeilings += every.best() == null ? 0 : 1;
        stoppedOnTheWay(task, same, setting, stand, score(every));
    }

    /** Stopped before its second round of multipliers, it has a number no build scores less than but the one it has. */
    private static void stoppedOnTheWay(Task task, Site site, Setting setting, Stand stand, long best) {
        int[] asked = {0};
        Watch atOnce = new Watch(() -> ++asked[0] > 0, Watch.NONE.better());
        // a build is credited with more classes than its node knows of
        long credit = MOST_CLASSES * task.scoring.perClass();
        long limit = best == NO_END ? NO_END : best + credit + 1;
        Dual.Outcome outcome =
                dual(task, site, setting, stand, NO_END, atOnce).solve(Prices.start(task.scoring), limit);
        assertTrue(score(outcome) >= best, () -> outcome + " better than " + best);
        assertTrue(
                Math.min(outcome.bound() - credit, score(outcome)) <= best, () -> outcome + " though there is " + best);
        stopped += asked[0] == 1 && !outcome.whole() ? 1 : 0;
    }

    private static long score(Dual.Outcome outcome) {
        Task.Judged best = outcome.best();
        return best == null ? NO_END : best.score();
    }

    private static Dual dual(Task task, Site site, Setting setting, Stand stand, long fewSteps) {
        return dual(task, site, setting, stand, fewSteps, Watch.NONE);
    }

    private static Dual dual(Task task, Site site, Setting setting, Stand stand, long fewSteps, Watch watch) {
        int leastClass = task.brief.durabilityClass();
        List<Completion.Candidate> with = new ArrayList<>();
        for (Consumables one : site.threads()) {
            if (one.adhesive().equals(stand.fitter.with().adhesive())) {
                with.add(new Completion.Candidate(one, Long.MIN_VALUE));
            }
        }
        Completion completion = new Completion(stand, setting, with, leastClass, NO_END);
        return new Dual(task, completion, site.shape(), leastClass, watch, NO_END, ALL, fewSteps);
    }
}
