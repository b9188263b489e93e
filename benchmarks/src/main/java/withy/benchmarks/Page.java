package withy.benchmarks;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/**
 * The page of figures, as Markdown.
 *
 * @param machine what they were taken on
 * @param commit state of the sources
 * @param loadAfter load in the last minute of the run
 * @param seconds how long the run took, s
 * @param rows warm figures
 * @param cold cold figures
 */
record Page(Machine machine, String commit, double loadAfter, double seconds, List<Row> rows, List<Cold.Line> cold) {
    private static final String MISSED = "**missed**";

    Page {
        rows = List.copyOf(rows);
        cold = List.copyOf(cold);
    }

    String text() {
        StringBuilder text = new StringBuilder();
        head(text);
        summary(text);
        coldTable(text);
        for (Map.Entry<String, List<Row>> table : tables().entrySet()) {
            table(text, table.getValue());
        }
        return text.toString();
    }

    private void head(StringBuilder text) {
        text.append(String.join(
                "\n",
                "# Benchmarks",
                "",
                "Written by `benchmarks/bin/run` in " + number(seconds) + " s; run it again to measure this machine.",
                "`benchmarks/bin/run --quick` checks a few optima, judges no time and writes nothing; `mvn verify` does the same.",
                "",
                "| | |",
                "| --- | --- |",
                "| machine | " + machine.processor() + ", " + machine.cores() + " cores, " + machine.system() + " |",
                "| Java | " + machine.java() + ", SerialGC, heap up to 2 GB |",
                "| load before / at the end | " + machine.loadWords() + " / " + number(loadAfter) + " |",
                "| commit | " + commit + " |",
                "| date | " + LocalDate.now(ZoneOffset.UTC) + " |",
                "| catalogues | " + origins() + " |",
                "",
                machine.busy()
                        ? "**The machine was busy with other work meanwhile (see its load): all times are longer than on a free one.**"
                        : "Nothing else of note ran on the machine.",
                "",
                "Warm: one process, an uncounted pass of rank 1 over all scenarios first, a fresh search each run, catalogue in memory,",
                "up to " + Warm.MOST_RUNS + " runs a row (at least " + Warm.FEWEST_RUNS
                        + " up to 5 s a row). A solve is stopped after " + Cap.SECONDS
                        + " s and then told as \"more than\".",
                "Budget binding: the budget is "
                        + String.format(Locale.ROOT, "%.0f", Scenario.BINDING_SHARE * 100)
                        + " % of what the scenario's best build costs. A row misses its bar where the median is above it, a run was",
                "stopped, or an answer is not proven.",
                "",
                ""));
    }

    private String origins() {
        return String.join(
                "; ",
                rows.stream()
                        .map(row -> row.shop().parts() + " parts: " + row.shop().origin())
                        .distinct()
                        .toList());
    }

    private Map<String, List<Row>> tables() {
        Map<String, List<Row>> tables = new TreeMap<>();
        for (Row row : rows) {
            String key = String.format(
                    Locale.ROOT, "%09d %d", row.shop().parts(), row.job().ordinal());
            tables.computeIfAbsent(key, k -> new ArrayList<>()).add(row);
        }
        return tables;
    }

    private void summary(StringBuilder text) {
        text.append("## In short\n\n")
                .append(
                        "| parts | job | bar ms | median of the scenarios ms | slowest scenario ms | proven | bar met |\n")
                .append("| ---: | --- | ---: | ---: | ---: | ---: | --- |\n");
        for (List<Row> all : tables().values()) {
            List<Row> ran = all.stream().filter(Row::ran).toList();
            List<Double> medians =
                    ran.stream().map(row -> row.spread().medianMs()).toList();
            boolean capped = ran.stream().anyMatch(Row::capped);
            long met = ran.stream().filter(Row::met).count();
            Row first = all.get(0);
            String slowest =
                    medians.isEmpty() ? "not run" : number(Spread.of(medians).mostMs());
            text.append(line(
                    first.shop().parts() + "",
                    first.job().words(),
                    first.job().targetMs(first.shop()) + "",
                    medians.isEmpty() ? "not run" : number(Spread.of(medians).medianMs()),
                    capped ? moreThanCap() : slowest,
                    ran.stream().filter(Row::proven).count() + " of " + all.size(),
                    met + " of " + all.size() + (met < all.size() ? ", " + MISSED : "")));
        }
    }

    private void coldTable(StringBuilder text) {
        text.append("\n## Cold: one command as a whole process\n\n`propose scenarios/" + Cold.SCENARIO
                        + "/brief.json --catalog catalog-samples/wide`, " + Cold.RUNS
                        + " runs each after one that is not counted.\n\n")
                .append("| started as | bar ms | median ms | min ms | max ms | |\n")
                .append("| --- | ---: | ---: | ---: | ---: | --- |\n");
        for (Cold.Line way : cold) {
            if (way.ms().isEmpty()) {
                text.append(line(way.way(), way.targetMs() + "", "not run", "", "", "no class archive was made"));
            } else {
                Spread spread = Spread.of(way.ms());
                text.append(line(
                        way.way(),
                        way.targetMs() + "",
                        way.capped() ? moreThanCap() : number(spread.medianMs()),
                        number(spread.leastMs()),
                        way.capped() ? moreThanCap() : number(spread.mostMs()),
                        !way.capped() && spread.medianMs() <= way.targetMs() ? "met" : MISSED));
            }
        }
    }

    private static void table(StringBuilder text, List<Row> rows) {
        Row first = rows.get(0);
        int target = first.job().targetMs(first.shop());
        text.append(String.format(
                        Locale.ROOT,
                        "%n## %d parts, %s (bar %d ms)%n%n",
                        first.shop().parts(),
                        first.job().words(),
                        target))
                .append("| scenario | runs | median ms | min ms | max ms | layouts opened | builds | proven | |\n")
                .append("| --- | ---: | ---: | ---: | ---: | ---: | ---: | --- | --- |\n");
        for (Row row : rows) {
            text.append(row.ran() ? ranLine(row) : line(row.scenario(), "0", "not run", "", "", "", "", "", MISSED));
        }
    }

    private static String ranLine(Row row) {
        Spread spread = row.spread();
        return line(
                row.scenario(),
                row.samples().size() + "",
                row.capped() ? moreThanCap() : number(spread.medianMs()),
                number(spread.leastMs()),
                row.capped() ? moreThanCap() : number(spread.mostMs()),
                row.opened() == Sample.NOT_COUNTED ? "not counted" : row.opened() + "",
                row.builds() + "",
                row.proven() ? (row.builds() == 0 ? "yes, none is legal" : "yes") : "no",
                row.met() ? "met" : MISSED);
    }

    private static String moreThanCap() {
        return "more than " + Cap.SECONDS * 1000;
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, value < 100 ? "%.1f" : "%.0f", value);
    }

    private static String line(String... cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }
}
