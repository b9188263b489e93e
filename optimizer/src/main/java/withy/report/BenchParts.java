package withy.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import withy.app.BenchSheet;
import withy.app.BenchSheet.Bag;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.PartLine;
import withy.explain.Phrases;
import withy.rod.Station;

/** What is taken to the bench: pieces with what they should weigh, and how much of what is used by amount. */
record BenchParts(BenchSheet bench, Reader reader) {
    void write(Markup page) {
        page.heading(Phrases.of("paper.parts"));
        Bags bags = new Bags(bench.made());
        Map<String, MaterialLine> amounts = new LinkedHashMap<>();
        bench.build().materials().forEach(line -> amounts.put(line.what(), line));
        List<List<String>> rows = new ArrayList<>();
        for (PartLine part : bench.build().atBench()) {
            Bag bag = bags.next(part.part());
            Double read = bag == null ? null : bag.weightG();
            MaterialLine used =
                    amounts.remove(part.station().equals(Station.SEAT_ARBORS.key()) ? "arbors" : part.station());
            String expected = used == null ? reader.fine(part.weightG()) : amount(used);
            rows.add(List.of(
                    part.station().startsWith("guide-")
                            ? Phrases.of("bend.guide", part.station().substring("guide-".length()))
                            : Phrases.of("station." + part.station()),
                    part.name(),
                    bench.bins().getOrDefault(part.part(), ""),
                    part.part() + (bag == null ? "" : "#" + bag.number()),
                    expected,
                    used != null ? "" : read == null ? "______" : reader.fine(read)));
        }
        for (MaterialLine used : amounts.values()) {
            rows.add(List.of(
                    Phrases.of("paper.what." + used.what()),
                    used.name(),
                    used.part() == null ? "" : bench.bins().getOrDefault(used.part(), ""),
                    used.part() == null ? "" : used.part(),
                    amount(used),
                    ""));
        }
        page.table(
                new Columns()
                        .word("part", 14)
                        .word("made", 27)
                        .word("bin", 11)
                        .word("id", 26)
                        .number("expected", 11)
                        .number("measured", 11),
                rows);
    }

    /** Pieces are told apart from grams. */
    private String amount(MaterialLine used) {
        String amount = reader.amount(used.amount(), used.unit());
        return used.unit().equals("pieces") ? amount + "\u00a0×" : amount;
    }
}
