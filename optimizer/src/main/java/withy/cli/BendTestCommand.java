package withy.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.BendDoubt;
import withy.app.BendTest;
import withy.app.BendTestAnswer;
import withy.app.PartIds;
import withy.app.TraceReader;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.mechanics.StiffnessFit.DropFrom;
import withy.mechanics.StiffnessFit.Reading;
import withy.mechanics.TraceFit;
import withy.report.BendTestText;
import withy.units.LengthUnit;
import withy.units.MassUnit;
import withy.units.Quantities;
import withy.units.UnitsFault;

@Command(
        name = "bendtest",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy bendtest BLANK --catalog shop --reading \"340g = 690mm\"%n"
                + "  withy bendtest BLANK --reading 100g=260mm --reading 200g=455mm \\%n"
                + "      --reading 400g=760mm --held 60mm --json > test.json%n"
                + "  withy bendtest BLANK --trace points.csv --load 300g%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Turns a blank bent on your own wall into its stiffness.",
            "Hold it level, hang weights on its tip, measure how far the tip drops. Drops "
                    + "count from the straight line of the unbent blank unless --from says from its "
                    + "own droop. One reading sets the stiffness; from three on they also tell how "
                    + "it falls toward the tip. A trace is a line a point, \"ahead, down\", in any "
                    + "one unit, from where the blank is held to its tip. withy bend --bendtest "
                    + "test.json uses the result."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class BendTestCommand implements Callable<Integer> {
    private static final String STRAIGHT = "straight";
    private static final String DROOP = "droop";
    private static final int MOST_READINGS = 50;
    private static final double HEAVIEST_G = 20_000;

    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "BLANK", description = "Catalogue id of the blank.")
    private String blank;

    @Option(
            names = "--reading",
            paramLabel = "LOAD=DROP",
            description = "A weight hung on the tip and the drop of the tip. May be given more than once.")
    private List<String> readings = new ArrayList<>();

    @Option(names = "--trace", paramLabel = "FILE", description = "Points of the bent blank; - reads standard input.")
    private @Nullable String trace;

    @Option(names = "--load", paramLabel = "LOAD", description = "The weight the points were traced under.")
    private @Nullable String load;

    @Option(
            names = "--held",
            paramLabel = "LENGTH",
            description = "Where the blank was held, from its butt end; else at its butt end.")
    private @Nullable String held;

    @Option(
            names = "--from",
            paramLabel = "WHERE",
            description = "Where drops count from: straight (the line of the unbent blank) or droop (where its own"
                    + " weight had taken the tip); else straight.")
    private String from = STRAIGHT;

    @Option(names = "--sure", description = "Take a stiffness many times off the list.")
    private boolean sure;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private OutputOptions output;

    private final List<String> faults = new ArrayList<>();

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    BendTestCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Catalog catalog = catalogs.read(catalogs.folder(null, surroundings), surroundings, err);
        Part part = catalog.find(blank);
        if (!(part instanceof Blank tested)) {
            throw new Stop(
                    Exit.USAGE,
                    "BLANK " + blank + ": allowed is the id of a blank of the catalogue.",
                    part == null
                            ? PartIds.maybe(blank, catalog)
                            : "Maybe another part's id was copied: this is a "
                                    + part.kind().word() + ".");
        }
        BendTest.Question question = question(tested, surroundings);
        BendTest.Outcome outcome = BendTest.run(catalog, tested, question);
        BendTestAnswer answer = outcome.answer();
        if (answer == null) {
            throw new Stop(
                    Exit.BAD_DATA,
                    "No stiffness fits these readings: " + outcome.doubt(),
                    "Maybe a weight or a drop was mistyped, or the drop counts from elsewhere (--from).");
        }
        String doubt = sure ? null : BendDoubt.of(tested, answer, output.units());
        if (doubt != null) {
            throw new Stop(
                    Exit.USAGE,
                    doubt,
                    "Maybe a weight, a drop or a unit slipped: measure again; --sure takes it as it is.");
        }
        Answering.print(
                output.json() ? AnswerJson.write(answer) : BendTestText.of(answer, output.units()),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private BendTest.Question question(Blank tested, Surroundings surroundings) {
        if (!from.equals(STRAIGHT) && !from.equals(DROOP)) {
            fault("--from " + from + ": allowed is straight or droop.", "Maybe a letter is missing.");
        }
        double heldMm = held == null ? 0 : heldMm(held, tested);
        double free = tested.lengthMm() - heldMm;
        List<Reading> told = readings.stream().flatMap(r -> reading(r, free)).toList();
        double loadG = load == null ? 0 : grams("--load", load);
        List<TraceFit.Point> points = List.of();
        if (trace != null) {
            TraceReader.Reading read = TraceReader.read(Texts.read(trace, "trace", surroundings));
            faults.addAll(read.faults());
            points = read.points();
        }
        together();
        if (!faults.isEmpty()) {
            throw new Stop(trace != null && readings.isEmpty() && load != null ? Exit.BAD_DATA : Exit.USAGE, faults);
        }
        return new BendTest.Question(
                heldMm, from.equals(DROOP) ? DropFrom.OWN_DROOP : DropFrom.STRAIGHT_LINE, told, loadG, points);
    }

    /** Which options go together. */
    private void together() {
        if (trace == null && readings.isEmpty()) {
            fault(
                    "No reading is given: allowed is at least one --reading, or a --trace with its --load.",
                    "Maybe: --reading \"340g = 690mm\".");
        }
        if (trace != null && !readings.isEmpty()) {
            fault("--trace and --reading are given: allowed is one of them.", "Maybe run it twice and compare.");
        }
        if ((trace == null) != (load == null)) {
            fault("--trace and --load are allowed together only.", "Maybe the other one was forgotten.");
        }
        if (readings.size() > MOST_READINGS) {
            fault(readings.size() + " readings: allowed are at most " + MOST_READINGS + ".", "Maybe take their means.");
        }
    }

    private double heldMm(String told, Blank tested) {
        try {
            double mm = Quantities.length(told, LengthUnit.MILLIMETRE).mm();
            if (mm <= tested.lengthMm() / 2) {
                return mm;
            }
            fault(
                    "--held " + told + ": allowed is up to " + Math.round(tested.lengthMm() / 2)
                            + " mm, half of the blank.",
                    "Maybe it was measured from the tip.");
        } catch (UnitsFault e) {
            fault("--held " + told + ": allowed is " + e.allowed() + ".", e.maybe());
        }
        return 0;
    }

    private Stream<Reading> reading(String told, double freeMm) {
        String[] sides = told.split("=", -1);
        if (sides.length != 2) {
            fault(
                    "--reading " + told + ": allowed is a weight, =, and a drop, such as \"340g = 690mm\".",
                    "Maybe the quotes are missing.");
            return Stream.empty();
        }
        double grams = grams("--reading", sides[0].strip());
        double mm = 0;
        try {
            mm = Quantities.length(sides[1].strip(), LengthUnit.MILLIMETRE).mm();
            if (!(mm > 0 && mm < freeMm)) {
                fault(
                        "--reading " + told + ": allowed is a drop above 0 and below the free length, "
                                + Math.round(freeMm) + " mm.",
                        "Maybe the unit is missing; a bare number is millimetres.");
                return Stream.empty();
            }
        } catch (UnitsFault e) {
            fault("--reading " + told + ": allowed is " + e.allowed() + ".", e.maybe());
        }
        return grams > 0 && mm > 0 ? Stream.of(new Reading(grams, mm)) : Stream.empty();
    }

    private double grams(String option, String told) {
        try {
            double grams = Quantities.mass(told, MassUnit.GRAM).grams();
            if (grams > 0 && grams <= HEAVIEST_G) {
                return grams;
            }
            fault(option + " " + told + ": allowed is a weight above 0 and up to 20 kg.", "Maybe the unit is missing.");
        } catch (UnitsFault e) {
            fault(option + " " + told + ": allowed is " + e.allowed() + ".", e.maybe());
        }
        return 0;
    }

    private void fault(String what, String maybe) {
        faults.add(what + "\n" + maybe);
    }
}
