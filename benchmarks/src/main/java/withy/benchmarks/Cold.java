package withy.benchmarks;

import java.io.IOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;

/** The command as a whole process, from its start to its end. */
final class Cold {
    /** Runs of each way, after one that is not counted and fills the disk cache. */
    static final int RUNS = 5;

    /** The brief that is asked. */
    static final String SCENARIO = "brook-trout-cork";

    private static final int PLAIN_TARGET_MS = 2_000;
    private static final int SHARED_TARGET_MS = 1_200;

    /** The compilers of the launcher's short commands, and those of its long ones. */
    private static final String QUICK = "-XX:TieredStopAtLevel=1";

    private static final String BOTH = "-XX:TieredStopAtLevel=4";

    private final Path home;
    private final String archive;

    /**
     * @param home the project's folder
     * @param archive the launcher's class archive, or empty where there is none
     */
    Cold(Path home, String archive) {
        this.home = home;
        this.archive = archive;
    }

    /**
     * One way to start it.
     *
     * @param way what was started
     * @param targetMs the bar, ms
     * @param ms the runs, ms; empty where it could not be run; a run that was stopped counts as {@link Cap#SECONDS}
     * @param capped true where a run was stopped
     */
    record Line(String way, int targetMs, List<Double> ms, boolean capped) {
        Line {
            ms = List.copyOf(ms);
        }
    }

    List<Line> measure() throws IOException, InterruptedException {
        List<Line> lines = new ArrayList<>();
        lines.add(line(
                "`optimizer/bin/withy`, its class archive",
                SHARED_TARGET_MS,
                archive.isEmpty() ? List.of() : launcher()));
        lines.add(
                line("java, the Java machine's own class archive alone", PLAIN_TARGET_MS, java("-Xshare:auto", QUICK)));
        lines.add(line("java, no class-data sharing", PLAIN_TARGET_MS, java("-Xshare:off", QUICK)));
        lines.add(line("the same with both compilers", Job.NO_BAR, java("-Xshare:off", BOTH)));
        return lines;
    }

    /** Shorter commands that do a part of the work each, in the way the launcher starts it: what dominates is what the next one adds. */
    List<Line> parts() throws IOException, InterruptedException {
        List<Line> lines = new ArrayList<>();
        List<String> start = archive.isEmpty() ? java("-Xshare:auto", QUICK) : launcher();
        lines.add(new Line(
                "`--version`: the Java machine and the command line",
                Job.NO_BAR,
                runs(start, List.of("--version")),
                false));
        lines.add(new Line(
                "`check catalog-samples/wide`: and reading 1,500 parts",
                Job.NO_BAR,
                runs(start, List.of("check", "catalog-samples/wide")),
                false));
        lines.add(new Line(
                "`propose`: and the search, three builds and the answer", Job.NO_BAR, runs(start, propose()), false));
        return lines;
    }

    private List<Double> runs(List<String> start, List<String> words) throws IOException, InterruptedException {
        List<Double> ms = new ArrayList<>();
        once(start, words);
        for (int i = 0; i < RUNS; i++) {
            ms.add(once(start, words));
        }
        return ms;
    }

    private static List<String> propose() {
        return List.of("propose", "scenarios/" + SCENARIO + "/brief.json", "--catalog", "catalog-samples/wide");
    }

    private List<String> launcher() {
        return List.of(home.resolve("optimizer").resolve("bin").resolve("withy").toString());
    }

    private List<String> java(String sharing, String compilers) {
        return List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-XX:+UseSerialGC",
                sharing,
                compilers,
                "-Dfile.encoding=UTF-8",
                "-Dwithy.home=" + home,
                "-jar",
                home.resolve("optimizer/target/withy-optimizer.jar").toString());
    }

    private Line line(String way, int targetMs, List<String> start) throws IOException, InterruptedException {
        List<Double> ms = new ArrayList<>();
        double stoppedMs = Cap.SECONDS * 1000.0;
        if (!start.isEmpty()) {
            double first = once(start, propose());
            if (first >= stoppedMs) {
                return new Line(way, targetMs, List.of(first), true);
            }
            for (int i = 0; i < RUNS; i++) {
                ms.add(once(start, propose()));
            }
        }
        return new Line(way, targetMs, ms, ms.stream().anyMatch(one -> one >= stoppedMs));
    }

    private double once(List<String> start, List<String> words) throws IOException, InterruptedException {
        List<String> command = new ArrayList<>(start);
        command.addAll(words);
        long from = System.nanoTime();
        Process process = new ProcessBuilder(command)
                .directory(home.toFile())
                .redirectOutput(Redirect.DISCARD)
                .redirectError(Redirect.DISCARD)
                .start();
        if (!process.waitFor(Cap.SECONDS, TimeUnit.SECONDS)) {
            process.destroyForcibly().waitFor();
            return Cap.SECONDS * 1000.0;
        }
        double ms = Math.min(Job.millisSince(from), Cap.SECONDS * 1000.0);
        if (process.exitValue() != 0) {
            throw new IOException("exit code " + process.exitValue() + ": " + String.join(" ", command)
                    + "\nMaybe run that line by hand; it says why.");
        }
        return ms;
    }
}
