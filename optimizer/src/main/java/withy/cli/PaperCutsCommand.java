package withy.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.CutDesk;
import withy.app.CutSheet;
import withy.app.PickSheet;
import withy.explain.Phrases;
import withy.report.CutPaper;
import withy.units.LengthUnit;
import withy.units.Quantities;
import withy.units.UnitsFault;

@Command(
        name = "cuts",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy paper cuts --out cuts.pdf%n"
                + "  withy paper cuts --kerf 1.6mm --out cuts.pdf%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "What to saw for all accepted jobs: arbors, grips and tubes, with what is left over.",
        optionListHeading = "%nOptions:%n")
final class PaperCutsCommand implements Callable<Integer> {
    @ParentCommand
    private PaperCommand parent;

    @Spec
    private CommandSpec spec;

    /** Wider is no saw for rods. */
    private static final double WIDEST_MM = 5;

    @Option(
            names = "--kerf",
            paramLabel = "WIDTH",
            description = "What the saw takes with each cut, such as 1.6mm; assumed is 1 mm.")
    private @Nullable String kerf;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private SheetOption sheet;

    @Mixin
    private PaperOptions paper;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperCutsCommand() {}

    @Override
    public Integer call() {
        paper.sound(".pdf", ".html");
        PrintWriter err = spec.commandLine().getErr();
        CutSheet cuts = CutDesk.of(catalogs.workshop(parent.surroundings(), err), kerfMm());
        paper.document(CutPaper.of(cuts, paper.reader(), sheet.size()));
        paper.told(
                "cuts",
                sheet.size(),
                List.of(),
                cuts.jobs().stream().map(PickSheet.JobLine::job).toList(),
                kerf == null
                        ? List.of(Phrases.of(
                                "paper.assumed.kerf", paper.output().units().thickness(CutDesk.KERF_MM)))
                        : List.of(),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private double kerfMm() {
        if (kerf == null) {
            return CutDesk.KERF_MM;
        }
        try {
            double mm = Quantities.length(kerf, LengthUnit.MILLIMETRE).mm();
            if (mm >= 0 && mm <= WIDEST_MM) {
                return mm;
            }
            throw new Stop(Exit.USAGE, "--kerf " + kerf + ": allowed is 0 to 5 mm.", "Maybe a point is missing.");
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--kerf " + kerf + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }
}
