package withy.cli;

import java.io.PrintWriter;
import java.util.Currency;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.OutAnswer;
import withy.app.OutDesk;
import withy.app.Workshop;
import withy.brief.Brief;
import withy.report.OutText;
import withy.units.Money;
import withy.units.UnitsFault;

@Command(
        name = "out",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy out PART                      it ran out: every job that needs it%n"
                + "  withy out PART --job 3              it does not fit in job 3%n"
                + "  withy out PART --price 31.50        it got dearer%n"
                + "  withy out --job 3 --brief new.json  the customer wants it otherwise%n"
                + "  withy out PART --job 3 --accept 1   take the line with one part changed%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Chooses accepted builds again with one, two or three parts changed, beside waiting for the part."
                + " What is glued stays. Nothing is changed until a line is accepted.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class OutCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "PART", description = "Id of the part.")
    private @Nullable String part;

    @Option(names = "--job", paramLabel = "JOB", description = "Only this job.")
    private @Nullable Long job;

    @Option(names = "--price", paramLabel = "AMOUNT", description = "It is there, at this price.")
    private @Nullable String price;

    @Option(names = "--brief", paramLabel = "BRIEF", description = "The job's new brief as JSON.")
    private @Nullable String brief;

    @Option(names = "--accept", paramLabel = "N", description = "Take line N of the job.")
    private @Nullable Integer accept;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    OutCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        if (part == null && brief == null) {
            throw new Stop(Exit.USAGE, "Neither a part nor a brief is named.", "Maybe type: withy out PART.");
        }
        if (job == null && (accept != null || brief != null)) {
            throw new Stop(Exit.USAGE, "No job is named.", "Maybe add --job 3; withy job lists them.");
        }
        Workshop workshop = catalogs.workshop(surroundings, err);
        Brief told =
                brief == null ? null : briefs.read(brief, workshop.snapshot().catalog(), surroundings);
        String id = part == null ? null : PartName.of(part, workshop).id();
        OutDesk.Event event = new OutDesk.Event(id, minor(workshop), job, told);
        Currency currency = Currency.getInstance(workshop.lists().rates().currency());
        OutDesk desk = new OutDesk(workshop, new ProgressLine(err, output.units(), currency, surroundings));
        OutAnswer answer = job != null && accept != null ? desk.accept(event, job, accept) : desk.look(event);
        Answering.print(
                output.json() ? AnswerJson.write(answer) : OutText.of(answer, output.units()),
                spec.commandLine().getOut());
        if (answer.interrupted()) {
            return Exit.INTERRUPTED;
        }
        boolean stuck = answer.jobs().stream().anyMatch(one -> one.rungs().isEmpty());
        return stuck ? Exit.NOT_LEGAL : Exit.FINE;
    }

    private @Nullable Long minor(Workshop workshop) {
        if (price == null) {
            return null;
        }
        try {
            return Money.minor(
                    price, Currency.getInstance(workshop.lists().rates().currency()));
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--price " + price + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }
}
