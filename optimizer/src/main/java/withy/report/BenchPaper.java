package withy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import withy.app.BenchSheet;
import withy.app.BenchSheet.Fit;
import withy.app.BenchSheet.GuideLine;
import withy.app.BenchSheet.HandleLine;
import withy.app.BenchSheet.Mix;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.LabourLine;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.PartLine;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** The sheet over the bench. */
public final class BenchPaper {
    /** One millimetre of paper for five of the rod: a strip of the picture fits every sheet. */
    private static final double SCALE = 5;

    private static final double RULER_MM = 100;

    /** Trade table: above these a tip-top's glue is to be thick, then a layer of thread goes under it, mm. */
    private static final double THICK_GLUE_MM = 0.15;

    private static final double THREAD_LAYER_MM = 0.25;

    private final BenchSheet bench;
    private final QuantityText units;
    private final Markup page = new Markup();

    private BenchPaper(BenchSheet bench, QuantityText units) {
        this.bench = bench;
        this.units = units;
    }

    /** The sheet as HTML for a browser and its printer. */
    public static String of(BenchSheet bench, QuantityText units, Sheet sheet) {
        BenchPaper paper = new BenchPaper(bench, units);
        paper.write();
        return paper.page.document(Phrases.of("paper.bench.title", bench.build().name()), sheet);
    }

    private void write() {
        page.heading(Phrases.of("paper.scale", String.format(Locale.ROOT, "%.0f", SCALE)));
        Picture rod = Pictures.rod(bench.machine(), units);
        page.picture(rod, Svg.WIDTH / SCALE);
        page.line(rod.table().rows().stream()
                .map(row -> row.get(0))
                .filter(part -> Character.isDigit(part.charAt(0)))
                .collect(Collectors.joining(" · ")));
        page.svg(ruler()).line(Phrases.of("paper.ruler"));
        handle();
        guides();
        materials();
        mixes();
        work();
        expected();
        parts();
    }

    /** 100 mm on paper, a stroke every 10. */
    private static String ruler() {
        StringBuilder svg = new StringBuilder("<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"110mm\" height=\"9mm\""
                + " viewBox=\"0 0 110 9\" font-family=\"Withy, sans-serif\" font-size=\"2.8\">");
        svg.append("<line x1=\"5\" y1=\"1\" x2=\"105\" y2=\"1\" stroke=\"#1c1c1c\" stroke-width=\"0.3\"/>");
        for (int mm = 0; mm <= RULER_MM; mm += 10) {
            svg.append("<line x1=\"").append(5 + mm).append("\" y1=\"1\" x2=\"").append(5 + mm);
            svg.append("\" y2=\"4\" stroke=\"#1c1c1c\" stroke-width=\"0.3\"/><text text-anchor=\"middle\" x=\"");
            svg.append(5 + mm).append("\" y=\"7.5\">").append(mm).append("</text>");
        }
        return svg.append("</svg>").toString();
    }

    private void handle() {
        page.sheet().heading(Phrases.of("paper.handle")).care(cautions("caution.dust", "caution.epoxy"));
        page.line(Phrases.of(
                "paper.foot",
                length(bench.machine().outline().footMm()),
                length(bench.build().figures().reelToButtMm())));
        List<List<String>> rows = new ArrayList<>();
        for (HandleLine line : bench.handle()) {
            rows.add(List.of(
                    Phrases.of("station." + line.station()),
                    line.name() + bin(line.bin()),
                    how(line),
                    length(line.fromMm()),
                    length(line.toMm())));
        }
        page.table(3, heads("part", "name", "fit", "from", "to"), rows);
    }

    private String how(HandleLine line) {
        String cut = line.soldMm() == null
                ? ""
                : Phrases.of("paper.cut", length(line.soldMm()), length(line.toMm() - line.fromMm())) + " ";
        Fit fit = line.fit();
        if (fit == null) {
            return cut.strip();
        }
        String key = "paper.fit." + fit.how();
        if (fit.how().equals("tube")) {
            key = fit.gapMm() > THREAD_LAYER_MM
                    ? "paper.fit.tube.thread"
                    : fit.gapMm() > THICK_GLUE_MM ? "paper.fit.tube.thick" : key;
        }
        return cut
                + Phrases.of(
                        key,
                        thin(fit.blankMm()),
                        thin(fit.rearMm()),
                        thin(fit.frontMm()),
                        thin(fit.gapMm()),
                        fit.pieces());
    }

