package withy.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;

@Command(
        name = "paper",
        mixinStandardHelpOptions = true,
        subcommands = {
            PaperOfferCommand.class,
            PaperBenchCommand.class,
            PaperLabelsCommand.class,
            PaperPicksCommand.class,
            PaperCutsCommand.class,
            PaperBomCommand.class
        },
        headerHeading = "Examples:%n"
                + "  withy paper offer --job 3 --out offer.pdf       what the customer is handed%n"
                + "  withy paper offer --job 3 --out offer.html      one file to send by mail%n"
                + "  withy paper bench --job 3 --out bench.pdf       what hangs over the bench%n"
                + "  withy paper labels --job 3 --out labels.pdf     for the bags and the tube%n"
                + "  withy paper picks --out picks.pdf               what to take off the shelf%n"
                + "  withy paper cuts --out cuts.pdf                 what to saw%n"
                + "  withy paper bom --job 3 --out parts.xlsx        the parts as a spreadsheet%n"
                + "  withy paper bench answer.json --brief brief.json --out bench.pdf%n"
                + "%n",
        synopsisHeading = "Usage: ",
        synopsisSubcommandLabel = "PAPER",
        descriptionHeading = "%n",
        description = {
            "Prints what the customer is handed, what hangs over the bench, and lists.",
            "The name of the file decides: .pdf, or .html to print from a browser."
        },
        optionListHeading = "%nOptions:%n",
        commandListHeading = "%nPapers; withy paper PAPER --help tells more:%n")
final class PaperCommand implements Runnable {
    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperCommand() {}

    @Override
    public void run() {
        spec.commandLine().usage(spec.commandLine().getOut());
    }

    Surroundings surroundings() {
        return main.surroundings();
    }
}
