package withy.web;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import withy.app.MachineSheet.Diameter;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Piece;
import withy.app.MachineSheet.Ring;

/**
 * A rod from butt to tip, or its handle alone, as one svg element. All rods of a page share one scale, so that a longer one is longer; of
 * a whole rod thicknesses are drawn {@value #THICKER} times as thick, or nothing would be seen, a handle has its true shape. Parts have the
 * colours of the lists; where those tell none, the style sheet's.
 */
final class RodDrawing {
    private static final double WIDTH = 1000;
    private static final double HEIGHT = 100;
    private static final double AXIS = 40;
    private static final double MARGIN = 8;
    private static final double THICKER = 3;

    /** What is seen of the blank ahead of a handle, mm. */
    private static final double BARE_MM = 45;

    /** Room for half the thickness of any handle, mm. */
    private static final double HALF_HANDLE_MM = 26;

    private final Outline outline;
    private final Map<String, String> colours;
    private final double scale;
    private final double thicker;
    private final double axis;
    private final StringBuilder svg = new StringBuilder();

    private RodDrawing(Outline outline, Map<String, String> colours, double longestMm, double thicker) {
        this.outline = outline;
        this.colours = colours;
        this.scale = (WIDTH - 2 * MARGIN) / longestMm;
        this.thicker = thicker;
        this.axis = thicker > 1 ? AXIS : HALF_HANDLE_MM * scale;
    }

    /** Length of what is drawn of a handle, mm. */
    static double handleMm(Outline outline) {
        double front = outline.pieces().stream().mapToDouble(Piece::toMm).max().orElse(outline.handleFrontMm());
        return Math.max(front, outline.handleFrontMm()) + BARE_MM - outline.fromMm();
    }

    /**
     * Draws a handle.
     *
     * @param colours {@code #rrggbb} by station
     * @param longestMm length of the longest handle beside it, mm
     * @param words for who can't see it
     */
    static String handle(Outline outline, Map<String, String> colours, double longestMm, String words) {
        RodDrawing drawing = new RodDrawing(outline, colours, longestMm, 1);
        drawing.open("handle", 2 * drawing.axis, words);
        drawing.blank(outline.fromMm() + longestMm);
        outline.pieces().forEach(drawing::piece);
        double foot = drawing.at(outline.footMm());
        drawing.svg
                .append("<path class=\"foot\" d=\"M")
                .append(number(foot))
                .append(' ')
                .append(number(drawing.axis * 1.62))
                .append(" V")
                .append(number(drawing.axis * 1.95))
                .append("\"/>");
        return drawing.svg.append("</svg>").toString();
    }

    /**
     * Draws one.
     *
     * @param colours {@code #rrggbb} by station
     * @param longestMm length of the longest rod beside it, mm
     * @param words for who can't see it
     */
    static String of(Outline outline, Map<String, String> colours, double longestMm, String words) {
        RodDrawing drawing = new RodDrawing(outline, colours, longestMm, THICKER);
        drawing.open("rod", HEIGHT, words);
        drawing.blank(outline.toMm());
        outline.pieces().forEach(drawing::piece);
        outline.rings().forEach(drawing::ring);
        drawing.balance();
        return drawing.svg.append("</svg>").toString();
    }

    private void open(String look, double height, String words) {
        svg.append("<svg class=\"")
                .append(look)
                .append("\" viewBox=\"0 0 ")
                .append(number(WIDTH))
                .append(' ')
                .append(number(height))
                .append("\" role=\"img\" aria-label=\"")
                .append(Markup.escape(words))
                .append("\">");
    }

    /** The blank, up to a place beyond which it is not seen, mm. */
    private void blank(double toMm) {
        List<double[]> edge = new ArrayList<>();
        double last = 0;
        for (Diameter at : outline.blank()) {
            if (last < toMm) {
                edge.add(new double[] {at.xMm(), at.odMm()});
                last = at.xMm();
            }
        }
        shape("blank", "blank", edge);
    }

    private void piece(Piece piece) {
        String look =
                piece.station().endsWith("Grip") ? "grip" : piece.station().equals("seat") ? "seat" : "trim";
        double middle = (piece.fromMm() + piece.toMm()) / 2;
        shape(
                look,
                piece.station(),
                List.of(
                        new double[] {piece.fromMm(), piece.rearOdMm()},
                        new double[] {middle, piece.midOdMm()},
                        new double[] {piece.toMm(), piece.frontOdMm()}));
    }

    /** A round thing by its outer diameters along the axis, mm. */
    private void shape(String look, String station, List<double[]> edge) {
        svg.append("<path class=\"").append(look).append('"');
        filled(station);
        String to = " d=\"M";
        for (double[] at : edge) {
            svg.append(to);
            point(at[0], axis - Math.max(0.8, half(at[1])));
            to = " L";
        }
        List<double[]> back = new ArrayList<>(edge);
        Collections.reverse(back);
        for (double[] at : back) {
            svg.append(to);
            point(at[0], axis + Math.max(0.8, half(at[1])));
        }
        svg.append("z\"/>");
    }

    private void filled(String station) {
        String colour = colours.get(station);
        if (colour != null) {
            svg.append(" fill=\"").append(colour).append('"');
        }
    }

    private void ring(Ring ring) {
        int side = outline.ringsAbove() ? -1 : 1;
        double radius = Math.max(2.4, ring.ringMm() / 2 * scale * THICKER);
        double y = AXIS + side * (Math.max(1.2, half(ring.axisMm())) + radius);
        double x = at(ring.xMm());
        double rim = y - side * radius * 0.8;
        svg.append("<path class=\"frame\" d=\"M")
                .append(number(x - 5))
                .append(' ')
                .append(number(AXIS))
                .append(" L")
                .append(number(x - radius * 0.27))
                .append(' ')
                .append(number(rim))
                .append(" M")
                .append(number(x + radius * 0.27))
                .append(' ')
                .append(number(rim))
                .append(" L")
                .append(number(x + 5))
                .append(' ')
                .append(number(AXIS))
                .append("\"/><rect class=\"wrap\"");
        filled("thread");
        svg.append(" x=\"")
                .append(number(x - 7))
                .append("\" y=\"")
                .append(number(AXIS - 2.6))
                .append("\" width=\"14\" height=\"5.2\"/><ellipse class=\"ring\" cx=\"")
                .append(number(x))
                .append("\" cy=\"")
                .append(number(y))
                .append("\" rx=\"")
                .append(number(radius * 0.45))
                .append("\" ry=\"")
                .append(number(radius))
                .append("\"/>");
    }

    /** A small wedge under the point where the rod with its reel hangs level, and a line at the reel foot. */
    private void balance() {
        double foot = at(outline.footMm());
        double x = at(outline.balanceMm());
        svg.append("<path class=\"foot\" d=\"M").append(number(foot)).append(" 52 V66\"/>");
        svg.append("<path class=\"wedge\" d=\"M").append(number(x)).append(" 68 l8 14 h-16 z\"/>");
    }

    private void point(double xMm, double y) {
        svg.append(number(at(xMm))).append(' ').append(number(y));
    }

    private double at(double xMm) {
        return MARGIN + (xMm - outline.fromMm()) * scale;
    }

    private double half(double mm) {
        return mm / 2 * scale * thicker;
    }

    private static String number(double value) {
        long tenths = Math.round(value * 10);
        return (tenths < 0 ? "-" : "") + Math.abs(tenths) / 10 + "." + Math.abs(tenths) % 10;
    }
}
