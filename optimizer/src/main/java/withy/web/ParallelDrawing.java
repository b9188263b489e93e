package withy.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;
import org.jspecify.annotations.Nullable;
import withy.app.Around;
import withy.app.BuildSheet.FigureLines;
import withy.brief.Brief;

/**
 * Builds as lines across upright scales: the six objectives, better always up, then the sizes the brief sets a limit to. The offered ones are bold,
 * dashed each in its way and numbered at both ends. Every limit of the brief is a bar across its scale, and told in words below it.
 */
final class ParallelDrawing {
    private static final double WIDTH = 1000;
    private static final double TOP = 56;

    /** A limit farther off than this many times the span of the builds is told below its scale only, so that the builds stay apart. */
    private static final double FAR = 1.5;

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
                case "balance" ->
                    value == 0 ? Words.say("axis.zone") : bench.units().moment(value);
                case "swingWeight" -> bench.units().inertia(value);
                case "price" -> bench.money(Math.round(value));
                case "packed", "length" -> bench.units().rodLength(value);
                case "reach" -> bench.units().partLength(Math.rint(value));
                case "durability" -> value == 0 ? Words.say("axis.asked") : String.format(Locale.ROOT, "%+.0f", value);
                default -> String.format(Locale.ROOT, "%.0f", value);
            };
        }
    }

    private static final List<Axis> OBJECTIVES = List.of(
            new Axis("weight", FigureLines::weightG, false),
            new Axis("balance", FigureLines::balanceOutsideZoneNmm, false),
            new Axis("swingWeight", FigureLines::swingWeightKgM2, false),
            new Axis("price", f -> f.priceMinor(), false),
            new Axis("style", FigureLines::style, true),
            new Axis("durability", f -> f.durabilityMargin(), true));

    private static final Axis PACKED = new Axis("packed", FigureLines::packedLengthMm, false);
    private static final Axis LENGTH = new Axis("length", FigureLines::finishedLengthMm, true);
    private static final Axis REACH = new Axis("reach", FigureLines::reelToButtMm, true);

    /** The scales that matter for a brief. */
    static List<Axis> axes(Brief brief) {
        List<Axis> axes = new ArrayList<>(OBJECTIVES);
        if (brief.packedMaxMm() != null) {
            axes.add(PACKED);
        }
        axes.add(LENGTH);
        axes.add(REACH);
        return axes;
    }

    /**
     * Limits of a brief on one scale.
     *
     * @param at where, in the unit of the scale
     * @param words lines that stand below
     */
    private record Limit(List<Double> at, List<String> words) {}

    private final List<Around.Line> lines;
    private final Brief brief;
    private final Bench bench;
    private final List<Axis> axes;
    private final StringBuilder svg = new StringBuilder();

    private ParallelDrawing(List<Around.Line> lines, Brief brief, Bench bench) {
        this.lines = lines;
        this.brief = brief;
        this.bench = bench;
        this.axes = axes(brief);
    }

    static String of(List<Around.Line> lines, Brief brief, Bench bench) {
        ParallelDrawing drawing = new ParallelDrawing(lines, brief, bench);
        drawing.svg
                .append("<svg class=\"chart\" viewBox=\"0 0 1000 430\" role=\"img\" aria-label=\"")
                .append(Markup.escape(Words.say("around.drawing", lines.size(), drawing.axes.size())))
                .append("\">");
        for (int i = 0; i < drawing.axes.size(); i++) {
            drawing.axis(i);
        }
        for (int i = lines.size() - 1; i >= 0; i--) {
            drawing.line(lines.get(i));
        }
        for (int i = 0; i < drawing.axes.size(); i++) {
            drawing.limit(i);
        }
        return drawing.svg.append("</svg>").toString();
    }

    private @Nullable Limit limitOf(Axis axis) {
        Long budget = brief.budgetMinor();
        Double packed = brief.packedMaxMm();
        return switch (axis.key()) {
            case "price" -> budget == null ? null : most(axis, budget);
            case "packed" -> packed == null ? null : most(axis, packed);
            case "length" -> between(axis, brief.lengthMinMm(), brief.lengthMaxMm());
            case "reach" -> between(axis, brief.reachMinMm(), brief.reachMaxMm());
            case "balance" ->
                new Limit(
                        List.of(0.0),
                        lines(
                                "around.limit.zone",
                                bench.units().partLength(brief.zoneNearMm()),
                                bench.units().partLength(brief.zoneFarMm())));
            case "durability" ->
                new Limit(List.of(0.0), List.of(Words.say("around.limit.class", brief.durabilityClass())));
            default -> null;
        };
    }

    private Limit most(Axis axis, double value) {
        return new Limit(List.of(value), lines("around.limit", axis.words(value, bench)));
    }

    private Limit between(Axis axis, double least, double most) {
        return new Limit(
                List.of(least, most), lines("around.limit.span", axis.words(least, bench), axis.words(most, bench)));
    }

    /** A scale has little room beside it: an upright bar in the words breaks the line. */
    private static List<String> lines(String key, Object... facts) {
        return List.of(Words.say(key, facts).split("\\|"));
    }

    private double x(int axis) {
        return LEFT + axis * (WIDTH - 2 * LEFT) / (axes.size() - 1);
    }

    private double[] ends(Axis axis) {
        double[] values = lines.stream()
                .mapToDouble(l -> axis.value().applyAsDouble(l.figures()))
                .toArray();
        double least = Arrays.stream(values).min().orElse(0);
        double most = Arrays.stream(values).max().orElse(1);
        if (axis.words(least, bench).equals(axis.words(most, bench))) {
            // what is told as the same is drawn as the same
            most = least;
        }
        double span = most - least;
        Limit limit = limitOf(axis);
        if (limit != null) {
            for (double at : limit.at()) {
                if (span == 0 || at >= least - FAR * span && at <= most + FAR * span) {
                    least = Math.min(least, at);
                    most = Math.max(most, at);
                }
            }
        }
        return new double[] {least, most};
    }

    private double least(Axis axis) {
        return ends(axis)[0];
    }

    private double most(Axis axis) {
        return ends(axis)[1];
    }

    private double y(Axis axis, double value) {
        double least = least(axis);
        double most = most(axis);
        double share = most > least ? (value - least) / (most - least) : 0.5;
        return axis.up() ? BOTTOM - share * (BOTTOM - TOP) : TOP + share * (BOTTOM - TOP);
    }

    private void axis(int at) {
        Axis axis = axes.get(at);
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

    /** A bar across the scale where the brief draws a line, if it lies on the scale; its words below in any case. */
    private void limit(int at) {
        Axis axis = axes.get(at);
        Limit limit = limitOf(axis);
        if (limit == null) {
            return;
        }
        for (double value : limit.at()) {
            if (value >= least(axis) && value <= most(axis)) {
                svg.append(String.format(
                        Locale.ROOT, "<path class=\"limit\" d=\"M%.1f %.1f h28\"/>", x(at) - 14, y(axis, value)));
            }
        }
        for (int i = 0; i < limit.words().size(); i++) {
            text(x(at), BOTTOM + 48 + 20.0 * i, "end", limit.words().get(i));
        }
    }

    private void text(double x, double y, String look, String words) {
        svg.append(String.format(
                        Locale.ROOT, "<text class=\"%s\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"middle\">", look, x, y))
                .append(Markup.escape(words))
                .append("</text>");
    }

    private void line(Around.Line line) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < axes.size(); i++) {
            points.append(String.format(
                    Locale.ROOT,
                    "%.1f,%.1f ",
                    x(i),
                    y(axes.get(i), axes.get(i).value().applyAsDouble(line.figures()))));
        }
        svg.append("<polyline class=\"")
                .append(line.rank() == 0 ? "sample" : "offered offered-" + line.rank())
                .append("\" points=\"")
                .append(points.toString().strip())
                .append("\"/>");
        if (line.rank() > 0) {
            int last = axes.size() - 1;
            double shift = (line.rank() - 2) * 26.0;
            text(
                    x(0) - 40 + shift,
                    y(axes.get(0), axes.get(0).value().applyAsDouble(line.figures())) + 7,
                    "mark",
                    String.valueOf(line.rank()));
            text(
                    x(last) + 40 + shift,
                    y(axes.get(last), axes.get(last).value().applyAsDouble(line.figures())) + 7,
                    "mark",
                    String.valueOf(line.rank()));
        }
    }
}
