package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
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
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.Bom;
import withy.app.JobRods;
import withy.report.BomFile;

@Command(
        name = "bom",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy paper bom --job 3 --out parts.xlsx%n"
                + "  withy paper bom answer.json --build 2 --out parts.csv%n"
                + "  withy paper bom answer.json --country de-DE --out parts.csv   decimal commas%n"
                + "  withy paper bom --list parts.xlsx --out parts.csv             the other form%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Parts and materials of one build as a spreadsheet, with bins and suppliers.",
            "It holds what the shop pays: not for the customer."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class PaperBomCommand implements Callable<Integer> {
    private static final String XLSX = ".xlsx";
    private static final String CSV = ".csv";

    /** Far above any list of one rod. */
    private static final int MOST_BYTES = 1 << 22;

    @ParentCommand
    private PaperCommand parent;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SourceOptions source;

    @Option(names = "--list", paramLabel = "LIST", description = "A list made before, .csv or .xlsx, instead.")
    private @Nullable String list;

    @Mixin
    private PaperOptions paper;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperBomCommand() {}

    @Override
    public Integer call() {
        paper.sound(CSV, XLSX);
        Bom bom = list == null ? made() : read(list);
        paper.write(paper.ends(XLSX) ? BomFile.xlsx(bom) : BomFile.csv(bom, paper.reader()));
        Long job = source.job();
        paper.told(
                "bom",
                null,
                List.of(),
                job == null ? List.of() : List.of(job),
                List.of(),
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private Bom made() {
        PrintWriter err = spec.commandLine().getErr();
        String text = source.text(parent.surroundings());
        Long job = source.job();
        if (text == null && job != null) {
            JobRods.JobRod rod = JobRods.of(source.workshop(parent.surroundings(), err), job);
            return Bom.of(rod.catalog(), rod.brief(), rod.build());
        }
        SourceOptions.Builds builds = source.builds(text == null ? "" : text, parent.surroundings(), err);
        return Bom.of(builds.catalog(), builds.brief(), builds.builds().get(0));
    }

    private static Bom read(String name) {
        try {
            Path file = Path.of(name);
            if (Files.size(file) > MOST_BYTES) {
                throw new Stop(Exit.BAD_DATA, "--list " + name + ": too large for a list.", "Maybe another was meant.");
            }
            byte[] bytes = Files.readAllBytes(file);
            return name.toLowerCase(Locale.ROOT).endsWith(XLSX) ? BomFile.ofXlsx(bytes) : BomFile.ofCsv(bytes);
        } catch (InvalidPathException e) {
            throw new Stop(Exit.USAGE, "--list " + name + ": no name of a file.", "Maybe a quote is missing.");
        } catch (IOException e) {
            throw Texts.unreadable("--list " + name, e);
        } catch (BomFile.Unreadable e) {
            throw new Stop(Exit.BAD_DATA, e.faults());
        }
    }
}
