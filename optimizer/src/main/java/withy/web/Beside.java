package withy.web;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongFunction;
import withy.app.BuildSheet;
import withy.app.BuildSheet.TradeOffLine;
import withy.explain.Phrases;
import withy.report.SideBySide;
import withy.web.BuildsView.Cell;
import withy.web.BuildsView.Line;
import withy.web.BuildsView.Meaning;

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

    private static final String GUIDE = "guide";

    private Beside() {}

    /** Which parts are others than in the first, or empty. */
    static String other(SideBySide sides, int at) {
        List<String> places = differences(sides).stream()
                .filter(line -> line.cells().get(at).mark().equals("other"))
                .map(line -> line.label().toLowerCase(Locale.ROOT))
                .toList();
        return places.isEmpty() ? "" : Words.say("builds.other", Phrases.list(places));
    }

    /** Where they differ, and what is other than in the first. */
    static List<Line> differences(SideBySide sides) {
        return sides.differences().stream()
                .filter(row -> row.cells().stream().distinct().count() > 1)
                .map(row -> new Line(
                        Phrases.sentence(row.key().equals(GUIDE) ? Words.say("builds.guides") : row.label()),
                        row.cells().stream()
                                .map(cell ->
                                        new Cell(cell, cell.equals(row.cells().get(0)) ? "" : "other"))
                                .toList()))
                .toList();
    }

    /** What each figure that is shown means. */
    static List<Meaning> meanings(SideBySide sides) {
        return sides.figures().stream()
                .map(row -> new Meaning(
                        Phrases.sentence(row.label().strip()),
                        Words.say("means." + row.key().substring("text.".length()))))
                .toList();
    }

    /** What the shop pays for the parts of each, all guides together. */
    static List<Line> bought(List<BuildSheet> builds, LongFunction<String> money) {
        Map<String, long[]> sums = new LinkedHashMap<>();
        for (int i = 0; i < builds.size(); i++) {
            for (SideBySide.Group group : SideBySide.groups(builds.get(i))) {
                if (group.part().count() > 0) {
                    sums.computeIfAbsent(SideBySide.place(group.part()), place -> new long[builds.size()])[i] +=
                            group.part().priceMinor() * group.pieces();
                }
            }
        }
        List<Line> lines = new ArrayList<>();
        sums.forEach((place, sum) -> lines.add(new Line(
                Phrases.sentence(place.equals(GUIDE) ? Words.say("builds.guides") : Phrases.of("station." + place)),
                Arrays.stream(sum)
                        .mapToObj(minor -> new Cell(minor == 0 ? "–" : money.apply(minor), ""))
                        .toList())));
        return lines;
    }

    /** What a builder reads of each, and what is no different worth noticing from the first. */
    static List<Line> figures(SideBySide sides, List<BuildSheet> builds) {
        List<Line> lines = new ArrayList<>();
        for (SideBySide.Row row : sides.figures()) {
            String objective = OBJECTIVES.get(row.key());
            List<Cell> cells = new ArrayList<>();
            for (int i = 0; i < builds.size(); i++) {
                boolean told = row.cells().get(i).equals(row.cells().get(0));
                boolean tie = i > 0 && objective != null && !told && tied(builds.get(i), objective);
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
                        row.label().startsWith(" "),
                        ""))
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
