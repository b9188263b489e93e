package withy.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.LabourLine;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.PartLine;
import withy.app.BuildSheet.Place;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** One to three builds side by side: figures, where they differ, parts, weight and price line by line. */
final class BuildsText {
    private static final int LABEL = 21;

    private final Page page;
    private final List<String> titles;
    private final List<BuildSheet> builds;
    private final QuantityText units;
    private final Currency currency;

    BuildsText(Page page, List<String> titles, List<BuildSheet> builds, QuantityText units) {
        this.page = page;
        this.titles = List.copyOf(titles);
        this.builds = List.copyOf(builds);
        this.units = units;
        this.currency = Currency.getInstance(builds.get(0).figures().currency());
    }

    /** All of it. */
    void write() {
        figures();
        differences();
        for (int i = 0; i < builds.size(); i++) {
            parts(titles.get(i), builds.get(i));
        }
        weights();
        costs();
    }

    private void figures() {
        table(Phrases.of("text.figures"));
        row("text.price", f -> money(f.priceMinor()));
        row("text.weight", f -> units.mass(f.weightG()));
        row("text.tolerance", f -> "± " + units.mass(f.weightToleranceG()));
        row("text.balance", f -> ahead(f.balanceFromReelFootMm()));
        if (any(f -> f.balanceOutsideZoneNmm() > 0)) {
            row("text.outside", f -> units.moment(f.balanceOutsideZoneNmm()));
        }
        row("text.tipHeavy", f -> units.moment(f.tipHeavyNmm()));
        if (any(f -> f.counterweightG() > 0)) {
            row("text.counterweight", f -> units.mass(f.counterweightG()));
        }
        row("text.swingWeight", f -> units.inertia(f.swingWeightKgM2()));
        row("text.style", f -> Phrases.of("text.points", String.format(Locale.ROOT, "%.0f", f.style())));
        row("text.durability", f -> durability(f.durabilityMargin()));
        row("text.length", f -> units.rodLength(f.finishedLengthMm()));
        row("text.packed", f -> units.rodLength(f.packedLengthMm()));
        row("text.reach", f -> units.partLength(f.reelToButtMm()));
    }

    private String ahead(double mm) {
        String key = mm < 0 ? "text.behind" : "text.ahead";
        return Phrases.of(key, units.partLength(Math.rint(Math.abs(mm))));
    }

    private static String durability(int margin) {
        return margin == 0
                ? Phrases.of("text.asAsked")
                : Phrases.of(margin < 0 ? "text.classesBelow" : "text.classesAbove", Math.abs(margin));
    }

    private boolean any(java.util.function.Predicate<FigureLines> test) {
        return builds.stream().anyMatch(b -> test.test(b.figures()));
    }

    /** Stations whose parts are not the same in all builds. */
    private void differences() {
        if (builds.size() < 2) {
            return;
        }
        Map<String, List<String>> rows = new LinkedHashMap<>();
        for (String place : places()) {
            List<String> cells = builds.stream().map(b -> names(b, place)).toList();
            if (new LinkedHashSet<>(cells).size() > 1) {
                rows.put(place, cells);
            }
        }
        table(Phrases.of("text.differences"), false);
        row(Phrases.of("text.handle"), builds.stream().map(BuildsText::handle).toList(), false);
        rows.forEach((place, cells) -> row(Phrases.of("station." + place), cells, false));
    }

    private static String handle(BuildSheet build) {
        return Phrases.of(
                "text.handleOf",
                Phrases.of("build.handle." + build.layout().handle()),
                build.layout().guideCount());
    }

    private Set<String> places() {
        Set<String> places = new LinkedHashSet<>();
        builds.forEach(b -> b.parts().forEach(p -> places.add(place(p))));
        return places;
    }

    private static String place(PartLine part) {
        return part.station().startsWith("guide-") ? "guide" : part.station();
    }

    private static String names(BuildSheet build, String place) {
        List<String> names = new ArrayList<>();
        for (Group group : groups(build)) {
            if (place(group.part()).equals(place)) {
                names.add(
                        group.span().isEmpty()
                                ? group.part().name()
                                : group.span() + " " + group.part().name());
            }
        }
        return names.isEmpty() ? "–" : String.join("; ", names);
    }

    /** Neighbouring guides of one kind, or a single part. */
    private record Group(PartLine part, int first, int last) {
        String span() {
            return first == 0 ? "" : first == last ? Integer.toString(first) : first + "–" + last;
        }
    }

