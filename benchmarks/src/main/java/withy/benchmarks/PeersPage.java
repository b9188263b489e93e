package withy.benchmarks;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** The peers' part of the page. */
final class PeersPage {
    private PeersPage() {}

    static String text(List<Peers.Line> lines) {
        StringBuilder text = new StringBuilder();
        text.append("\n## Against a builder's habit and a restarted greedy, curated catalogue\n\n")
                .append("Same rules, same score, one thread each, seed " + Peers.SEED
                        + "; gap = steps above the proven best")
                .append(
                        " (one step is the least difference worth noticing at mean priority). The habit takes the best part")
                .append(" station by station and takes nothing back.\n")
                .append(
                        "Not run, since not yet set up: the engine alone on a plain slot model, CP-SAT and Choco for all")
                .append(" layouts, NSGA-II. Scenarios without a legal build or without a proof in time are left out: ")
                .append(lines.size() + " are told.\n\n");
        if (lines.isEmpty()) {
            return text.append("No scenario was proven in time.\n").toString();
        }
        summary(text, lines);
        List<String> names = lines.get(0).picks().stream().map(Peers.Pick::peer).toList();
        text.append("\n| scenario | proven best | ms | " + String.join(" | ", names) + " |\n")
                .append("| --- | ---: | ---: |" + " ---: |".repeat(names.size()) + "\n");
        for (Peers.Line line : lines) {
            text.append("| " + line.scenario() + " | " + number(line.best()) + " | " + number(line.bestMs()) + " | ")
                    .append(line.picks().stream().map(PeersPage::cell).collect(Collectors.joining(" | ")))
                    .append(" |\n");
        }
        return text.toString();
    }

    private static void summary(StringBuilder text, List<Peers.Line> lines) {
        Map<String, List<Double>> gaps = new LinkedHashMap<>();
        for (Peers.Line line : lines) {
            for (Peers.Pick pick : line.picks()) {
                List<Double> known = gaps.computeIfAbsent(pick.peer(), name -> new ArrayList<>());
                if (pick.gap() != null) {
                    known.add(pick.gap());
                }
            }
        }
        text.append("| peer | legal | median gap, steps | largest gap |\n| --- | ---: | ---: | ---: |\n");
        gaps.forEach((peer, known) -> {
            text.append("| " + peer + " | " + known.size() + " of " + lines.size() + " | ");
            text.append(
                    known.isEmpty()
                            ? "none | none |\n"
                            : number(Spread.of(known).medianMs()) + " | "
                                    + number(Spread.of(known).mostMs()) + " |\n");
        });
    }

    private static String cell(Peers.Pick pick) {
        if (pick.gap() != null) {
            return number(pick.gap());
        }
        return Double.isNaN(pick.weightG()) ? "no build" : "illegal";
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
