package withy.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import withy.app.BenchSheet;
import withy.app.BenchSheet.GuideLine;
import withy.app.BenchSheet.HandleLine;
import withy.app.BenchSheet.Made;
import withy.app.BenchSheet.Mix;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.LabourLine;
import withy.app.PickSheet;
import withy.explain.Phrases;

/** The sheet over the bench. */
public final class BenchPaper {
    /** One millimetre of paper for five of the rod: a strip of the picture fits every sheet. */
    private static final double SCALE = 5;

    private static final double RULER_MM = 100;

    /** To be filled in by hand. */
    private static final String BLANK = "_____________";

    private static final String TICK = "\u2610";

    private final BenchSheet bench;
    private final Reader reader;
    private final Markup page = new Markup();

    private BenchPaper(BenchSheet bench, Reader reader) {
        this.bench = bench;
        this.reader = reader;
    }

    /** The sheet as HTML for a browser and its printer. */
    public static String of(BenchSheet bench, Reader reader, Sheet sheet) {
        BenchPaper paper = new BenchPaper(bench, reader);
        paper.write();
        return paper.page.document(Phrases.of("paper.bench.title", bench.build().name()), sheet);
    }

    private void write() {
        job();
        page.heading(Phrases.of("paper.scale", String.format(Locale.ROOT, "%.0f", SCALE)));
        List<Picture> strips = Pictures.strips(bench.outline(), reader.units());
        strips.forEach(strip -> page.picture(strip, Svg.WIDTH / SCALE));
        page.line(strips.get(0).table().rows().stream()
                .map(row -> row.get(0).replaceAll(" +", "\u00a0"))
                .filter(part -> Character.isDigit(part.charAt(0)))
                .collect(Collectors.joining(" · ")));
        page.kept(() -> page.svg(ruler()).line(Phrases.of("paper.ruler")));
        expected();
        List<String> there = cautions("caution.dust", "caution.epoxy", "caution.edges");
        page.care(bench.cautions().stream()
                .filter(caution -> !there.contains(caution))
                .toList());
        page.kept(() -> handle(there)).kept(this::guides).kept(this::mixes).kept(this::work);
        page.kept(() -> new BenchParts(bench, reader).write(page));
    }

