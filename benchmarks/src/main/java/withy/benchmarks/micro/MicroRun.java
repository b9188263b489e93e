package withy.benchmarks.micro;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/** Runs {@link Micro} in a process of its own. */
public final class MicroRun {
    /** How, for the page. */
    public static final String HOW =
            "JMH 1.37, one fork, two warm-up and five counted iterations of a second each, average time, ± its 99.9 % interval";

    private static final int WARM_UP = 2;
    private static final int COUNTED = 5;

    private MicroRun() {}

    /** One figure: what, µs, ± µs. */
    public record Figure(String what, double micros, double errorMicros) {}

    /** Measures all. */
    public static List<Figure> measure() throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(Micro.class.getName() + "\\..*")
                        .forks(1)
                        .warmupIterations(WARM_UP)
                        .warmupTime(TimeValue.seconds(1))
                        .measurementIterations(COUNTED)
                        .measurementTime(TimeValue.seconds(1))
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();
        List<Figure> figures = new ArrayList<>();
        for (RunResult one : results) {
            Result<?> result = one.getPrimaryResult();
            figures.add(new Figure(words(result.getLabel()), result.getScore(), result.getScoreError()));
        }
        return figures;
    }

    private static String words(String method) {
        return method.replaceAll("([A-Z])", " $1").toLowerCase(Locale.ROOT);
    }
}
