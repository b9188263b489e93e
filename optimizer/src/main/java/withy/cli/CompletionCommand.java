package withy.cli;

import java.util.concurrent.Callable;
import picocli.AutoComplete;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

@Command(
        name = "completion",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  source <(withy completion)%n" + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Prints a script that lets bash and zsh complete commands and options.",
        optionListHeading = "%nOptions:%n")
final class CompletionCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    CompletionCommand() {}

    @Override
    public Integer call() {
        String script = AutoComplete.bash("withy", spec.root().commandLine());
        Answering.print(script, spec.commandLine().getOut());
        return Exit.FINE;
    }
}
