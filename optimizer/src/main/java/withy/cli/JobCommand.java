package withy.cli;

import java.io.PrintWriter;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.ArgGroup;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;
import picocli.CommandLine.Spec;
import withy.app.AnswerJson;
import withy.app.JobAnswer;
import withy.app.JobDesk;
import withy.app.JobsAnswer;
import withy.app.OfferDesk;
import withy.app.OfferEnd;
import withy.app.Propose;
import withy.app.ScaleReading;
import withy.app.Workshop;
import withy.report.AnswerText;
import withy.report.JobText;
import withy.shop.Job;
import withy.units.LengthUnit;
import withy.units.Quantities;
import withy.units.UnitsFault;

@Command(
        name = "job",
        mixinStandardHelpOptions = true,
        headerHeading = "Examples:%n"
                + "  withy job                           all jobs%n"
                + "  withy job --new brief.json          a customer came%n"
                + "  withy job 3 --offer                 three builds for job 3, kept as given%n"
                + "  withy paper offer --job 3 --out offer.pdf%n"
                + "  withy job 3 --withdraw              that offer does not hold any more%n"
                + "  withy job 3 --accept 1              the first it is: its pieces are promised%n"
                + "  withy job 3                         how it stands%n"
                + "  withy job 3 --glue seat,rearGrip    these are glued and stay%n"
                + "  withy job 3 --built                 the rod is built%n"
                + "  withy job 3 --weighed 84.6g --balance 97mm%n"
                + "  withy job 3 --close                 the customer has it%n"
                + "  withy job 3 --undo                  that was a slip: as it was before%n"
                + "%n",
        synopsisHeading = "Usage: ",
        descriptionHeading = "%n",
        description = "Follows a customer's rod from wish to finished rod.",
        parameterListHeading = "%n",
        optionListHeading = "%nOptions:%n")
final class JobCommand implements Callable<Integer> {
    private static final String MAYBE_ANEW =
            "make a new one: withy job %1$d --offer. Should the old one count: withy job %1$d --accept N --sure.";

    @ParentCommand
    private Main main;

    @Spec
    private CommandSpec spec;

    @Parameters(index = "0", arity = "0..1", paramLabel = "JOB", description = "Number of a job.")
    private @Nullable Long job;

    @ArgGroup
    private @Nullable Step step;

    @Option(
            names = "--balance",
            paramLabel = "LENGTH",
            description = "With --weighed: balance point ahead of the reel foot, reel on; such as 97 mm.")
    private @Nullable String balance;

    @Option(
            names = "--sure",
            description =
                    "With --weighed: book a weight far from what was foretold, or over another one. With --accept: though the offer's"
                            + " day is over.")
    private boolean sure;

    @Option(names = "--note", paramLabel = "TEXT", defaultValue = "", description = "Kept in the job's history.")
    private String note = "";

    @Mixin
    private CatalogOptions catalogs;

    @Mixin
    private BriefOptions briefs;

    @Mixin
    private OutputOptions output;

    @Mixin
    private TermsOptions terms;

    /** What happened; one at a time. */
    static final class Step {
        @Option(
                names = "--new",
                paramLabel = "BRIEF",
                description = "A customer's brief as JSON; - reads standard input.")
        private @Nullable String brief;

        @Option(names = "--offer", description = "Propose up to three builds and keep them as given.")
        private boolean offer;

        @Option(
                names = "--read-offer",
                paramLabel = "N",
                arity = "0..1",
                fallbackValue = "0",
                description = "Show an offer as it was given; the last one if no number is told.")
        private @Nullable Long readOffer;

        @Option(
                names = "--withdraw",
                description = "What was offered does not hold any more; past its day it is told as lapsed.")
        private boolean withdraw;

        @Option(names = "--accept", paramLabel = "N", description = "The customer took build N of the last offer.")
        private @Nullable Integer accept;

        @Option(names = "--take", paramLabel = "BUILD", description = "The customer took a build of your own, as JSON.")
        private @Nullable String take;

        @Option(
                names = "--glue",
                paramLabel = "STATION",
                split = ",",
                description = "These stations are glued or wrapped; guides stands for all guides.")
        private List<String> glue = new ArrayList<>();

        @Option(names = "--built", description = "The rod is built.")
        private boolean built;

        @Option(names = "--weighed", paramLabel = "WEIGHT", description = "The finished rod weighs so much.")
        private @Nullable String weighed;

        @Option(names = "--close", description = "The customer has it.")
        private boolean close;

        @Option(names = "--cancel", description = "The customer no longer wants it.")
        private boolean cancel;

        @Option(
                names = "--undo",
                description = "Take back what was done with it last: build, promises and pieces as before.")
        private boolean undo;
    }

    /** picocli sets its fields afterwards. */
    @SuppressWarnings("NullAway.Init")
    JobCommand() {}

