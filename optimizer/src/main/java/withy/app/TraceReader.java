package withy.app;

import java.util.ArrayList;
import java.util.List;
import withy.mechanics.TraceFit;

/**
 * Reads traced points: a line each, two numbers parted by a comma, a semicolon or space: ahead of and below where the blank is held. A first
 * line of words is a heading. Every fault comes in one list with its line.
 */
public final class TraceReader {
    private static final int MOST_POINTS = 500;
    private static final double FARTHEST = 1e6;

    private TraceReader() {}

    /**
     * What came of reading.
     *
     * @param points in the order of the text; empty where there is a fault
     * @param faults each two lines: what is wrong and what is allowed, then a suggestion
     */
    public record Reading(List<TraceFit.Point> points, List<String> faults) {
        public Reading {
            points = List.copyOf(points);
            faults = List.copyOf(faults);
        }
    }

    /** Reads a text. */
    public static Reading read(String text) {
        List<TraceFit.Point> points = new ArrayList<>();
        List<String> faults = new ArrayList<>();
        List<String> lines = text.lines().toList();
        for (int i = 0; i < lines.size(); i++) {
            String line = lines.get(i).strip();
            boolean heading = i == 0 && line.matches("[^0-9]*");
            if (!line.isEmpty() && !heading) {
                point(line, i + 1, points, faults);
            }
        }
        if (faults.isEmpty() && (points.size() < 4 || points.size() > MOST_POINTS)) {
            faults.add("trace: " + points.size() + " points; allowed are 4 to " + MOST_POINTS
                    + ".\nMaybe trace a point every tenth of the blank.");
        }
        return faults.isEmpty() ? new Reading(points, faults) : new Reading(List.of(), faults);
    }

    private static void point(String line, int number, List<TraceFit.Point> points, List<String> faults) {
        String[] cells = line.split("\\s*[;,\\t ]\\s*");
        if (cells.length == 2 && isNumber(cells[0]) && isNumber(cells[1])) {
            points.add(new TraceFit.Point(Double.parseDouble(cells[0]), Double.parseDouble(cells[1])));
            return;
        }
        String shown = line.replaceAll("\\p{Cntrl}", " ");
        faults.add("trace (line " + number + "): " + (shown.length() > 40 ? shown.substring(0, 39) + "…" : shown)
                + "; allowed are two numbers with a decimal point, ahead and down, such as 120.5, 14.\n"
                + "Maybe a comma stands for the decimal point.");
    }

    private static boolean isNumber(String cell) {
        return cell.matches("[-+]?\\d{1,7}(\\.\\d{1,6})?") && Math.abs(Double.parseDouble(cell)) <= FARTHEST;
    }
}
