package withy.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet;
import withy.app.BuildSheet.LabourLine;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.PartLine;
import withy.app.BuildSheet.Place;
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

    /** Smallest weight that is worth a line of its own, g. */
    private static final double WORTH_A_LINE_G = 0.05;

    private static final Page.Column[] PART_COLUMNS = {
        new Page.Column(16, false), new Page.Column(33, false), new Page.Column(18, true), new Page.Column(10, true)
    };

    private final Page page;
    private final List<String> titles;
    private final List<BuildSheet> builds;
    private final QuantityText units;
    private final Currency currency;
    private final SideBySide sides;
    private int label = FIGURE_LABEL;

    BuildsText(Page page, List<String> titles, List<BuildSheet> builds, QuantityText units) {
        this.page = page;
        this.titles = List.copyOf(titles);
        this.builds = List.copyOf(builds);
        this.units = units;
        this.currency = Currency.getInstance(builds.get(0).figures().currency());
        this.sides = new SideBySide(builds, units);
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
        row(
                Phrases.of("text.weight.parts"),
                cells(b -> units.fineMass(b.weight().partsG())));
        for (String what : materials()) {
            row(Phrases.of("text.material." + what), cells(b -> materialWeight(b, what)));
            for (String where : wheres(what)) {
                row("  " + Phrases.of("text.where." + where), cells(b -> placeWeight(b, what, where)));
            }
        }
        row(Phrases.of("text.weight.all"), cells(b -> units.fineMass(b.weight().totalG())));
    }

    private String materialWeight(BuildSheet build, String what) {
        MaterialLine line = material(build, what);
        return line == null ? "–" : units.fineMass(line.weightG());
    }

    private String placeWeight(BuildSheet build, String what, String where) {
        MaterialLine line = material(build, what);
        if (line != null) {
            for (Place place : line.ofWhich()) {
                if (place.where().equals(where)) {
                    return units.fineMass(place.weightG());
                }
            }
        }
        return "–";
    }

    /** Places of a material that lies at more than one. */
    private Set<String> wheres(String what) {
        Set<String> wheres = new LinkedHashSet<>();
        for (BuildSheet build : builds) {
            MaterialLine line = material(build, what);
            if (line != null && line.ofWhich().size() > 1) {
                line.ofWhich().stream()
                        .filter(p -> p.weightG() >= WORTH_A_LINE_G)
                        .forEach(p -> wheres.add(p.where()));
            }
        }
        return wheres;
    }

    private static @Nullable MaterialLine material(BuildSheet build, String what) {
        return build.materials().stream()
                .filter(m -> m.what().equals(what))
                .findFirst()
                .orElse(null);
    }

    private Set<String> materials() {
        Set<String> whats = new LinkedHashSet<>();
        builds.forEach(b -> b.materials().forEach(m -> whats.add(m.what())));
        return whats;
    }

    private void costs() {
        table(Phrases.of("text.costs", currency.getCurrencyCode()), PRICE_LABEL);
        row(Phrases.of("text.cost.parts"), cells(b -> amount(b.price().partsMinor())));
        for (String what : materials()) {
            row(Phrases.of("text.material." + what), cells(b -> materialPrice(b, what)));
        }
        row(Phrases.of("text.cost.sundries"), cells(b -> amount(b.price().sundriesMinor())));
        Set<String> operations = new LinkedHashSet<>();
        builds.forEach(b -> b.labour().forEach(l -> operations.add(l.operation())));
        row(Phrases.of("text.cost.labour"), cells(b -> amount(b.price().labourMinor())));
        row(Phrases.of("text.cost.minutes"), cells(b -> time(b.price().labourMinutes())));
        for (String operation : operations) {
            row("  " + operation, cells(b -> labour(b, operation)));
        }
        row(Phrases.of("text.cost.margin"), cells(b -> amount(b.price().marginMinor())));
        row(Phrases.of("text.cost.tax"), cells(b -> amount(b.price().taxMinor())));
        row(Phrases.of("text.price"), cells(b -> amount(b.price().totalMinor())));
    }

    private static String time(double minutes) {
        long whole = Math.round(minutes);
        return Phrases.of("text.time", whole / 60, String.format(Locale.ROOT, "%02d", whole % 60));
    }

    private String materialPrice(BuildSheet build, String what) {
        MaterialLine line = material(build, what);
        return line == null ? "–" : amount(line.priceMinor());
    }

    private String labour(BuildSheet build, String operation) {
        for (LabourLine line : build.labour()) {
            if (line.operation().equals(operation)) {
                return amount(line.priceMinor());
            }
        }
        return "–";
    }

    private void table(String title, int labelWidth) {
        label = labelWidth;
        page.gap();
        row(title, titles);
        page.rule();
    }

    private List<String> cells(Function<BuildSheet, String> cell) {
        return builds.stream().map(cell).toList();
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

    private String money(long minor) {
        return Money.print(minor, currency);
    }

    /** The amount without its code, which the heading tells. */
    private String amount(long minor) {
        String text = money(minor);
        return text.substring(0, text.indexOf(' '));
    }
}