    @Override
    public Integer call() {
        Workshop workshop =
                catalogs.workshop(main.surroundings(), spec.commandLine().getErr());
        JobDesk desk = new JobDesk(workshop);
        Step asked = step;
        if (asked != null && asked.brief != null) {
            return print(desk.begin(briefs.read(asked.brief, workshop.snapshot().catalog(), main.surroundings())));
        }
        if (job == null) {
            if (asked != null) {
                throw new Stop(Exit.USAGE, "No job is named.", "Maybe type: withy job 3 --offer.");
            }
            JobsAnswer jobs = JobsAnswer.of(workshop);
            Answering.print(
                    output.json() ? AnswerJson.write(jobs) : JobText.of(jobs),
                    spec.commandLine().getOut());
            return Exit.FINE;
        }
        return asked == null ? print(desk.show(job)) : taken(desk, asked, job);
    }

    private int taken(JobDesk desk, Step asked, long of) {
        if (asked.offer) {
            return offer(desk, of);
        }
        if (asked.readOffer != null) {
            Job.Offer offer = desk.offer(of, asked.readOffer);
            Answering.print(
                    output.json() ? offer.answer() : offer.shown(),
                    spec.commandLine().getOut());
            return Exit.FINE;
        }
        if (asked.withdraw) {
            return print(new OfferEnd(desk.workshop()).withdraw(of, note));
        }
        if (asked.accept != null) {
            if (!sure) {
                WeighCommand.askBack(new OfferEnd(desk.workshop()).doubt(of), MAYBE_ANEW.formatted(of));
            }
            return print(desk.accept(of, asked.accept));
        }
        if (asked.take != null) {
            return print(desk.accept(of, Texts.read(asked.take, "build", main.surroundings()), note));
        }
        if (!asked.glue.isEmpty()) {
            return print(desk.glue(of, new TreeSet<>(asked.glue)));
        }
        if (asked.built) {
            return print(desk.built(of));
        }
        if (asked.weighed != null) {
            long mg = WeighCommand.milligrams(asked.weighed);
            soundWeight(desk, of, mg);
            return print(desk.weighed(of, mg, balanceMm()));
        }
        if (asked.undo) {
            return print(desk.takeBack(of));
        }
        return print(asked.close ? desk.close(of) : desk.cancel(of, note));
    }

    private int offer(JobDesk desk, long of) {
        Surroundings surroundings = main.surroundings();
        PrintWriter err = spec.commandLine().getErr();
        OfferDesk.Order paper = new OfferDesk.Order(terms.from(catalogs.day(surroundings)), output.units());
        JobDesk.Offered offered = desk.offer(
                of,
                (catalog, brief) -> Propose.run(
                        catalog,
                        brief,
                        surroundings.choosers().apply(catalog),
                        output.units(),
                        new ProgressLine(
                                err,
                                output.units(),
                                Currency.getInstance(catalog.rates().currency()),
                                surroundings)),
                answer -> AnswerText.of(answer, output.units()),
                paper);
        if (output.json()) {
            Answering.print(AnswerJson.write(offered.job()), spec.commandLine().getOut());
        } else {
            Answering.print(
                    AnswerText.of(offered.answer(), output.units())
                            + JobText.warnings(offered.job())
                            + (offered.answer().builds().isEmpty() ? "" : assumed()),
                    spec.commandLine().getOut());
        }
        if (offered.answer().interrupted()) {
            err.println("Interrupted: the offer was not kept.");
            return Exit.INTERRUPTED;
        }
        return offered.answer().builds().isEmpty() ? Exit.NOT_LEGAL : Exit.FINE;
    }

    private String assumed() {
        return terms.assumed().stream().map(line -> line + "\n").collect(Collectors.joining());
    }

    /** What is far off is asked back, as on the page: a slip would teach the shop wrong tolerances. */
    private void soundWeight(JobDesk desk, long of, long mg) {
        if (!sure) {
            JobAnswer job = desk.show(of);
            WeighCommand.askBack(ScaleReading.doubt(job, mg, output.units()), WeighCommand.MAYBE_SLIPPED);
            WeighCommand.askBack(ScaleReading.again(job, mg, output.units()), WeighCommand.MAYBE_ANOTHER);
        }
    }

    private @Nullable Double balanceMm() {
        if (balance == null) {
            return null;
        }
        try {
            return Quantities.length(balance, LengthUnit.MILLIMETRE).mm();
        } catch (UnitsFault e) {
            throw new Stop(Exit.USAGE, "--balance " + balance + ": allowed is " + e.allowed() + ".", e.maybe());
        }
    }

    private int print(JobAnswer answer) {
        Answering.print(
                output.json() ? AnswerJson.write(answer) : JobText.of(answer, output.units()),
                spec.commandLine().getOut());
        return Exit.FINE;
    }
}
