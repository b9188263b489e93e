package withy.report;

import java.util.Locale;
import withy.app.WeighAnswer;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** The answer of {@code weigh} for a terminal of 80 columns. */
public final class WeighText {
    private static final Page.Column[] COLUMNS = {
        new Page.Column(40, false),
        new Page.Column(6, true),
        new Page.Column(11, true),
        new Page.Column(9, true),
        new Page.Column(10, true)
    };
    private static final Page.Column[] DRIFT = {
        new Page.Column(20, false),
        new Page.Column(25, false),
        new Page.Column(6, true),
        new Page.Column(11, true),
        new Page.Column(14, true)
    };

    private WeighText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(WeighAnswer answer, QuantityText units) {
        Page page = new Page();
        String piece = answer.piece();
        Double weight = answer.weightG();
        if (piece != null && weight != null) {
            page.paragraph("", Phrases.of("text.weigh.piece", piece, units.fineMass(weight)));
        }
        if (answer.parts().isEmpty()) {
            page.paragraph("", Phrases.of("text.weigh.none"));
            experience(page, answer, units);
            return page.toString();
        }
        page.row(
                COLUMNS,
                "",
                Phrases.of("text.weigh.pieces"),
                Phrases.of("text.weigh.mean"),
                "±",
                Phrases.of("text.weigh.difference"));
        page.rule();
        for (WeighAnswer.Line line : answer.parts()) {
            page.row(
                    COLUMNS,
                    line.name(),
                    Integer.toString(line.pieces()),
                    units.fineMass(line.meanG()),
                    units.fineMass(line.toleranceG()) + (line.spreadKnown() ? "" : " ~"),
                    (line.differenceG() > 0 ? "+" : "") + units.fineMass(line.differenceG()));
            if (!line.insideTolerance()) {
                page.paragraph("    ", Phrases.of("text.weigh.outside", units.fineMass(line.listedG())));
            }
        }
        if (answer.parts().stream().anyMatch(line -> !line.spreadKnown())) {
            page.paragraph("", Phrases.of("text.weigh.listed"));
        }
        drift(page, answer);
        experience(page, answer, units);
        return page.toString();
    }

    private static void experience(Page page, WeighAnswer answer, QuantityText units) {
        WeighAnswer.KindLine rods = answer.rods();
        if (answer.kinds().isEmpty() && rods == null) {
            return;
        }
        page.heading(Phrases.of("text.weigh.experience"));
        for (WeighAnswer.KindLine kind : answer.kinds()) {
            page.paragraph(
                    "· ", Phrases.of("text.weigh.kind", kind.kind(), kind.count(), mean(kind, units), factor(kind)));
        }
        if (rods != null) {
            page.paragraph("· ", Phrases.of("text.weigh.rods", rods.count(), mean(rods, units), factor(rods)));
        }
    }

    private static String mean(WeighAnswer.KindLine kind, QuantityText units) {
        return (kind.meanErrorG() > 0 ? "+" : "") + units.fineMass(kind.meanErrorG());
    }

    private static String factor(WeighAnswer.KindLine kind) {
        return String.format(Locale.ROOT, "%.2f", kind.factor());
    }

    private static void drift(Page page, WeighAnswer answer) {
        if (answer.drift().isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.weigh.drift"));
        page.row(
                DRIFT,
                "",
                "",
                Phrases.of("text.weigh.pieces"),
                Phrases.of("text.weigh.difference"),
                Phrases.of("text.weigh.outsideHead"));
        for (WeighAnswer.Drift one : answer.drift()) {
            page.row(
                    DRIFT,
                    one.maker(),
                    one.kind(),
                    Integer.toString(one.pieces()),
                    String.format(Locale.ROOT, "%+.1f %%", one.meanPercent()),
                    one.outside() + "/" + one.parts());
        }
    }
}
