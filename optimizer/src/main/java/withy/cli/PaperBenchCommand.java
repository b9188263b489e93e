package withy.cli;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.BenchSheet;
import withy.report.BenchPaper;

@Command(
        name = "bench",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy paper bench --job 3 --out bench.pdf%n"
                + "  withy paper bench answer.json --brief brief.json --build 2 --out bench.pdf%n"
                + "  withy paper bench build.json --brief brief.json --sheet letter --out b.html%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "The sheet over the bench: rod to scale, parts, dimensions, mixes, order of work.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class PaperBenchCommand implements Callable<Integer> {
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
    PaperBenchCommand() {}

    @Override
    public Integer call() {
        paper.sound(".pdf", ".html");
        BenchSheet bench = source.bench(
                parent.surroundings(),
                spec.commandLine().getErr(),
                paper.output().units());
        BenchSheet.Made made = bench.made();
        paper.document(BenchPaper.of(bench, paper.reader(), sheet.size()));
        paper.told(
                "bench",
                sheet.size(),
                List.of(bench.build().name()),
                made == null ? List.of() : List.of(made.job()),
                List.of(),
                spec.commandLine().getOut());
        return Exit.FINE;
    }
}
