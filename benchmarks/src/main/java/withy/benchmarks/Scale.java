package withy.benchmarks;

import java.lang.management.ManagementFactory;
import java.lang.management.MemoryPoolMXBean;
import java.lang.management.MemoryType;
import java.util.ArrayList;
import java.util.List;
import withy.objectives.Solver.Query;

/** One question asked at growing sizes of something. */
final class Scale {
    private static final int RUNS = 3;

    private static final double MIB = 1L << 20;

    private Scale() {}

    /**
     * One size.
     *
     * @param size how many
     * @param ms wall times of all runs, ms
     * @param cpuMs processor times, ms
     * @param proven questions proven
     * @param asked questions asked
     * @param peakMib most heap in use at a time, over what was there before, MiB; the collector's own slack included
     */
    record Point(int size, List<Double> ms, List<Double> cpuMs, int proven, int asked, double peakMib) {
        double medianMs() {
            return ms.isEmpty() ? Double.NaN : Spread.of(ms).medianMs();
        }

        double medianCpuMs() {
            return cpuMs.isEmpty() ? Double.NaN : Spread.of(cpuMs).medianMs();
        }
    }

    /**
     * How fast it grows.
     *
     * @param of what grows
     * @param note what was asked
     * @param points by size
     */
    record Curve(String of, String note, List<Point> points) {
        Curve {
            points = List.copyOf(points);
        }

        /** Slope of processor time over size in logarithms, least squares; NaN with fewer than two sizes. */
        double exponent() {
            double n = 0;
            double x = 0;
            double y = 0;
            double xx = 0;
            double xy = 0;
            for (Point point : points) {
                double time = point.medianCpuMs();
                if (point.size() > 0 && time > 0) {
                    double a = Math.log(point.size());
                    double b = Math.log(time);
                    n++;
                    x += a;
                    y += b;
                    xx += a * a;
                    xy += a * b;
                }
            }
            return n < 2 ? Double.NaN : (n * xy - x * y) / (n * xx - x * x);
        }
    }

    /** Rank 1 of several questions, each a few times while there is time, at least once. */
    static Point bests(int size, Shop shop, List<Query> queries, long end) {
        List<Double> ms = new ArrayList<>();
        List<Double> cpu = new ArrayList<>();
        int proven = 0;
        double before = rested();
        for (int run = 0; run < RUNS; run++) {
            for (Query query : queries) {
                if (run == 0 || System.nanoTime() < end) {
                    Sample sample = Job.best(shop, query);
                    ms.add(sample.ms());
                    cpu.add(sample.cpuMs());
                    proven += run == 0 && sample.proven() ? 1 : 0;
                }
            }
        }
        return new Point(size, ms, cpu, proven, queries.size(), peak() - before);
    }

    /** A plan of so many jobs, once. */
    static Point plan(int jobs, Shop shop, List<Query> queries) {
        double before = rested();
        Sample sample = Again.plan(shop, queries);
        return new Point(
                jobs, List.of(sample.ms()), List.of(sample.cpuMs()), sample.proven() ? 1 : 0, 1, peak() - before);
    }

    private static double rested() {
        System.gc();
        for (MemoryPoolMXBean pool : ManagementFactory.getMemoryPoolMXBeans()) {
            pool.resetPeakUsage();
        }
        return peak();
    }

    private static double peak() {
        return ManagementFactory.getMemoryPoolMXBeans().stream()
                .filter(pool -> pool.getType() == MemoryType.HEAP)
                .mapToDouble(pool -> pool.getPeakUsage().getUsed() / MIB)
                .sum();
    }

    /** All curves as a section. */
    static String text(List<Curve> curves) {
        StringBuilder text = new StringBuilder("## How cost grows\n\n![time against size](scale.svg)\n\n");
        for (Curve curve : curves) {
            Table table = new Table(curve.of(), "median ms", "longest ms", "CPU median ms", "proven", "most heap MiB");
            for (Point point : curve.points()) {
                table.row(
                        String.valueOf(point.size()),
                        Table.number(point.medianMs()),
                        Table.number(Spread.of(point.ms()).mostMs()),
                        Table.number(point.medianCpuMs()),
                        point.proven() + " of " + point.asked(),
                        Table.number(point.peakMib()));
            }
            double exponent = curve.exponent();
            text.append("### By ")
                    .append(curve.of())
                    .append("\n\n")
                    .append(curve.note())
                    .append("\n\n")
                    .append(table.text());
            if (!Double.isNaN(exponent)) {
                text.append("Processor time grows with the power ")
                        .append(Table.number(exponent))
                        .append(" of it.\n\n");
            }
        }
        return text.toString();
    }
}
