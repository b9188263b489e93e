package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import withy.benchmarks.Field.Heat;
import withy.objectives.Scoring;

/** The drawings of the page. */
final class Plots {
    private static final double FIRST_MS = 10;

    /** Points a decade of time. */
    private static final int FINE = 12;

    private Plots() {}

    /** Median gap over time, for each runner from when it had a legal build in half of the scenarios. */
    static Plot quality(List<Heat> heats) {
        Plot plot = new Plot(
                "Median gap over " + heats.size() + " scenarios, curated catalogue",
                "time, ms",
                "steps above the proven best",
                false);
        int lanes = heats.isEmpty() ? 0 : heats.get(0).lanes().size();
        for (int i = 0; i < lanes; i++) {
            List<Double> xs = new ArrayList<>();
            List<Double> ys = new ArrayList<>();
            double most = heats.get(0).lanes().get(i).capSeconds() * 1000;
            for (double ms = FIRST_MS; ms <= most * 1.0001; ms *= Math.pow(10, 1.0 / FINE)) {
                List<Double> gaps = new ArrayList<>();
                for (Heat heat : heats) {
                    Long score = heat.lanes().get(i).scoreAt(ms);
                    if (score != null) {
                        gaps.add(Scoring.steps(score - heat.best().score()));
                    }
                }
                if (gaps.size() * 2 >= heats.size() && !gaps.isEmpty()) {
                    xs.add(ms);
                    ys.add(Spread.of(gaps).medianMs());
                }
            }
            plot.line(heats.get(0).lanes().get(i).name(), xs, ys);
        }
        return plot;
    }

    /** Share of runs answered by a time, a line a job. */
    static Plot latency(List<Row> rows) {
        String parts = rows.isEmpty() ? "" : ", " + rows.get(0).shop().parts() + " parts";
        Plot plot = new Plot("Answers given by a time" + parts, "time, ms", "share of runs, %", false);
        for (Job job : Job.values()) {
            List<Double> ms = rows.stream()
                    .filter(row -> row.job() == job)
                    .flatMap(row -> row.samples().stream())
                    .map(sample -> Math.max(0.1, sample.ms()))
                    .sorted()
                    .toList();
            List<Double> share = new ArrayList<>();
            for (int i = 0; i < ms.size(); i++) {
                share.add(100.0 * (i + 1) / ms.size());
            }
            plot.line(job.words(), ms, share);
        }
        return plot;
    }

    /** Time against size, each curve over its own kind of size. */
    static Plot scale(List<Scale.Curve> curves) {
        Plot plot = new Plot("Processor time against size", "how many", "median, ms", true);
        for (Scale.Curve curve : curves) {
            plot.line(
                    curve.of(),
                    curve.points().stream().map(point -> (double) point.size()).toList(),
                    curve.points().stream().map(Scale.Point::medianCpuMs).toList());
        }
        return plot;
    }
}
