package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import picocli.CommandLine;

/** What is shown as an example can be typed as it stands. */
class HelpTest {
    @TestFactory
    Stream<DynamicTest> examplesStandOnOneLineEach() {
        CommandLine all = Main.commandLine(new PrintWriter(new StringWriter()), new PrintWriter(new StringWriter()));
        return Stream.concat(Stream.of(all), commands(all))
                .map(command -> DynamicTest.dynamicTest(command.getCommandSpec().qualifiedName(), () -> {
                    String help = command.getUsageMessage();
                    List<String> examples = help.substring(0, Math.max(0, help.indexOf("Usage:")))
                            .lines()
                            .skip(1)
                            .filter(line -> !line.isBlank())
                            .toList();
                    assertTrue(examples.stream().allMatch(line -> line.startsWith("  ")), help);
                    assertEquals(
                            List.of(),
                            help.lines().filter(line -> line.length() > 80).toList());
                }));
    }

    @TestFactory
    Stream<DynamicTest> aCommandByItselfIsAsAmongAll() {
        CommandLine all = line(Commands.ALL);
        return all.getSubcommands().entrySet().stream()
                .map(entry -> DynamicTest.dynamicTest(entry.getKey(), () -> {
                    assertEquals(
                            entry.getKey(), entry.getValue().getCommandSpec().name());
                    CommandLine alone = line(Commands.of(entry.getKey(), "--help"));
                    assertEquals(
                            entry.getValue().getUsageMessage(),
                            alone.getSubcommands().get(entry.getKey()).getUsageMessage());
                }));
    }

    @Test
    void whatTellsOfOtherCommandsKnowsAll() {
        for (String[] line : new String[][] {{}, {"--help"}, {"propos"}, {"man", "propose"}, {"completion"}}) {
            assertEquals(Commands.ALL, Commands.of(line));
        }
        assertEquals(Set.of("propose"), Commands.of("propose", "brief.json").keySet());
    }

    private static CommandLine line(Map<String, Class<?>> commands) {
        PrintWriter nowhere = new PrintWriter(new StringWriter());
        return Main.commandLine(nowhere, nowhere, Surroundings.ofMachine(() -> false), commands);
    }

    private static Stream<CommandLine> commands(CommandLine parent) {
        return parent.getSubcommands().values().stream()
                .flatMap(command -> Stream.concat(Stream.of(command), commands(command)));
    }
}
