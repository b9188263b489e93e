package withy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withy.app.MachineSheet.Hung;
import withy.app.MachineSheet.LoadDrop;
import withy.app.MachineSheet.Outline;
import withy.app.MachineSheet.Stretch;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** Load against tip drop, and mass along the rod. */
final class ChartPictures {
    private static final double LEFT = 86;
    private static final double RIGHT = 34;
    private static final double TOP = 46;
    private static final double BOTTOM = 70;
    private static final double HEIGHT = 430;

    private ChartPictures() {}

    static Picture loads(Hung hung, QuantityText units) {
        Svg svg = new Svg();
        List<LoadDrop> known =
                hung.curve().stream().filter(l -> l.dropMm() != null).toList();
        double mostLoad = known.stream().mapToDouble(LoadDrop::loadG).max().orElse(1);
        double mostDrop = Math.max(
                hung.thirdDropMm(),
                known.stream().mapToDouble(ChartPictures::drop).max().orElse(1));
        Axes axes = new Axes(round(mostLoad), round(mostDrop));
        axes.draw(svg, Phrases.of("picture.loads.x"), Phrases.of("picture.loads.y"));
        svg.dashed(
                axes.x(0), axes.y(hung.thirdDropMm()), axes.x(axes.mostX()), axes.y(hung.thirdDropMm()), Svg.GREY, 1.4);
        svg.words(axes.x(axes.mostX()), axes.y(hung.thirdDropMm()) + 22, "end", Svg.GREY, Phrases.of("picture.third"));
        double[] xy = new double[2 * known.size()];
        for (int i = 0; i < known.size(); i++) {
            xy[2 * i] = axes.x(known.get(i).loadG());
            xy[2 * i + 1] = axes.y(drop(known.get(i)));
        }
        svg.points(xy, Svg.INK, 2.4, "none");
        for (int i = 0; i < known.size(); i++) {
            svg.oval(xy[2 * i], xy[2 * i + 1], 5, 5, Svg.ACCENT);
        }
        List<List<String>> rows = new ArrayList<>();
        for (LoadDrop load : hung.curve()) {
            Double drop = load.dropMm();
            Double tip = load.tipDeg();
            rows.add(List.of(
                    load.loadG() > 0 ? units.mass(load.loadG()) : Phrases.of("bend.hung.nothing"),
                    drop == null ? "–" : units.partLength(Math.rint(drop)),
                    tip == null ? "–" : String.format(Locale.ROOT, "%.1f°", tip)));
        }
        String title = Phrases.of("picture.loads");
        return new Picture(
                "loads",
                title,
                svg.text(HEIGHT, title),
                new Picture.Table(
                        1,
                        List.of(Phrases.of("bend.hung"), Phrases.of("bend.hung.drop"), Phrases.of("bend.hung.tip")),
                        rows));
    }

    private static double drop(LoadDrop load) {
        Double drop = load.dropMm();
        return drop == null ? 0 : drop;
    }

    static Picture mass(List<Stretch> stretches, Outline outline, QuantityText units) {
        Svg svg = new Svg();
        double from = stretches.get(0).fromMm();
        double to = stretches.get(stretches.size() - 1).toMm();
        double most = stretches.stream()
                .mapToDouble(s -> s.blankG() + s.partsG())
                .max()
                .orElse(1);
        Axes axes = new Axes(to - from, round(most));
        axes.drawY(svg, Phrases.of("picture.mass.y"));
        for (Stretch s : stretches) {
            double x = axes.x(s.fromMm() - from);
            double width = axes.x(s.toMm() - from) - x;
            double blank = axes.y(s.blankG());
            double all = axes.y(s.blankG() + s.partsG());
            svg.box(x, blank, width, axes.y(0) - blank, Svg.PALE);
            svg.box(x, all, width, blank - all, "#6b6b6b");
        }
        for (double x = Math.ceil(from / 500) * 500; x <= to; x += 500) {
            svg.line(axes.x(x - from), axes.y(0), axes.x(x - from), axes.y(0) + 6, Svg.INK, 1);
            svg.words(axes.x(x - from), axes.y(0) + 26, "middle", Svg.INK, Svg.number(x));
        }
        svg.words(axes.x(axes.mostX()), axes.y(0) + 54, "end", Svg.INK, Phrases.of("picture.mass.x"));
        double balance = axes.x(outline.balanceMm() - from);
        svg.dashed(balance, axes.y(0), balance, TOP, Svg.ACCENT, 1.8);
        svg.words(balance + 8, TOP + 14, "start", Svg.ACCENT, Phrases.of("picture.rod.balance"));
        legend(svg);
        String title = Phrases.of("picture.mass");
        return new Picture("mass", title, svg.text(HEIGHT, title), massTable(stretches, units));
    }

    private static void legend(Svg svg) {
        double x = Svg.WIDTH - 200;
        svg.box(x, 56, 18, 18, "#6b6b6b").words(x + 26, 72, "start", Svg.INK, Phrases.of("picture.mass.parts"));
        svg.box(x, 82, 18, 18, Svg.PALE).words(x + 26, 98, "start", Svg.INK, Phrases.of("picture.mass.blank"));
    }

    private static Picture.Table massTable(List<Stretch> stretches, QuantityText units) {
        List<List<String>> rows = new ArrayList<>();
        for (Stretch s : stretches) {
            rows.add(List.of(
                    Phrases.of("picture.mass.stretch", Svg.number(s.fromMm()), units.partLength(s.toMm())),
                    units.fineMass(s.blankG()),
                    units.fineMass(s.partsG()),
                    units.fineMass(s.blankG() + s.partsG())));
        }
        return new Picture.Table(
                1,
                List.of(
                        Phrases.of("picture.mass.where"),
                        Phrases.of("picture.mass.blank"),
                        Phrases.of("picture.mass.parts"),
                        Phrases.of("picture.mass.both")),
                rows);
    }

    /** The next round number that leaves the axis four to ten steps. */
    private static double round(double most) {
        double step = step(most);
        return Math.ceil(most / step - 1e-9) * step;
    }

    private static double step(double most) {
        double power = Math.pow(10, Math.floor(Math.log10(most)));
        double share = most / power;
        return power * (share <= 2 ? 0.5 : share <= 5 ? 1 : 2);
    }

    private record Axes(double mostX, double mostY) {
        double x(double value) {
            return LEFT + value / mostX * (Svg.WIDTH - LEFT - RIGHT);
        }

        double y(double value) {
            return HEIGHT - BOTTOM - value / mostY * (HEIGHT - TOP - BOTTOM);
        }

        void draw(Svg svg, String titleX, String titleY) {
            drawY(svg, titleY);
            double step = step(mostX);
            for (double value = 0; value <= mostX + 1e-9; value += step) {
                svg.line(x(value), y(0), x(value), y(0) + 6, Svg.INK, 1);
                svg.words(x(value), y(0) + 26, "middle", Svg.INK, Svg.number(value));
            }
            svg.words(x(mostX), y(0) + 54, "end", Svg.INK, titleX);
        }

        void drawY(Svg svg, String title) {
            double step = step(mostY);
            for (double value = 0; value <= mostY + 1e-9; value += step) {
                svg.line(x(0), y(value), x(mostX), y(value), Svg.PALE, 1);
                svg.words(x(0) - 10, y(value) + 6, "end", Svg.INK, Svg.number(value));
            }
            svg.line(x(0), y(0), x(0), y(mostY), Svg.INK, 1.2);
            svg.line(x(0), y(0), x(mostX), y(0), Svg.INK, 1.2);
            svg.words(8, TOP - 20, "start", Svg.INK, title);
        }
    }
}
