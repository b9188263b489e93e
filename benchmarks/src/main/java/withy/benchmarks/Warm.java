package withy.benchmarks;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.search.Search;

/**
 * Measures the jobs on every scenario in one warm process: each job once over all scenarios, then again while its share of the time lasts, or where its bar
 * is one of a 95th percentile while any time does.
 */
final class Warm {
    /** Most runs of one row. */
    static final int MOST_RUNS = 20;

    /** Jobs of a plan. */
    private static final int PLANNED = 10;

    /** Most of the time that goes into warming up. */
    private static final double WARM_UP_SHARE = 0.15;

    private final PrintStream talk;
    private final long endNanos;

    /**
     * @param talk where progress is told
     * @param endNanos from this {@link System#nanoTime} on, rows are left out and said to be
     */
    Warm(PrintStream talk, long endNanos) {
        this.talk = talk;
        this.endNanos = endNanos;
    }

    List<Row> measure(Shop shop, List<Job> jobs, List<Scenario> scenarios) {
        long start = System.nanoTime();
        warmUp(shop, scenarios, start + Math.round((endNanos - start) * WARM_UP_SHARE));
        List<Row> rows = new ArrayList<>();
        int left = jobs.size();
        for (Job job : jobs) {
            long now = System.nanoTime();
            long share = now + Math.max(0, endNanos - now) / left--;
            // of fewer runs the 95th percentile is the longest
            long end = job.barOfTail() ? endNanos : share;
            List<Row> ofJob = rows(shop, job, scenarios, end);
            ofJob.forEach(this::tell);
            rows.addAll(ofJob);
        }
        return rows;
    }

    private List<Row> rows(Shop shop, Job job, List<Scenario> scenarios, long end) {
        Map<String, IntFunction<@Nullable Sample>> runs = new LinkedHashMap<>();
        if (job.together()) {
            List<Query> queries =
                    scenarios.stream().limit(PLANNED).map(Scenario::query).toList();
            runs.put("the first " + PLANNED + " scenarios", run -> Again.plan(shop, queries));
        } else {
            for (Scenario scenario : scenarios) {
                Query query = job == Job.BINDING ? binding(shop, scenario, end) : scenario.query();
                if (query != null) {
                    runs.put(scenario.name(), run -> job.once(shop, query, run));
                }
            }
        }
        Map<String, List<Sample>> samples = new LinkedHashMap<>();
        runs.keySet().forEach(name -> samples.put(name, new ArrayList<>()));
        for (int run = 0; run < MOST_RUNS; run++) {
            for (Map.Entry<String, IntFunction<@Nullable Sample>> one : runs.entrySet()) {
                List<Sample> sofar = samples.get(one.getKey());
                if (sofar != null && sofar.stream().noneMatch(Sample::capped) && System.nanoTime() - end < 0) {
                    Sample sample = one.getValue().apply(run);
                    if (sample == null) {
                        samples.remove(one.getKey());
                    } else {
                        sofar.add(sample);
                    }
                }
            }
        }
        List<Row> rows = new ArrayList<>();
        samples.forEach((name, of) -> rows.add(new Row(shop, job, name, of)));
        return rows;
    }

    /** One uncounted pass, so that the machine code of the hot paths is there. */
    private static void warmUp(Shop shop, List<Scenario> scenarios, long end) {
        for (Scenario scenario : scenarios) {
            if (System.nanoTime() - end < 0) {
                Job.RANK_1.once(shop, scenario.query(), 0);
            }
        }
    }

    /** Null where the scenario has no legal build, and so no best price that a budget could forbid. */
    private static @Nullable Query binding(Shop shop, Scenario scenario, long end) {
        if (System.nanoTime() - end >= 0) {
            return scenario.query();
        }
        Solution free = new Search(shop.catalog()).solve(scenario.query(), new Cap(Cap.WARM_SECONDS).watch());
        ObjectiveVector best = free.objectives();
        return best == null ? null : scenario.binding(shop.catalog(), best).query();
    }

    private void tell(Row row) {
        String time = row.ran()
                ? String.format(
                        Locale.ROOT,
                        "%.1f ms, %d runs%s",
                        row.spread().medianMs(),
                        row.samples().size(),
                        row.proven() ? "" : ", not proven")
                : "not run";
        talk.printf(
                Locale.ROOT,
                "%,6d parts  %-28s %-32s %s%n",
                row.shop().parts(),
                row.job().words(),
                row.scenario(),
                time);
    }
}
