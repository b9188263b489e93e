package withy.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import withy.app.MachineSheet.Diameter;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Piece;
import withy.app.MachineSheet.Ring;
import withy.app.MachineSheet.Span;
import withy.explain.Phrases;
import withy.units.QuantityText;

/**
 * The rod to scale, cut into strips of equal scale one below the other, butt first; parts numbered, with ruler and balance point.
 *
 * <pre>
 *   strip 1   0 |====|=======|======o----------o---|  700
 *   strip 2     700 |----o-----o----o---o--o--o    |
 * </pre>
 */
final class RodPicture {
    /** Most millimetres in a strip: as many as a strip has units, so that thin things show. */
    private static final double STRIP_MM = 700;

    static final double MARGIN = 30;
    static final double AXIS = 74;
    private static final double STRIP_HEIGHT = 240;
    static final double RULER = 184;
    static final double ROW = 22;
    private static final double TICK_MM = 100;

    /** A drawing for the bench tells shapes; the tan of cork would make foam and wood look wrong. */
    private static final String GRIP_OF_ANY_MATERIAL = "#dcd8d2";

    private final Outline outline;
    private final QuantityText units;
    private Svg svg = new Svg();
    private final List<Numbered> numbered = new ArrayList<>();

    private record Numbered(int number, String station, String name, double fromMm, double toMm) {
        double middleMm() {
            return (fromMm + toMm) / 2;
        }
    }

    private RodPicture(Outline outline, QuantityText units) {
        this.outline = outline;
        this.units = units;
        List<Numbered> all = new ArrayList<>();
        outline.pieces().forEach(p -> all.add(new Numbered(0, p.station(), p.name(), p.fromMm(), p.toMm())));
        outline.rings().forEach(r -> all.add(new Numbered(0, r.station(), r.name(), r.xMm(), r.xMm())));
        all.sort(Comparator.comparingDouble(Numbered::middleMm));
        for (Numbered one : all) {
            numbered.add(new Numbered(numbered.size() + 1, one.station(), one.name(), one.fromMm(), one.toMm()));
        }
    }

    static Picture of(Outline outline, QuantityText units) {
        return new RodPicture(outline, units).picture();
    }

    /** Each strip as a picture of its own, so that a sheet of paper may end between two. */
    static List<Picture> strips(Outline outline, QuantityText units) {
        RodPicture rod = new RodPicture(outline, units);
        List<Picture> strips = new ArrayList<>();
        for (int number = 0; number < rod.count(); number++) {
            rod.svg = new Svg();
            rod.strip(number, 0);
            strips.add(rod.drawn(STRIP_HEIGHT));
        }
        return strips;
    }

    private Picture picture() {
        for (int number = 0; number < count(); number++) {
            strip(number, number * STRIP_HEIGHT);
        }
        return drawn(count() * STRIP_HEIGHT);
    }

    private Picture drawn(double height) {
        String title = Phrases.of("picture.rod");
        return new Picture("rod", title, svg.text(height, title), table());
    }

    private int count() {
        return (int) Math.ceil((outline.toMm() - outline.fromMm()) / STRIP_MM - 1e-9);
    }

    private void strip(int number, double top) {
        double each = (outline.toMm() - outline.fromMm()) / count();
        double from = outline.fromMm() + number * each;
        strip(from, number == count() - 1 ? outline.toMm() : from + each, top);
    }

    private void strip(double from, double to, double top) {
        double axis = top + AXIS;
        joints(from, to, axis);
        blank(from, to, axis);
        outline.pieces().forEach(piece -> piece(piece, from, to, axis));
        outline.rings().stream()
                .filter(ring -> ring.xMm() >= from && ring.xMm() <= to)
                .forEach(ring -> ring(ring, at(ring.xMm(), from), axis));
        labels(from, to, top);
        ruler(from, to, top + RULER);
        new RodMarks(outline, svg).draw(from, to, top);
    }

    /** Where a place of the rod lies across a strip that begins at another. */
    static double at(double xMm, double from) {
        return MARGIN + xMm - from;
    }

    private void blank(double from, double to, double axis) {
        List<Double> upper = new ArrayList<>();
        List<Double> lower = new ArrayList<>();
        for (Diameter d : cut(Math.max(0, from), to)) {
            upper.add(at(d.xMm(), from));
            upper.add(axis - d.odMm() / 2);
            lower.add(0, axis + d.odMm() / 2);
            lower.add(0, at(d.xMm(), from));
        }
        upper.addAll(lower);
        double[] points = upper.stream().mapToDouble(Double::doubleValue).toArray();
        if (points.length > 4) {
            svg.points(points, Svg.INK, 1, Svg.PALE);
        }
    }

    /** The blank's diameters between two places, both ends included. */
    private List<Diameter> cut(double from, double to) {
        List<Diameter> inside = new ArrayList<>();
        List<Diameter> all = outline.blank();
        for (int i = 0; i < all.size(); i++) {
            Diameter d = all.get(i);
            if (i > 0) {
                between(all.get(i - 1), d, from, inside);
                between(all.get(i - 1), d, to, inside);
            }
            if (d.xMm() >= from && d.xMm() <= to) {
                inside.add(d);
            }
        }
        inside.sort(Comparator.comparingDouble(Diameter::xMm));
        return inside;
    }

