package withy.benchmarks;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/**
 * {@code benchmarks/bin/run}: measures all and writes the page, with {@code --quick} checks a few optima, with
 * {@code --mechanics} times the mechanics. */
public final class Main {
    /** Longest the warm part of each shop may take, s; with the cold part a run stays below four minutes. */
    private static final int[] WARM_SECONDS = {60, 140};

    private Main() {}

    /** Exit codes: 0 fine, 1 a wrong optimum, 2 usage. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path home = Path.of(System.getProperty("withy.home", ".")).toAbsolutePath();
        if (args.length == 0) {
            full(home, System.out, System.err);
        } else if (args.length == 1 && args[0].equals("--quick")) {
            List<String> faults = new Quick(home, System.out).faults();
            faults.forEach(System.err::println);
            System.exit(faults.isEmpty() ? 0 : 1);
        } else if (args.length == 1 && args[0].equals("--mechanics")) {
            Mechanics.tell(home, System.out);
        } else {
            System.err.println("unknown: " + String.join(" ", args) + ". Allowed: nothing, --quick or --mechanics.");
            System.err.println("Maybe run: benchmarks/bin/run --quick");
            System.exit(2);
        }
    }

    private static void full(Path home, PrintStream out, PrintStream talk) throws IOException, InterruptedException {
        long start = System.nanoTime();
        Machine machine = Machine.now();
        List<Cold.Line> cold = new Cold(home, System.getProperty("withy.archive", "")).measure();
        List<Row> rows = new ArrayList<>();
        Shop wide = Shop.wide(home);
        rows.addAll(new Warm(home, talk, endNanos(WARM_SECONDS[0])).measure(wide));
        Shop large = Shop.large();
        rows.addAll(new Warm(home, talk, endNanos(WARM_SECONDS[1])).measure(large));
        String text = new Page(
                        machine,
                        System.getProperty("withy.commit", "unknown"),
                        Machine.load(),
                        Job.millisSince(start) / 1000,
                        rows,
                        cold)
                .text();
        out.print(text);
        Files.writeString(home.resolve("benchmarks").resolve("README.md"), text, StandardCharsets.UTF_8);
    }

    private static long endNanos(int seconds) {
        return System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    }
}
