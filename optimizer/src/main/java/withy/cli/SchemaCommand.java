package withy.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import withy.catalog.NearWord;

@Command(
        name = "schema",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy schema              the names%n"
                + "  withy schema brief > brief.schema.json%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Prints the JSON Schema of a file or an answer, for editors and programs.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class SchemaCommand implements Callable<Integer> {
    /** Published schemas. */
    static final List<String> NAMES = List.of(
            "answer",
            "bend",
            "bendtest",
            "brief",
            "build",
            "check",
            "drawer",
            "folder",
            "import",
            "job",
            "jobs",
            "lighter",
            "measure",
            "out",
            "paper",
            "parts",
            "plan",
            "serve",
            "stock",
            "weigh",
            "why",
            "whynot");

    @Spec
    private CommandSpec spec;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "NAME",
            description =
                    "answer (of propose), bend, bendtest, brief, build, check, drawer, folder (of doctor,"
                            + " backup, restore), import, job, jobs, lighter, measure, out, paper, parts, plan, serve, stock, weigh, why or whynot.")
    private @Nullable String name;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    SchemaCommand() {}

    @Override
    public Integer call() {
        Answering.print(
                name == null ? String.join("\n", NAMES) : text(name),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    static String text(String name) {
        if (!NAMES.contains(name)) {
            String near = NearWord.to(name, NAMES);
            throw new Stop(
                    Exit.USAGE,
                    "No schema " + name + "; there are " + String.join(", ", NAMES) + ".",
                    near.isEmpty() ? "Maybe a letter is missing." : "Maybe \"" + near + "\" was meant.");
        }
        String file = "/withy/schema/" + name + ".schema.json";
        try (InputStream in = SchemaCommand.class.getResourceAsStream(file)) {
            if (in == null) {
                throw new IllegalStateException(file + " is missing from the program's jar");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
