package withy.cli;

import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Help;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

@Command(
        name = "man",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  withy man > withy.1%n" + "  withy man propose | man -l -%n" + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Prints the manual page of Withy or of one command.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class ManCommand implements Callable<Integer> {
    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "COMMAND", description = "One command; else all of Withy.")
    private @Nullable String command;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    ManCommand() {}

    @Override
    public Integer call() {
        CommandLine root = spec.root().commandLine();
        CommandLine wanted = command == null ? root : root.getSubcommands().get(command);
        if (wanted == null) {
            throw new Stop(
                    Exit.USAGE,
                    "No command " + command + "; there are "
                            + String.join(", ", root.getSubcommands().keySet()) + ".",
                    "Maybe a letter is missing.");
        }
        Answering.print(page(wanted.getCommandSpec()), spec.commandLine().getOut());
        return Exit.FINE;
    }

    /** A page in the man macros of troff. */
    private static String page(CommandSpec command) {
        StringBuilder page = new StringBuilder();
        String name = command.qualifiedName("-");
        page.append(".TH \"").append(name.toUpperCase(Locale.ROOT)).append("\" \"1\" \"\" \"withy ");
        page.append(Version.number())
                .append("\"\n.SH NAME\n")
                .append(escaped(name))
                .append(" \\- ");
        page.append(escaped(String.join(" ", command.usageMessage().description())))
                .append('\n');
        page.append(".SH SYNOPSIS\n.nf\n");
        page.append(escaped(new Help(command, Help.defaultColorScheme(Help.Ansi.OFF)).synopsis(0)))
                .append(".fi\n.SH EXAMPLES\n.nf\n");
        page.append(escaped(examples(command)));
        page.append(".fi\n.SH OPTIONS\n");
        for (PositionalParamSpec parameter : command.positionalParameters()) {
            entry(page, parameter.paramLabel(), parameter.renderedDescription());
        }
        for (OptionSpec option : command.options()) {
            String label = option.arity().max() > 0 ? " " + option.paramLabel() : "";
            entry(page, String.join(", ", option.names()) + label, option.renderedDescription());
        }
        if (!command.subcommands().isEmpty()) {
            page.append(".SH COMMANDS\n");
            command.subcommands()
                    .forEach((key, sub) ->
                            entry(page, key, sub.getCommandSpec().usageMessage().description()));
        }
        Map<String, String> codes = command.root().usageMessage().exitCodeList();
        page.append(".SH EXIT STATUS\n");
        codes.forEach((code, words) -> entry(page, code, words));
        return page.toString();
    }

    private static String examples(CommandSpec command) {
        String heading = String.format(Locale.ROOT, command.usageMessage().headerHeading());
        return heading.substring(heading.indexOf('\n') + 1).stripTrailing() + "\n";
    }

    private static void entry(StringBuilder page, String term, String... words) {
        page.append(".TP\n.B ").append(escaped(term)).append('\n');
        page.append(escaped(String.join(" ", words))).append('\n');
    }

    /** Hyphens stay hyphens, and no line starts with a control character. */
    private static String escaped(String text) {
        String plain = text.replace("\\", "\\e").replace("-", "\\-");
        return plain.replaceAll("(?m)^([.'])", "\\\\&$1");
    }
}
