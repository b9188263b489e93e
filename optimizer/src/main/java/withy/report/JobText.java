package withy.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.JobAnswer;
import withy.app.JobsAnswer;
import withy.explain.Phrases;
import withy.shop.Job;
import withy.shop.Piece;
import withy.units.Money;
import withy.units.QuantityText;

/** The answers of {@code job} for a terminal of 80 columns. */
public final class JobText {
    private static final Page.Column[] JOBS = {
        new Page.Column(4, true), new Page.Column(44, false), new Page.Column(10, false), new Page.Column(19, false)
    };

    private JobText() {}

    /** Text of all jobs, lines ended by {@code \n}. */
    public static String of(JobsAnswer answer) {
        Page page = new Page();
        if (answer.jobs().isEmpty()) {
            page.paragraph("", Phrases.of("text.job.none"));
        }
        for (JobsAnswer.Line job : answer.jobs()) {
            String wanted = job.wantedBy();
            page.row(
                    JOBS,
                    Long.toString(job.job()),
                    job.name(),
                    Phrases.of("text.job.state." + job.state()),
                    wanted == null ? "" : Phrases.of("text.job.wanted", wanted));
            if (job.missing() > 0) {
                page.paragraph("     ", Phrases.of("text.job.missing", job.missing()));
            }
        }
        return page.toString();
    }

    /** Text of one job, lines ended by {@code \n}. */
    public static String of(JobAnswer answer, QuantityText units) {
        Page page = new Page();
        page.paragraph("", Phrases.of("text.job.title", answer.job(), answer.name()));
        String wanted = answer.wantedBy();
        page.paragraph(
                "",
                Phrases.of("text.job.state." + answer.state())
                        + (wanted == null ? "" : ", " + Phrases.of("text.job.wanted", wanted)));
        offers(page, answer, units);
        figures(page, answer, units);
        pieces(page, answer);
        StockText.hits(page, answer.missing());
        page.heading(Phrases.of("text.job.history"));
        for (Job.Event event : answer.history()) {
            page.paragraph(event.day() + "  ", event(event));
        }
        return page + warnings(answer);
    }

    /** What was done, without its day; stations in words. */
    public static String event(Job.Event event) {
        String note = switch (event.what()) {
            case "glued" ->
                Phrases.list(Arrays.stream(event.note().split(" ", -1))
                        .map(Phrases::station)
                        .toList());
            case "taken back" -> word(event.note());
            case "changed" -> swapped(event.note());
            default -> event.note();
        };
        return word(event.what()) + (note.isEmpty() ? "" : ": " + note);
    }

    /** What stands in whose place; of a part that something stands in for it is not said as well that it is missing. */
    private static String swapped(String note) {
        List<String> told = new ArrayList<>();
        for (String one : note.split("; ", -1)) {
            String[] swap = one.split(" → ", 2);
            if (swap.length == 1) {
                told.add(one);
            } else {
                told.remove("without " + swap[0]);
                told.add(
                        swap[0].equals("null")
                                ? Phrases.of("text.job.added", swap[1])
                                : swap[1].equals("null")
                                        ? Phrases.of("text.job.left", swap[0])
                                        : Phrases.of("text.job.swapped", swap[1], swap[0]));
            }
        }
        return String.join("; ", told);
    }

    private static String word(String what) {
        return switch (what) {
            case "changed" -> Phrases.of("text.job.again");
            case "withdrawn", "lapsed" -> Phrases.of("text.job." + what);
            case "cancelled" -> Phrases.of("text.job.state." + what);
            default -> what;
        };
    }

    private static void offers(Page page, JobAnswer answer, QuantityText units) {
        Currency currency = Currency.getInstance(answer.currency());
        for (JobAnswer.OfferLine offer : answer.offers()) {
            page.paragraph("", offer(offer));
            for (JobAnswer.OfferedBuild build : offer.builds()) {
                page.paragraph(
                        "  " + build.rank() + "  ",
                        build.name() + ", " + units.mass(build.weightG()) + ", "
                                + Money.print(build.priceMinor(), currency));
            }
        }
    }

