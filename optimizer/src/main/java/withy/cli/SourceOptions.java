package withy.cli;

import java.io.PrintWriter;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import withy.app.BenchDesk;
import withy.app.BenchSheet;
import withy.app.BuildsReader;
import withy.app.JobRods;
import withy.app.Workshop;
import withy.brief.Brief;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.brief.BriefReading;
import withy.catalog.Catalog;
import withy.rod.Build;
import withy.shop.Snapshot;
import withy.units.QuantityText;

/** Which builds a paper is of: those of an answer, or a job's. */
final class SourceOptions {
    private static final int MOST_BUILDS = 3;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "ANSWER",
            description = "An answer of withy propose --json, or one build; - reads standard input.")
    private @Nullable String answer;

    @Option(
            names = "--brief",
            paramLabel = "BRIEF",
            description = "The brief it is built for; an answer brings its own.")
    private @Nullable String brief;

    @Option(names = "--build", paramLabel = "RANK", description = "Only this build of the answer.")
    private @Nullable Integer rank;

    @Option(names = "--job", paramLabel = "JOB", description = "A job of the shop instead of ANSWER.")
    private @Nullable Long job;

    @Mixin
    private CatalogOptions catalogs;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    SourceOptions() {}

    /**
     * Builds with what they are judged by.
     *
     * @param catalog the parts
     * @param brief the brief
     * @param builds best first, at least one
     */
    record Builds(Catalog catalog, Brief brief, List<Build> builds) {}

    /** The job that was named, or null. */
    @Nullable
    Long job() {
        return job;
    }

    /** The text of the answer, or null where a job was named instead. */
    @Nullable
    String text(Surroundings surroundings) {
        if ((answer == null) == (job == null)) {
            throw new Stop(
                    Exit.USAGE,
                    answer == null ? "Neither an answer nor a job is named." : "Both an answer and a job are named.",
                    "Maybe name one of them: answer.json, or --job 3.");
        }
        if (job != null && (brief != null || rank != null)) {
            throw new Stop(
                    Exit.USAGE,
                    "A job has its own brief and build: " + (brief == null ? "--build" : "--brief") + " says nothing.",
                    "Maybe leave it out.");
        }
        return answer == null ? null : Texts.read(answer, "answer", surroundings);
    }

    Workshop workshop(Surroundings surroundings, PrintWriter err) {
        return catalogs.workshop(surroundings, err);
    }

    /** The bench's sheet of a job's accepted rod, or of one build of an answer: the best unless another was named. */
    BenchSheet bench(Surroundings surroundings, PrintWriter err, QuantityText units) {
        String text = text(surroundings);
        if (text == null) {
            return BenchDesk.of(JobRods.of(workshop(surroundings, err), Objects.requireNonNull(job)), units);
        }
        Builds builds = builds(text, surroundings, err);
        return BenchDesk.of(builds.catalog(), builds.brief(), builds.builds().get(0), units);
    }

    /** The builds of an answer; all of them unless one was named. */
    Builds builds(String text, Surroundings surroundings, PrintWriter err) {
        Snapshot snapshot = workshop(surroundings, err).snapshot();
        Brief read = brief(text, snapshot.catalog(), surroundings);
        Catalog catalog = snapshot.forBrief(read);
        BuildsReader.Reading reading = BuildsReader.read(text, catalog);
        List<Build> builds = reading.builds();
        if (builds.isEmpty()) {
            throw BriefOptions.stop(Exit.BAD_DATA, reading.faults());
        }
        if (!reading.catalogHash().isEmpty() && !reading.catalogHash().equals(catalog.hash())) {
            err.println("The lists changed since this answer: prices and weights are today's.");
        }
        return new Builds(catalog, read, chosen(builds));
    }

    /** The brief that was named, or the one in the answer; that one's day was judged when it was made. */
    private Brief brief(String text, Catalog catalog, Surroundings surroundings) {
        if (brief != null) {
            return new BriefOptions().read(brief, catalog, surroundings);
        }
        String own = BuildsReader.brief(text);
        if (own == null) {
            throw new Stop(Exit.USAGE, "--brief is missing.", "Maybe one build was given: add the brief it is for.");
        }
        BriefReading reading = BriefReader.read(own, new BriefContext(catalog.rates(), LocalDate.EPOCH));
        Brief read = reading.brief();
        if (read == null) {
            throw BriefOptions.stop(Exit.BAD_DATA, reading.faults());
        }
        return read;
    }

    private List<Build> chosen(List<Build> builds) {
        if (rank == null) {
            return builds.subList(0, Math.min(builds.size(), MOST_BUILDS));
        }
        if (rank < 1 || rank > builds.size()) {
            throw new Stop(
                    Exit.USAGE,
                    "--build " + rank + ": allowed is 1 to " + builds.size() + ".",
                    "Maybe it was a build of another answer.");
        }
        return builds.subList(rank - 1, rank);
    }
}
