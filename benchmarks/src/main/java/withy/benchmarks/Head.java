package withy.benchmarks;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;

/**
 * What the figures are of: the page's head.
 *
 * @param machine what they were taken on
 * @param commit state of the sources
 * @param command how it was run
 * @param shops the catalogues
 */
record Head(Machine machine, String commit, String command, List<Shop> shops) {
    private static final String COMMANDS = """
                benchmarks/bin/run                  # everything, about two hours; writes this page and its plots
                benchmarks/bin/run --minutes 25 --cap-quality 5 --cap-proof 60     # the same, shorter; the page says so
                benchmarks/bin/run --only peers,latency,cold,page,front,scale,briefs,features,micro   # some of it, writes nothing
                benchmarks/bin/run --quick          # every peer once and a few optima, judges no time, writes nothing; mvn verify does the same
                benchmarks/bin/run --mechanics      # times the mechanics alone, writes nothing

            """;

    String text(double loadAfter, double seconds) {
        Table table = new Table("run", "");
        table.row("command", "`" + command + "`");
        table.row(
                "machine",
                machine.processor() + ", " + machine.cores() + " cores, " + machine.memory() + ", " + machine.system());
        table.row("Java", machine.java() + ", ParallelGC, heap of 2 GB, half of it for what is new");
        table.row("load before / at the end", machine.loadWords() + " / " + Table.number(loadAfter));
        table.row("commit", commit);
        table.row("date", LocalDate.now(ZoneOffset.UTC) + ", " + Table.number(seconds) + " s in all");
        for (Shop shop : shops) {
            table.row(shop.parts() + " parts", shop.origin());
        }
        return "# Benchmarks\n\n" + COMMANDS
                + "Written by the command in the table; what a person wrote comes last.\n\n"
                + table.text()
                + (machine.busy() || loadAfter > machine.cores()
                        ? "**The machine was busy with other work meanwhile (see its load): all times are longer than on a free one.** Ratios are of this one run.\n\n"
                        : "");
    }
}
