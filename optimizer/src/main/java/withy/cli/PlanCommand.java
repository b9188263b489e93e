package withy.cli;

import java.io.PrintWriter;
import java.util.Currency;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.PlanAnswer;
import withy.app.PlanDesk;
import withy.app.Workshop;
import withy.report.PlanText;

@Command(
        name = "plan",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy plan           all open jobs from what is on the shelf%n"
                + "  withy plan --json    for a machine, with every build%n"
                + "  withy plan --longer  looks for minutes where a better plan was not ruled out%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description =
                "Chooses the builds of all open jobs at once, so that none starves another, and lists what to order"
                        + " from whom. Agreed builds stay. Nothing is promised by it.",
        optionListHeading = "%nOptions:%n")
final class PlanCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private OutputOptions output;

    @Option(names = "--longer", description = "Look on for minutes where a better plan was not ruled out.")
    private boolean longer;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PlanCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Workshop workshop = catalogs.workshop(surroundings, err);
        Currency currency = Currency.getInstance(workshop.lists().rates().currency());
        PlanAnswer answer =
                new PlanDesk(workshop, new ProgressLine(err, output.units(), currency, surroundings)).plan(longer);
        Answering.print(
                output.json() ? AnswerJson.write(answer) : PlanText.of(answer, output.units()),
                spec.commandLine().getOut());
        if (answer.interrupted()) {
            return Exit.INTERRUPTED;
        }
        return answer.unserved() > 0 ? Exit.NOT_LEGAL : Exit.FINE;
    }
}
