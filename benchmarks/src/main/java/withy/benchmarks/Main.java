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
    /** Longest the warm part of a shop may take, s. */
    private static final int WARM_SECONDS = 150;

    private Main() {}

    /** Exit codes: 0 fine, 1 a wrong optimum or a peer that beats it, 2 usage. */
    public static void main(String[] args) throws IOException, InterruptedException {
        Path home = Path.of(System.getProperty("withy.home", ".")).toAbsolutePath();
        if (args.length == 0) {
            System.exit(full(home, List.of(), System.out, System.err));
        } else if (args.length == 2 && args[0].equals("--parts") && args[1].matches("[1-9][0-9]{3,5}")) {
            System.exit(full(home, List.of(Shop.generated(Integer.parseInt(args[1]))), System.out, System.err));
        } else if (args.length == 1 && args[0].equals("--quick")) {
            List<String> faults = new Quick(home, System.out).faults();
            faults.forEach(System.err::println);
            System.exit(faults.isEmpty() ? 0 : 1);
        } else if (args.length == 1 && args[0].equals("--mechanics")) {
            Mechanics.tell(home, System.out);
        } else {
            System.err.println("unknown: " + String.join(" ", args)
                    + ". Allowed: nothing, --quick, --mechanics, or --parts with a number from 1000 on.");
            System.err.println("Maybe run: benchmarks/bin/run --quick");
            System.exit(2);
        }
    }

    private static int full(Path home, List<Shop> more, PrintStream out, PrintStream talk)
            throws IOException, InterruptedException {
        long start = System.nanoTime();
        Machine machine = Machine.now();
        List<Cold.Line> cold = new Cold(home, System.getProperty("withy.archive", "")).measure();
        List<Row> rows = new ArrayList<>();
        List<Shop> shops = new ArrayList<>(List.of(Shop.bench(), Shop.wide(home), Shop.large()));
        shops.addAll(more);
        for (Shop shop : shops) {
            rows.addAll(new Warm(home, talk, endNanos(WARM_SECONDS)).measure(shop));
        }
        List<String> faults = new ArrayList<>();
        List<Peers.Line> peers = new ArrayList<>();
        Shop bench = Shop.bench();
        for (Scenario scenario : Scenario.all(home, bench.catalog())) {
            Peers.Line line = new Peers(bench.catalog(), scenario.query()).line(scenario.name(), Peers.AT_MS, faults);
            if (line != null) {
                peers.add(line);
            }
        }
        String text = new Page(
                        machine,
                        System.getProperty("withy.commit", "unknown"),
                        Machine.load(),
                        Job.millisSince(start) / 1000,
                        rows,
                        cold)
                .text();
        text += PeersPage.text(peers);
        out.print(text);
        Files.writeString(home.resolve("benchmarks").resolve("README.md"), text, StandardCharsets.UTF_8);
        faults.forEach(talk::println);
        return faults.isEmpty() ? 0 : 1;
    }

    private static long endNanos(int seconds) {
        return System.nanoTime() + TimeUnit.SECONDS.toNanos(seconds);
    }
}
