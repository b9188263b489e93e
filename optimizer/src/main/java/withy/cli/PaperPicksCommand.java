package withy.cli;

import java.io.PrintWriter;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.PickDesk;
import withy.app.PickSheet;
import withy.report.PickPaper;

@Command(
        name = "picks",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n" + "  withy paper picks --out picks.pdf%n" + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "What to take off the shelf for all accepted jobs, bin by bin, and what is to come.",
        optionListHeading = "%nOptions:%n")
final class PaperPicksCommand implements Callable<Integer> {
    @ParentCommand
    private PaperCommand parent;

    @Spec
    private CommandSpec spec;

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private SheetOption sheet;

    @Mixin
    private PaperOptions paper;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperPicksCommand() {}

    @Override
    public Integer call() {
        paper.sound(".pdf", ".html");
        PrintWriter err = spec.commandLine().getErr();
        PickSheet picks = PickDesk.of(catalogs.workshop(parent.surroundings(), err));
        paper.document(PickPaper.of(picks, paper.reader(), sheet.size()));
        paper.told(
                "picks",
                sheet.size(),
                List.of(),
                picks.jobs().stream().map(PickSheet.JobLine::job).toList(),
                List.of(),
                spec.commandLine().getOut());
        return Exit.FINE;
    }
}
