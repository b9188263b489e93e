package withy.benchmarks;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Station;
import withy.search.ChangeLadder.Rung;
import withy.search.ChangeLadder.Situation;
import withy.search.JobPlanner;
import withy.search.PlanJob;
import withy.search.Search;
import withy.search.Supplies;

/** Choosing again when a part is out, and choosing for several jobs at once. The builds there were are known before the clock starts. */
final class Again {
    /** Seed of which part is out. */
    static final long SEED = 20_261_125L;

    private Again() {}

    /** A way to choose again with so many changes at most. */
    interface Ladder {
        List<Rung> climb(Situation situation, int changes, Watch watch);
    }

    /** A part of the best build is out; nothing is glued. Null where there is no best build to begin with. */
    static @Nullable Sample once(Shop shop, Query query, int run, Ladder ladder, int changes) {
        Cap before = new Cap(Cap.WARM_SECONDS);
        Build build = new Search(shop.catalog()).solve(query, before.watch()).build();
        if (build == null) {
            return null;
        }
        String lost = lost(query, build, run);
        List<Part> rest = new ArrayList<>(shop.catalog().byId().values());
        rest.removeIf(part -> part.id().equals(lost));
        Catalog without = new Catalog(
                shop.catalog().rates(), shop.catalog().asOf(), shop.catalog().hash() + " without " + lost, rest);
        Cap cap = new Cap(Cap.WARM_SECONDS);
        double cpu = Cpu.ms();
        long start = System.nanoTime();
        List<Rung> rungs =
                ladder.climb(new Situation(without, query, build, Set.of(), Set.of(lost)), changes, cap.watch());
        double ms = Job.millisSince(start);
        boolean proven = rungs.stream().allMatch(Rung::proven);
        int found = (int) rungs.stream().filter(rung -> rung.build() != null).count();
        return new Sample(ms, Cpu.ms() - cpu, Sample.NOT_COUNTED, found, proven, cap.reached());
    }

    /** Any part but what the shop decides and what the customer brings. */
    private static String lost(Query query, Build build, int run) {
        Set<String> ids = new TreeSet<>(Set.of(build.layout().blankId()));
        build.choices().forEach((station, choice) -> {
            if (!station.equals(Station.FINISH) && !station.equals(Station.ADHESIVE)) {
                ids.add(choice.partId());
            }
        });
        ids.removeAll(query.brief().owned());
        List<String> any = new ArrayList<>(ids);
        return any.get(new Random(SEED + run).nextInt(any.size()));
    }

    /** All these jobs from one shelf. */
    static Sample plan(Shop shop, List<Query> queries) {
        Catalog catalog = shop.catalog();
        SortedMap<String, Supplies.Supply> parts = new TreeMap<>();
        for (Part part : catalog.byId().values()) {
            SortedMap<LocalDate, Integer> nothingDue = new TreeMap<>();
            parts.put(
                    part.id(),
                    new Supplies.Supply(
                            part.facts().stock(), nothingDue, part.facts().leadDays()));
        }
        List<PlanJob> jobs = new ArrayList<>();
        for (Query query : queries) {
            jobs.add(new PlanJob(jobs.size() + 1, catalog, query, null));
        }
        Cap cap = new Cap(Cap.WARM_SECONDS);
        double cpu = Cpu.ms();
        long start = System.nanoTime();
        JobPlanner.Plan plan = JobPlanner.plan(jobs, new Supplies(catalog.asOf(), parts), cap.watch());
        double ms = Job.millisSince(start);
        return new Sample(ms, Cpu.ms() - cpu, Sample.NOT_COUNTED, plan.options().size(), plan.proven(), cap.reached());
    }
}
