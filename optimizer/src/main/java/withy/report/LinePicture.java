package withy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withy.app.MachineSheet.Line;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Point;
import withy.app.MachineSheet.RingUnderLoad;
import withy.explain.Phrases;
import withy.units.ForceUnit;
import withy.units.QuantityText;

/** The bent rod to scale with its line through the rings, the unbent rod dashed. */
final class LinePicture {
    private static final double MARGIN = 40;
    private static final double ARROW = 60;

    private LinePicture() {}

    static Picture of(String key, Line line, Outline outline, QuantityText units) {
        String title = Phrases.of("picture." + key);
        Svg svg = new Svg();
        if (line.shape().isEmpty()) {
            svg.words(Svg.WIDTH / 2, 60, "middle", Svg.INK, Phrases.of("picture.none"));
            return new Picture(key, title, svg.text(110, title), table(line, units));
        }
        Frame frame = Frame.of(line, outline);
        double butt = Math.toRadians(line.buttDeg());
        double back = outline.handleFrontMm() - outline.fromMm();
        double free = outline.blank().get(outline.blank().size() - 1).xMm() - outline.handleFrontMm();
        double rearX = -back * Math.cos(butt);
        double rearY = -back * Math.sin(butt);
        svg.dashed(
                frame.x(0), frame.y(0), frame.x(free * Math.cos(butt)), frame.y(free * Math.sin(butt)), Svg.GREY, 1.6);
        svg.line(frame.x(rearX), frame.y(rearY), frame.x(0), frame.y(0), "#c9a77c", 9);
        svg.points(frame.run(line.shape()), Svg.INK, 3.2, "none");
        svg.points(frame.run(line.line()), Svg.ACCENT, 1.6, "none");
        List<Point> path = line.line();
        path.subList(1, path.size())
                .forEach(p -> svg.oval(frame.x(p.aheadMm()), frame.y(p.upMm()), 3.4, 3.4, "#ffffff"));
        pull(svg, frame, path.get(path.size() - 1), line, units);
        svg.words(frame.x(rearX), frame.y(rearY) + 28, "start", Svg.INK, Phrases.of("picture.butt"));
        return new Picture(key, title, svg.text(frame.height(), words(title, line, units)), table(line, units));
    }

    private static void pull(Svg svg, Frame frame, Point tip, Line line, QuantityText units) {
        double angle = Math.toRadians(line.pullDeg());
        double x = frame.x(tip.aheadMm());
        double y = frame.y(tip.upMm());
        double endX = x + ARROW * Math.cos(angle);
        double endY = y - ARROW * Math.sin(angle);
        svg.line(x, y, endX, endY, Svg.ACCENT, 2.4);
        svg.points(
                new double[] {
                    endX + 10 * Math.cos(angle),
                    endY - 10 * Math.sin(angle),
                    endX - 7 * Math.sin(angle),
                    endY - 7 * Math.cos(angle),
                    endX + 7 * Math.sin(angle),
                    endY + 7 * Math.cos(angle)
                },
                Svg.ACCENT,
                1,
                Svg.ACCENT);
        String force = units.strength(line.pullKg() * ForceUnit.KILOGRAM_FORCE.newtons());
        boolean down = Math.abs(Math.cos(angle)) < 0.5;
        svg.words(
                down ? endX - 14 : endX,
                down ? endY : endY - 14,
                "end",
                Svg.ACCENT,
                line.pullKg() < 1 ? units.mass(line.pullKg() * 1000) : force);
    }

    private static String words(String title, Line line, QuantityText units) {
        Double drop = line.dropMm();
        return drop == null ? title : title + ", " + Phrases.of("picture.drop", units.partLength(Math.rint(drop)));
    }

    private static Picture.Table table(Line line, QuantityText units) {
        List<List<String>> rows = new ArrayList<>();
        for (RingUnderLoad ring : line.rings()) {
            Double gap = ring.gapBehindMm();
            rows.add(List.of(
                    ring.station().startsWith("guide-")
                            ? Phrases.of("bend.guide", ring.station().substring("guide-".length()))
                            : Phrases.of("station." + ring.station()),
                    String.format(Locale.ROOT, "%.1f°", ring.turnDeg()),
                    units.mass(ring.forceN() / ForceUnit.KILOGRAM_FORCE.newtons() * 1000),
                    gap == null ? "–" : units.partLength(Math.rint(gap * 10) / 10)));
        }
        return new Picture.Table(
                1,
                List.of(
                        Phrases.of("bend.ring"),
                        Phrases.of("bend.ring.turn"),
                        Phrases.of("bend.ring.force"),
                        Phrases.of("bend.ring.gap")),
                rows);
    }

    /** From millimetres about the front of the handle to the drawing. */
    private record Frame(double left, double top, double scale, double height) {
        static Frame of(Line line, Outline outline) {
            double butt = Math.toRadians(line.buttDeg());
            double back = outline.handleFrontMm() - outline.fromMm();
            double free = outline.blank().get(outline.blank().size() - 1).xMm() - outline.handleFrontMm();
            double[] box = {-back * Math.cos(butt), free * Math.cos(butt), 0, free * Math.sin(butt)};
            box[2] = Math.min(0, -back * Math.sin(butt));
            box[3] = Math.max(0, box[3]);
            for (List<Point> points : List.of(line.shape(), line.line())) {
                for (Point p : points) {
                    box[0] = Math.min(box[0], p.aheadMm());
                    box[1] = Math.max(box[1], p.aheadMm());
                    box[2] = Math.min(box[2], p.upMm());
                    box[3] = Math.max(box[3], p.upMm());
                }
            }
            double room = Svg.WIDTH - 2 * MARGIN - ARROW;
            double scale = Math.min(room / (box[1] - box[0]), room / (box[3] - box[2]));
            double height = (box[3] - box[2]) * scale + 2 * MARGIN + ARROW;
            return new Frame(box[0], box[3], scale, height);
        }

        double x(double aheadMm) {
            return MARGIN + (aheadMm - left) * scale;
        }

        double y(double upMm) {
            return MARGIN + (top - upMm) * scale;
        }

        double[] run(List<Point> points) {
            double[] xy = new double[2 * points.size()];
            for (int i = 0; i < points.size(); i++) {
                xy[2 * i] = x(points.get(i).aheadMm());
                xy[2 * i + 1] = y(points.get(i).upMm());
            }
            return xy;
        }
    }
}
