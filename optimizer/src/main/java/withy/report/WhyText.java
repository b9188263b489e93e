package withy.report;

import java.util.Currency;
import withy.app.Reasons.BuildLine;
import withy.app.WhyAnswer;
import withy.app.WhyAnswer.BindingLine;
import withy.app.WhyAnswer.ShareLine;
import withy.explain.Phrases;
import withy.units.QuantityText;

/** How firm an offer is, for a terminal of 80 columns. */
public final class WhyText {
    private WhyText() {}

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(WhyAnswer answer, QuantityText units, Currency currency) {
        Page page = new Page();
        page.paragraph("", answer.brief().path("name").asText());
        if (answer.builds().isEmpty()) {
            if (answer.impossible() != null) {
                WhyNotText.impossible(page, answer.impossible(), units);
            }
            return page.toString();
        }
        if (answer.builds().size() > 1) {
            shares(page, answer, units, currency);
        } else {
            page.gap()
                    .paragraph(
                            "",
                            Phrases.of(
                                    "text.why.one", words(answer.builds().get(0).build(), units, currency)));
        }
        page.heading(Phrases.of("text.why.binding"));
        for (BindingLine line : answer.binding()) {
            page.paragraph("· ", line.sentence() + ".");
        }
        if (answer.binding().isEmpty() && !answer.interrupted()) {
            page.paragraph("", Phrases.of("text.why.binding.none"));
        }
        if (answer.interrupted()) {
            page.gap().paragraph("", Phrases.of("text.cut"));
        }
        return page.toString();
    }

    private static String share(ShareLine line, String words) {
        long percent = Math.round(line.share() * 100);
        String few = line.share() > 0 ? "text.why.share.few" : "text.why.share.none";
        return Phrases.of(percent == 0 ? few : "text.why.share", percent, line.rank(), words);
    }

    private static String words(BuildLine build, QuantityText units, Currency currency) {
        return WhyNotText.figures(build, units, currency) + " · " + build.name();
    }

    /** Of several builds, how many ways to weigh put each first, and what would turn their order. */
    private static void shares(Page page, WhyAnswer answer, QuantityText units, Currency currency) {
        page.heading(Phrases.of("text.why.shares"));
        page.paragraph("", Phrases.of("text.why.shares.as"));
        for (ShareLine line : answer.builds()) {
            String words = words(line.build(), units, currency);
            page.paragraph("· ", share(line, words));
        }
        page.heading(Phrases.of("text.why.swap"));
        page.paragraph(
                "",
                answer.swap() == null
                        ? Phrases.of("text.why.swap.none")
                        : answer.swap().sentence() + ".");
    }
}