    private void guides() {
        page.heading(Phrases.of("paper.guides")).line(Phrases.of("paper.guides.from"));
        List<List<String>> rows = new ArrayList<>();
        for (GuideLine guide : bench.guides()) {
            rows.add(List.of(
                    String.valueOf(guide.number()),
                    guide.name() + bin(guide.bin()),
                    String.format(Locale.ROOT, "%.0f", guide.sizeMm()),
                    maybe(guide.fromTipMm()),
                    maybe(guide.fromFerruleMm()),
                    length(guide.xMm()),
                    guide.feet() + " × " + length(guide.wrapMm()),
                    String.format(Locale.ROOT, "%.0f", guide.turns()),
                    guide.underTurns() > 0 ? String.format(Locale.ROOT, "%.0f", guide.underTurns()) : "–"));
        }
        page.table(2, heads("number", "name", "size", "tip", "ferrule", "butt", "wrap", "turns", "under"), rows);
    }

    private void materials() {
        page.heading(Phrases.of("paper.materials"));
        List<List<String>> rows = new ArrayList<>();
        for (MaterialLine line : bench.build().materials()) {
            rows.add(List.of(
                    Phrases.of("paper.what." + line.what()),
                    line.name() + (line.part() == null ? "" : bin(bench.bins().getOrDefault(line.part(), ""))),
                    String.format(Locale.ROOT, "%.1f", line.amount()) + " " + Phrases.of("paper.unit." + line.unit())));
        }
        page.table(2, heads("what", "name", "amount"), rows);
    }

    private void mixes() {
        page.heading(Phrases.of("paper.mixes")).care(cautions("caution.epoxy"));
        List<List<String>> rows = new ArrayList<>();
        for (Mix mix : bench.mixes()) {
            rows.add(List.of(
                    Phrases.of("paper.what." + mix.what()),
                    mix.name() + bin(mix.bin()),
                    mix.times() + " ×",
                    plain(mix.resinParts()) + " : " + plain(mix.hardenerParts()),
                    ml(mix.resinMl()),
                    ml(mix.hardenerMl()),
                    plain(mix.potLifeMin()) + " min",
                    plain(mix.waitHours()) + " h"));
        }
        page.table(2, heads("what", "name", "times", "ratio", "resin", "hardener", "pot", "wait"), rows);
    }

    private void work() {
        page.heading(Phrases.of("paper.work"));
        page.line(Phrases.of("paper.spine"));
        if (!bench.machine().outline().joints().isEmpty()) {
            page.line(Phrases.of("paper.ferrules"));
        }
        List<List<String>> rows = new ArrayList<>();
        int step = 1;
        for (LabourLine line : bench.build().labour()) {
            rows.add(List.of(
                    String.valueOf(step++),
                    Phrases.sentence(line.operation()),
                    line.times() + " ×",
                    String.format(Locale.ROOT, "%.0f min", line.minutes())));
        }
        page.table(2, heads("step", "work", "times", "minutes"), rows);
    }

    private void expected() {
        FigureLines figures = bench.build().figures();
        page.heading(Phrases.of("paper.expected"));
        page.table(
                1,
                heads("what", "expected", "measured"),
                List.of(
                        List.of(
                                Phrases.of("paper.weight"),
                                units.mass(figures.weightG()) + " ± " + units.mass(figures.weightToleranceG()),
                                "_____________"),
                        List.of(
                                Phrases.of("paper.balance"),
                                length(bench.machine().outline().bareBalanceMm()),
                                "_____________")));
    }

    private void parts() {
        page.heading(Phrases.of("paper.parts"));
        List<List<String>> rows = new ArrayList<>();
        for (PartLine part : bench.build().parts()) {
            rows.add(List.of(
                    part.station().startsWith("guide-")
                            ? Phrases.of("bend.guide", part.station().substring("guide-".length()))
                            : Phrases.of("station." + part.station()),
                    part.name(),
                    bench.bins().getOrDefault(part.part(), ""),
                    part.part(),
                    part.count() == 0 ? "" : String.valueOf(part.count())));
        }
        page.table(4, heads("part", "made", "bin", "id", "pieces"), rows).care(bench.cautions());
    }

    /** Those of some cautions that this rod gives cause for. */
    private List<String> cautions(String... keys) {
        List<String> wanted = new ArrayList<>();
        for (String key : keys) {
            wanted.add(Phrases.of(key));
        }
        return bench.cautions().stream().filter(wanted::contains).toList();
    }

    private static List<String> heads(String... keys) {
        List<String> heads = new ArrayList<>();
        for (String key : keys) {
            heads.add(Phrases.of("paper.head." + key));
        }
        return heads;
    }

    private static String bin(String bin) {
        return bin.isEmpty() ? "" : " [" + bin + "]";
    }

    private String maybe(@Nullable Double mm) {
        return mm == null ? "–" : length(mm);
    }

    private String length(double mm) {
        return Markup.unbroken(units.partLength(mm));
    }

    private String thin(double mm) {
        return Markup.unbroken(units.thickness(mm));
    }

    private static String ml(double amount) {
        return String.format(Locale.ROOT, "%.1f ml", amount);
    }

    private static String plain(double value) {
        return Svg.number(value);
    }
}
