package withy.cli;

import java.io.PrintWriter;
import java.util.Currency;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.BuildReader;
import withy.app.Measure;
import withy.app.MeasureAnswer;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.report.MeasureText;
import withy.rod.Build;
import withy.shop.Snapshot;

@Command(
        name = "measure",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy measure build.json --brief brief.json --catalog shop%n"
                + "  withy measure - --brief brief.json < build.json%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Measures and judges the builder's own pick of parts, beside the best proposal.",
            "A build file is one entry of builds in an answer of propose --json; only its",
            "layout and parts count."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class MeasureCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BUILD", description = "The build as JSON; - reads standard input.")
    private String build;

    @Option(names = "--brief", paramLabel = "BRIEF", required = true, description = "The brief it is judged by.")
    private String brief;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    MeasureCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Snapshot snapshot = catalogs.workshop(surroundings, err).snapshot();
        Brief read = briefs.read(brief, snapshot.catalog(), surroundings);
        Catalog catalog = snapshot.forBrief(read);
        BuildReader.Reading reading = BuildReader.read(Texts.read(build, "build", surroundings), catalog);
        Build told = reading.build();
        if (told == null) {
            throw BriefOptions.stop(Exit.BAD_DATA, reading.faults());
        }
        ProgressLine progress = new ProgressLine(
                err, output.units(), Currency.getInstance(catalog.rates().currency()), surroundings);
        MeasureAnswer answer =
                Measure.run(catalog, read, told, surroundings.choosers().apply(catalog), output.units(), progress);
        Answering.print(
                output.json() ? AnswerJson.write(answer) : MeasureText.of(answer, output.units()),
                spec.commandLine().getOut());
        return answer.interrupted() ? Exit.INTERRUPTED : answer.legal() ? Exit.FINE : Exit.NOT_LEGAL;
    }
}
