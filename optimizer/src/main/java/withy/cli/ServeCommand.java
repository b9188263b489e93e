package withy.cli;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ServiceLoader;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.Answer;
import withy.app.AnswerJson;
import withy.app.LocalPage;
import withy.app.ServeAnswer;
import withy.app.Workshop;

@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy serve --catalog shop                 prints its address%n"
                + "  withy serve --catalog shop --port 8020     always at the same port%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "Opens the bench page: brief, builds, why-not, jobs, stock and scale in a "
                    + "browser on this machine, until Ctrl-C.",
            "Nobody else can reach it, and it reaches nobody."
        },
        optionListHeading = "%nOptions:%n")
final class ServeCommand implements Callable<Integer> {
    private static final long LOOK_MS = 100;
    private static final int LAST_PORT = 65_535;

    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Option(names = "--port", paramLabel = "PORT", defaultValue = "0", description = "Port; else any that is free.")
    private int port;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private OutputOptions output;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    ServeCommand() {}

    @Override
    public Integer call() throws InterruptedException {
        if (port < 0 || port > LAST_PORT) {
            throw new Stop(Exit.USAGE, "--port " + port + ": allowed is 0 to 65535.", "Maybe leave it out.");
        }
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        Workshop first = catalogs.workshop(surroundings, err);
        LocalPage page = ServiceLoader.load(LocalPage.class)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException("the page is missing from the program"));
        Path folder = first.folder();
        LocalPage.Setting setting = new LocalPage.Setting(
                new FreshLists(
                        first,
                        () -> new Workshop(
                                folder, catalogs.read(folder, surroundings, err), catalogs.day(surroundings)),
                        () -> catalogs.day(surroundings)),
                surroundings.choosers(),
                output.units(),
                port);
        try (LocalPage.Opened opened = page.open(setting)) {
            String address = opened.address().toString();
            Answering.print(
                    output.json() ? AnswerJson.write(new ServeAnswer(Answer.SCHEMA, address)) : address,
                    spec.commandLine().getOut());
            err.println("Open that address in a browser on this machine. Ctrl-C ends it.");
            opened.prepare();
            while (!surroundings.interrupted().getAsBoolean()) {
                Thread.sleep(LOOK_MS);
            }
        } catch (IOException e) {
            throw new Stop(
                    Exit.DISK,
                    "Port " + port + " can't be had: " + e.getMessage() + ".",
                    "Maybe another withy serve is running; leave --port out to take any free one.");
        }
        return Exit.FINE;
    }
}
