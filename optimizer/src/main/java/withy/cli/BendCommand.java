package withy.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
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
import withy.app.Bend;
import withy.app.BendAnswer;
import withy.app.BuildReader;
import withy.app.PartIds;
import withy.app.TestedBlank;
import withy.brief.Brief;
import withy.brief.ReelTable;
import withy.catalog.Catalog;
import withy.catalog.RodType;
import withy.machine.HandleFit.NamedReel;
import withy.report.BendText;
import withy.rod.Build;
import withy.units.ForceUnit;
import withy.units.MassUnit;
import withy.units.Quantities;
import withy.units.UnitsFault;

@Command(
        name = "bend",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy bend build.json --brief brief.json --catalog shop%n"
                + "  withy bend build.json --brief brief.json --pull \"2 kg\" --butt 60 --line -20%n"
                + "  withy bend build.json --brief brief.json --reel 4000 --reel \"310 g\"%n"
                + "  withy bend build.json --brief brief.json --against other.json \\%n"
                + "      --weighed PART=18.2g%n"
                + "  withy bend build.json --brief brief.json --bendtest test.json%n"
                + "  withy bend build.json --brief brief.json --pictures drawings%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Tells how a build works: how it bends under a weight and under the line, how "
                    + "quick it is, what its wraps weigh, how it lies in the hand.",
            "A build file is one entry of builds in an answer of propose --json."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class BendCommand implements Callable<Integer> {
    private static final double STEEPEST_DEG = 89;
    private static final double HALF_TURN_DEG = 180;
    private static final double MOST_PULL_N = 1000;
    private static final int MOST_REEL_SIZE = 30_000;

    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BUILD", description = "The build as JSON; - reads standard input.")
    private String build;

    @Option(names = "--brief", paramLabel = "BRIEF", required = true, description = "The brief it is built for.")
    private String brief;

    @Option(names = "--pull", paramLabel = "FORCE", description = "Pull in the line, such as \"2 kg\"; else the drag.")
    private @Nullable String pull;

    @Option(
            names = "--butt",
            paramLabel = "DEGREES",
            description = "How steeply the butt is held, degrees above level; else 45.")
    private @Nullable Double butt;

    @Option(
            names = "--line",
            paramLabel = "DEGREES",
            description = "Where the line goes beyond the tip, degrees above level, -90 straight down; else 0.")
    private @Nullable Double line;

    @Option(
            names = "--reel",
            paramLabel = "REEL",
            description =
                    "A reel to try on the rod: its size, such as 4000, or its weight with line, such as \"310 g\"."
                            + " May be given more than once.")
    private List<String> reels = new ArrayList<>();

    @Option(
            names = "--bendtest",
            paramLabel = "FILE",
            description = "The blank's stiffness by your own test: an answer of withy bendtest --json.")
    private @Nullable String bendtest;

    @Option(
            names = "--against",
            paramLabel = "BUILD",
            description = "Another build: how likely is this one really the lighter?")
    private @Nullable String against;

    @Option(
            names = "--weighed",
            paramLabel = "PART=WEIGHT",
            description =
                    "A piece you weighed: its weight replaces the catalogue's in that comparison. May be given more"
                            + " than once.")
    private List<String> weighed = new ArrayList<>();

    @Option(
            names = "--seed",
            paramLabel = "NUMBER",
            defaultValue = "1",
            description = "What drawing weights begins with (${DEFAULT-VALUE} unless told); the same gives the same.")
    private long seed = 1;

    @Option(
            names = "--pictures",
            paramLabel = "FOLDER",
            description = "Draw the rod and its bend: SVG files and a page with the figures, pictures.html.")
    private @Nullable String pictures;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    BendCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Catalog catalog = catalogs.read(catalogs.folder(null, surroundings), surroundings, err);
        Brief read = briefs.read(brief, catalog, surroundings);
        Build told = build(build, catalog, surroundings);
        BendAnswer answer = Bend.run(catalog, read, told, question(read, told, catalog, surroundings));
        if (pictures != null) {
            Drawings.write(pictures, answer, output.units(), err);
        }
        Answering.print(
                output.json() ? AnswerJson.write(answer) : BendText.of(answer, output.units()),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private static Build build(String name, Catalog catalog, Surroundings surroundings) {
        BuildReader.Reading reading = BuildReader.read(Texts.read(name, "build", surroundings), catalog);
        Build told = reading.build();
        if (told == null) {
            throw BriefOptions.stop(Exit.BAD_DATA, reading.faults());
        }
        return told;
    }

    private Bend.Question question(Brief read, Build told, Catalog catalog, Surroundings surroundings) {
        return new Bend.Question(
                within("--butt", butt, STEEPEST_DEG),
                within("--line", line, HALF_TURN_DEG),
                pullN(),
                reels.stream().map(reel -> reel(reel, read)).toList(),
                bendtest == null ? null : tested(bendtest, told, surroundings),
                against == null ? null : build(against, catalog, surroundings),
                weighed(catalog),
                seed);
    }

    private static TestedBlank tested(String name, Build told, Surroundings surroundings) {
        TestedBlank.Reading reading = TestedBlank.read(
                Texts.read(name, "bendtest", surroundings), told.layout().blankId());
        TestedBlank tested = reading.tested();
        if (tested == null) {
            throw new Stop(Exit.BAD_DATA, String.valueOf(reading.fault()));
        }
        return tested;
    }

    private Map<String, Double> weighed(Catalog catalog) {
        Map<String, Double> grams = new TreeMap<>();
        List<String> faults = new ArrayList<>();
        for (String told : weighed) {
            int at = told.indexOf('=');
            String id = at < 0 ? told : told.substring(0, at).strip();
            if (at < 0 || catalog.find(id) == null) {
                faults.add("--weighed " + told + ": allowed is an id of the catalogue, =, and a weight.\n"
                        + PartIds.maybe(id, catalog));
                continue;
            }
            try {
                grams.put(
                        id,
                        Quantities.mass(told.substring(at + 1).strip(), MassUnit.GRAM)
                                .grams());
            } catch (UnitsFault e) {
                faults.add("--weighed " + told + ": allowed is " + e.allowed() + ".\n" + e.maybe());
            }
        }
        if (!faults.isEmpty()) {
            throw new Stop(Exit.USAGE, faults);
        }
        return grams;
    }

    private static @Nullable Double within(String option, @Nullable Double value, double most) {
        if (value != null && !(Math.abs(value) <= most)) {
            throw new Stop(
                    Exit.USAGE,
                    option + " " + value + ": allowed is -" + (int) most + " to " + (int) most + " degrees.",
                    "Maybe the angle was counted from upright.");
        }
        return value;
    }

    private @Nullable Double pullN() {
        if (pull == null) {
            return null;
        }
        try {
            double newtons = Quantities.force(pull, ForceUnit.KILOGRAM_FORCE).newtons();
            if (newtons > 0 && newtons <= MOST_PULL_N) {
                return newtons;
            }
            throw new Stop(
                    Exit.USAGE,
                    "--pull " + pull + ": allowed is above 0 and at most 100 kg.",
                    "Maybe the unit is missing; a bare number is kilograms.");
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--pull " + pull + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }

    /** A bare whole number is a size, anything with a unit a weight. */
    private static NamedReel reel(String told, Brief read) {
        RodType type = read.rodType();
        if (told.matches("\\d{2,5}")
                && Integer.parseInt(told) <= MOST_REEL_SIZE
                && Integer.parseInt(told) >= ReelTable.leastSize(type)) {
            int size = Integer.parseInt(told);
            return new NamedReel(told, ReelTable.of(type, size).reel(size));
        }
        try {
            if (told.isBlank() || told.strip().matches("[\\d.,]+")) {
                throw new Stop(
                        Exit.USAGE,
                        "--reel " + told + ": allowed is a size, such as 4000, or a weight, such as \"310 g\".",
                        "Maybe the unit is missing.");
            }
            double grams = Quantities.mass(told, MassUnit.GRAM).grams();
            Brief.Reel own = read.reel();
            return new NamedReel(
                    told.strip(),
                    new Brief.Reel(
                            0,
                            own.footLengthMm(),
                            own.footThicknessMm(),
                            own.footWidthMm(),
                            grams,
                            own.centreOffsetMm(),
                            own.lipDiameterMm(),
                            own.stemHeightMm()));
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--reel " + told + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }
}
