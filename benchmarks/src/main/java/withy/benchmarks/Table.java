package withy.benchmarks;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** A Markdown table; the first column is text, the others numbers unless told otherwise. */
final class Table {
    private final List<String> head;
    private final List<List<String>> rows = new ArrayList<>();

    Table(String... head) {
        this.head = List.of(head);
    }

    Table row(String... cells) {
        if (cells.length != head.size()) {
            throw new IllegalArgumentException(cells.length + " cells under " + head + ".\nMaybe one is missing.");
        }
        rows.add(List.of(cells));
        return this;
    }

    boolean isEmpty() {
        return rows.isEmpty();
    }

    String text() {
        StringBuilder text = new StringBuilder(line(head))
                .append("| ---")
                .append(" | ---:".repeat(head.size() - 1))
                .append(" |\n");
        rows.forEach(row -> text.append(line(row)));
        return text.append('\n').toString();
    }

    private static String line(List<String> cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }

    /** Three figures or so. */
    static String number(double value) {
        double size = Math.abs(value);
        String format = size >= 1000
                ? "%,.0f"
                : size >= 100 ? "%.0f" : size >= 10 ? "%.1f" : size >= 1 || size == 0 ? "%.2f" : "%.3f";
        return String.format(Locale.ROOT, format, value);
    }
}
