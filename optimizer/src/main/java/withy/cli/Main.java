package withy.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** The root command. */
@Command(
        name = "withy",
        versionProvider = Version.class,
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n",
        header = {
            "  withy demo                      what the program does, on sample data",
            "  withy propose brief.json        three builds for a customer's wishes",
            "  withy measure build.json        weight, balance and price of one build",
            ""
        },
        synopsisHeading = "Usage: ",
        synopsisSubcommandLabel = "COMMAND",
        descriptionHeading = "%n",
        description = "Chooses the parts of a custom fishing rod.",
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nCommands:%n")
public final class Main implements Runnable {

    @Spec
    private CommandSpec spec;

    /** picocli makes the command and then sets its fields. */
    @SuppressWarnings("NullAway.Init")
    public Main() {}

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    /** The whole command line, ready to execute with the given streams. */
    public static CommandLine commandLine(PrintWriter out, PrintWriter err) {
        return new CommandLine(new Main()).setOut(out).setErr(err);
    }

    public static void main(String[] args) {
        // Answers hold the degree and plus-minus signs whatever the machine's locale says.
        PrintWriter out = writer(System.out);
        PrintWriter err = writer(System.err);
        int exitCode = commandLine(out, err).execute(args);
        out.flush();
        err.flush();
        System.exit(exitCode);
    }

    private static PrintWriter writer(PrintStream stream) {
        return new PrintWriter(stream, true, StandardCharsets.UTF_8);
    }
}
