package withy.cli;

import java.io.PrintWriter;
import java.util.Currency;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.Explain;
import withy.app.LighterAnswer;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.explain.Inquiry;
import withy.report.LighterText;
import withy.shop.Snapshot;

@Command(
        name = "lighter",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy lighter brief.json --catalog shop%n"
                + "  withy lighter brief.json --budget 650 --json > lighter.json%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Says whether the best build could be lighter: the lightest rod that keeps every rule, what "
                    + "each gram costs, and every lighter part with why it was not taken."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class LighterCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BRIEF", description = "The brief as JSON; - reads standard input.")
    private String brief;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    LighterCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Snapshot snapshot = catalogs.workshop(surroundings, err).snapshot();
        Brief read = briefs.read(brief, snapshot.catalog(), surroundings);
        Catalog catalog = snapshot.forBrief(read);
        Currency currency = Currency.getInstance(catalog.rates().currency());
        ProgressLine progress = new ProgressLine(err, output.units(), currency, surroundings);
        Inquiry inquiry = Explain.inquiry(catalog, read, surroundings.choosers(), output.units(), progress);
        LighterAnswer answer = Explain.lighter(inquiry, progress);
        Answering.print(
                output.json() ? AnswerJson.write(answer) : LighterText.of(answer, output.units(), currency),
                spec.commandLine().getOut());
        return answer.interrupted() ? Exit.INTERRUPTED : answer.first() == null ? Exit.NOT_LEGAL : Exit.FINE;
    }
}
