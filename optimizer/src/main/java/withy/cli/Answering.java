package withy.cli;

import java.io.PrintWriter;
import java.util.Currency;
import withy.app.Answer;
import withy.app.AnswerJson;
import withy.app.Propose;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.report.AnswerText;

/** Proposes and prints: what {@code demo} and {@code propose} share. */
final class Answering {
    private Answering() {}

    static int propose(
            Catalog catalog,
            Brief brief,
            OutputOptions output,
            PrintWriter out,
            PrintWriter err,
            Surroundings surroundings) {
        Currency currency = Currency.getInstance(catalog.rates().currency());
        ProgressLine progress = new ProgressLine(err, output.units(), currency, surroundings);
        Answer answer = Propose.run(catalog, brief, surroundings.choosers().apply(catalog), output.units(), progress);
        print(output.json() ? AnswerJson.write(answer) : AnswerText.of(answer, output.units()), out);
        if (answer.interrupted()) {
            err.println("Interrupted: the best so far is shown.");
            return Exit.INTERRUPTED;
        }
        return answer.builds().isEmpty() ? Exit.NOT_LEGAL : Exit.FINE;
    }

    /** Ends with one line end, the same on every machine. */
    static void print(String text, PrintWriter out) {
        out.print(text.endsWith("\n") ? text : text + "\n");
        out.flush();
    }
}
