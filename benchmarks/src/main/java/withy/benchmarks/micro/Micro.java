package withy.benchmarks.micro;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Objects;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import withy.benchmarks.peer.Question;
import withy.benchmarks.peer.Question.Slot;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.sample.SampleCatalogs;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Build.Choice;
import withy.rod.Rod;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.search.Search;

/** One rod of the wide catalogue: measure it, judge it, change one part and do both again, read the catalogue. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
public class Micro {
    /** The brief whose best build is measured. */
    public static final String SCENARIO = "kayak-estuary";

    private static final long SEED = 20_261_125L;

    private @Nullable Path folder;
    private @Nullable Question question;
    private @Nullable Build build;
    private @Nullable Rod rod;
    private final Random random = new Random(SEED);

    /** Reads the catalogue and finds the rod. */
    @Setup
    public void setUp() throws IOException {
        Path home = Path.of(System.getProperty("withy.home", "."));
        Path wide = home.resolve("catalog-samples").resolve("wide");
        Catalog catalog = Objects.requireNonNull(
                CatalogReader.read(wide, SampleCatalogs.AS_OF).catalog());
        Brief brief = BriefReader.read(
                        home.resolve("scenarios").resolve(SCENARIO).resolve("brief.json"),
                        new BriefContext(catalog.rates(), catalog.asOf()))
                .orThrow();
        Query query = Query.of(brief, Rulebook.standard());
        folder = wide;
        question = new Question(catalog, query);
        build = Objects.requireNonNull(
                new Search(catalog).solve(query, Watch.NONE).build());
        rod = question().measure(build());
    }

    /** Where every part lies, what it adds, what it costs. */
    @Benchmark
    public Rod measureARod() {
        return question().measure(build());
    }

    /** Every rule of a measured rod. */
    @Benchmark
    public boolean judgeARod() {
        return Judge.legal(Objects.requireNonNull(rod), question().query().rulebook());
    }

    /** Another part at one station, measured, judged, scored. */
    @Benchmark
    public Question.Judged oneMove() {
        Slot slot = question().slots().get(random.nextInt(question().slots().size()));
        Choice choice = slot.choices().get(random.nextInt(slot.choices().size()));
        Build other = choice == null ? build().without(slot.station()) : build().with(slot.station(), choice);
        return question().judge(other);
    }

    /** 1,500 parts from their files. */
    @Benchmark
    public Object readTheWideCatalogue() throws IOException {
        return CatalogReader.read(Objects.requireNonNull(folder), SampleCatalogs.AS_OF);
    }

    private Question question() {
        return Objects.requireNonNull(question);
    }

    private Build build() {
        return Objects.requireNonNull(build);
    }
}
