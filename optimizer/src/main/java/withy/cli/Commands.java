package withy.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Withy's commands by name, in the order its help tells them. */
final class Commands {
    static final Map<String, Class<?>> ALL = inOrder(List.of(
            Map.entry("demo", DemoCommand.class),
            Map.entry("propose", ProposeCommand.class),
            Map.entry("measure", MeasureCommand.class),
            Map.entry("bend", BendCommand.class),
            Map.entry("bendtest", BendTestCommand.class),
            Map.entry("whynot", WhyNotCommand.class),
            Map.entry("lighter", LighterCommand.class),
            Map.entry("check", CheckCommand.class),
            Map.entry("parts", PartsCommand.class),
            Map.entry("job", JobCommand.class),
            Map.entry("out", OutCommand.class),
            Map.entry("plan", PlanCommand.class),
            Map.entry("paper", PaperCommand.class),
            Map.entry("serve", ServeCommand.class),
            Map.entry("stock", StockCommand.class),
            Map.entry("weigh", WeighCommand.class),
            Map.entry("backup", BackupCommand.class),
            Map.entry("restore", RestoreCommand.class),
            Map.entry("doctor", DoctorCommand.class),
            Map.entry("schema", SchemaCommand.class),
            Map.entry("completion", CompletionCommand.class),
            Map.entry("man", ManCommand.class)));

    /** Commands that tell of the others. */
    private static final Set<String> OF_ALL = Set.of("completion", "man");

    private Commands() {}

    /** What a line may call: that command alone where its first word names one, since making all of them takes a tenth of a second or two. */
    static Map<String, Class<?>> of(String... line) {
        String first = line.length == 0 ? "" : line[0];
        Class<?> one = ALL.get(first);
        return one == null || OF_ALL.contains(first) ? ALL : Map.of(first, one);
    }

    private static Map<String, Class<?>> inOrder(List<Map.Entry<String, Class<?>>> commands) {
        Map<String, Class<?>> ordered = new LinkedHashMap<>();
        commands.forEach(command -> ordered.put(command.getKey(), command.getValue()));
        return ordered;
    }
}
