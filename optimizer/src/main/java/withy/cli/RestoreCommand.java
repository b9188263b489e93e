package withy.cli;

import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.FolderAnswer;
import withy.report.FolderText;
import withy.shop.Backups;

@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  withy restore shop/backups/shop-2026-11-25.db --catalog shop%n" + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Puts a back-up in the place of the shop's memory. What is there now is backed up first.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class RestoreCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", paramLabel = "FILE", description = "The back-up.")
    private String file;

    @Mixin
    private CatalogOptions catalogs;

    @Option(names = "--json", description = "Print the answer as JSON; withy schema describes it.")
    private boolean json;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    RestoreCommand() {}

    @Override
    public Integer call() {
        Path folder = catalogs.folder(null, main.surroundings());
        FolderAnswer answer = FolderAnswer.of("restored", Backups.restore(folder, Path.of(file)));
        Answering.print(
                json ? AnswerJson.write(answer) : FolderText.of(answer),
                spec.commandLine().getOut());
        return Exit.FINE;
    }
}
