package withy.benchmarks;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.logging.LogManager;

/**
 * {@code benchmarks/bin/run}: measures all and writes the page, with {@code --quick} checks a few optima and peers, with {@code --mechanics} times the
 * mechanics, with {@code --only} measures some of it and writes nothing.
 */
public final class Main {
    private Main() {}

    /** Exit codes: 0 fine, 1 a wrong optimum, a lost peer or one that beats a proven best, 2 usage. */
    public static void main(String[] args) throws IOException, InterruptedException {
        LogManager.getLogManager().reset();
        Path home = Path.of(System.getProperty("withy.home", ".")).toAbsolutePath();
        if (args.length == 1 && args[0].equals("--quick")) {
            List<String> faults = new Quick(home, System.out).faults();
            faults.forEach(System.err::println);
            System.exit(faults.isEmpty() ? 0 : 1);
        } else if (args.length == 1 && args[0].equals("--mechanics")) {
            Mechanics.tell(home, System.out);
            return;
        }
        Settings settings = Settings.of(List.of(args));
        if (settings == null) {
            System.err.println("unknown: " + String.join(" ", args) + ". Allowed: " + Settings.ALLOWED);
            System.err.println("Maybe run: benchmarks/bin/run --quick");
            System.exit(2);
        } else {
            List<String> faults = new Full(home, settings, System.err).run(System.out);
            faults.forEach(System.err::println);
            System.exit(faults.isEmpty() ? 0 : 1);
        }
    }
}
