package withy.report;

import java.util.List;

/**
 * A drawing with its figures beside it.
 *
 * @param key short name, also the name of its file: rod, working, static, loads, mass
 * @param title a few words
 * @param svg the whole drawing: one svg element of its own size, scaled to whatever width it is given
 * @param table the figures
 */
public record Picture(String key, String title, String svg, Table table) {

    /** Height of the drawing in its own units. */
    double height() {
        String box = svg.substring(svg.indexOf("viewBox=\"") + "viewBox=\"".length());
        String[] sides = box.substring(0, box.indexOf('"')).split(" ", -1);
        return Double.parseDouble(sides[3]);
    }

    /**
     * Figures.
     *
     * @param words how many columns from the left are words; the others are numbers
     * @param heads one a column
     * @param rows as many cells as heads
     */
    public record Table(int words, List<String> heads, List<List<String>> rows) {
        public Table {
            heads = List.copyOf(heads);
            rows = rows.stream().map(List::copyOf).toList();
        }
    }
}
