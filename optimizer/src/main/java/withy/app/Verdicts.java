package withy.app;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.VerdictLine;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Verdict;
import withy.units.QuantityText;

/** Judges a rod and writes the verdicts down. */
final class Verdicts {
    static final String PASS = "pass";
    static final String NOT_APPLICABLE = "notApplicable";
    static final String WARNING = "warning";
    static final String FAIL = "fail";
    static final String UNKNOWN = "unknown";

    private Verdicts() {}

    static List<VerdictLine> of(Rod rod, Rulebook rules, QuantityText units) {
        List<VerdictLine> lines = new ArrayList<>();
        for (Verdict verdict : Judge.judge(rod, rules)) {
            lines.add(new VerdictLine(
                    verdict.rule(),
                    verdict.check(),
                    word(verdict.outcome()),
                    number(verdict.measured()),
                    number(verdict.limit()),
                    verdict.unit().symbol(),
                    verdict.parts(),
                    Sentence.of(verdict, rod, units)));
        }
        return lines;
    }

    static boolean legal(List<VerdictLine> lines) {
        return lines.stream()
                .noneMatch(v -> v.outcome().equals(FAIL) || v.outcome().equals(UNKNOWN));
    }

    private static @Nullable Double number(double value) {
        return Double.isNaN(value) ? null : Sheets.rounded(value, 4);
    }

    private static String word(Verdict.Outcome outcome) {
        return switch (outcome) {
            case PASS -> PASS;
            case NOT_APPLICABLE -> NOT_APPLICABLE;
            case WARNING -> WARNING;
            case FAIL -> FAIL;
            case UNKNOWN -> UNKNOWN;
        };
    }
}
