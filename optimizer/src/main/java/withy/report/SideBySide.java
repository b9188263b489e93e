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
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.PartLine;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** One to three builds side by side in words: figures, where they differ, parts in groups. The same for terminal and page. */
public final class SideBySide {
    /** A moment from here on is not told as nought, N·mm. */
    private static final double LEAST_TOLD_NMM = 0.5;

    private final List<BuildSheet> builds;
    private final QuantityText units;
    private final Currency currency;

    public SideBySide(List<BuildSheet> builds, QuantityText units) {
        this.builds = List.copyOf(builds);
        this.units = units;
        this.currency = Currency.getInstance(builds.get(0).figures().currency());
    }

    /**
     * One line of a table.
     *
     * @param key what it is about: key of its label, or the place
     * @param label its words
     * @param cells one a build
     */
    public record Row(String key, String label, List<String> cells) {
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /**
     * A single part, or neighbouring guides of one kind.
     *
     * @param part the part, of several the first
     * @param first number of the first guide, 0 where it is none
     * @param last number of the last guide
     */
    public record Group(PartLine part, int first, int last) {
        /** Numbers of its guides; empty where it is none. */
        public String span() {
            return first == 0 ? "" : first == last ? Integer.toString(first) : first + "–" + last;
        }

        /** How many pieces. */
        public int pieces() {
            return last - first + 1;
        }

        /** Place of the rod in words, with the numbers of guides. */
        public String label() {
            return Phrases.of("station." + place(part)) + (first == 0 ? "" : " " + span());
        }
    }

    /** What a builder reads of each rod. */
    public List<Row> figures() {
        List<Row> rows = new ArrayList<>();
        add(rows, "text.price", f -> Money.print(f.priceMinor(), currency));
        add(rows, "text.weight", f -> units.mass(f.weightG()));
        add(rows, "text.tolerance", f -> "± " + units.mass(f.weightToleranceG()));
        add(rows, "text.balance", f -> ahead(f.balanceFromReelFootMm()));
        if (any(FigureLines::outside)) {
            add(
                    rows,
                    "text.outside",
                    f -> f.outside() ? units.moment(f.balanceOutsideZoneNmm()) : Phrases.of("text.inside"));
        }
        add(rows, "text.tipHeavy", f -> units.moment(f.tipHeavyNmm()));
        if (any(FigureLines::cured)) {
            add(rows, "text.counterweight", f -> f.cured() ? units.mass(f.counterweightG()) : "–");
        }
        add(rows, "text.swingWeight", f -> units.inertia(f.swingWeightKgM2()));
        add(rows, "text.style", f -> Phrases.of("text.points", String.format(Locale.ROOT, "%.0f", f.style())));
        add(rows, "text.durability", f -> durability(f.durabilityMargin()));
        add(rows, "text.length", f -> units.rodLength(f.finishedLengthMm()));
        add(rows, "text.packed", f -> units.rodLength(f.packedLengthMm()));
        add(rows, "text.reach", f -> units.partLength(f.reelToButtMm()));
        return rows;
    }

    private void add(List<Row> rows, String key, Function<FigureLines, String> cell) {
        rows.add(new Row(
                key,
                Phrases.of(key),
                builds.stream().map(b -> cell.apply(b.figures())).toList()));
    }

    /** Where a rod balances, in words. */
    public String ahead(double mm) {
        String key = mm < 0 ? "text.behind" : "text.ahead";
        return Phrases.of(key, units.partLength(Math.rint(Math.abs(mm))));
    }

    private static String durability(int margin) {
        return margin == 0
                ? Phrases.of("text.asAsked")
                : Phrases.of(margin < 0 ? "text.classesBelow" : "text.classesAbove", Math.abs(margin));
    }

    private boolean any(Predicate<FigureLines> test) {
        return builds.stream().anyMatch(b -> test.test(b.figures()));
    }

    /** The handle, then stations whose parts are not the same in all builds; empty of a single build. */
    public List<Row> differences() {
        List<Row> rows = new ArrayList<>();
        if (builds.size() < 2) {
            return rows;
        }
        rows.add(new Row(
                "handle",
                Phrases.of("text.handle"),
                builds.stream().map(SideBySide::handle).toList()));
        for (String place : places()) {
            List<String> cells = builds.stream().map(b -> names(b, place)).toList();
            if (new LinkedHashSet<>(cells).size() > 1) {
                rows.add(new Row(place, Phrases.of("station." + place), cells));
            }
        }
        return rows;
    }

