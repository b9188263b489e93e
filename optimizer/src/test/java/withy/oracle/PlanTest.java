package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.PartKind;
import withy.fixture.Changed;
import withy.fixture.Fixtures;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
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
    private static final JobPlanner.Effort EFFORT = JobPlanner.Effort.STANDARD;
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

    @TestFactory
    Stream<DynamicTest> oneThreadAndTwoGiveTheSamePlan() {
        return LongStream.range(0, 6)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    Small small = Small.of(seed);
                    Plan one = JobPlanner.plan(small.jobs(), small.supplies(), Watch.NONE, EFFORT, 1);
                    assertEquals(one, JobPlanner.plan(small.jobs(), small.supplies(), Watch.NONE, EFFORT, 2));
                }));
    }

    @Test
    void onceInterruptedNothingIsAskedAndThePlanKeepsTheShelf() {
        Small small = Small.of(1);
        AtomicBoolean stopped = new AtomicBoolean();
        Watch first = new Watch(stopped::get, (build, objectives, score) -> stopped.set(true));
        Plan plan = JobPlanner.plan(small.jobs(), small.supplies(), first, EFFORT, 1);
        assertEquals(1, plan.questions());
        assertTrue(new Best(small).within(plan.options()));
        assertEquals(JOBS, plan.options().size());
        stopped.set(true);
        Plan none = JobPlanner.plan(small.jobs(), small.supplies(), first, EFFORT, 2);
        assertEquals(0, none.questions());
        assertNull(none.gap(), "nothing is known of how much better a plan could be");
        Plan whole = JobPlanner.plan(small.jobs(), small.supplies(), Watch.NONE, EFFORT, 2);
        assertTrue(whole.proven());
        assertEquals(0L, whole.gap());
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
        private final List<Row> rows = new ArrayList<>();
        private final int[] used;
        private final List<List<Way>> ways = new ArrayList<>();
        private int unserved = Integer.MAX_VALUE;
        private long score = Long.MAX_VALUE;

        /** By that day, those who can't wait for an order of the part take no more than there is. */
        private record Row(String part, LocalDate day, int there) {}

        /** Best score of all builds that take the same of each row. */
        private record Way(int[] takes, long score) {}

        /** A build with what it takes from the shelf. */
        private record Rods(SortedMap<String, Integer> pieces, ObjectiveVector vector) {}

        Best(Small small) {
            this.small = small;
            List<Rods> rods = rods(small.jobs().get(0));
            Map<String, Integer> most = new TreeMap<>();
            rods.forEach(rod -> rod.pieces().forEach((part, count) -> most.merge(part, count, Math::max)));
            small.supplies().parts().forEach((part, supply) -> {
                if (most.getOrDefault(part, 0) * JOBS > supply.here()) {
                    for (LocalDate day : new LocalDate[] {DAYS[0], DAYS[1], DAYS[2], LocalDate.MAX}) {
                        rows.add(new Row(part, day, supply.here()));
                    }
                }
            });
            used = new int[rows.size()];
            for (int job = 0; job < JOBS; job++) {
                ways.add(ways(job, rods));
            }
            combine(0, 0, 0);
        }

        /** Every rod that can be built in this shop by a day far off: the jobs differ in priorities and dates alone. */
        private static List<Rods> rods(PlanJob job) {
            Brief brief = Changed.with(job.query().brief(), "wantedBy", null);
            Query query = Query.of(brief, job.query().rulebook());
            List<Rods> rods = new ArrayList<>();
            for (Enumeration.Legal legal : new Enumeration(job.catalog(), query, false).legal()) {
                Rod rod = Rod.measure(job.catalog(), brief, legal.build());
                rods.add(new Rods(JobPlanner.pieces(rod), legal.vector()));
            }
            return rods;
        }

        private List<Way> ways(int job, List<Rods> rods) {
            PlanJob of = small.jobs().get(job);
            Brief brief = of.query().brief();
            Scoring scoring = Scoring.of(brief, of.catalog().rates(), of.query().priorities());
            Map<List<Integer>, Long> least = new LinkedHashMap<>();
            for (Rods rod : rods) {
                least.merge(takes(job, rod.pieces()), scoring.score(rod.vector()), Math::min);
            }
            List<Way> all = new ArrayList<>();
            least.forEach((takes, lowest) ->
                    all.add(new Way(takes.stream().mapToInt(Integer::intValue).toArray(), lowest)));
            all.sort(Comparator.comparingLong(Way::score));
            return all;
        }

        private List<Integer> takes(int job, SortedMap<String, Integer> pieces) {
            LocalDate wanted = small.jobs().get(job).query().brief().wantedBy();
            LocalDate by = wanted == null ? LocalDate.MAX : wanted;
            List<Integer> takes = new ArrayList<>();
            for (Row row : rows) {
                Integer lead = small.supplies().parts().get(row.part()).leadDays();
                boolean waits = lead != null && !Fixtures.TODAY.plusDays(lead).isAfter(by);
                takes.add(waits || by.isAfter(row.day()) ? 0 : pieces.getOrDefault(row.part(), 0));
            }
            return takes;
        }

        /** Goes on from a job when those before it are settled; leaves where even the best of all that are left would be no better. */
        private void combine(int job, int without, long sum) {
            if (job == ways.size()) {
                if (without < unserved || without == unserved && sum < score) {
                    unserved = without;
                    score = sum;
                }
                return;
            }
            long rest = 0;
            for (List<Way> later : ways.subList(job + 1, ways.size())) {
                rest += later.isEmpty() ? 0 : later.get(0).score();
            }
            for (Way way : ways.get(job)) {
                boolean hopeless = without == unserved && sum + way.score() + rest >= score || without > unserved;
                if (hopeless) {
                    break;
                }
                if (take(way.takes(), 1)) {
                    combine(job + 1, without, sum + way.score());
                }
                take(way.takes(), -1);
            }
            if (without < unserved) {
                combine(job + 1, without + 1, sum);
            }
        }

        /** Takes the pieces (or gives them back): true where there are as many. */
        private boolean take(int[] takes, int times) {
            boolean fits = true;
            for (int row = 0; row < takes.length; row++) {
                used[row] += times * takes[row];
                fits &= used[row] <= rows.get(row).there();
            }
            return fits;
        }

        boolean within(List<PlanOption> options) {
            boolean fits = true;
            for (int job = 0; job < options.size(); job++) {
                List<Integer> takes = takes(job, options.get(job).pieces());
                fits &= take(takes.stream().mapToInt(Integer::intValue).toArray(), 1);
            }
            Arrays.fill(used, 0);
            return fits;
        }
    }
}
