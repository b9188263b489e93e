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
import withy.app.BuildSheet.Place;
import withy.explain.Phrases;
import withy.report.SideBySide.Row;
import withy.units.Money;
import withy.units.QuantityText;

/** How weight and price of one to three builds come about, line by line. The same for terminal and page. */
public final class LineByLine {
    /** Smallest weight that is worth a line of its own, g: what is less reads as nothing. */
    private static final double WORTH_A_LINE_G = 0.005;

    /** Before the label of a line that is part of the one above it. */
    private static final String OF_WHICH = "  ";

    private final List<BuildSheet> builds;
    private final QuantityText units;
    private final Currency currency;

    public LineByLine(List<BuildSheet> builds, QuantityText units) {
        this.builds = List.copyOf(builds);
        this.units = units;
        this.currency = Currency.getInstance(builds.get(0).figures().currency());
    }

    /** Parts, then each material and where it lies, then the whole rod; the label of what is part of another line is indented. */
    public List<Row> weights() {
        List<Row> rows = new ArrayList<>();
        add(
                rows,
                Phrases.of("text.weight.parts"),
                b -> units.fineMass(b.weight().partsG()));
        for (String what : materials()) {
            add(rows, Phrases.of("text.material." + what), b -> materialWeight(b, what));
            for (String where : wheres(what)) {
                add(rows, OF_WHICH + Phrases.of("text.where." + where), b -> placeWeight(b, what, where));
            }
        }
        add(rows, Phrases.of("text.weight.all"), b -> units.fineMass(b.weight().totalG()));
        return rows;
    }

    /** Parts, materials, sundries, work, margin and tax, then what the customer pays; amounts without the currency's code. */
    public List<Row> costs() {
        List<Row> rows = new ArrayList<>();
        add(rows, Phrases.of("text.cost.parts"), b -> amount(b.price().partsMinor()));
        for (String what : materials()) {
            add(rows, Phrases.of("text.material." + what), b -> materialPrice(b, what));
        }
        add(rows, Phrases.of("text.cost.sundries"), b -> amount(b.price().sundriesMinor()));
        Set<String> operations = new LinkedHashSet<>();
        builds.forEach(b -> b.labour().forEach(l -> operations.add(l.operation())));
        add(rows, Phrases.of("text.cost.labour"), b -> amount(b.price().labourMinor()));
        add(rows, Phrases.of("text.cost.minutes"), b -> time(b.price().labourMinutes()));
        for (String operation : operations) {
            add(rows, OF_WHICH + operation, b -> labour(b, operation));
        }
        add(rows, Phrases.of("text.cost.margin"), b -> amount(b.price().marginMinor()));
        add(rows, Phrases.of("text.cost.tax"), b -> amount(b.price().taxMinor()));
        add(rows, Phrases.of("text.price"), b -> amount(b.price().totalMinor()));
        return rows;
    }

    private void add(List<Row> rows, String label, Function<BuildSheet, String> cell) {
        rows.add(new Row("", label, builds.stream().map(cell).toList()));
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

    /** The amount without its code, which the heading tells. */
    private String amount(long minor) {
        String text = Money.print(minor, currency);
        return text.substring(0, text.indexOf(' '));
    }
}