    private static void between(Diameter a, Diameter b, double x, List<Diameter> into) {
        if (x > a.xMm() && x < b.xMm()) {
            double share = (x - a.xMm()) / (b.xMm() - a.xMm());
            into.add(new Diameter(x, a.odMm() + share * (b.odMm() - a.odMm())));
        }
    }

    private void joints(double from, double to, double axis) {
        for (Span joint : outline.joints()) {
            double rear = Math.max(from, joint.fromMm());
            double front = Math.min(to, joint.toMm());
            if (front > rear) {
                svg.box(at(rear, from), axis - 8, front - rear, 16, "#f0e3dd");
            }
        }
    }

    private void piece(Piece piece, double from, double to, double axis) {
        double rear = Math.max(from, piece.fromMm());
        double front = Math.min(to, piece.toMm());
        if (front <= rear) {
            return;
        }
        double middle = (piece.fromMm() + piece.toMm()) / 2;
        List<Double> upper = new ArrayList<>();
        List<Double> lower = new ArrayList<>();
        for (double x : new double[] {rear, Math.max(rear, Math.min(front, middle)), front}) {
            double half = odAt(piece, x) / 2;
            upper.add(at(x, from));
            upper.add(axis - half);
            lower.add(0, axis + half);
            lower.add(0, at(x, from));
        }
        upper.addAll(lower);
        boolean seat = piece.station().equals("seat");
        boolean grip = piece.station().endsWith("Grip");
        svg.points(
                upper.stream().mapToDouble(Double::doubleValue).toArray(),
                Svg.INK,
                1.2,
                seat ? "#9a9a9a" : grip ? GRIP_OF_ANY_MATERIAL : "#5a5a5a");
    }

    private static double odAt(Piece piece, double x) {
        double t = (x - piece.fromMm()) / (piece.toMm() - piece.fromMm());
        return t <= 0.5
                ? piece.rearOdMm() + 2 * t * (piece.midOdMm() - piece.rearOdMm())
                : piece.midOdMm() + (2 * t - 1) * (piece.frontOdMm() - piece.midOdMm());
    }

    private void ring(Ring ring, double x, double axis) {
        int side = outline.ringsAbove() ? -1 : 1;
        double y = axis + side * ring.axisMm();
        double foot = ring.feet() == 2 ? 9 : 6;
        svg.line(x - foot, axis, x, y, Svg.INK, 1.2);
        if (ring.feet() == 2) {
            svg.line(x + foot, axis, x, y, Svg.INK, 1.2);
        }
        svg.oval(x, y, Math.max(1.5, ring.ringMm() / 6), Math.max(2.2, ring.ringMm() / 2), "none");
    }

    /** Numbers over the rod (under it where the rings stand above), in as many rows as they need. */
    private void labels(double from, double to, double top) {
        double[] ends = {-1e9, -1e9, -1e9};
        for (Numbered part : numbered) {
            if (part.middleMm() < from || part.middleMm() > to) {
                continue;
            }
            double x = at(part.middleMm(), from);
            double half = Svg.LETTER_WIDTH * String.valueOf(part.number()).length() / 2 + 3;
            int row = 0;
            while (row < ends.length - 1 && ends[row] > x - half) {
                row++;
            }
            ends[row] = x + half;
            double y = outline.ringsAbove() ? top + AXIS + 36 + ROW * row : top + AXIS - 22 - ROW * row;
            double near = outline.ringsAbove() ? y - 15 : y + 4;
            svg.line(x, near, x, top + AXIS, Svg.GREY, 0.7);
            svg.words(x, y, "middle", Svg.INK, String.valueOf(part.number()));
        }
    }

    private void ruler(double from, double to, double y) {
        svg.line(at(from, from), y, at(to, from), y, Svg.INK, 1);
        for (double x = Math.ceil(from / TICK_MM) * TICK_MM; x <= to + 1e-9; x += TICK_MM) {
            // downward only: above it stand the words of the marks
            svg.line(at(x, from), y, at(x, from), y + 6, Svg.INK, 1);
            svg.words(at(x, from), y + 23, "middle", Svg.INK, Svg.number(x));
        }
    }

    private Picture.Table table() {
        List<List<String>> rows = new ArrayList<>();
        for (Numbered part : numbered) {
            String station = part.station().startsWith("guide-")
                    ? Phrases.of("bend.guide", part.station().substring("guide-".length()))
                    : Phrases.of("station." + part.station());
            rows.add(List.of(
                    part.number() + "  " + station,
                    part.name(),
                    length(part.fromMm()),
                    part.toMm() > part.fromMm() ? length(part.toMm()) : ""));
        }
        rows.add(List.of(Phrases.of("picture.rod.foot"), "", length(outline.footMm()), ""));
        rows.add(List.of(Phrases.of("picture.rod.balance"), "", length(outline.balanceMm()), ""));
        rows.add(List.of(Phrases.of("picture.rod.bare"), "", length(outline.bareBalanceMm()), ""));
        return new Picture.Table(
                2,
                List.of(
                        Phrases.of("picture.part"),
                        Phrases.of("picture.name"),
                        Phrases.of("picture.from"),
                        Phrases.of("picture.to")),
                rows);
    }

    private String length(double mm) {
        return units.partLength(Math.rint(mm));
    }
}