    private void job() {
        Made made = bench.made();
        if (made != null) {
            PickPaper.jobs(page, List.of(new PickSheet.JobLine(made.job(), made.name(), made.wantedBy())), reader);
            page.care(made.waiting());
        }
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

    private void handle(List<String> cautions) {
        page.heading(Phrases.of("paper.handle")).care(cautions);
        page.line(Phrases.of(
                "paper.foot",
                reader.length(bench.outline().footMm()),
                reader.length(bench.build().figures().reelToButtMm())));
        List<List<String>> rows = new ArrayList<>();
        for (HandleLine line : bench.handle()) {
            boolean point = line.toMm() - line.fromMm() < 0.05;
            rows.add(List.of(
                    Phrases.of("station." + line.station()),
                    line.name(),
                    line.bin(),
                    FitWords.of(line, reader),
                    reader.length(line.fromMm()),
                    point ? "–" : reader.length(line.toMm())));
        }
        page.table(
                new Columns()
                        .word("part", 14)
                        .word("made", 22)
                        .word("bin", 10)
                        .word("fit", 30)
                        .number("from", 12)
                        .number("to", 12),
                rows);
    }

    private void guides() {
        page.heading(Phrases.of("paper.guides")).line(Phrases.of("paper.guides.from"));
        BenchSheet.WideGap gap = bench.widestGap();
        if (gap != null) {
            page.line(Phrases.of("paper.guides.gap", gap.guide(), gap.guide() + 1, reader.number(gap.times(), 2)));
        }
        List<List<String>> rows = new ArrayList<>();
        for (GuideLine guide : bench.guides()) {
            String turns = reader.number(guide.turns(), 0);
            rows.add(List.of(
                    String.valueOf(guide.number()),
                    guide.name(),
                    guide.bin(),
                    reader.number(guide.sizeMm(), 1),
                    maybe(guide.fromTipMm()),
                    maybe(guide.fromFerruleMm()),
                    reader.length(guide.xMm()),
                    guide.feet() + "\u00a0×\u00a0" + reader.length(guide.wrapMm()),
                    guide.underTurns() > 0
                            ? Phrases.of("paper.under", turns, reader.number(guide.underTurns(), 0))
                            : turns));
        }
        page.table(
                new Columns()
                        .word("number", 5)
                        .word("made", 23)
                        .word("bin", 11)
                        .number("size", 6)
                        .number("tip", 12)
                        .number("ferrule", 11)
                        .number("butt", 12)
                        .number("wrap", 13)
                        .number("turns", 7),
                rows);
    }

    private void mixes() {
        page.heading(Phrases.of("paper.mixes")).care(cautions("caution.epoxy"));
        List<List<String>> rows = new ArrayList<>();
        for (Mix mix : bench.mixes()) {
            rows.add(List.of(
                    Phrases.of("paper.what." + mix.what()),
                    mix.name(),
                    mix.times() + "\u00a0×",
                    reader.number(mix.resinParts(), 1) + " : " + reader.number(mix.hardenerParts(), 1),
                    ml(mix.resinMl()),
                    ml(mix.hardenerMl()),
                    reader.number(mix.potLifeMin(), 0) + " min",
                    reader.number(mix.waitHours(), 1) + " h"));
        }
        page.table(
                new Columns()
                        .word("what", 12)
                        .word("made", 28)
                        .number("times", 8)
                        .number("ratio", 13)
                        .number("resin", 10)
                        .number("hardener", 11)
                        .number("pot", 10)
                        .number("wait", 8),
                rows);
    }

    private void work() {
        page.heading(Phrases.of("paper.work"));
        page.line(Phrases.of("paper.spine"));
        if (!bench.outline().joints().isEmpty()) {
            page.line(Phrases.of("paper.ferrules"));
        }
        List<List<String>> rows = new ArrayList<>();
        int step = 1;
        for (LabourLine line : bench.build().labour()) {
            rows.add(List.of(
                    String.valueOf(step++),
                    Phrases.sentence(line.operation()),
                    line.times() + "\u00a0×",
                    reader.number(line.minutes(), 0) + " min",
                    TICK));
        }
        page.table(
                new Columns()
                        .word("step", 8)
                        .word("work", 57)
                        .number("times", 12)
                        .number("minutes", 15)
                        .tick("done", 8),
                rows);
    }

    private void expected() {
        FigureLines figures = bench.build().figures();
        Made made = bench.made();
        Double bags = made == null ? null : made.bagsWeightG();
        Double weight = made == null ? null : made.weightG();
        Double balance = made == null ? null : made.balanceMm();
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                Phrases.of("paper.weight"),
                reader.mass(figures.weightG()) + " ± " + reader.mass(figures.weightToleranceG()),
                weight == null ? BLANK : reader.mass(weight)));
        if (bags != null) {
            rows.add(List.of(Phrases.of("paper.bags"), reader.mass(bags), ""));
        }
        rows.add(List.of(
                Phrases.of("paper.balance"),
                reader.length(bench.outline().bareBalanceMm()) + " ± " + reader.length(bench.bareToleranceMm()),
                BLANK));
        rows.add(List.of(
                Phrases.of("paper.balance.reel"),
                reader.length(figures.balanceFromReelFootMm()) + " ± " + reader.length(bench.balanceToleranceMm()),
                balance == null ? BLANK : reader.length(balance)));
        page.kept(() -> page.heading(Phrases.of("paper.expected"))
                .table(new Columns().word("what", 50).number("expected", 27).number("measured", 23), rows));
    }

    /** Those of some cautions that this rod gives cause for. */
    private List<String> cautions(String... keys) {
        List<String> wanted = new ArrayList<>();
        for (String key : keys) {
            wanted.add(Phrases.of(key));
        }
        return bench.cautions().stream().filter(wanted::contains).toList();
    }

    private String maybe(@Nullable Double mm) {
        return mm == null ? "–" : reader.length(mm);
    }

    private String ml(double amount) {
        return Markup.unbroken(reader.number(amount, 1) + " ml");
    }
}
