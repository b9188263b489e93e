package withy.cli;

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
import withy.app.CheckAnswer;
import withy.report.CatalogText;

@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  withy check shop%n" + "  withy check shop --json%n" + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Lists every fault of a catalogue, then what is hard to believe.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class CheckCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "DIR", description = "The catalogue's folder.")
    private @Nullable String folder;

    @Mixin
    private CatalogOptions catalogs;

    @Option(names = "--json", description = "Print the answer as JSON; withy schema describes it.")
    private boolean json;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    CheckCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        CheckAnswer answer = CheckAnswer.of(catalogs.reading(catalogs.folder(folder, surroundings), surroundings));
        Answering.print(
                json ? AnswerJson.write(answer) : CatalogText.of(answer),
                spec.commandLine().getOut());
        return answer.sound() ? Exit.FINE : Exit.BAD_DATA;
    }
}
