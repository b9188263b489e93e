package withy.web;

import java.util.List;
import java.util.Locale;
import java.util.function.LongFunction;
import withy.app.LighterAnswer.PointLine;
import withy.units.QuantityText;

/**
 * What a lighter rod costs: the best build at each weight, lighter to the right, dearer up, each point numbered as in its table. However little the prices
 * differ, the scale of prices spans a few steps that a customer would notice: what is a trifle has to look like one.
 */
final class CurveDrawing {
    private static final double LEFT = 180;
    private static final double RIGHT = 600;
    private static final double TOP = 40;
    private static final double BOTTOM = 310;

    /** Noticeable steps that the scale of prices spans at least. */
    private static final double LEAST_STEPS = 4;

    private CurveDrawing() {}

    /**
     * Draws it.
     *
     * @param stepMinor least difference of prices that is worth noticing, minor units
     * @param units prints weights
     * @param money prints prices in minor units
     */
    static String of(List<PointLine> curve, double stepMinor, QuantityText units, LongFunction<String> money) {
        double heavy = weight(curve.get(0));
        double light = curve.stream().mapToDouble(CurveDrawing::weight).min().orElse(0);
        double cheap =
                curve.stream().mapToDouble(p -> p.build().priceMinor()).min().orElse(0);
        double most =
                curve.stream().mapToDouble(p -> p.build().priceMinor()).max().orElse(1);
        double dear = Math.max(most, cheap + Math.max(1, LEAST_STEPS * stepMinor));
        StringBuilder svg = new StringBuilder(
                        "<svg class=\"chart curve\" viewBox=\"0 0 640 380\" role=\"img\" aria-label=\"")
                .append(Markup.escape(Words.say("lighter.drawing", curve.size())))
                .append("\">");
        svg.append(String.format(
                Locale.ROOT,
                "<path class=\"axis\" d=\"M%.1f %.1f V%.1f H%.1f\"/>",
                LEFT - 20,
                TOP - 20,
                BOTTOM + 34,
                RIGHT + 20));
        text(svg, LEFT, BOTTOM + 60, "start", units.mass(heavy));
        text(svg, RIGHT, BOTTOM + 60, "end", units.mass(light));
        text(svg, LEFT - 28, BOTTOM + 7, "end", money.apply(Math.round(cheap)));
        text(svg, LEFT - 28, TOP + 7, "end", money.apply(Math.round(dear)));
        StringBuilder points = new StringBuilder();
        StringBuilder marks = new StringBuilder();
        for (int i = 0; i < curve.size(); i++) {
            double x = LEFT + (heavy > light ? (heavy - weight(curve.get(i))) / (heavy - light) : 0) * (RIGHT - LEFT);
            double y = BOTTOM - (curve.get(i).build().priceMinor() - cheap) / (dear - cheap) * (BOTTOM - TOP);
            points.append(String.format(Locale.ROOT, "%.1f,%.1f ", x, y));
            marks.append(String.format(Locale.ROOT, "<circle class=\"point\" cx=\"%.1f\" cy=\"%.1f\" r=\"6\"/>", x, y));
            text(marks, x, trough(curve, i) ? y + 26 : y - 14, "middle", String.valueOf(i + 1));
        }
        svg.append("<polyline class=\"offered\" points=\"")
                .append(points.toString().strip())
                .append("\"/>");
        return svg.append(marks).append("</svg>").toString();
    }

    /** True where the line rises to the next point, so that a number above would stand in it. */
    private static boolean trough(List<PointLine> curve, int i) {
        return i + 1 < curve.size()
                && curve.get(i + 1).build().priceMinor() > curve.get(i).build().priceMinor()
                && (i == 0
                        || curve.get(i - 1).build().priceMinor()
                                >= curve.get(i).build().priceMinor());
    }

    private static double weight(PointLine point) {
        return point.build().weightG();
    }

    private static void text(StringBuilder svg, double x, double y, String anchor, String words) {
        svg.append(String.format(
                        Locale.ROOT, "<text class=\"end\" x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\">", x, y, anchor))
                .append(Markup.escape(words))
                .append("</text>");
    }
}
