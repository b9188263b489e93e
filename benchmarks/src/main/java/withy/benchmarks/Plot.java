package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** Lines over a logarithmic axis as a drawing that needs no style sheet; every line is named in the legend and drawn in its own dash. */
final class Plot {
    private static final int WIDTH = 820;
    private static final int HEIGHT = 420;
    private static final int LEFT = 70;
    private static final int RIGHT = 250;
    private static final int TOP = 40;
    private static final int BOTTOM = 60;

    /** Colours told apart also by those who see no red or green (Okabe and Ito). */
    private static final String[] COLOURS = {
        "#000000", "#0072B2", "#D55E00", "#009E73", "#CC79A7", "#E69F00", "#56B4E9", "#999999"
    };

    private static final String[] DASHES = {"", "7 3", "2 3", "9 3 2 3"};

    private final String title;
    private final String xName;
    private final String yName;
    private final boolean yLog;
    private final List<Line> lines = new ArrayList<>();

    Plot(String title, String xName, String yName, boolean yLog) {
        this.title = title;
        this.xName = xName;
        this.yName = yName;
        this.yLog = yLog;
    }

    /** One line; both lists are as long. */
    record Line(String name, List<Double> xs, List<Double> ys) {
        Line {
            xs = List.copyOf(xs);
            ys = List.copyOf(ys);
        }
    }

    Plot line(String name, List<Double> xs, List<Double> ys) {
        List<Double> goodX = new ArrayList<>();
        List<Double> goodY = new ArrayList<>();
        for (int i = 0; i < xs.size(); i++) {
            if (xs.get(i) > 0 && Double.isFinite(ys.get(i)) && (!yLog || ys.get(i) > 0)) {
                goodX.add(xs.get(i));
                goodY.add(ys.get(i));
            }
        }
        lines.add(new Line(name, goodX, goodY));
        return this;
    }

    String svg() {
        double[] x = range(lines.stream().flatMap(line -> line.xs().stream()).toList(), true);
        double[] y = range(lines.stream().flatMap(line -> line.ys().stream()).toList(), yLog);
        DoubleUnaryOperator px = axis(x, true, LEFT, WIDTH - RIGHT);
        DoubleUnaryOperator py = axis(y, yLog, HEIGHT - BOTTOM, TOP);
        StringBuilder svg = new StringBuilder();
        svg.append(format(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" font-family=\"sans-serif\" font-size=\"12\">%n<title>%s</title>%n<rect width=\"%d\" height=\"%d\" fill=\"white\"/>%n",
                WIDTH, HEIGHT, title, WIDTH, HEIGHT));
        text(svg, LEFT, 20, "start", "bold", title);
        ticks(x, true).forEach(at -> {
            double p = px.applyAsDouble(at);
            rule(svg, p, TOP, p, HEIGHT - BOTTOM);
            text(svg, p, HEIGHT - BOTTOM + 18, "middle", "normal", label(at));
        });
        ticks(y, yLog).forEach(at -> {
            double p = py.applyAsDouble(at);
            rule(svg, LEFT, p, WIDTH - RIGHT, p);
            text(svg, LEFT - 8, p + 4, "end", "normal", label(at));
        });
        text(svg, (LEFT + WIDTH - RIGHT) / 2.0, HEIGHT - 18, "middle", "normal", xName);
        svg.append(format(
                "<text transform=\"translate(18 %d) rotate(-90)\" text-anchor=\"middle\">%s</text>%n",
                HEIGHT / 2, yName));
        for (int i = 0; i < lines.size(); i++) {
            draw(svg, i, px, py);
        }
        return svg.append("</svg>\n").toString();
    }

    private void draw(StringBuilder svg, int index, DoubleUnaryOperator px, DoubleUnaryOperator py) {
        Line line = lines.get(index);
        String pen = format(
                "stroke=\"%s\" stroke-width=\"%s\" stroke-dasharray=\"%s\" fill=\"none\"",
                COLOURS[index % COLOURS.length], index == 0 ? "3" : "2", DASHES[index % DASHES.length]);
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < line.xs().size(); i++) {
            double x = px.applyAsDouble(line.xs().get(i));
            double y = py.applyAsDouble(line.ys().get(i));
            points.append(format("%.1f,%.1f ", x, y));
            if (line.xs().size() < 12) {
                svg.append(format(
                        "<circle cx=\"%.1f\" cy=\"%.1f\" r=\"3\" fill=\"%s\"/>%n",
                        x, y, COLOURS[index % COLOURS.length]));
            }
        }
        svg.append(format("<polyline points=\"%s\" %s/>%n", points.toString().strip(), pen));
        double at = TOP + 10 + index * 22.0;
        double from = WIDTH - RIGHT + 16;
        svg.append(
                format("<line x1=\"%.0f\" y1=\"%.0f\" x2=\"%.0f\" y2=\"%.0f\" %s/>%n", from, at, from + 30, at, pen));
        text(svg, from + 38, at + 4, "start", "normal", line.name() + (line.xs().isEmpty() ? " (none)" : ""));
    }

    private static void rule(StringBuilder svg, double x1, double y1, double x2, double y2) {
        svg.append(
                format("<line x1=\"%.1f\" y1=\"%.1f\" x2=\"%.1f\" y2=\"%.1f\" stroke=\"#dddddd\"/>%n", x1, y1, x2, y2));
    }

    private static void text(StringBuilder svg, double x, double y, String anchor, String weight, String words) {
        svg.append(format(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" font-weight=\"%s\">%s</text>%n",
                x, y, anchor, weight, words));
    }

    private static double[] range(List<Double> values, boolean log) {
        double least = values.stream().mapToDouble(v -> v).min().orElse(1);
        double most = values.stream().mapToDouble(v -> v).max().orElse(10);
        if (log) {
            double low = Math.pow(10, Math.floor(Math.log10(least)));
            return new double[] {low, Math.max(low * 10, Math.pow(10, Math.ceil(Math.log10(most))))};
        }
        return new double[] {Math.min(0, least), Math.max(most * 1.05, least + 1e-9)};
    }

    private static List<Double> ticks(double[] range, boolean log) {
        List<Double> ticks = new ArrayList<>();
        if (log) {
            for (double at = range[0]; at <= range[1] * 1.001; at *= 10) {
                ticks.add(at);
            }
            return ticks;
        }
        double rough = (range[1] - range[0]) / 5;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        double step =
                rough / power > 5 ? 10 * power : rough / power > 2 ? 5 * power : rough / power > 1 ? 2 * power : power;
        for (double at = Math.ceil(range[0] / step) * step; at <= range[1]; at += step) {
            ticks.add(at);
        }
        return ticks;
    }

    private static DoubleUnaryOperator axis(double[] range, boolean log, double from, double to) {
        return value -> {
            double share = log
                    ? Math.log10(value / range[0]) / Math.log10(range[1] / range[0])
                    : (value - range[0]) / (range[1] - range[0]);
            return from + share * (to - from);
        };
    }

    private static String label(double value) {
        return Math.abs(value) >= 1 || value == 0
                ? format("%,.0f", value)
                : format("%s", Double.toString(Math.round(value * 1e6) / 1e6));
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
