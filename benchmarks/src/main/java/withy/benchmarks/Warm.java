package withy.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.search.Search;

/** Measures the jobs on every scenario in one warm process, one after the other. */
final class Warm {
    /** Most runs of one row. */
    static final int MOST_RUNS = 7;

    /** Fewest runs of a row whose runs are long. */
    static final int FEWEST_RUNS = 3;

    /** A row stops at the fewest runs past this, ms; past {@link #LONG_ROW_MS} at once. */
    private static final double ROW_MS = 1_000;

    private static final double LONG_ROW_MS = 5_000;

    private final Path home;
    private final PrintStream talk;
    private final long endNanos;

    /**
     * @param home the project's folder
     * @param talk where progress is told
     * @param endNanos from this {@link System#nanoTime} on, rows are left out and said to be
     */
    Warm(Path home, PrintStream talk, long endNanos) {
        this.home = home;
        this.talk = talk;
        this.endNanos = endNanos;
    }

    List<Row> measure(Shop shop) throws IOException {
        List<Scenario> scenarios = Scenario.all(home, shop.catalog());
        warmUp(shop, scenarios);
        List<Row> rows = new ArrayList<>();
        for (Job job : Job.values()) {
            for (Scenario scenario : scenarios) {
                Query query = job == Job.BINDING ? binding(shop, scenario) : scenario.query();
                if (query != null) {
                    Row row = new Row(shop, job, scenario.name(), runs(shop, job, query));
                    rows.add(row);
                    tell(row);
                }
            }
        }
        return rows;
    }

    /** One uncounted pass, so that the machine code of the hot paths is there. */
    private void warmUp(Shop shop, List<Scenario> scenarios) {
        for (Scenario scenario : scenarios) {
            if (!over()) {
                Job.RANK_1.once(shop, scenario.query());
            }
        }
    }

    /** Null where the scenario has no legal build, and so no best price that a budget could forbid. */
    private @Nullable Query binding(Shop shop, Scenario scenario) {
        if (over()) {
            return scenario.query();
        }
        Solution free = new Search(shop.catalog()).solve(scenario.query(), new Cap(Cap.SECONDS).watch());
        ObjectiveVector best = free.objectives();
        return best == null ? null : scenario.binding(shop.catalog(), best).query();
    }

    private List<Sample> runs(Shop shop, Job job, Query query) {
        List<Sample> samples = new ArrayList<>();
        double spentMs = 0;
        while (samples.size() < MOST_RUNS && !over()) {
            Sample sample = job.once(shop, query);
            samples.add(sample);
            spentMs += sample.ms();
            boolean enough = samples.size() >= FEWEST_RUNS && spentMs > ROW_MS;
            if (enough || spentMs > LONG_ROW_MS || sample.capped()) {
                break;
            }
        }
        return samples;
    }

    private boolean over() {
        return System.nanoTime() - endNanos >= 0;
    }

    private void tell(Row row) {
        String time =
                row.ran() ? String.format(Locale.ROOT, "%.1f ms", row.spread().medianMs()) : "not run";
        talk.printf(
                Locale.ROOT,
                "%,6d parts  %-24s %-32s %s%n",
                row.shop().parts(),
                row.job().words(),
                row.scenario(),
                time);
    }
}
