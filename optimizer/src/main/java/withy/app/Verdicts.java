package withy.app;

import java.util.ArrayList;
import java.util.List;
import withy.app.BuildSheet.VerdictLine;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.rules.Sentences;
import withy.rules.Verdict;

/** Judges a rod and writes the verdicts down. */
final class Verdicts {
    static final String WARNING = Verdict.Outcome.WARNING.key();
    static final String FAIL = Verdict.Outcome.FAIL.key();
    static final String UNKNOWN = Verdict.Outcome.UNKNOWN.key();

    private Verdicts() {}

    static List<VerdictLine> of(Rod rod, Rulebook rules) {
        Sentences sentences = new Sentences(rod.setting().catalog());
        List<VerdictLine> lines = new ArrayList<>();
        for (Verdict verdict : Judge.judge(rod, rules)) {
            lines.add(line(verdict, sentences.of(verdict)));
        }
        return lines;
    }

    static VerdictLine line(Verdict verdict, String sentence) {
        return new VerdictLine(
                verdict.rule(),
                verdict.check(),
                verdict.outcome().key(),
                Sheets.number(verdict.measured()),
                Sheets.number(verdict.limit()),
                verdict.unit().symbol(),
                verdict.parts(),
                sentence);
    }

    static boolean legal(List<VerdictLine> lines) {
        return lines.stream()
                .noneMatch(v -> v.outcome().equals(FAIL) || v.outcome().equals(UNKNOWN));
    }
}