    private static List<Group> groups(BuildSheet build) {
        List<Group> groups = new ArrayList<>();
        for (PartLine part : build.parts()) {
            int number = place(part).equals("guide")
                    ? Integer.parseInt(part.station().substring("guide-".length()))
                    : 0;
            Group last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
            if (last != null && number > 1 && last.part().part().equals(part.part())) {
                groups.set(groups.size() - 1, new Group(last.part(), last.first(), number));
            } else {
                groups.add(new Group(part, number, number));
            }
        }
        return groups;
    }

    private void parts(String title, BuildSheet build) {
        page.heading(Phrases.of("text.parts", title, build.name()));
        Page.Column[] columns = {
            new Page.Column(16, false), new Page.Column(35, false), new Page.Column(14, true), new Page.Column(12, true)
        };
        for (Group group : groups(build)) {
            PartLine part = group.part();
            String times = group.first() == group.last() ? "" : (group.last() - group.first() + 1) + " × ";
            String place = Phrases.of("station." + place(part)) + (group.span().isEmpty() ? "" : " " + group.span());
            boolean byAmount = part.count() == 0;
            page.row(
                    columns,
                    place,
                    part.name() + length(part),
                    byAmount ? "" : times + units.fineMass(part.unitWeightG()),
                    byAmount ? "" : times + amount(part.priceMinor()));
        }
    }

    private String length(PartLine part) {
        Double length = part.lengthMm();
        return part.kind().equals("grip") && length != null ? Phrases.of("text.cutTo", units.partLength(length)) : "";
    }

    private void weights() {
        table(Phrases.of("text.weights"));
        row(
                Phrases.of("text.weight.parts"),
                cells(b -> units.fineMass(b.weight().partsG())),
                true);
        for (String what : materials()) {
            row(Phrases.of("text.material." + what), cells(b -> materialWeight(b, what)), true);
            for (String where : wheres(what)) {
                row("  " + Phrases.of("text.where." + where), cells(b -> placeWeight(b, what, where)), true);
            }
        }
        row(Phrases.of("text.weight.all"), cells(b -> units.fineMass(b.weight().totalG())), true);
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
                line.ofWhich().forEach(p -> wheres.add(p.where()));
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
        table(Phrases.of("text.costs", currency.getCurrencyCode()));
        row(Phrases.of("text.cost.parts"), cells(b -> amount(b.price().partsMinor())), true);
        for (String what : materials()) {
            row(Phrases.of("text.material." + what), cells(b -> materialPrice(b, what)), true);
        }
        row(Phrases.of("text.cost.sundries"), cells(b -> amount(b.price().sundriesMinor())), true);
        Set<String> operations = new LinkedHashSet<>();
        builds.forEach(b -> b.labour().forEach(l -> operations.add(l.operation())));
        row(Phrases.of("text.cost.labour"), cells(b -> amount(b.price().labourMinor())), true);
        for (String operation : operations) {
            row("  " + operation, cells(b -> labour(b, operation)), true);
        }
        row(Phrases.of("text.cost.margin"), cells(b -> amount(b.price().marginMinor())), true);
        row(Phrases.of("text.cost.tax"), cells(b -> amount(b.price().taxMinor())), true);
        row(Phrases.of("text.price"), cells(b -> amount(b.price().totalMinor())), true);
    }

    private String materialPrice(BuildSheet build, String what) {
        MaterialLine line = material(build, what);
        return line == null ? "–" : amount(line.priceMinor());
    }

    private String labour(BuildSheet build, String operation) {
        for (LabourLine line : build.labour()) {
            if (line.operation().equals(operation)) {
                String minutes = String.format(Locale.ROOT, "%.0f", line.minutes());
                return Phrases.of("text.minutes", minutes, amount(line.priceMinor()));
            }
        }
        return "–";
    }

    private void table(String title) {
        table(title, true);
    }

    private void table(String title, boolean right) {
        page.gap();
        row(title, titles, right);
        page.rule();
    }

    private void row(String key, Function<FigureLines, String> cell) {
        row(Phrases.of(key), cells(b -> cell.apply(b.figures())), true);
    }

    private List<String> cells(Function<BuildSheet, String> cell) {
        return builds.stream().map(cell).toList();
    }

    private void row(String label, List<String> cells, boolean right) {
        int width = Math.min(28, (Page.WIDTH - LABEL) / cells.size() - 1);
        int first = cells.size() < 3 ? LABEL + 6 : LABEL;
        Page.Column[] columns = new Page.Column[cells.size() + 1];
        String[] texts = new String[columns.length];
        columns[0] = new Page.Column(first, false);
        texts[0] = label;
        for (int i = 0; i < cells.size(); i++) {
            columns[i + 1] = new Page.Column(cells.size() < 3 ? Math.min(width, 25) : width, right);
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
