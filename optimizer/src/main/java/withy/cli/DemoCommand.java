package withy.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.brief.Brief;
import withy.catalog.Catalog;

@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy demo                          three builds for a kayak angler%n"
                + "  withy demo --units both             with feet, inches and ounces%n"
                + "  withy demo --priority weight=5      the same angler, weight above all%n"
                + "  withy demo --without PART --json    without a part, for a machine%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Proposes three builds for a sample brief from the sample catalogue.",
        optionListHeading = "%nOptions:%n")
final class DemoCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    DemoCommand() {}

    @Override
    public Integer call() {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Path home = surroundings.home();
        Catalog catalog = catalogs.read(home.resolve("catalog-samples").resolve("bench"), surroundings, err);
        String file = home.resolve("scenarios")
                .resolve("kayak-estuary")
                .resolve("brief.json")
                .toString();
        Brief brief = briefs.read(file, catalog, surroundings);
        return Answering.propose(catalog, brief, output, spec.commandLine().getOut(), err, surroundings);
    }
}
