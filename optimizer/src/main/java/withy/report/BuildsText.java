package withy.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import withy.app.BuildSheet;
import withy.app.BuildSheet.PartLine;
import withy.explain.Phrases;
import withy.report.SideBySide.Group;
import withy.units.Money;
import withy.units.QuantityText;

/** One to three builds side by side: figures, where they differ, parts, weight and price line by line. */
final class BuildsText {
    /** Widths of the labels beside columns of figures, of prices, of names. */
    private static final int FIGURE_LABEL = 23;

    private static final int PRICE_LABEL = 26;
    private static final int NAME_LABEL = 16;

    private static final Page.Column[] PART_COLUMNS = {
        new Page.Column(16, false), new Page.Column(33, false), new Page.Column(18, true), new Page.Column(10, true)
    };

    private final Page page;
    private final List<String> titles;
    private final List<BuildSheet> builds;
    private final QuantityText units;
    private final Currency currency;
    private final SideBySide sides;
    private final LineByLine lines;
    private int label = FIGURE_LABEL;

    BuildsText(Page page, List<String> titles, List<BuildSheet> builds, QuantityText units) {
        this.page = page;
        this.titles = List.copyOf(titles);
        this.builds = List.copyOf(builds);
        this.units = units;
        this.currency = Currency.getInstance(builds.get(0).figures().currency());
        this.sides = new SideBySide(builds, units);
        this.lines = new LineByLine(builds, units);
    }

    /** All of it. */
    void write() {
        figures();
        differences();
        parts();
        weights();
        costs();
    }

    private void figures() {
        table(Phrases.of("text.figures"), FIGURE_LABEL);
        sides.figures().forEach(row -> row(row.label(), row.cells()));
    }

    /** Stations whose parts are not the same in all builds. */
    private void differences() {
        if (builds.size() > 1) {
            table(Phrases.of("text.differences"), NAME_LABEL);
            sides.differences().forEach(row -> row(row.label(), row.cells()));
        }
    }

    /** The first build in full, of the others what is not the same. */
    private void parts() {
        List<String> first = new ArrayList<>();
        for (int i = 0; i < builds.size(); i++) {
            BuildSheet build = builds.get(i);
            String key = i == 0 ? "text.parts" : "text.partsElse";
            page.heading(Phrases.of(key, titles.get(i), build.name(), titles.get(0)));
            for (Group group : SideBySide.groups(build)) {
                String what = group.label() + group.part().part() + SideBySide.cut(group.part(), units);
                if (i == 0) {
                    first.add(what);
                }
                if (i == 0 || !first.contains(what)) {
                    part(group);
                }
            }
        }
    }

    private void part(Group group) {
        PartLine part = group.part();
        String times = group.pieces() == 1 ? "" : group.pieces() + " × ";
        boolean byAmount = part.count() == 0;
        page.row(
                PART_COLUMNS,
                group.label(),
                part.name() + SideBySide.cut(part, units),
                byAmount ? "" : times + units.fineMass(part.unitWeightG()),
                byAmount ? "" : times + amount(part.priceMinor()));
    }

    private void weights() {
        table(Phrases.of("text.weights"), FIGURE_LABEL);
        lines.weights().forEach(row -> row(row.label(), row.cells()));
    }

    private void costs() {
        table(Phrases.of("text.costs", currency.getCurrencyCode()), PRICE_LABEL);
        lines.costs().forEach(row -> row(row.label(), row.cells()));
    }

    private void table(String title, int labelWidth) {
        label = labelWidth;
        page.gap();
        row(title, titles);
        page.rule();
    }

    /** Names stand at the left of their column, figures at the right. */
    private void row(String title, List<String> cells) {
        int width = Math.min(30, (Page.WIDTH - label) / cells.size() - 1);
        Page.Column[] columns = new Page.Column[cells.size() + 1];
        String[] texts = new String[columns.length];
        columns[0] = new Page.Column(label, false);
        texts[0] = title;
        for (int i = 0; i < cells.size(); i++) {
            columns[i + 1] = new Page.Column(width, label != NAME_LABEL);
            texts[i + 1] = cells.get(i);
        }
        page.row(columns, texts);
    }

    /** The amount without its code, which the heading tells. */
    private String amount(long minor) {
        String text = Money.print(minor, currency);
        return text.substring(0, text.indexOf(' '));
    }
}
