package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.shop.Experience;
import withy.shop.Scale;
import withy.shop.Shop;
import withy.shop.Weights;

/**
 * What {@code weigh} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param piece number of the piece that was weighed: {@code part#7}; null where nothing was
 * @param weightG what the scale said, g, or null
 * @param parts parts weighed: the one, or all
 * @param drift how far scale and lists differ, by maker and kind; empty where one piece was weighed
 * @param kinds how far listed weights are off by kind, and what their ± is worth
 * @param rods the same of finished rods; null where there are none
 */
public record WeighAnswer(
        int schema,
        @Nullable String piece,
        @Nullable Double weightG,
        List<Line> parts,
        List<Drift> drift,
        List<KindLine> kinds,
        @Nullable KindLine rods) {
    public WeighAnswer {
        kinds = List.copyOf(kinds);
        parts = List.copyOf(parts);
        drift = List.copyOf(drift);
    }

    /**
     * One part.
     *
     * @param part catalogue id
     * @param name maker and model
     * @param kind word for its kind
     * @param pieces pieces weighed
     * @param meanG their mean, g
     * @param toleranceG ± of a further piece, g: from the readings, where too few from the lists
     * @param spreadKnown true where enough pieces were weighed to tell the ± from them
     * @param listedG weight in the lists, g
     * @param differenceG mean less listed, g
     * @param insideTolerance true where the listed tolerance covers the difference
     */
    public record Line(
            String part,
            String name,
            String kind,
            int pieces,
            double meanG,
            double toleranceG,
            boolean spreadKnown,
            double listedG,
            double differenceG,
            boolean insideTolerance) {}

    /**
     * How one maker's parts of one kind come out.
     *
     * @param maker maker
     * @param kind word for the kind
     * @param parts parts weighed
     * @param pieces pieces weighed
     * @param meanPercent mean difference, % of the listed weight; above nought = heavier than listed
     * @param outside parts whose difference their listed tolerance does not cover
     */
    public record Drift(String maker, String kind, int parts, int pieces, double meanPercent, int outside) {}

    /**
     * What was seen of one kind.
     *
     * @param kind word for the kind, or rod
     * @param count parts weighed, or rods
     * @param meanErrorG mean of what was seen less what was foretold, g
     * @param factor the stated ± times this is used from now on
     */
    public record KindLine(String kind, int count, double meanErrorG, double factor) {}

    private static KindLine kind(String word, Experience.Seen seen) {
        return new KindLine(word, seen.count(), seen.meanErrorG(), seen.factor());
    }

    /** Of one piece just weighed. */
    public static WeighAnswer of(Workshop workshop, Scale.Weighed weighed, double weightG) {
        String id = weighed.piece().part();
        Part part = workshop.lists().find(id);
        if (part == null) {
            throw new IllegalStateException("weighed a part of no list: " + id);
        }
        return new WeighAnswer(
                Answer.SCHEMA,
                weighed.piece().name(),
                weightG,
                List.of(line(part, weighed.weights())),
                List.of(),
                List.of(),
                null);
    }

    /** Of everything weighed so far. */
    public static WeighAnswer all(Workshop workshop) {
        if (!Shop.exists(workshop.folder())) {
            return new WeighAnswer(Answer.SCHEMA, null, null, List.of(), List.of(), List.of(), null);
        }
        SortedMap<String, Weights> weights;
        Experience experience;
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            weights = shop.scale().weights();
            experience = shop.snapshot(workshop.lists()).experience();
        }
        List<Line> lines = new ArrayList<>();
        weights.forEach((id, readings) -> {
            Part part = workshop.lists().find(id);
            if (part != null) {
                lines.add(line(part, readings));
            }
        });
        List<KindLine> kinds = new ArrayList<>();
        experience.kinds().forEach((kind, seen) -> kinds.add(kind(kind.word(), seen)));
        return new WeighAnswer(
                Answer.SCHEMA,
                null,
                null,
                lines,
                drift(workshop.lists(), lines),
                kinds,
                experience.rods().count() == 0 ? null : kind("rod", experience.rods()));
    }

    private static Line line(Part part, Weights weights) {
        double listed = part.facts().weightG();
        double difference = Sheets.rounded(weights.meanG() - listed, 3);
        return new Line(
                part.id(),
                part.facts().name(),
                part.kind().word(),
                weights.pieces(),
                Sheets.rounded(weights.meanG(), 3),
                weights.spreadKnown() ? weights.toleranceG() : part.facts().weightTolG(),
                weights.spreadKnown(),
                listed,
                difference,
                Math.abs(difference) <= part.facts().weightTolG());
    }

    private static List<Drift> drift(Catalog lists, List<Line> lines) {
        SortedMap<String, List<Line>> groups = new TreeMap<>();
        for (Line line : lines) {
            Part part = lists.find(line.part());
            String maker = part == null ? "" : part.facts().maker();
            groups.computeIfAbsent(maker + "\n" + line.kind(), key -> new ArrayList<>())
                    .add(line);
        }
        List<Drift> drift = new ArrayList<>();
        groups.forEach((key, group) -> {
            int pieces = group.stream().mapToInt(Line::pieces).sum();
            double percent = group.stream()
                            .mapToDouble(line -> line.pieces() * line.differenceG() / line.listedG())
                            .sum()
                    / pieces
                    * 100;
            int outside =
                    (int) group.stream().filter(line -> !line.insideTolerance()).count();
            String[] names = key.split("\n", -1);
            drift.add(new Drift(names[0], names[1], group.size(), pieces, Sheets.rounded(percent, 2), outside));
        });
        return drift;
    }
}
