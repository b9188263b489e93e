package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.Answer;
import withy.app.AnswerJson;
import withy.app.BenchDesk;
import withy.app.BenchSheet;
import withy.app.BuildsReader;
import withy.app.OfferDesk;
import withy.app.OfferSheet;
import withy.app.PaperAnswer;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.report.BenchPaper;
import withy.report.OfferPaper;
import withy.report.Pdf;
import withy.report.Reader;
import withy.report.Sheet;
import withy.rod.Build;
import withy.shop.Snapshot;

@Command(
        name = "paper",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy propose brief.json --json > answer.json%n"
                + "  withy paper offer answer.json --brief brief.json --out offer.pdf%n"
                + "  withy paper bench answer.json --brief brief.json --build 2 --out bench.pdf%n"
                + "  withy paper bench build.json --brief brief.json --sheet letter --out bench.html%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Prints the offer for the customer, or the sheet for the bench.",
            "The name of the file decides: .pdf, or .html to print from a browser."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class PaperCommand implements Callable<Integer> {
    private static final int MOST_BUILDS = 3;
    private static final int MOST_DAYS = 730;

    /** What can be printed. */
    enum Paper {
        OFFER,
        BENCH
    }

    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "PAPER", description = "offer or bench.")
    private Paper paper;

    @Parameters(
            index = "1",
            paramLabel = "ANSWER",
            description = "An answer of withy propose --json, or one build; - reads standard input.")
    private String answer;

    @Option(names = "--brief", paramLabel = "BRIEF", required = true, description = "The brief it is built for.")
    private String brief;

    @Option(
            names = "--out",
            paramLabel = "FILE",
            required = true,
            description = "Where to write: FILE.pdf or FILE.html.")
    private String out;

    @Option(
            names = "--build",
            paramLabel = "RANK",
            description = "Only this build of the answer; a bench sheet is of build 1 unless told.")
    private @Nullable Integer rank;

    @Option(
            names = "--sheet",
            paramLabel = "SHEET",
            defaultValue = "a4",
            description = "Size of the paper: a4 or letter (${DEFAULT-VALUE} unless told).")
    private Sheet sheet = Sheet.A4;

    @Option(
            names = "--country",
            paramLabel = "LOCALE",
            defaultValue = "en-GB",
            description =
                    "Forms of money, dates and decimals on the offer, such as de-DE (${DEFAULT-VALUE} unless told).")
    private String country = "en-GB";

    @Option(names = "--customer", paramLabel = "NAME", defaultValue = "", description = "Who the offer is for.")
    private String customer = "";

    @Option(
            names = "--valid",
            paramLabel = "DAYS",
            defaultValue = "14",
            description = "Days the offer holds (${DEFAULT-VALUE} unless told).")
    private int validDays;

    @Option(
            names = "--deposit",
            paramLabel = "PERCENT",
            defaultValue = "40",
            description = "Of the price, paid before parts are ordered (${DEFAULT-VALUE} unless told).")
    private int deposit;

    @Option(
            names = "--bench-days",
            paramLabel = "DAYS",
            defaultValue = "14",
            description = "Days of work and curing once all parts are there (${DEFAULT-VALUE} unless told).")
    private int benchDays;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperCommand() {}

    @Override
    public Integer call() {
        within("--valid", validDays, MOST_DAYS, "days");
        within("--bench-days", benchDays, MOST_DAYS, "days");
        within("--deposit", deposit, 100, "percent");
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Snapshot snapshot = catalogs.workshop(surroundings, err).snapshot();
        Brief read = briefs.read(brief, snapshot.catalog(), surroundings);
        Catalog catalog = snapshot.forBrief(read);
        List<Build> builds = builds(catalog, surroundings, err);
        Printed printed = paper == Paper.OFFER ? offer(catalog, read, builds) : bench(catalog, read, builds);
        write(printed.html());
        PaperAnswer told = new PaperAnswer(
                Answer.SCHEMA,
                paper.name().toLowerCase(Locale.ROOT),
                sheet.name().toLowerCase(Locale.ROOT),
                out,
                printed.builds());
        Answering.print(
                output.json() ? AnswerJson.write(told) : String.join("\n", printed.builds()) + "\n" + out,
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private record Printed(String html, List<String> builds) {}

    private Printed offer(Catalog catalog, Brief read, List<Build> builds) {
        OfferSheet.Terms terms = new OfferSheet.Terms(customer, catalog.asOf(), validDays, deposit, benchDays);
        OfferSheet offer = OfferDesk.of(catalog, read, builds, terms, output.units());
        return new Printed(
                OfferPaper.of(offer, new Reader(output.units(), locale()), sheet),
                offer.builds().stream().map(OfferSheet.Choice::name).toList());
    }

    private Printed bench(Catalog catalog, Brief read, List<Build> builds) {
        BenchSheet bench = BenchDesk.of(catalog, read, builds.get(0), output.units());
        return new Printed(
                BenchPaper.of(bench, output.units(), sheet),
                List.of(bench.build().name()));
    }

    private List<Build> builds(Catalog catalog, Surroundings surroundings, PrintWriter err) {
        BuildsReader.Reading reading = BuildsReader.read(Texts.read(answer, "answer", surroundings), catalog);
        List<Build> builds = reading.builds();
        if (builds.isEmpty()) {
            throw BriefOptions.stop(Exit.BAD_DATA, reading.faults());
        }
        if (!reading.catalogHash().isEmpty() && !reading.catalogHash().equals(catalog.hash())) {
            err.println("The lists changed since this answer: prices and weights are today's.");
        }
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

    private Locale locale() {
        Locale told = Locale.forLanguageTag(country);
        if (!List.of(Locale.getAvailableLocales()).contains(told)
                || told.getCountry().isEmpty()) {
            throw new Stop(
                    Exit.USAGE,
                    "--country " + country + ": allowed is a language and a country, such as en-GB or de-DE.",
                    "Maybe the country is missing, or the two are swapped.");
        }
        return told;
    }

    private void write(String html) {
        String lower = out.toLowerCase(Locale.ROOT);
        if (!lower.endsWith(".pdf") && !lower.endsWith(".html")) {
            throw new Stop(
                    Exit.USAGE, "--out " + out + ": allowed is a name that ends in .pdf or .html.", "Maybe add .pdf.");
        }
        try {
            Files.write(Path.of(out), lower.endsWith(".pdf") ? Pdf.of(html) : html.getBytes(StandardCharsets.UTF_8));
        } catch (InvalidPathException e) {
            throw new Stop(Exit.USAGE, "--out " + out + ": no name of a file.", "Maybe a quote is missing.");
        } catch (IOException e) {
            throw new Stop(
                    Exit.DISK,
                    "Can't write " + out + ": " + e.getClass().getSimpleName() + ".",
                    "Maybe its folder does not exist, or there is no right to write.");
        }
    }

    private static void within(String option, int value, int most, String unit) {
        if (value < 0 || value > most) {
            throw new Stop(
                    Exit.USAGE,
                    option + " " + value + ": allowed is 0 to " + most + " " + unit + ".",
                    "Maybe a digit too many was typed.");
        }
    }
}
