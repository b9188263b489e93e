package withy.cli;

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
import withy.app.Workshop;
import withy.report.FolderText;
import withy.shop.Doctor;
import withy.shop.Shop;

@Command(
        name = "doctor",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  withy doctor shop%n" + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Says what is wrong with a shop's memory; withy check does so for its lists.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class DoctorCommand implements Callable<Integer> {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "DIR", description = "The shop's folder.")
    private @Nullable String folder;

    @Mixin
    private CatalogOptions catalogs;

    @Option(names = "--json", description = "Print the answer as JSON; withy schema describes it.")
    private boolean json;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    DoctorCommand() {}

    @Override
    public Integer call() {
        Workshop workshop = catalogs.workshop(
                folder, main.surroundings(), spec.commandLine().getErr());
        if (!Shop.exists(workshop.folder())) {
            throw new Stop(
                    Exit.DISK,
                    "There is no " + Shop.FILE + " in " + workshop.folder() + ": nothing was booked yet.",
                    "Maybe another folder is meant; withy stock PART --count N begins one.");
        }
        FolderAnswer answer = FolderAnswer.of(
                Shop.file(workshop.folder()), Doctor.look(workshop.folder(), workshop.lists(), workshop.day()));
        Answering.print(
                json ? AnswerJson.write(answer) : FolderText.of(answer),
                spec.commandLine().getOut());
        return answer.sound() ? Exit.FINE : Exit.BAD_DATA;
    }
}
