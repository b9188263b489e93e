package withy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.BenchSheet;
import withy.app.BenchSheet.Bag;
import withy.app.BenchSheet.GuideLine;
import withy.app.BenchSheet.HandleLine;
import withy.app.BenchSheet.Made;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.PartLine;
import withy.explain.Phrases;

/** Labels for the bags of a rod's parts and for its tube, many on one sheet. */
public final class LabelPaper {
    private static final int ACROSS = 3;
    private static final int TUBES_ACROSS = 2;

    private final BenchSheet bench;
    private final Reader reader;
    private final Markup page = new Markup();

    private LabelPaper(BenchSheet bench, Reader reader) {
        this.bench = bench;
        this.reader = reader;
    }

    /** The labels as HTML for a browser and its printer. */
    public static String of(BenchSheet bench, Reader reader, Sheet sheet) {
        LabelPaper paper = new LabelPaper(bench, reader);
        paper.write();
        return paper.page.document(
                Phrases.of("paper.labels.title", bench.build().name()), sheet);
    }

    private void write() {
        page.labels(List.of(tube(), tube()), TUBES_ACROSS);
        page.labels(parts(), ACROSS);
    }

    /** Two of one kind: one for the tube, one for its cap or the bag. */
    private List<String> tube() {
        FigureLines figures = bench.build().figures();
        List<String> lines = new ArrayList<>();
        lines.add(bench.build().name());
        Made made = bench.made();
        if (made != null) {
            lines.add(Phrases.of("paper.jobs.job", made.job(), made.name()));
        }
        lines.add(Phrases.of(
                "paper.labels.rod",
                reader.decimals(reader.units().rodLength(figures.finishedLengthMm())),
                reader.decimals(reader.units().rodLength(figures.packedLengthMm())),
                reader.mass(figures.weightG())));
        lines.add(Phrases.of(
                "paper.labels.lure",
                reader.decimals(reader.units().lureMass(bench.lureMinG())),
                reader.decimals(reader.units().lureMass(bench.lureMaxG()))));
        String carbon = Phrases.of("caution.carbon");
        if (bench.cautions().contains(carbon)) {
            lines.add(carbon);
        }
        return lines;
    }

    private List<List<String>> parts() {
        Map<String, HandleLine> handle = new TreeMap<>();
        bench.handle().forEach(line -> handle.put(line.station(), line));
        Map<String, GuideLine> guides = new TreeMap<>();
        bench.guides().forEach(line -> guides.put("guide-" + line.number(), line));
        Bags bags = new Bags(bench.made());
        List<List<String>> labels = new ArrayList<>();
        for (PartLine part : bench.build().atBench()) {
            if (part.count() > 0) {
                labels.add(label(part, bags.next(part.part()), handle.get(part.station()), guides.get(part.station())));
            }
        }
        return labels;
    }

    private List<String> label(
            PartLine part, @Nullable Bag bag, @Nullable HandleLine handle, @Nullable GuideLine guide) {
        Made made = bench.made();
        String where = Phrases.station(part.station());
        List<String> lines = new ArrayList<>();
        lines.add(made == null ? Phrases.sentence(where) : Phrases.of("paper.labels.job", made.job(), where));
        lines.add(part.name());
        String bin = bench.bins().get(part.part());
        lines.add(part.part()
                + (bag == null ? "" : "#" + bag.number())
                + (bin == null ? "" : " [" + bin.replace(' ', Unbroken.JOIN) + "]"));
        if (guide != null) {
            Double tip = guide.fromTipMm();
            lines.add(
                    tip == null
                            ? Phrases.of("paper.labels.guideButt", reader.length(guide.xMm()))
                            : Phrases.of("paper.labels.guide", reader.length(tip), reader.length(guide.xMm())));
            lines.add(Phrases.of("paper.labels.wrap", guide.feet(), reader.length(guide.wrapMm())));
        }
        if (handle != null) {
            String how = FitWords.of(handle, reader);
            if (!how.isEmpty()) {
                lines.add(how);
            }
        }
        Double read = bag == null ? null : bag.weightG();
        lines.add(
                read == null
                        ? Phrases.of("paper.labels.listed", reader.fine(part.unitWeightG()))
                        : Phrases.of("paper.labels.weighed", reader.fine(read)));
        return lines;
    }
}
