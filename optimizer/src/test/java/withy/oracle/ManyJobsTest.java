package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Part;
import withy.catalog.PartFacts;
import withy.catalog.sample.SampleCatalogs;
import withy.fixture.Changed;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.JobPlanner;
import withy.search.JobPlanner.Plan;
import withy.search.PlanJob;
import withy.search.PlanOption;
import withy.search.Supplies;

/**
 * Thirty jobs that share a shelf of the wide catalogue. Too large to enumerate: what is checked is that nothing is promised twice, that every rod is legal, that the
 * bound lies below the plan and that the plan is never worse than taking the jobs one by one. Prints contention, gap and time of each shop.
 */
@Tag("long")
class ManyJobsTest {
    private static final int JOBS = 30;
    private static final LocalDate[] DAYS = {
        SampleCatalogs.AS_OF.plusDays(7), SampleCatalogs.AS_OF.plusDays(21), SampleCatalogs.AS_OF.plusDays(60)
    };
    private static final Path HOME = Path.of(System.getProperty("withy.home", ".."));

    @TestFactory
    Stream<DynamicTest> thirtyJobsShareAShelf() {
        return LongStream.range(0, 20)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> System.out.println(plan(seed, JOBS))));
    }

    /**
     * Jobs of a seed and what they share.
     *
     * @param jobs the jobs
     * @param supplies what there is of each part
     */
    record Shelf(List<PlanJob> jobs, Supplies supplies) {}

    static Shelf shelf(long seed, int number) throws IOException {
        Random random = new Random(seed * 101 + 11);
        Catalog wide = CatalogReader.read(HOME.resolve("catalog-samples/wide"), SampleCatalogs.AS_OF)
                .catalog();
        assertNotNull(wide);
        List<Brief> briefs = briefs(wide);
        Map<String, PartFacts> facts = new LinkedHashMap<>();
        SortedMap<String, Supplies.Supply> supplies = new TreeMap<>();
        for (Part part : wide.byId().values()) {
            int stock = random.nextInt(10);
            Integer lead = random.nextInt(3) == 0 ? null : Integer.valueOf(5 + random.nextInt(30));
            facts.put(part.id(), Changed.with(part.facts().withStock(stock), "leadDays", lead));
            supplies.put(part.id(), new Supplies.Supply(stock, new TreeMap<>(), lead));
        }
        Catalog catalog = wide.changed(facts, "shelf " + seed);
        List<PlanJob> jobs = new ArrayList<>();
        for (int n = 0; n < number; n++) {
            Brief brief = briefs.get(random.nextInt(briefs.size()));
            brief = Changed.with(brief, "priorities", priorities(random));
            brief = Changed.with(brief, "wantedBy", random.nextInt(5) == 0 ? null : DAYS[random.nextInt(3)]);
            jobs.add(new PlanJob(n + 1, catalog, Query.of(brief, Rulebook.standard()), null));
        }
        return new Shelf(jobs, new Supplies(SampleCatalogs.AS_OF, supplies));
    }

    /** Plans the jobs of a seed and checks the plan; a line that tells how it went. */
    static String plan(long seed, int number) throws IOException {
        Shelf shelf = shelf(seed, number);
        List<PlanJob> jobs = shelf.jobs();
        Supplies shared = shelf.supplies();
        long start = System.nanoTime();
        Plan plan = JobPlanner.plan(jobs, shared, Watch.NONE);
        double seconds = (System.nanoTime() - start) / 1e9;
        check(seed, jobs, shared, plan);
        Set<String> wantedTwice = overdrawn(jobs, shared, plan.alone());
        Long gap = plan.gap();
        return String.format(
                "seed %d: %d jobs, short of %d parts if each had its best; %s, one by one %s; better by %.2f steps; gap %s%s; %d questions, %.1f s",
                seed,
                number,
                wantedTwice.size(),
                plan.cost().unserved() + " without",
                plan.oneByOneCost().unserved() + " without",
                Scoring.steps(plan.oneByOneCost().score() - plan.cost().score()),
                gap == null
                        ? "not known: " + plan.bound().unserved() + " without not ruled out"
                        : String.format("%.2f steps", Scoring.steps(gap)),
                plan.proven() ? " (proven)" : "",
                plan.questions(),
                seconds);
    }

    private static List<Brief> briefs(Catalog catalog) throws IOException {
        List<Brief> briefs = new ArrayList<>();
        try (Stream<Path> folders = Files.list(HOME.resolve("scenarios"))) {
            for (Path folder : folders.filter(Files::isDirectory).sorted().toList()) {
                Brief brief = BriefReader.read(
                                folder.resolve("brief.json"), new BriefContext(catalog.rates(), catalog.asOf()))
                        .orThrow();
                boolean known = Stream.concat(brief.insisted().stream(), brief.refused().stream())
                        .allMatch(wish -> catalog.find(wish.partId()) != null);
                if (known && brief.owned().isEmpty()) {
                    briefs.add(brief);
                }
            }
        }
        return briefs;
    }

    private static Map<Objective, Double> priorities(Random random) {
        Map<Objective, Double> priorities = new EnumMap<>(Objective.class);
        for (Objective objective : Objective.values()) {
            priorities.put(objective, 1.0 + random.nextInt(4));
        }
        return priorities;
    }

    private static void check(long seed, List<PlanJob> jobs, Supplies supplies, Plan plan) {
        String what = "seed " + seed + ", " + plan.cost() + ", one by one " + plan.oneByOneCost();
        assertEquals(Set.of(), overdrawn(jobs, supplies, plan.options()), what);
        assertEquals(Set.of(), overdrawn(jobs, supplies, plan.oneByOne()), what + ", one by one");
        assertTrue(plan.cost().compareTo(plan.oneByOneCost()) <= 0, what);
        assertTrue(plan.bound().compareTo(plan.cost()) <= 0, what);
        assertTrue(plan.gap() == null || plan.gap() >= 0, what);
        for (int job = 0; job < jobs.size(); job++) {
            PlanOption option = plan.options().get(job);
            if (option.build() != null) {
                PlanJob of = jobs.get(job);
                Rod rod = Rod.measure(of.catalog(), of.query().brief(), option.build());
                assertTrue(Judge.legal(rod, of.query().rulebook()), what + ", job " + of.id());
                assertEquals(JobPlanner.pieces(rod), option.pieces(), what);
            }
        }
    }

    /** Parts of which the jobs that can't wait for an order take more by some day than lie here. */
    private static Set<String> overdrawn(List<PlanJob> jobs, Supplies supplies, List<PlanOption> options) {
        Set<String> over = new TreeSet<>();
        for (LocalDate day : new LocalDate[] {DAYS[0], DAYS[1], DAYS[2], LocalDate.MAX}) {
            Map<String, Integer> used = new TreeMap<>();
            for (int job = 0; job < jobs.size(); job++) {
                LocalDate wanted = jobs.get(job).query().brief().wantedBy();
                LocalDate by = wanted == null ? LocalDate.MAX : wanted;
                if (!by.isAfter(day)) {
                    options.get(job).pieces().forEach((part, count) -> {
                        Integer lead = supplies.parts().get(part).leadDays();
                        if (lead == null || supplies.today().plusDays(lead).isAfter(by)) {
                            used.merge(part, count, Integer::sum);
                        }
                    });
                }
            }
            used.forEach((part, count) -> {
                if (count > supplies.parts().get(part).here()) {
                    over.add(part);
                }
            });
        }
        return over;
    }
}
