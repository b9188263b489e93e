package withy.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.JobDesk;
import withy.app.OfferDesk;
import withy.app.OfferFile;
import withy.app.OfferSheet;
import withy.report.OfferPaper;
import withy.shop.Job;

@Command(
        name = "offer",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy paper offer --job 3 --out offer.pdf           as it was given%n"
                + "  withy paper offer --job 3 --out offer.html          one file to send%n"
                + "  withy paper offer --job 3 --offer 2 --country de-DE --out offer.pdf%n"
                + "  withy paper offer answer.json --customer \"Ruth Alder\" --out offer.pdf%n"
                + "  withy paper offer offer.html --out offer.pdf        a file that was sent%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = {
            "What the customer is handed: up to three builds with pictures, prices and dates.",
            "A job's offer prints as it was given, whatever became of lists and prices since;",
            "one that was withdrawn or lapsed says so under its title.",
            "Cost, margin, supplier and stock are never on it."
        },
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class PaperOfferCommand implements Callable<Integer> {
    @ParentCommand
    private PaperCommand parent;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SourceOptions source;

    @Option(names = "--offer", paramLabel = "N", description = "With --job: its offer N; the last one unless told.")
    private @Nullable Long number;

    @Mixin
    private TermsOptions terms;

    @Mixin
    private SheetOption sheet;

    @Mixin
    private PaperOptions paper;

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    PaperOfferCommand() {}

    @Override
    public Integer call() {
        paper.sound(".pdf", ".html");
        String text = source.text(parent.surroundings());
        Long job = source.job();
        boolean kept = text == null || OfferFile.isPage(text);
        if (kept && terms.told()) {
            throw new Stop(
                    Exit.USAGE,
                    "This offer was given; its customer, days and deposit stay as they are.",
                    "Maybe make a new one: withy job JOB --offer.");
        }
        if (number != null && job == null) {
            throw new Stop(Exit.USAGE, "--offer " + number + ": of which job?", "Maybe add --job 3.");
        }
        List<String> ended = new ArrayList<>();
        OfferSheet offer = offer(text, job, ended);
        paper.document(OfferPaper.of(offer, ended, paper.reader(), sheet.size()));
        paper.told(
                "offer",
                sheet.size(),
                offer.builds().stream().map(OfferSheet.Choice::name).toList(),
                job == null ? List.of() : List.of(job),
                kept ? List.of() : terms.assumed(),
                ended,
                spec.commandLine().getOut());
        return Exit.FINE;
    }

    private OfferSheet offer(@Nullable String text, @Nullable Long job, List<String> ended) {
        if (job != null) {
            return kept(job, ended);
        }
        String told = text == null ? "" : text;
        return OfferFile.isPage(told) ? sent(told) : fresh(told);
    }

    private OfferSheet kept(long job, List<String> ended) {
        JobDesk desk = new JobDesk(
                source.workshop(parent.surroundings(), spec.commandLine().getErr()));
        Job.Offer offer = desk.offer(job, number == null ? 0 : number);
        String printed = offer.paper();
        if (printed == null) {
            throw new Stop(
                    Exit.BAD_DATA,
                    "Offer " + offer.id() + " was given before papers were kept; only its answer is.",
                    "Maybe print it by today's lists: withy job " + job + " --read-offer " + offer.id()
                            + " --json > answer.json, then withy paper offer answer.json.");
        }
        try {
            OfferSheet given = OfferFile.read(printed);
            ended.addAll(OfferPaper.ended(offer, given, paper.reader()));
            return given;
        } catch (OfferFile.Unreadable e) {
            throw new Stop(
                    Exit.BAD_DATA,
                    "Offer " + offer.id() + " can't be printed: " + e.getMessage() + ".",
                    "Maybe bring back a back-up: withy restore.");
        }
    }

    private static OfferSheet sent(String page) {
        try {
            return OfferFile.ofPage(page);
        } catch (OfferFile.Unreadable e) {
            throw new Stop(
                    Exit.BAD_DATA,
                    "The page can't be printed: " + e.getMessage() + ".",
                    "Maybe take the file as it was sent, or the job's own: withy paper offer --job 3.");
        }
    }

    private OfferSheet fresh(String text) {
        SourceOptions.Builds builds =
                source.builds(text, parent.surroundings(), spec.commandLine().getErr());
        return OfferDesk.of(
                builds.catalog(),
                builds.brief(),
                builds.builds(),
                terms.from(builds.catalog().asOf()),
                paper.output().units());
    }
}
