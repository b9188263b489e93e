package withy.cli;

import java.nio.file.Path;
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
import withy.app.FolderAnswer;
import withy.report.FolderText;
import withy.shop.Backups;
import withy.shop.Shop;

@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy backup                       beside the shop, under today's date%n"
                + "  withy backup /media/stick/shop.db  to a stick%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Copies the shop's memory to one file and reads the copy through.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class BackupCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "FILE", description = "Where to; a file not there yet.")
    private @Nullable String file;

    @Mixin
    private CatalogOptions catalogs;

    @Option(names = "--json", description = "Print the answer as JSON; withy schema describes it.")
    private boolean json;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    BackupCommand() {}

    @Override
    public Integer call() {
        Path folder = catalogs.folder(null, main.surroundings());
        if (!Shop.exists(folder)) {
            throw new Stop(
                    Exit.DISK,
                    "There is no " + Shop.FILE + " in " + folder + ": nothing was booked yet.",
                    "Maybe another folder is meant.");
        }
        Path to = file == null ? Backups.next(folder, catalogs.day(main.surroundings())) : Path.of(file);
        FolderAnswer answer = FolderAnswer.of("backedUp", Backups.backup(folder, to));
        Answering.print(
                json ? AnswerJson.write(answer) : FolderText.of(answer),
                spec.commandLine().getOut());
        return Exit.FINE;
    }
}
