package withy.web;

import java.util.Locale;
import withy.app.MachineSheet.Diameter;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Piece;
import withy.app.MachineSheet.Ring;

/**
 * A rod from butt to tip as one svg element. All rods of a page share one scale, so that a longer one is longer; thicknesses are drawn
 * {@value #THICKER} times as thick, or nothing would be seen. Colours come from the style sheet by class.
 */
final class RodDrawing {
    private static final double WIDTH = 1000;
    private static final double HEIGHT = 96;
    private static final double AXIS = 40;
    private static final double MARGIN = 8;
    private static final double THICKER = 3;

    private final Outline outline;
    private final double scale;
    private final StringBuilder svg = new StringBuilder();

    private RodDrawing(Outline outline, double longestMm) {
        this.outline = outline;
        this.scale = (WIDTH - 2 * MARGIN) / longestMm;
    }

    /**
     * Draws one.
     *
     * @param longestMm length of the longest rod beside it, mm
     * @param words for who can't see it
     */
    static String of(Outline outline, double longestMm, String words) {
        RodDrawing drawing = new RodDrawing(outline, longestMm);
        drawing.svg
                .append("<svg class=\"rod\" viewBox=\"0 0 ")
                .append(number(WIDTH))
                .append(' ')
                .append(number(HEIGHT))
                .append("\" role=\"img\" aria-label=\"")
                .append(Markup.escape(words))
                .append("\">");
        drawing.blank();
        outline.pieces().forEach(drawing::piece);
        outline.rings().forEach(drawing::ring);
        drawing.balance();
        return drawing.svg.append("</svg>").toString();
    }

    private void blank() {
        Diameter last = outline.blank().get(0);
        for (Diameter next : outline.blank()) {
            if (next.xMm() > last.xMm()) {
                tube("blank", last.xMm(), next.xMm(), last.odMm(), next.odMm());
            }
            last = next;
        }
    }

    private void piece(Piece piece) {
        String look =
                piece.station().endsWith("Grip") ? "grip" : piece.station().equals("seat") ? "seat" : "trim";
        double middle = (piece.fromMm() + piece.toMm()) / 2;
        tube(look, piece.fromMm(), middle, piece.rearOdMm(), piece.midOdMm());
        tube(look, middle, piece.toMm(), piece.midOdMm(), piece.frontOdMm());
    }

    private void ring(Ring ring) {
        int side = outline.ringsAbove() ? -1 : 1;
        double radius = Math.max(2.4, ring.ringMm() / 2 * scale * THICKER);
        double y = AXIS + side * (Math.max(1.2, half(ring.axisMm())) + radius);
        double x = at(ring.xMm());
        svg.append("<path class=\"frame\" d=\"M")
                .append(number(x - 5))
                .append(' ')
                .append(number(AXIS))
                .append(" L")
                .append(number(x))
                .append(' ')
                .append(number(y))
                .append(" L")
                .append(number(x + 5))
                .append(' ')
                .append(number(AXIS))
                .append("\"/><rect class=\"wrap\" x=\"")
                .append(number(x - 7))
                .append("\" y=\"")
                .append(number(AXIS - 2.2))
                .append("\" width=\"14\" height=\"4.4\"/><ellipse class=\"ring\" cx=\"")
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

    private void tube(String look, double fromMm, double toMm, double rearOd, double frontOd) {
        double rear = Math.max(0.8, half(rearOd));
        double front = Math.max(0.8, half(frontOd));
        svg.append("<path class=\"").append(look).append("\" d=\"M");
        point(fromMm, AXIS - rear).append(" L");
        point(toMm, AXIS - front).append(" L");
        point(toMm, AXIS + front).append(" L");
        point(fromMm, AXIS + rear).append("z\"/>");
    }

    private StringBuilder point(double xMm, double y) {
        return svg.append(number(at(xMm))).append(' ').append(number(y));
    }

    private double at(double xMm) {
        return MARGIN + (xMm - outline.fromMm()) * scale;
    }

    private double half(double mm) {
        return mm / 2 * scale * THICKER;
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
