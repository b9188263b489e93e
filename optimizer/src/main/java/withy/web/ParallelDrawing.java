package withy.web;

import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import withy.app.Around;
import withy.app.BuildSheet.FigureLines;
import withy.brief.Brief;

/** Builds as lines across six upright scales, better always up. The offered ones are bold, dashed each in its way and numbered at both ends. */
final class ParallelDrawing {
    private static final double WIDTH = 1000;
    private static final double HEIGHT = 420;
    private static final double TOP = 56;
    private static final double BOTTOM = 350;
    private static final double LEFT = 90;

    /**
     * One scale.
     *
     * @param key of its words
     * @param value of a build
     * @param up true where more is better
     */
    record Axis(String key, ToDoubleFunction<FigureLines> value, boolean up) {
        String words(FigureLines figures, Bench bench) {
            return words(value.applyAsDouble(figures), bench);
        }

        String words(double value, Bench bench) {
            return switch (key) {
                case "weight" -> bench.units().mass(value);
                case "balance" -> bench.units().moment(value);
                case "swingWeight" -> bench.units().inertia(value);
                case "price" -> bench.money(Math.round(value));
                case "durability" -> value == 0 ? Words.say("axis.asked") : String.format(Locale.ROOT, "%+.0f", value);
                default -> String.format(Locale.ROOT, "%.0f", value);
            };
        }
    }

    static final List<Axis> AXES = List.of(
            new Axis("weight", FigureLines::weightG, false),
            new Axis("balance", FigureLines::balanceOutsideZoneNmm, false),
            new Axis("swingWeight", FigureLines::swingWeightKgM2, false),
            new Axis("price", f -> f.priceMinor(), false),
            new Axis("style", FigureLines::style, true),
            new Axis("durability", f -> f.durabilityMargin(), true));

    private final List<Around.Line> lines;
    private final Bench bench;
    private final StringBuilder svg = new StringBuilder();

    private ParallelDrawing(List<Around.Line> lines, Bench bench) {
        this.lines = lines;
        this.bench = bench;
    }

    static String of(List<Around.Line> lines, Brief brief, Bench bench) {
        ParallelDrawing drawing = new ParallelDrawing(lines, bench);
        drawing.svg
                .append("<svg class=\"chart\" viewBox=\"0 0 1000 420\" role=\"img\" aria-label=\"")
                .append(Markup.escape(Words.say("around.drawing", lines.size())))
                .append("\">");
        for (int i = 0; i < AXES.size(); i++) {
            drawing.axis(i);
        }
        Long budget = brief.budgetMinor();
        if (budget != null) {
            drawing.limit(3, budget);
        }
        for (int i = lines.size() - 1; i >= 0; i--) {
            drawing.line(lines.get(i));
        }
        return drawing.svg.append("</svg>").toString();
    }

    private double x(int axis) {
        return LEFT + axis * (WIDTH - 2 * LEFT) / (AXES.size() - 1);
    }

    private double least(Axis axis) {
        return lines.stream()
                .mapToDouble(l -> axis.value().applyAsDouble(l.figures()))
                .min()
                .orElse(0);
    }

    private double most(Axis axis) {
        return lines.stream()
                .mapToDouble(l -> axis.value().applyAsDouble(l.figures()))
                .max()
                .orElse(1);
    }

    private double y(Axis axis, double value) {
        double least = least(axis);
        double most = most(axis);
        double share = most > least ? (value - least) / (most - least) : 0.5;
        return axis.up() ? BOTTOM - share * (BOTTOM - TOP) : TOP + share * (BOTTOM - TOP);
    }

    private void axis(int at) {
        Axis axis = AXES.get(at);
        double x = x(at);
        svg.append(String.format(Locale.ROOT, "<path class=\"axis\" d=\"M%.1f %.1f V%.1f\"/>", x, TOP, BOTTOM));
        text(x, TOP - 34, "title", Words.say("axis." + axis.key()));
        double best = axis.up() ? most(axis) : least(axis);
        double worst = axis.up() ? least(axis) : most(axis);
        text(x, TOP - 12, "end", axis.words(best, bench));
        if (best != worst) {
            text(x, BOTTOM + 24, "end", axis.words(worst, bench));
        }
    }

    /** A tick where the brief draws a line, if it lies on the scale. */
    private void limit(int at, double value) {
        Axis axis = AXES.get(at);
        if (value >= least(axis) && value <= most(axis)) {
            double y = y(axis, value);
            svg.append(String.format(Locale.ROOT, "<path class=\"limit\" d=\"M%.1f %.1f h24\"/>", x(at) - 12, y));
        }
        text(x(at), BOTTOM + 52, "end", Words.say("around.limit", axis.words(value, bench)));
    }

    private void text(double x, double y, String look, String words) {
        svg.append(String.format(
                        Locale.ROOT, "<text class=\"%s\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">", look, x, y))
                .append(Markup.escape(words))
                .append("</text>");
    }

    private void line(Around.Line line) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < AXES.size(); i++) {
            points.append(String.format(
                    Locale.ROOT,
                    "%.1f,%.1f ",
                    x(i),
                    y(AXES.get(i), AXES.get(i).value().applyAsDouble(line.figures()))));
        }
        svg.append("<polyline class=\"")
                .append(line.rank() == 0 ? "sample" : "offered offered-" + line.rank())
                .append("\" points=\"")
                .append(points.toString().strip())
                .append("\"/>");
        if (line.rank() > 0) {
            int last = AXES.size() - 1;
            double shift = (line.rank() - 2) * 26.0;
            text(
                    x(0) - 40 + shift,
                    y(AXES.get(0), AXES.get(0).value().applyAsDouble(line.figures())) + 7,
                    "mark",
                    String.valueOf(line.rank()));
            text(
                    x(last) + 40 + shift,
                    y(AXES.get(last), AXES.get(last).value().applyAsDouble(line.figures())) + 7,
                    "mark",
                    String.valueOf(line.rank()));
        }
    }
}
