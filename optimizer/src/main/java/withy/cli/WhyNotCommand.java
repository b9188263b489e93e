package withy.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.BuildReader;
import withy.app.DrawerAnswer;
import withy.app.Explain;
import withy.app.PartIds;
import withy.app.WhyAnswer;
import withy.app.WhyNotAnswer;
import withy.brief.Brief;
import withy.brief.BriefFault;
import withy.catalog.Catalog;
import withy.explain.Inquiry;
import withy.report.DrawerText;
import withy.report.WhyNotText;
import withy.report.WhyText;
import withy.rod.Build;
import withy.rod.Station;
import withy.shop.Snapshot;

@Command(
        name = "whynot",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy whynot brief.json seat-tarn-17 --catalog shop%n"
                + "  withy whynot brief.json blank-reed-210 seat-tarn-17    both together%n"
                + "  withy whynot brief.json seat-tarn-17 --budget 650      with more to spend%n"
                + "  withy whynot brief.json                                how firm the offer is%n"
                + "  withy whynot brief.json --station seat                 the drawer of seats%n"
                + "  withy whynot brief.json --station guide-1 --build build.json%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Says why a part is not in the best build: what rule it breaks, or what the "
                    + "best rod with it would cost, and what would have to change for it to win.",
            "Without a part it says how firm the offer is, and what each wish costs."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class WhyNotCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BRIEF", description = "The brief as JSON; - reads standard input.")
    private String brief;

    @Parameters(
            index = "1..*",
            arity = "0..*",
            paramLabel = "PART",
            description = "Ids of parts that are to be in together; withy parts lists them.")
    private List<String> parts = new ArrayList<>();

    @Option(
            names = "--station",
            paramLabel = "STATION",
            description = "The drawer of this station instead: every part made for it and what it would do."
                    + " Names are those of an answer, such as seat or guide-1.")
    private @Nullable String station;

    @Option(
            names = "--build",
            paramLabel = "BUILD",
            description = "With --station: of this build (as JSON) instead of the best one.")
    private @Nullable String build;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    WhyNotCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Snapshot snapshot = catalogs.workshop(surroundings, err).snapshot();
        Brief read = briefs.read(brief, snapshot.catalog(), surroundings);
        Catalog catalog = snapshot.forBrief(read);
        List<BriefFault> unknown = PartIds.unknown("PART", parts, catalog);
        if (!unknown.isEmpty()) {
            throw BriefOptions.stop(Exit.USAGE, unknown);
        }
        Currency currency = Currency.getInstance(catalog.rates().currency());
        ProgressLine progress = new ProgressLine(err, output.units(), currency, surroundings);
        Inquiry inquiry = Explain.inquiry(catalog, read, surroundings.choosers(), output.units(), progress);
        if (station != null) {
            return drawer(inquiry, catalog, surroundings);
        }
        PrintWriter out = spec.commandLine().getOut();
        if (parts.isEmpty()) {
            WhyAnswer why = Explain.why(inquiry, surroundings.choosers().apply(catalog), progress);
            Answering.print(output.json() ? AnswerJson.write(why) : WhyText.of(why, output.units(), currency), out);
            return code(why.interrupted(), !why.builds().isEmpty());
        }
        WhyNotAnswer answer = Explain.whyNot(inquiry, new TreeSet<>(parts));
        Answering.print(
                output.json() ? AnswerJson.write(answer) : WhyNotText.of(answer, output.units(), currency), out);
        return code(answer.interrupted(), answer.first() != null);
    }

    private static int code(boolean interrupted, boolean possible) {
        return interrupted ? Exit.INTERRUPTED : possible ? Exit.FINE : Exit.NOT_LEGAL;
    }

    private int drawer(Inquiry inquiry, Catalog catalog, Surroundings surroundings) {
        Station known = station == null ? null : Station.parse(station);
        if (known == null || !parts.isEmpty()) {
            throw new Stop(
                    Exit.USAGE,
                    "--station " + station + ": allowed is the name of one station, and no PART beside it.",
                    "Maybe copy it from an answer: seat, rearGrip, tipTop, guide-1 …");
        }
        Build own = null;
        if (build != null) {
            BuildReader.Reading reading = BuildReader.read(Texts.read(build, "build", surroundings), catalog);
            own = reading.build();
            if (own == null) {
                throw BriefOptions.stop(Exit.BAD_DATA, reading.faults());
            }
        }
        DrawerAnswer answer = Explain.drawer(inquiry, own, known);
        if (answer == null) {
            throw new Stop(
                    Exit.NOT_LEGAL,
                    "No rod can be built to this brief, so there is no drawer to open.",
                    "Maybe withy whynot " + brief + " says what stands in the way.");
        }
        Answering.print(
                output.json() ? AnswerJson.write(answer) : DrawerText.of(answer),
                spec.commandLine().getOut());
        return answer.interrupted() ? Exit.INTERRUPTED : Exit.FINE;
    }
}
