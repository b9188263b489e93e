package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.search.JobPlanner;
import withy.search.JobPlanner.Plan;
import withy.search.PlanJob;
import withy.search.PlanOption;
import withy.search.Supplies;

/** The plan against every combination of every legal build of three jobs that share a small shop. */
class PlanTest {
    private static final long SEEDS = 24;
    private static final long BUILDS = 400;
    private static final int JOBS = 3;
    private static final LocalDate[] DAYS = {
        LocalDate.of(2026, 3, 9), LocalDate.of(2026, 3, 20), LocalDate.of(2026, 4, 1)
    };

    private static int asked;
    private static int contended;
    private static int better;

    @TestFactory
    Stream<DynamicTest> asGoodAsEveryCombination() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> compare(seed)));
    }

    @AfterAll
    static void shopsWereWorthPlanning() {
        if (asked == SEEDS) {
            assertTrue(contended >= 10, "with contention: " + contended);
            assertTrue(better >= 3, "where one by one is worse: " + better);
        }
    }

    /** A shop in which many parts can't be ordered in time, and three jobs of the same rod with other wishes. */
    private record Small(Supplies supplies, List<PlanJob> jobs) {
        static Small of(long seed) {
            SmallShop.Case shop = SmallShop.of(seed, BUILDS);
            Random random = new Random(seed * 17 + 3);
            Map<String, PartFacts> facts = new LinkedHashMap<>();
            SortedMap<String, Supplies.Supply> supplies = new TreeMap<>();
            for (Part part : shop.catalog().byId().values()) {
                boolean guide = part.kind() == PartKind.GUIDE;
                int stock = guide ? 6 + random.nextInt(16) : 1 + random.nextInt(2);
                Integer lead = random.nextInt(3) == 0 ? Integer.valueOf(10 + random.nextInt(20)) : null;
                PartFacts own = part.facts().withStock(stock);
                facts.put(part.id(), Changed.with(own, "leadDays", lead));
                supplies.put(part.id(), new Supplies.Supply(stock, new TreeMap<>(), lead));
            }
            Catalog catalog = shop.catalog().changed(facts, "seed " + seed);
            List<PlanJob> jobs = new ArrayList<>();
            for (int n = 0; n < JOBS; n++) {
                Brief brief = Changed.with(shop.query().brief(), "priorities", priorities(random));
                brief = Changed.with(
                        brief, "wantedBy", n == 2 && random.nextBoolean() ? null : DAYS[random.nextInt(3)]);
                jobs.add(
                        new PlanJob(n + 1, catalog, Query.of(brief, shop.query().rulebook()), null));
            }
            return new Small(new Supplies(Fixtures.TODAY, supplies), jobs);
        }

        private static Map<Objective, Double> priorities(Random random) {
            Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
            for (Objective objective : Objective.values()) {
                priorities.put(objective, (double) random.nextInt(4));
            }
            return priorities;
        }
    }

    private static void compare(long seed) {
        asked++;
        Small small = Small.of(seed);
        Plan plan = JobPlanner.plan(small.jobs(), small.supplies(), Watch.NONE);
        String what = "seed " + seed + ", " + plan.cost() + ", one by one " + plan.oneByOneCost();
        Best best = new Best(small);
        assertTrue(best.within(plan.options()), what + ": a piece is promised twice");
        assertTrue(best.within(plan.oneByOne()), what + ": a piece is promised twice one by one");
        assertTrue(plan.proven(), what);
        assertEquals(best.unserved, plan.cost().unserved(), what);
        assertEquals(best.score, plan.cost().score(), what);
        assertTrue(plan.cost().compareTo(plan.oneByOneCost()) <= 0, what);
        contended += plan.cost()
                                .compareTo(new withy.search.PlanCost(
                                        0,
                                        plan.alone().stream()
                                                .mapToLong(PlanOption::score)
                                                .sum()))
                        == 0
                ? 0
                : 1;
        better += plan.cost().compareTo(plan.oneByOneCost()) < 0 ? 1 : 0;
    }

    /** Every combination, the cheap way first. */
    private static final class Best {
        private final Small small;
        private final List<List<Way>> ways = new ArrayList<>();
        private int unserved = Integer.MAX_VALUE;
        private long score = Long.MAX_VALUE;

        /** Best score of all builds that take the same pieces. */
        private record Way(SortedMap<String, Integer> pieces, long score) {}

        Best(Small small) {
            this.small = small;
            for (PlanJob job : small.jobs()) {
                Map<SortedMap<String, Integer>, Long> least = new LinkedHashMap<>();
                new Enumeration(job.catalog(), job.query(), false).eachLegal((build, score) -> {
                    least.merge(pieces(job, build), score, Math::min);
                });
                List<Way> all = new ArrayList<>();
                least.forEach((pieces, least1) -> all.add(new Way(pieces, least1)));
                all.sort(Comparator.comparingLong(Way::score));
                ways.add(all);
            }
            combine(0, new ArrayList<>(), 0, 0);
        }

        private static SortedMap<String, Integer> pieces(PlanJob job, Build build) {
            return JobPlanner.pieces(Rod.measure(job.catalog(), job.query().brief(), build));
        }

        private void combine(int job, List<SortedMap<String, Integer>> taken, int without, long sum) {
            if (job == ways.size()) {
                if (without < unserved || without == unserved && sum < score) {
                    unserved = without;
                    score = sum;
                }
                return;
            }
            long rest = 0;
            for (int later = job + 1; later < ways.size(); later++) {
                rest += ways.get(later).isEmpty()
                        ? 0
                        : Math.min(0, ways.get(later).get(0).score());
            }
            for (Way way : ways.get(job)) {
                boolean hopeless = without == unserved && sum + way.score() + rest >= score || without > unserved;
                if (hopeless) {
                    break;
                }
                taken.add(way.pieces());
                if (fits(taken)) {
                    combine(job + 1, taken, without, sum + way.score());
                }
                taken.remove(job);
            }
            if (without < unserved) {
                taken.add(new TreeMap<>());
                combine(job + 1, taken, without + 1, sum);
                taken.remove(job);
            }
        }

        boolean within(List<PlanOption> options) {
            return fits(options.stream().map(PlanOption::pieces).toList());
        }

        /** By every day, those who can't wait for an order take no more than there is. */
        private boolean fits(List<? extends SortedMap<String, Integer>> taken) {
            for (LocalDate day : new LocalDate[] {DAYS[0], DAYS[1], DAYS[2], LocalDate.MAX}) {
                Map<String, Integer> used = new TreeMap<>();
                for (int job = 0; job < taken.size(); job++) {
                    LocalDate wanted = small.jobs().get(job).query().brief().wantedBy();
                    LocalDate by = wanted == null ? LocalDate.MAX : wanted;
                    if (!by.isAfter(day)) {
                        taken.get(job).forEach((part, count) -> {
                            Integer lead = small.supplies().parts().get(part).leadDays();
                            if (lead == null || Fixtures.TODAY.plusDays(lead).isAfter(by)) {
                                used.merge(part, count, Integer::sum);
                            }
                        });
                    }
                }
                for (Map.Entry<String, Integer> one : used.entrySet()) {
                    if (one.getValue()
                            > small.supplies().parts().get(one.getKey()).here()) {
                        return false;
                    }
                }
            }
            return true;
        }
    }
}