    private static String handle(BuildSheet build) {
        return Phrases.of(
                "text.handleOf",
                Phrases.of("build.handle." + build.layout().handle()),
                build.layout().guideCount());
    }

    private Set<String> places() {
        Set<String> places = new LinkedHashSet<>();
        builds.forEach(b -> groups(b).forEach(g -> places.add(place(g.part()))));
        return places;
    }

    /** The place of a part, all guides being one. */
    public static String place(PartLine part) {
        return place(part.station());
    }

    /** The place of a station, all guides being one. */
    public static String place(String station) {
        return station.startsWith("guide-") ? "guide" : station;
    }

    /** Parts of a place; of guides the words that all their names begin with are told once. */
    private static String names(BuildSheet build, String place) {
        List<Group> groups = groups(build).stream()
                .filter(group -> place(group.part()).equals(place))
                .toList();
        if (groups.isEmpty()) {
            return "–";
        }
        String family = groups.size() > 1 && groups.get(0).first() > 0 ? family(groups) : "";
        List<String> names = new ArrayList<>();
        for (Group group : groups) {
            String name = group.part().name().substring(family.length());
            names.add(
                    group.span().isEmpty()
                            ? name
                            : family.isEmpty() ? group.span() + ": " + name : group.span() + " " + name);
        }
        return family.isEmpty() ? String.join("; ", names) : family.strip() + ": " + String.join(", ", names);
    }

    /** The words that the names of all begin with, with the blank behind them; empty where there are none. */
    private static String family(List<Group> groups) {
        String family = groups.get(0).part().name();
        for (Group group : groups) {
            while (!group.part().name().startsWith(family)
                    || group.part().name().equals(family)) {
                int cut = family.stripTrailing().lastIndexOf(' ');
                family = family.substring(0, cut + 1);
                if (family.isEmpty()) {
                    return "";
                }
            }
        }
        return family;
    }

    /** A build's parts, the blank first: it is what a builder picks first. */
    public static List<Group> groups(BuildSheet build) {
        List<Group> groups = new ArrayList<>();
        for (PartLine part : build.parts()) {
            int number = place(part).equals("guide")
                    ? Integer.parseInt(part.station().substring("guide-".length()))
                    : 0;
            Group last = groups.isEmpty() ? null : groups.get(groups.size() - 1);
            if (last != null && number > 1 && last.part().part().equals(part.part())) {
                groups.set(groups.size() - 1, new Group(last.part(), last.first(), number));
            } else {
                groups.add(part.station().equals("blank") ? 0 : groups.size(), new Group(part, number, number));
            }
        }
        return groups;
    }

    /** Length a grip is cut to, in words; empty of any other part. */
    public static String cut(PartLine part, QuantityText units) {
        Double length = part.lengthMm();
        return part.kind().equals("grip") && length != null ? Phrases.of("text.cutTo", units.partLength(length)) : "";
    }

    /** Warnings with the numbers of the builds they are about; no number where they are about all. */
    public Map<String, List<Integer>> warnings() {
        Map<String, List<Integer>> byWarning = new LinkedHashMap<>();
        for (BuildSheet build : builds) {
            for (String warning : build.warnings()) {
                byWarning.computeIfAbsent(warning, key -> new ArrayList<>()).add(build.rank());
            }
        }
        byWarning.replaceAll((warning, ranks) -> ranks.size() == builds.size() ? List.of() : ranks);
        return byWarning;
    }

    /** What is known of how good a build is, in a sentence; null where nothing is. */
    public static @Nullable String proof(BuildSheet build) {
        BuildSheet.ProofLine proof = build.proof();
        if (proof == null) {
            return null;
        }
        return proof.proven()
                ? Phrases.of("text.proof." + (build.rank() == 1 ? "first" : "other"))
                : Phrases.of("text.proof.gap", String.format(Locale.ROOT, "%.2f", proof.gap()));
    }
}
