package withy.cli;

import java.io.PrintWriter;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.brief.Brief;
import withy.shop.Snapshot;

@Command(
        name = "propose",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy propose brief.json --catalog shop%n"
                + "  withy propose brief.json --priority weight=5 --priority price=0%n"
                + "  withy propose brief.json --budget 650 --without seat-tarn-17%n"
                + "  withy propose brief.json --with blank-reed-210 --json > answer.json%n"
                + "  withy propose - < brief.json%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Proposes up to three builds for a customer's brief.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class ProposeCommand implements Callable<Integer> {
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
    ProposeCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Snapshot snapshot = catalogs.workshop(surroundings, err).snapshot();
        Brief read = briefs.read(brief, snapshot.catalog(), surroundings);
        return Answering.propose(
                snapshot.forBrief(read), read, output, spec.commandLine().getOut(), err, surroundings);
    }
}
