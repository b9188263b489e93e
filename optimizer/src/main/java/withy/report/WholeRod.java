package withy.report;

import java.util.Map;
import withy.app.MachineSheet.Diameter;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Piece;
import withy.app.MachineSheet.Ring;

/** A whole rod in one strip for who wants to see it, not to measure it: lengths to scale, thicknesses {@value #THICKER} times that. */
final class WholeRod {
    private static final double MARGIN = 10;
    private static final double THICKER = 3;
    private static final double HEIGHT = 90;
    private static final double AXIS = 40;

    private final Outline outline;
    private final Map<String, String> colours;
    private final double scale;
    private final Svg svg = new Svg();

    private WholeRod(Outline outline, Map<String, String> colours) {
        this.outline = outline;
        this.colours = colours;
        this.scale = (Svg.WIDTH - 2 * MARGIN) / (outline.toMm() - outline.fromMm());
    }

    /** Its drawing in the colours of its stations, with words for who can't see it. */
    static String of(Outline outline, Map<String, String> colours, String words) {
        WholeRod rod = new WholeRod(outline, colours);
        rod.draw();
        return rod.svg.text(HEIGHT, words);
    }

    private void draw() {
        Diameter last = outline.blank().get(0);
        for (Diameter next : outline.blank()) {
            if (next.xMm() > last.xMm()) {
                tube(last.xMm(), next.xMm(), last.odMm(), next.odMm(), colours.getOrDefault("blank", Svg.GREY));
            }
            last = next;
        }
        for (Piece piece : outline.pieces()) {
            double middle = (piece.fromMm() + piece.toMm()) / 2;
            String fill = colours.getOrDefault(piece.station(), Svg.GREY);
            tube(piece.fromMm(), middle, piece.rearOdMm(), piece.midOdMm(), fill);
            tube(middle, piece.toMm(), piece.midOdMm(), piece.frontOdMm(), fill);
        }
        int side = outline.ringsAbove() ? -1 : 1;
        for (Ring ring : outline.rings()) {
            double y = AXIS + side * thick(ring.axisMm()) * 2;
            svg.line(at(ring.xMm()), AXIS, at(ring.xMm()), y, Svg.INK, 1.2);
            svg.oval(at(ring.xMm()), y, 1.5, Math.max(2, thick(ring.ringMm())), "none");
        }
    }

    private void tube(double from, double to, double rearOd, double frontOd, String fill) {
        double rear = Math.max(0.5, thick(rearOd));
        double front = Math.max(0.5, thick(frontOd));
        svg.points(
                new double[] {at(from), AXIS - rear, at(to), AXIS - front, at(to), AXIS + front, at(from), AXIS + rear},
                Svg.INK,
                0.4,
                fill);
    }

    private double at(double xMm) {
        return MARGIN + (xMm - outline.fromMm()) * scale;
    }

    /** Half of a thickness as drawn. */
    private double thick(double mm) {
        return mm / 2 * scale * THICKER;
    }
}
