package withy.report;

import java.util.Currency;
import java.util.List;
import withy.app.CheckAnswer;
import withy.app.PartsAnswer;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** The answers of {@code check} and {@code parts} for a terminal of 80 columns. */
public final class CatalogText {
    private CatalogText() {}

    /** Text of a check, lines ended by {@code \n}. */
    public static String of(CheckAnswer answer) {
        Page page = new Page();
        if (answer.sound()) {
            page.paragraph("", Phrases.of("text.check.sound"));
            Page.Column[] columns = {new Page.Column(32, false), new Page.Column(5, true)};
            answer.parts().forEach((kind, count) -> page.row(columns, kind, Integer.toString(count)));
        }
        lines(page, "text.check.faults", answer.faults());
        lines(page, "text.check.warnings", answer.warnings());
        return page.toString();
    }

    private static void lines(Page page, String title, List<CheckAnswer.Line> lines) {
        if (lines.isEmpty()) {
            return;
        }
        page.heading(Phrases.of(title, lines.size()));
        for (CheckAnswer.Line line : lines) {
            String lead = "· ";
            for (String sentence : line.message().split("\n")) {
                page.paragraph(lead, sentence);
                lead = "  ";
            }
        }
    }

    /** Text of a list of parts, lines ended by {@code \n}. */
    public static String of(PartsAnswer answer, QuantityText units) {
        Page page = new Page();
        Currency currency = Currency.getInstance(answer.currency());
        Page.Column[] columns = {
            new Page.Column(43, false), new Page.Column(14, true), new Page.Column(13, true), new Page.Column(7, true)
        };
        String kind = "";
        for (PartsAnswer.Line part : answer.parts()) {
            if (!part.kind().equals(kind)) {
                page.gap();
                page.row(
                        columns,
                        part.kind(),
                        Phrases.of("text.weightHead"),
                        Phrases.of("text.priceHead"),
                        Phrases.of("text.stockHead"));
                page.rule();
                kind = part.kind();
            }
            page.row(
                    columns,
                    part.name(),
                    units.fineMass(part.weightG()) + (part.weighed() ? "" : " ~"),
                    Money.print(part.priceMinor(), currency),
                    stock(part));
            page.paragraph("    ", part.part());
            page.paragraph("    ", part.about());
        }
        if (answer.parts().stream().anyMatch(part -> !part.weighed())) {
            page.gap().paragraph("", Phrases.of("text.parts.listed"));
        }
        page.gap().paragraph("", Phrases.of("text.parts.count", answer.parts().size()));
        return page.toString();
    }

    private static String stock(PartsAnswer.Line part) {
        Integer days = part.leadDays();
        if (part.stock() > 0 || days == null) {
            return Integer.toString(part.stock());
        }
        return Phrases.of("text.leadDays", days);
    }
}
