package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;

/**
 * Rank 1 of random briefs on one catalogue.
 *
 * @param wide the catalogue
 * @param scenarios what the briefs are made from
 * @param end from this {@link System#nanoTime} on, briefs are left out and said to be
 */
record BriefsPage(Shop wide, List<Scenario> scenarios, long end) {
    private static final int BRIEFS = 200;

    BriefsPage {
        scenarios = List.copyOf(scenarios);
    }

    /** Asks, and writes the section. */
    String text() {
        List<Sample> samples = new ArrayList<>();
        for (Scenario brief : RandomBriefs.of(scenarios, BRIEFS)) {
            if (System.nanoTime() < end) {
                samples.add(Job.best(wide, brief.query()));
            }
        }
        Table table = new Table(
                "briefs",
                "asked",
                "with a legal build",
                "proven",
                "median ms",
                "95th ms",
                "99th ms",
                "longest ms",
                "CPU median ms");
        if (!samples.isEmpty()) {
            Spread spread = Spread.of(samples.stream().map(Sample::ms).toList());
            boolean capped = samples.stream().anyMatch(Sample::capped);
            table.row(
                    "random, seed " + RandomBriefs.SEED,
                    samples.size() + " of " + BRIEFS,
                    samples.stream().filter(one -> one.builds() > 0).count() + "",
                    samples.stream().filter(Sample::proven).count() + "",
                    Table.number(spread.medianMs()),
                    Table.number(spread.p95Ms()),
                    Table.number(spread.p99Ms()),
                    capped ? "more than " + Cap.WARM_SECONDS * 1000 : Table.number(spread.mostMs()),
                    Table.number(Spread.of(samples.stream().map(Sample::cpuMs).toList())
                            .medianMs()));
        }
        return "## Random briefs on " + wide.parts()
                + " parts\n\nScenarios in turn with other lures, lengths, reaches, classes, priorities, handles and budgets; rank 1, stopped after "
                + Cap.WARM_SECONDS + " s. Not asked = the section's time was up.\n\n" + table.text();
    }
}
