package withy.web;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import withy.app.BuildSheet;
import withy.app.BuildSheet.TradeOffLine;
import withy.explain.Phrases;
import withy.report.SideBySide;
import withy.web.BuildsView.Cell;
import withy.web.BuildsView.Line;

/** Builds against each other, as lines of tables. */
final class Beside {
    /** Objective behind a row of figures, so that ties can be told. */
    private static final Map<String, String> OBJECTIVES = Map.of(
            "text.price", "price",
            "text.weight", "weight",
            "text.outside", "balance",
            "text.swingWeight", "swingWeight",
            "text.style", "style",
            "text.durability", "durability");

    private Beside() {}

    /** Which parts are others than in the first, or empty. */
    static String other(SideBySide sides, int at) {
        List<String> places = differences(sides).stream()
                .filter(line -> line.cells().get(at).mark().equals("other"))
                .map(line -> line.label().toLowerCase(Locale.ROOT))
                .map(place -> place.equals(Phrases.of("station.guide")) ? Words.say("builds.guides") : place)
                .toList();
        return places.isEmpty() ? "" : Words.say("builds.other", Phrases.list(places));
    }

    /** Where they differ, and what is other than in the first. */
    static List<Line> differences(SideBySide sides) {
        return sides.differences().stream()
                .filter(row -> row.cells().stream().distinct().count() > 1)
                .map(row -> new Line(
                        Phrases.sentence(row.label()),
                        row.cells().stream()
                                .map(cell ->
                                        new Cell(cell, cell.equals(row.cells().get(0)) ? "" : "other"))
                                .toList()))
                .toList();
    }

    /** What a builder reads of each, and what is no different worth noticing from the first. */
    static List<Line> figures(SideBySide sides, List<BuildSheet> builds) {
        List<Line> lines = new ArrayList<>();
        for (SideBySide.Row row : sides.figures()) {
            String objective = OBJECTIVES.get(row.key());
            List<Cell> cells = new ArrayList<>();
            for (int i = 0; i < builds.size(); i++) {
                boolean tie = i > 0 && objective != null && tied(builds.get(i), objective);
                cells.add(new Cell(row.cells().get(i), tie ? "tie" : ""));
            }
            lines.add(new Line(Phrases.sentence(row.label().strip()), cells));
        }
        return lines;
    }

    /** Lines of figures as they are. */
    static List<Line> plain(List<SideBySide.Row> rows) {
        return rows.stream()
                .map(row -> new Line(
                        Phrases.sentence(row.label().strip()),
                        row.cells().stream().map(cell -> new Cell(cell, "")).toList(),
                        row.label().startsWith(" ")))
                .toList();
    }

    private static boolean tied(BuildSheet build, String objective) {
        for (TradeOffLine line : build.tradeOffs()) {
            if (line.against() == 1 && line.objective().equals(objective)) {
                return !line.noticeable();
            }
        }
        return false;
    }
}
