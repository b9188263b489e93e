package withy.report;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.Answer;
import withy.app.BuildSheet;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.ProofLine;
import withy.app.BuildSheet.Summary;
import withy.explain.Phrases;
import withy.units.Money;
import withy.units.QuantityText;

/** The answer of {@code propose} for a terminal of 80 columns. */
public final class AnswerText {
    private final Page page = new Page();
    private final QuantityText units;

    private AnswerText(QuantityText units) {
        this.units = units;
    }

    /** Text of an answer, lines ended by {@code \n}. */
    public static String of(Answer answer, QuantityText units) {
        AnswerText text = new AnswerText(units);
        text.write(answer);
        return text.page.toString();
    }

    private void write(Answer answer) {
        brief(answer.brief(), answer);
        List<BuildSheet> builds = answer.builds();
        headlines(builds);
        reasons(page, answer.reasons());
        if (answer.impossible() != null) {
            WhyNotText.impossible(page, answer.impossible(), units);
        }
        if (!builds.isEmpty()) {
            List<String> titles =
                    builds.stream().map(b -> Phrases.of("text.build", b.rank())).toList();
            new BuildsText(page, titles, builds, units).write();
            warnings(page, titles, builds);
            proof(answer);
        }
        list(page, "text.cautions", answer.cautions());
        list(page, "text.defaults", answer.defaultsUsed());
    }

    private void brief(JsonNode brief, Answer answer) {
        page.paragraph("", brief.path("name").asText());
        if (!brief.path("customer").asText().isEmpty()) {
            page.paragraph("", brief.path("customer").asText());
        }
        page.paragraph(
                "",
                Phrases.of(
                        "text.brief." + brief.path("rodType").asText(),
                        units.rodLength(brief.path("lengthMm").path("min").asDouble()),
                        units.rodLength(brief.path("lengthMm").path("max").asDouble()),
                        units.lureMass(brief.path("lure").path("lightestG").asDouble()),
                        units.lureMass(brief.path("lure").path("heaviestG").asDouble())));
        page.paragraph("", wanted(brief.path("priorities")) + budget(brief.path("budgetMinor"), answer));
    }

    private static String budget(JsonNode budget, Answer answer) {
        String code = currency(answer);
        if (budget.isNull() || budget.isMissingNode() || code == null) {
            return "";
        }
        return Phrases.of("text.budget", Money.print(budget.asLong(), Currency.getInstance(code)));
    }

    /** Null where a search was stopped before it found anything. */
    private static @Nullable String currency(Answer answer) {
        if (!answer.builds().isEmpty()) {
            return answer.builds().get(0).figures().currency();
        }
        return answer.impossible() == null ? null : answer.impossible().currency();
    }

    /** Objectives by priority, those of equal priority together. */
    private static String wanted(JsonNode priorities) {
        Map<Double, List<String>> byPriority = new TreeMap<>((a, b) -> Double.compare(b, a));
        priorities
                .fields()
                .forEachRemaining(e -> byPriority
                        .computeIfAbsent(e.getValue().asDouble(), key -> new ArrayList<>())
                        .add(Phrases.of("objective." + e.getKey())));
        byPriority.remove(0.0);
        List<String> groups = byPriority.values().stream()
                .map(words -> String.join(", ", words))
                .toList();
        return Phrases.of("text.wanted", String.join("; ", groups));
    }

    private void headlines(List<BuildSheet> builds) {
        for (BuildSheet build : builds) {
            page.gap();
            page.paragraph(build.rank() + "  ", build.name());
            page.paragraph("   ", headline(build.figures()));
            if (build.rank() == 1) {
                page.paragraph("   ", Phrases.of("text.first"));
            }
            for (Summary summary : build.summaries()) {
                if (build.rank() > 1 && summary.against() == 1) {
                    page.paragraph("   ", Phrases.of("text.against", summary.sentence()));
                }
            }
        }
    }

    private String headline(FigureLines figures) {
        String balance = units.partLength(Math.rint(Math.abs(figures.balanceFromReelFootMm())));
        return Phrases.of(
                figures.balanceFromReelFootMm() < 0 ? "text.headline.behind" : "text.headline",
                Money.print(figures.priceMinor(), Currency.getInstance(figures.currency())),
                units.mass(figures.weightG()),
                balance);
    }

    private void proof(Answer answer) {
        page.heading(Phrases.of("text.proof"));
        for (BuildSheet build : answer.builds()) {
            ProofLine proof = build.proof();
            if (proof != null) {
                String key = "text.proof." + (build.rank() == 1 ? "first" : "other");
                page.paragraph(
                        build.rank() + "  ",
                        proof.proven()
                                ? Phrases.of(key)
                                : Phrases.of("text.proof.gap", String.format(Locale.ROOT, "%.2f", proof.gap())));
            }
        }
        Answer.Lightest lightest = answer.lightestLegal();
        if (lightest != null) {
            String key = lightest.proven() ? "text.lightest" : "text.lightest.open";
            page.paragraph("", Phrases.of(key, units.mass(lightest.weightG())));
        }
    }

    static void reasons(Page page, List<String> reasons) {
        if (!reasons.isEmpty()) {
            page.gap();
            reasons.forEach(reason -> page.paragraph("", reason));
        }
    }

    /** Those of all builds once, then each build's own. */
    static void warnings(Page page, List<String> titles, List<BuildSheet> builds) {
        Map<String, List<String>> byWarning = new LinkedHashMap<>();
        for (int i = 0; i < builds.size(); i++) {
            for (String warning : builds.get(i).warnings()) {
                byWarning.computeIfAbsent(warning, key -> new ArrayList<>()).add(titles.get(i));
            }
        }
        if (byWarning.isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.warnings"));
        byWarning.forEach((warning, whose) -> page.paragraph(
                "· ", whose.size() == builds.size() ? warning : String.join(", ", whose) + ": " + warning));
    }

    static void list(Page page, String title, List<String> sentences) {
        if (!sentences.isEmpty()) {
            page.heading(Phrases.of(title));
            sentences.forEach(sentence -> page.paragraph("· ", sentence));
        }
    }
}
