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
    /** On a screen of some width, and on paper. */
    private static final Space WIDE = new Space("wide", 640, 380, 180, 600, 40, 310, 18, 6);

    /** On a phone: about as many units as it has pixels, so that letters keep their size; what a price is counted in stands below it. */
    private static final Space NARROW = new Space("narrow", 280, 260, 78, 262, 22, 204, 14, 4.5);

    /**
     * A sheet and where the curve lies on it.
     *
     * @param name its class in the style sheet
     * @param left first weight; {@code right} the last, {@code top} the dearest price and {@code bottom} the cheapest
     * @param letter height of its letters
     * @param dot half of what a point is wide
     */
    private record Space(
            String name,
            int width,
            int height,
            double left,
            double right,
            double top,
            double bottom,
            double letter,
            double dot) {}

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
        StringBuilder svg = new StringBuilder();
        for (Space space : List.of(WIDE, NARROW)) {
            String[] prices = {money.apply(Math.round(cheap)), money.apply(Math.round(most))};
            draw(svg, space, curve, new double[] {heavy, light, cheap, most, dear}, prices, units);
        }
        return svg.toString();
    }

    /**
     * Draws it on a sheet.
     *
     * @param ends heaviest and lightest weight, g, cheapest and dearest price and where their scale ends, minor units
     * @param prices how the two prices are printed; the dearer stands at its own height, and not where that is too near the other
     */
    private static void draw(
            StringBuilder svg, Space space, List<PointLine> curve, double[] ends, String[] prices, QuantityText units) {
        double heavy = ends[0];
        double light = ends[1];
        double cheap = ends[2];
        double most = ends[3];
        double dear = ends[4];
        svg.append(String.format(
                Locale.ROOT,
                "<svg class=\"chart curve %s\" viewBox=\"0 0 %d %d\" role=\"img\" aria-label=\"%s\">",
                space.name,
                space.width,
                space.height,
                Markup.escape(Words.say("lighter.drawing", curve.size()))));
        double axis = space.left - 1.1 * space.letter;
        double foot = space.bottom + 1.9 * space.letter;
        svg.append(String.format(
                Locale.ROOT,
                "<path class=\"axis\" d=\"M%.1f %.1f V%.1f H%.1f\"/>",
                axis,
                space.top - 1.1 * space.letter,
                foot,
                space.right + space.letter));
        text(svg, space.left, foot + 1.4 * space.letter, "start", units.mass(heavy));
        text(svg, space.right, foot + 1.4 * space.letter, "end", units.mass(light));
        price(svg, space, axis - 0.4 * space.letter, space.bottom, prices[0]);
        double high = space.bottom - (most - cheap) / (dear - cheap) * (space.bottom - space.top);
        if (space.bottom - high > 2.4 * space.letter) {
            price(svg, space, axis - 0.4 * space.letter, high, prices[1]);
        }
        StringBuilder points = new StringBuilder();
        StringBuilder marks = new StringBuilder();
        for (int i = 0; i < curve.size(); i++) {
            double x = space.left
                    + (heavy > light ? (heavy - weight(curve.get(i))) / (heavy - light) : 0)
                            * (space.right - space.left);
            double y = space.bottom
                    - (curve.get(i).build().priceMinor() - cheap) / (dear - cheap) * (space.bottom - space.top);
            points.append(String.format(Locale.ROOT, "%.1f,%.1f ", x, y));
            marks.append(String.format(
                    Locale.ROOT, "<circle class=\"point\" cx=\"%.1f\" cy=\"%.1f\" r=\"%.1f\"/>", x, y, space.dot));
            double clear = space.dot + 0.4 * space.letter;
            double number = trough(curve, i) ? y + clear + 0.75 * space.letter : y - clear;
            text(marks, x, number, "middle", String.valueOf(i + 1));
        }
        svg.append("<polyline class=\"offered\" points=\"")
                .append(points.toString().strip())
                .append("\"/>");
        svg.append(marks).append("</svg>");
    }

    /** A price left of the axis: in one line where there is room. */
    private static void price(StringBuilder svg, Space space, double x, double y, String price) {
        int gap = Math.max(price.indexOf(' '), price.indexOf('\u00a0'));
        double middle = y + 0.35 * space.letter;
        if (space == WIDE || gap < 0) {
            text(svg, x, middle, "end", price);
            return;
        }
        text(svg, x, middle, "end", price.substring(0, gap));
        text(svg, x, middle + 1.1 * space.letter, "end", price.substring(gap + 1));
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
