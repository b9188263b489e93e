package withy.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.BenchSheet;
import withy.report.LabelPaper;

@Command(
        name = "labels",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy paper labels --job 3 --out labels.pdf%n"
                + "  withy paper labels answer.json --brief brief.json --build 2 --out labels.pdf%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Labels to cut out: one for each part's bag, one for the rod tube.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class PaperLabelsCommand implements Callable<Integer> {
    @ParentCommand
    private PaperCommand parent;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SourceOptions source;

    @Mixin
    private SheetOption sheet;

    @Mixin
    private PaperOptions paper;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperLabelsCommand() {}

    @Override
    public Integer call() {
        paper.sound(".pdf", ".html");
        BenchSheet bench = source.bench(
                parent.surroundings(),
                spec.commandLine().getErr(),
                paper.output().units());
        BenchSheet.Made made = bench.made();
        paper.document(LabelPaper.of(bench, paper.reader(), sheet.size()));
        paper.told(
                "labels",
                sheet.size(),
                List.of(bench.build().name()),
                made == null ? List.of() : List.of(made.job()),
                List.of(),
                spec.commandLine().getOut());
        return Exit.FINE;
    }
}
