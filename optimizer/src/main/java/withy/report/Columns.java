package withy.report;

import java.util.ArrayList;
import java.util.List;
import withy.explain.Phrases;

/** Columns of a table on paper, left to right, each with its share of the width. */
final class Columns {
    private final List<Column> all = new ArrayList<>();

    /**
     * One.
     *
     * @param head words over it
     * @param percent of the width
     * @param style class in the style sheet: word, number or tick
     */
    record Column(String head, int percent, String style) {}

    Columns word(String key, int percent) {
        return add(key, percent, "word");
    }

    Columns number(String key, int percent) {
        return add(key, percent, "number");
    }

    /** A narrow one that is ticked off by hand. */
    Columns tick(String key, int percent) {
        return add(key, percent, "tick");
    }

    private Columns add(String key, int percent, String style) {
        all.add(new Column(Phrases.of("paper.head." + key), percent, style));
        return this;
    }

    /** All of them; together as wide as the sheet allows. */
    List<Column> all() {
        int percent = all.stream().mapToInt(Column::percent).sum();
        if (percent != 100) {
            throw new IllegalStateException("columns take " + percent + " % of the width");
        }
        return List.copyOf(all);
    }
}