    /** Which offer it is, from when, and until when it holds or held. */
    public static String offer(JobAnswer.OfferLine offer) {
        String given = Phrases.of("text.job.offer", offer.offer(), offer.day());
        if (offer.ended() != null) {
            return Phrases.of("text.job.offer." + (offer.lapsed() ? "lapsed" : "withdrawn"), given, offer.ended());
        }
        return offer.validUntil() == null ? given : Phrases.of("text.job.offer.until", given, offer.validUntil());
    }

    /** What the rod should weigh and where it should balance; of a job that was given up, that it was; empty where nothing was accepted. */
    public static String foretold(JobAnswer answer, QuantityText units) {
        JobAnswer.Foretold foretold = answer.predicted();
        if (foretold == null) {
            return "";
        }
        return answer.state().equals("cancelled")
                ? Phrases.of("text.job.givenUp")
                : Phrases.of(
                        "text.job.foretold",
                        units.mass(foretold.weightOfPiecesG()),
                        units.mass(foretold.toleranceG()),
                        units.partLength(Math.rint(foretold.balanceOfPiecesMm())));
    }

    private static void figures(Page page, JobAnswer answer, QuantityText units) {
        JobAnswer.Foretold foretold = answer.predicted();
        String told = foretold(answer, units);
        if (!told.isEmpty()) {
            page.paragraph("", told);
        }
        Job.AsBuilt built = answer.asBuilt();
        if (built != null) {
            page.paragraph("", asBuilt(built, foretold, units));
        }
        if (!answer.glued().isEmpty()) {
            page.paragraph(
                    "",
                    Phrases.of(
                            "text.job.glued",
                            Phrases.list(answer.glued().stream()
                                    .map(Phrases::station)
                                    .toList())));
        }
    }

    /** What the finished rod weighs, and how far that is from what was foretold. */
    public static String asBuilt(Job.AsBuilt built, JobAnswer.@Nullable Foretold foretold, QuantityText units) {
        Double balance = built.balanceMm();
        String told = balance == null
                ? Phrases.of("text.job.built", units.mass(built.weightG()))
                : Phrases.of(
                        "text.job.builtBalance", units.mass(built.weightG()), units.partLength(Math.rint(balance)));
        return foretold == null ? told : told + " " + off(built.weightG(), foretold, units);
    }

    private static String off(double weightG, JobAnswer.Foretold foretold, QuantityText units) {
        double off = weightG - foretold.weightOfPiecesG();
        if (units.mass(weightG).equals(units.mass(foretold.weightOfPiecesG()))) {
            return Phrases.of("text.job.off.none");
        }
        String within = Math.abs(off) <= foretold.toleranceG() ? "within" : "beyond";
        return Phrases.of(
                "text.job.off." + (off > 0 ? "more." : "less.") + within,
                units.massBetween(weightG, foretold.weightOfPiecesG()));
    }

    private static void pieces(Page page, JobAnswer answer) {
        if (answer.pieces().isEmpty()) {
            return;
        }
        page.heading(Phrases.of("text.job.pieces"));
        Map<String, String> lines = new TreeMap<>();
        for (Piece piece : answer.pieces()) {
            String due = piece.due();
            String where = piece.ordered() && due != null
                    ? Phrases.of("text.stock.state.ordered", due)
                    : Phrases.of("text.stock.state." + piece.state());
            lines.merge(piece.part() + " " + where + ": ", "#" + piece.number(), (a, b) -> a + " " + b);
        }
        lines.forEach((what, numbers) -> page.paragraph("· ", what + numbers));
    }

    /** What to look at, or nothing. */
    public static String warnings(JobAnswer answer) {
        Page page = new Page();
        AnswerText.list(page, "text.warnings", answer.warnings());
        return page.toString();
    }
}
