package withy.cli;

import java.util.ArrayList;
import java.util.List;
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
import withy.app.OnScale;
import withy.app.ScaleReading;
import withy.app.WeighAnswer;
import withy.app.Workshop;
import withy.catalog.Part;
import withy.report.WeighText;
import withy.shop.Shop;
import withy.units.UnitsFault;

@Command(
        name = "weigh",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy weigh PART 18.5 g      a piece not weighed yet; its number is told%n"
                + "  withy weigh PART#7 18.5 g    that very piece%n"
                + "  withy weigh                  how far scale and lists differ%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Books what the scale says. A reading replaces the listed weight; several tell how much pieces"
                + " differ.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class WeighCommand implements Callable<Integer> {
    static final String MAYBE_SLIPPED =
            "Maybe something else lies on the scale, or the decimal point or the unit slipped:"
                    + " weigh again; --sure books it as it is.";

    static final String MAYBE_ANOTHER =
            "Maybe another piece lies on the scale, or another window weighed this one; --sure books the new weight.";

    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(
            index = "0",
            arity = "0..1",
            paramLabel = "PART",
            description = "Id of a part, or PART#7 for one piece of it.")
    private @Nullable String part;

    @Parameters(index = "1..*", arity = "0..*", paramLabel = "WEIGHT", description = "Such as 18.5 g or 0.65 oz.")
    private List<String> weight = new ArrayList<>();

    @Option(names = "--sure", description = "Book a weight far off the list, or over another one.")
    private boolean sure;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    WeighCommand() {}

    @Override
    public Integer call() {
        Workshop workshop =
                catalogs.workshop(main.surroundings(), spec.commandLine().getErr());
        WeighAnswer answer = part == null ? WeighAnswer.all(workshop) : weighed(workshop, part);
        Answering.print(
                output.json() ? AnswerJson.write(answer) : WeighText.of(answer, output.units()),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private WeighAnswer weighed(Workshop workshop, String typed) {
        PartName named = PartName.of(typed, workshop);
        String told = String.join(" ", weight);
        if (told.isEmpty()) {
            throw new Stop(Exit.USAGE, "No weight is told.", "Maybe type: withy weigh " + typed + " 18.5 g.");
        }
        long mg = milligrams(told);
        Part listed = workshop.lists().find(named.id());
        if (!sure && listed != null) {
            askBack(ScaleReading.doubt(workshop, listed, mg, output.units()), MAYBE_SLIPPED);
            OnScale now = OnScale.of(workshop, named.id(), named.number());
            askBack(now.doubt(listed, mg, output.units()), MAYBE_ANOTHER);
        }
        try (Shop shop = workshop.open()) {
            return WeighAnswer.of(workshop, shop.scale().weigh(named.id(), named.number(), mg), mg / 1000.0);
        }
    }

    static void askBack(@Nullable String doubt, String maybe) {
        if (doubt != null) {
            throw new Stop(Exit.USAGE, doubt, maybe);
        }
    }

    static long milligrams(String told) {
        try {
            return ScaleReading.milligrams(told);
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "weight " + told + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }
}
