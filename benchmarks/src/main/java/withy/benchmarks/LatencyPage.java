package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;

/** How long the product's answers take, warm and cold. */
record LatencyPage(List<Row> rows) {
    private static final String MISSED = "**missed**";

    LatencyPage {
        rows = List.copyOf(rows);
    }

    String text() {
        StringBuilder text = new StringBuilder(
                "## How long answers take, warm\n\n![share of questions answered over time](latency.svg)\n\n");
        text.append(
                        "One process, an uncounted pass of rank 1 over all scenarios first, a new search each run, catalogue in memory; each job in turn over all ")
                .append(
                        "scenarios while its share of the time lasts (one whose bar is a 95th percentile: while any time does), up to "
                                + Warm.MOST_RUNS
                                + " runs each. A solve is stopped after " + Cap.WARM_SECONDS
                                + " s and then told as \"more than\". CPU is the processor time of the whole process, all threads together. Percentiles by nearest rank over all runs of all scenarios. Budget binding: ")
                .append(
                        String.format(Locale.ROOT, "%.0f", Scenario.BINDING_SHARE * 100)
                                + " % of what the scenario's best build costs. Part out: any part of the best build (seed "
                                + Again.SEED
                                + " + run). Why not a part of each kind: with each run a part of the next kind the best build has, the kind of the longest run named. A scenario meets its bar where its median (part out and a part of each kind: its 95th percentile) is within it, no run was stopped and all are proven. The largest catalogue is asked by fewer scenarios, and not everything.\n\n");
        summary(text);
        text.append("\n## Each scenario\n\n");
        for (List<Row> table : tables().values()) {
            table(text, table);
        }
        return text.toString();
    }

    private Map<String, List<Row>> tables() {
        Map<String, List<Row>> tables = new TreeMap<>();
        for (Row row : rows) {
            String key = String.format(
                    Locale.ROOT, "%09d %02d", row.shop().parts(), row.job().ordinal());
            tables.computeIfAbsent(key, k -> new ArrayList<>()).add(row);
        }
        return tables;
    }

    private void summary(StringBuilder text) {
        Table table = new Table(
                "job",
                "parts",
                "bar ms",
                "runs",
                "median ms",
                "95th ms",
                "99th ms",
                "longest ms",
                "CPU median ms",
                "scenarios proven",
                "scenarios within the bar");
        for (List<Row> all : tables().values()) {
            List<Double> ms = new ArrayList<>();
            List<Double> cpu = new ArrayList<>();
            all.forEach(row -> row.samples().forEach(sample -> {
                ms.add(sample.ms());
                cpu.add(sample.cpuMs());
            }));
            Row first = all.get(0);
            long met = all.stream().filter(Row::met).count();
            String within = met + " of " + all.size() + (met < all.size() ? ", " + MISSED : "");
            boolean capped = all.stream().anyMatch(Row::capped);
            Spread spread = ms.isEmpty() ? null : Spread.of(ms);
            table.row(
                    first.job().words(),
                    first.shop().parts() + "",
                    bar(first),
                    ms.size() + "",
                    spread == null ? "not run" : Table.number(spread.medianMs()),
                    spread == null ? "" : Table.number(spread.p95Ms()),
                    spread == null ? "" : Table.number(spread.p99Ms()),
                    spread == null ? "" : capped ? moreThan(Cap.WARM_SECONDS) : Table.number(spread.mostMs()),
                    cpu.isEmpty() ? "" : Table.number(Spread.of(cpu).medianMs()),
                    all.stream().filter(Row::proven).count() + " of " + all.size(),
                    first.job().targetMs(first.shop()) == Job.NO_BAR ? "no bar" : within);
        }
        text.append(table.text());
    }

    private static String bar(Cold.Line way) {
        return way.targetMs() == Job.NO_BAR ? "no bar" : way.targetMs() + "";
    }

    private static String verdict(Cold.Line way, double medianMs) {
        if (way.targetMs() == Job.NO_BAR) {
            return "";
        }
        return !way.capped() && medianMs <= way.targetMs() ? "met" : MISSED;
    }

    /** The command as a whole process. */
    static String coldText(List<Cold.Line> cold, List<Cold.Line> parts) {
        StringBuilder text = new StringBuilder("## Cold: one command as a whole process\n\n`propose scenarios/"
                + Cold.SCENARIO + "/brief.json --catalog catalog-samples/wide`, " + Cold.RUNS
                + " runs each after one that is not counted.\n\n");
        Table table = new Table("started as", "bar ms", "median ms", "shortest ms", "longest ms", "");
        for (Cold.Line way : cold) {
            if (way.ms().isEmpty()) {
                table.row(way.way(), bar(way), "not run", "", "", "no class archive was made");
            } else {
                Spread spread = Spread.of(way.ms());
                table.row(
                        way.way(),
                        bar(way),
                        way.capped() ? moreThan(Cap.SECONDS) : Table.number(spread.medianMs()),
                        Table.number(spread.leastMs()),
                        way.capped() ? moreThan(Cap.SECONDS) : Table.number(spread.mostMs()),
                        verdict(way, spread.medianMs()));
            }
        }
        text.append(table.text()).append("What it is made of, with the class archive:\n\n");
        Table made = new Table("command", "median ms", "shortest ms", "longest ms");
        for (Cold.Line part : parts) {
            Spread spread = Spread.of(part.ms());
            made.row(
                    part.way(),
                    Table.number(spread.medianMs()),
                    Table.number(spread.leastMs()),
                    Table.number(spread.mostMs()));
        }
        return text.append(made.text()).toString();
    }

    private static void table(StringBuilder text, List<Row> rows) {
        Row first = rows.get(0);
        text.append("### ")
                .append(first.job().words())
                .append(", ")
                .append(first.shop().parts())
                .append(" parts, bar ")
                .append(bar(first))
                .append("\n\n");
        Table table = new Table(
                "scenario",
                "runs",
                "median ms",
                "CPU median ms",
                "95th ms",
                "longest ms",
                "layouts opened",
                "builds",
                "proven",
                "bar");
        for (Row row : rows) {
            if (!row.ran()) {
                table.row(row.scenario(), "0", "not run", "", "", "", "", "", "", MISSED);
                continue;
            }
            Spread spread = row.spread();
            String slowest = row.slowest();
            table.row(
                    row.scenario() + (slowest.isEmpty() ? "" : ", longest: " + slowest),
                    row.samples().size() + "",
                    row.capped() ? moreThan(Cap.WARM_SECONDS) : Table.number(spread.medianMs()),
                    Table.number(
                            Spread.of(row.samples().stream().map(Sample::cpuMs).toList())
                                    .medianMs()),
                    Table.number(spread.p95Ms()),
                    row.capped() ? moreThan(Cap.WARM_SECONDS) : Table.number(spread.mostMs()),
                    row.opened() == Sample.NOT_COUNTED ? "" : row.opened() + "",
                    row.builds() + "",
                    row.proven() ? (row.builds() == 0 ? "yes, none is legal" : "yes") : "no",
                    row.met() ? "met" : MISSED);
        }
        text.append(table.text());
    }

    private static String bar(Row row) {
        int bar = row.job().targetMs(row.shop());
        return bar == Job.NO_BAR ? "none" : bar + (row.job().barOfTail() ? " (95th)" : "");
    }

    private static String moreThan(int seconds) {
        return "more than " + seconds * 1000;
    }
}
