package withy.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import withy.app.CutSheet;
import withy.app.CutSheet.Cut;
import withy.app.CutSheet.CutPart;
import withy.app.CutSheet.CutPiece;
import withy.explain.Phrases;

/** The cut list: piece by piece what to saw, with a drawing of each piece to scale. */
public final class CutPaper {
    /** Width of the longest piece on paper, mm; both sheets are at least 180 mm wide inside their margins. */
    private static final double LONGEST_MM = 150;

    private final CutSheet cuts;
    private final Reader reader;
    private final Markup page = new Markup();
    private final double scale;

    private CutPaper(CutSheet cuts, Reader reader) {
        this.cuts = cuts;
        this.reader = reader;
        double longest =
                cuts.parts().stream().mapToDouble(CutPart::soldMm).max().orElse(1);
        this.scale = LONGEST_MM / longest;
    }

    /** The list as HTML for a browser and its printer. */
    public static String of(CutSheet cuts, Reader reader, Sheet sheet) {
        CutPaper paper = new CutPaper(cuts, reader);
        paper.write();
        return paper.page.document(Phrases.of("paper.cuts.title", reader.day(LocalDate.parse(cuts.day()))), sheet);
    }

    private void write() {
        PickPaper.jobs(page, cuts.jobs(), reader);
        page.care(cuts.warnings());
        page.line(Phrases.of("paper.cuts.kerf", reader.thin(cuts.kerfMm())));
        if (cuts.parts().isEmpty()) {
            page.line(Phrases.of("paper.cuts.none"));
            return;
        }
        page.care(List.of(Phrases.of("caution.dust"), Phrases.of("caution.edges")));
        cuts.parts().forEach(part -> page.kept(() -> part(part)));
    }

    private void part(CutPart part) {
        page.heading(Phrases.of("paper.cuts." + part.kind(), part.name())
                + (part.bin().isEmpty() ? "" : " [" + part.bin() + "]"));
        page.line(Phrases.of("paper.cuts.from", part.pieces().size(), reader.length(part.soldMm())));
        if (part.whole() > 0) {
            page.line(Phrases.of("paper.cuts.whole", part.whole()));
        }
        if (part.lacking() > 0) {
            page.care(List.of(Phrases.of("paper.cuts.lacking", part.lacking(), part.part())));
        }
        List<List<String>> rows = new ArrayList<>();
        int number = 1;
        for (CutPiece piece : part.pieces()) {
            page.svg(drawing(piece, part.soldMm()));
            String first = Integer.toString(number++);
            for (Cut cut : piece.cuts()) {
                rows.add(List.of(
                        first,
                        Phrases.of("paper.picks.job", cut.job()),
                        Phrases.of("station." + cut.station()),
                        reader.length(cut.lengthMm()),
                        reader.thin(cut.boreMm()),
                        cut.outerMm() > 0 ? reader.thin(cut.outerMm()) : "–"));
                first = "";
            }
            rows.add(List.of("", "", Phrases.of("paper.cuts.offcut"), reader.length(piece.offcutMm()), "", ""));
        }
        page.table(
                new Columns()
                        .word("piece", 10)
                        .word("job", 15)
                        .word("part", 25)
                        .number("length", 17)
                        .number("bore", 16)
                        .number("outer", 17),
                rows);
    }

    /** The piece to scale: lengths white, the saw's cuts black, the offcut grey. */
    private String drawing(CutPiece piece, double soldMm) {
        StringBuilder svg = new StringBuilder();
        double width = soldMm * scale;
        svg.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"%.2fmm\" height=\"7mm\" viewBox=\"0 0 %.2f 7\""
                        + " font-family=\"Withy, sans-serif\" font-size=\"2.8\">",
                width + 1,
                width + 1));
        box(svg, 0, width, "#d9d9d9");
        double at = 0;
        for (Cut cut : piece.cuts()) {
            box(svg, at, cut.lengthMm() * scale, "#ffffff");
            words(svg, at + cut.lengthMm() * scale / 2, Long.toString(cut.job()));
            at += cut.lengthMm() * scale;
            double kerf = Math.min(cuts.kerfMm() * scale, width - at);
            if (kerf > 0) {
                box(svg, at, kerf, "#1c1c1c");
                at += kerf;
            }
        }
        return svg.append("</svg>").toString();
    }

    private static void box(StringBuilder svg, double x, double width, String fill) {
        svg.append(String.format(
                Locale.ROOT,
                "<rect x=\"%.2f\" y=\"0.5\" width=\"%.2f\" height=\"6\" fill=\"%s\" stroke=\"#1c1c1c\""
                        + " stroke-width=\"0.25\"/>",
                x + 0.5,
                width,
                fill));
    }

    private static void words(StringBuilder svg, double x, String words) {
        svg.append(String.format(
                Locale.ROOT,
                "<text text-anchor=\"middle\" x=\"%.2f\" y=\"4.5\">%s</text>",
                x + 0.5,
                Svg.escape(words)));
    }
}
