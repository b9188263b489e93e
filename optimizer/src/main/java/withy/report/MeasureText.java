package withy.report;

import java.util.List;
import withy.app.BuildSheet;
import withy.app.BuildSheet.Summary;
import withy.app.MeasureAnswer;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** The answer of {@code measure} for a terminal of 80 columns. */
public final class MeasureText {
    private MeasureText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(MeasureAnswer answer, QuantityText units) {
        Page page = new Page();
        page.paragraph(
                "", Phrases.of("text.measure.title", answer.brief().path("name").asText()));
        BuildSheet own = answer.build();
        page.gap().paragraph("", own.name());
        verdicts(page, own);
        BuildSheet first = answer.best();
        boolean same = first != null
                && own.layout().equals(first.layout())
                && own.parts().equals(first.parts());
        BuildSheet best = same ? null : first;
        for (Summary summary : same ? List.<Summary>of() : own.summaries()) {
            page.paragraph("", Phrases.of("text.measure.against", summary.sentence()));
        }
        if (best == null) {
            page.paragraph("", Phrases.of(same ? "text.measure.same" : "text.measure.noBest"));
        }
        List<String> titles = best == null
                ? List.of(Phrases.of("text.measure.own"))
                : List.of(Phrases.of("text.measure.own"), Phrases.of("text.measure.best"));
        List<BuildSheet> builds = best == null ? List.of(own) : List.of(own, best);
        new BuildsText(page, titles, builds, units).write();
        AnswerText.warnings(page, titles, builds);
        AnswerText.list(page, "text.cautions", answer.cautions());
        AnswerText.list(page, "text.defaults", answer.defaultsUsed());
        return page.toString();
    }

    private static void verdicts(Page page, BuildSheet own) {
        List<String> broken = own.verdicts().stream()
                .filter(v -> v.outcome().equals("fail") || v.outcome().equals("unknown"))
                .map(v -> Phrases.of("ruleName." + v.rule()) + ": " + v.sentence())
                .distinct()
                .toList();
        page.paragraph("", Phrases.of(broken.isEmpty() ? "text.measure.legal" : "text.measure.illegal"));
        broken.forEach(sentence -> page.paragraph("· ", sentence));
    }
}
