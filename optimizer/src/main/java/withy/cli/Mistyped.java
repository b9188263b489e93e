package withy.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.MutuallyExclusiveArgsException;
import picocli.CommandLine.OverwrittenOptionException;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** What is wrong with a command line: what was typed, what is allowed, and what may have been meant. */
final class Mistyped {
    private final ParameterException fault;
    private final CommandLine command;

    private Mistyped(ParameterException fault) {
        this.fault = fault;
        this.command = fault.getCommandLine();
    }

    static List<String> lines(ParameterException fault) {
        return new Mistyped(fault).lines();
    }

    private List<String> lines() {
        ArgSpec option = fault.getArgSpec();
        if (fault instanceof UnmatchedArgumentException unmatched) {
            return unmatched(unmatched);
        }
        if (fault instanceof MissingParameterException missing) {
            return missing(missing);
        }
        if (fault instanceof OverwrittenOptionException overwritten) {
            return List.of(name(overwritten.getOverwritten()) + " is given twice.", "Maybe drop one of the two.");
        }
        if (fault instanceof MutuallyExclusiveArgsException) {
            return List.of("These do not go together: " + together(String.valueOf(fault.getMessage())) + ".", help());
        }
        if (option != null && fault.getValue() != null) {
            return List.of(name(option) + " " + fault.getValue() + ": allowed is " + allowed(option) + ".", help());
        }
        return List.of(String.valueOf(fault.getMessage()), help());
    }

    private List<String> unmatched(UnmatchedArgumentException unmatched) {
        String word = unmatched.getUnmatched().get(0);
        boolean commands = !command.getSubcommands().isEmpty();
        String said = unmatched.isUnknownOption()
                ? "There is no option " + word + "."
                : commands
                        ? "There is no " + command.getCommandSpec().qualifiedName() + " " + word + "."
                        : "\"" + word + "\" is a word too many.";
        List<String> near = unmatched.getSuggestions().stream()
                .map(suggested -> suggested.substring(suggested.lastIndexOf(' ') + 1))
                .toList();
        if (!near.isEmpty()) {
            return List.of(said, "Maybe " + String.join(" or ", near) + " was meant.");
        }
        boolean belowNought = word.matches("-[0-9.,].*");
        boolean spaced = !unmatched.isUnknownOption() && !commands;
        return List.of(
                said,
                belowNought
                        ? "Maybe the minus sign is a slip: no quantity here is below zero."
                        : spaced ? "Maybe a name with a space in it needs quotation marks." : help());
    }

    private List<String> missing(MissingParameterException missing) {
        List<String> lines = new ArrayList<>();
        for (ArgSpec arg : missing.getMissing()) {
            String told = arg.description().length == 0 ? "" : ": " + arg.description()[0];
            lines.add(named(arg) + " is missing" + (told.isEmpty() ? "." : told));
        }
        if (lines.isEmpty()) {
            lines.add(String.valueOf(missing.getMessage()));
        }
        lines.add(help());
        return lines;
    }

    private String allowed(ArgSpec arg) {
        Class<?> type = arg.type();
        if (type.isEnum()) {
            List<String> words = Arrays.stream(type.getEnumConstants())
                    .map(word -> word.toString().toLowerCase(Locale.ROOT))
                    .toList();
            int last = words.size() - 1;
            return String.join(", ", words.subList(0, last)) + " or " + words.get(last);
        }
        return type == double.class || type == Double.class ? "a number" : "a whole number";
    }

    /** The options that the parser names as excluding each other, without their values. */
    private static String together(String message) {
        return Arrays.stream(message.split("[\\s,=\\[\\]|()]+"))
                .filter(word -> word.startsWith("--"))
                .distinct()
                .collect(Collectors.joining(" and "));
    }

    private static String named(ArgSpec arg) {
        return arg.isOption() ? name(arg) + " " + arg.paramLabel() : name(arg);
    }

    private static String name(ArgSpec arg) {
        return arg instanceof OptionSpec option ? option.longestName() : arg.paramLabel();
    }

    private String help() {
        return "Maybe " + command.getCommandSpec().qualifiedName() + " --help shows the way.";
    }
}
