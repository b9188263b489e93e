package withy.web;

import io.javalin.http.Context;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import withy.app.JobAnswer;
import withy.app.JobDesk;
import withy.app.JobsAnswer;
import withy.app.OnScale;
import withy.app.PartIds;
import withy.app.StockAnswer;
import withy.app.WeighAnswer;
import withy.app.Workshop;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.shop.Bookings;
import withy.shop.Piece;
import withy.web.ShopView.JobLine;
import withy.web.ShopView.PieceLine;
import withy.web.ShopView.ScaleView;

/** The scale: one piece at a time, in large type, with the rod's weight as it comes about. */
final class ScalePage {
    /** Parts shown of those found. */
    private static final int MOST_FOUND = 30;

    /** A piece as its bag names it: part and number. */
    static final Pattern PIECE = Pattern.compile("(.+)#(\\d{1,6})");

    private final Pages pages;

    ScalePage(Pages pages) {
        this.pages = pages;
    }

    /** Whose pieces are to be weighed, any part by a few letters of its name, and how far lists were off so far. */
    void all(Context ctx) {
        all(ctx, Pages.asked(ctx, "piece"), Slip.back(ctx));
    }

    /** With a part or piece that is to be weighed, or an empty one, and what was typed of it and can't be booked. */
    void all(Context ctx, String asked, Slip slip) {
        Workshop workshop = pages.bench().workshop();
        List<JobLine> jobs = JobsAnswer.of(workshop).jobs().stream()
                .filter(line -> line.state().equals("accepted"))
                .map(JobsPage::line)
                .toList();
        WeighAnswer weighed = WeighAnswer.all(workshop);
        List<String> drift = weighed.drift().stream().map(ScalePage::drift).toList();
        String query = Pages.asked(ctx, "q");
        List<Part> found = query.isEmpty() ? List.of() : found(query);
        String chosen = asked.isEmpty() && (found.size() == 1 || isPiece(query)) ? only(found, query) : asked;
        int shown = Math.min(MOST_FOUND, found.size());
        pages.html(
                ctx,
                "scale",
                new ScaleView(
                        pages.frame(Words.say("way.weigh"), "weigh", null),
                        0,
                        "",
                        chosen.isEmpty() ? null : chosen(chosen),
                        List.of(),
                        "",
                        "",
                        jobs,
                        drift,
                        query,
                        found.subList(0, shown).stream()
                                .map(part -> line(part, null, null))
                                .toList(),
                        found.size() - shown,
                        booked(Pages.asked(ctx, "weighed")),
                        back(Pages.asked(ctx, "weighed"), "any", 0),
                        slip));
    }

    private static String only(List<Part> found, String query) {
        return isPiece(query) ? query : found.get(0).id();
    }

    private static boolean isPiece(String told) {
        return PIECE.matcher(told).matches();
    }

    /** Parts whose name or id holds every word, those first that hold them as typed; one that is called just so goes alone. */
    private List<Part> found(String query) {
        ByWords words = new ByWords(query);
        List<Part> found = pages.bench().workshop().lists().byId().values().stream()
                .filter(part -> words.in(part.facts().name(), part.id()))
                .sorted(Comparator.comparing(
                                (Part part) -> !words.asTyped(part.facts().name()))
                        .thenComparing(part -> part.facts().name())
                        .thenComparing(Part::id))
                .toList();
        List<Part> same = found.stream()
                .filter(part -> query.equalsIgnoreCase(part.facts().name()) || query.equals(part.id()))
                .toList();
        return same.size() == 1 ? same : found;
    }

    /** The part, or the piece of it that its bag names; where all its pieces here were weighed, the one that would be weighed again. */
    private PieceLine chosen(String told) {
        Workshop workshop = pages.bench().workshop();
        Matcher numbered = PIECE.matcher(told);
        Part part = named(numbered.matches() ? numbered.group(1) : told);
        Integer number = numbered.matches() ? Integer.valueOf(numbered.group(2)) : null;
        OnScale now = OnScale.of(workshop, part.id(), number);
        Piece piece = now.piece();
        if (number == null && piece != null && piece.weightG() != null) {
            number = piece.number();
            now = OnScale.of(workshop, part.id(), number);
        }
        return line(part, number, now.weightG()).seen(now.readings());
    }

    private @Nullable Double reading(Part part, int number) {
        return StockAnswer.one(pages.bench().workshop(), part.id()).pieces().stream()
                .filter(piece -> piece.number() == number)
                .findFirst()
                .map(Piece::weightG)
                .orElse(null);
    }

    private PieceLine line(Part part, @Nullable Integer number, @Nullable Double reading) {
        return new PieceLine(
                number == null ? part.id() : part.id() + "#" + number,
                number == null ? "" : "#" + number,
                part.facts().name(),
                pages.bench().units().fineMass(part.facts().weightG()),
                reading == null ? "" : pages.bench().units().fineMass(reading),
                0);
    }

    /** What was booked last, as the memory has it. */
    private String booked(String piece) {
        Matcher numbered = PIECE.matcher(piece);
        Part part = numbered.matches() ? pages.bench().workshop().lists().find(numbered.group(1)) : null;
        Double reading = part == null ? null : reading(part, Integer.parseInt(numbered.group(2)));
        return part == null || reading == null
                ? ""
                : Words.say(
                        "scale.booked",
                        part.facts().name(),
                        piece,
                        pages.bench().units().fineMass(reading));
    }

    /** The way back from it, as long as nothing else was booked of its part. */
    private @Nullable TakeBack back(String piece, String next, long job) {
        Matcher numbered = PIECE.matcher(piece);
        if (booked(piece).isEmpty() || !numbered.matches()) {
            return null;
        }
        Bookings.Booking last =
                StockAnswer.one(pages.bench().workshop(), numbered.group(1)).last();
        boolean same = last != null && numbered.group(2).equals(String.valueOf(last.number()));
        return same ? TakeBack.of(last, pages.bench().units(), next, job) : null;
    }

    /** The pieces of one job; those first that leave its weight most open. */
    void job(Context ctx) {
        job(ctx, Pages.job(ctx), ctx.queryParam("piece"), Slip.back(ctx));
    }

    /** With the piece that is to be weighed, and what was typed of it and can't be booked. */
    void job(Context ctx, long number, @Nullable String asked, Slip slip) {
        JobAnswer job = new JobDesk(pages.bench().workshop()).show(number);
        List<PieceLine> pieces = job.pieces().stream()
                .filter(piece -> piece.state().equals("shelf") || piece.state().equals("used"))
                .sorted(Comparator.comparingDouble(this::toleranceG)
                        .reversed()
                        .thenComparing(Piece::part)
                        .thenComparing(Piece::number))
                .map(this::line)
                .toList();
        pages.html(
                ctx,
                "scale",
                new ScaleView(
                        pages.frame(Words.say("scale.head", job.name()), "weigh", null),
                        job.job(),
                        job.name(),
                        next(pieces, asked),
                        pieces,
                        foretold(job),
                        sum(job),
                        List.of(),
                        List.of(),
                        "",
                        List.of(),
                        0,
                        booked(Pages.asked(ctx, "weighed")),
                        back(Pages.asked(ctx, "weighed"), "", job.job()),
                        slip));
    }

    private double toleranceG(Piece piece) {
        Part part = pages.bench().workshop().lists().find(piece.part());
        return part == null ? 0 : part.facts().weightTolG();
    }

    /** How far the lists of one maker are off; what would read as nought is as listed. */
    private static String drift(WeighAnswer.Drift drift) {
        String percent = String.format(Locale.ROOT, "%.1f", Math.abs(drift.meanPercent()));
        String way = percent.equals("0.0") ? "same" : drift.meanPercent() < 0 ? "lighter" : "heavier";
        return Words.say("scale.drift." + way, drift.maker(), drift.kind(), drift.pieces(), percent);
    }

    private @Nullable PieceLine next(List<PieceLine> pieces, @Nullable String asked) {
        return pieces.stream()
                .filter(piece -> piece.piece().equals(asked))
                .findFirst()
                .or(() -> pieces.stream().filter(p -> p.reading().isEmpty()).findFirst())
                .map(this::seen)
                .orElse(null);
    }

    private PieceLine seen(PieceLine piece) {
        Matcher numbered = PIECE.matcher(piece.piece());
        return numbered.matches()
                ? piece.seen(OnScale.of(pages.bench().workshop(), numbered.group(1), Integer.valueOf(numbered.group(2)))
                        .readings())
                : piece;
    }

    private PieceLine line(Piece piece) {
        Part part = pages.bench().workshop().lists().find(piece.part());
        Double reading = piece.weightG();
        return new PieceLine(
                piece.name(),
                "#" + piece.number(),
                pages.bench().workshop().name(piece.part()),
                part == null ? "" : pages.bench().units().fineMass(part.facts().weightG()),
                reading == null ? "" : pages.bench().units().fineMass(reading),
                0);
    }

    private String foretold(JobAnswer job) {
        JobAnswer.Foretold foretold = job.predicted();
        return foretold == null
                ? ""
                : Words.say(
                        "scale.foretold",
                        pages.bench().units().mass(foretold.weightG()),
                        pages.bench().units().mass(foretold.toleranceG()));
    }

    private String sum(JobAnswer job) {
        JobAnswer.Foretold foretold = job.predicted();
        if (foretold == null) {
            return "";
        }
        long weighed = job.pieces().stream().filter(p -> p.weightG() != null).count();
        if (weighed == 0) {
            return Words.say("scale.none", job.pieces().size());
        }
        double off = foretold.weightOfPiecesG() - foretold.weightG();
        String sign = off >= 0 ? "+" : "−";
        return Words.say(
                "scale.sum",
                pages.bench().units().mass(foretold.weightOfPiecesG()),
                sign + pages.bench().units().fineMass(Math.abs(off)),
                weighed,
                job.pieces().size());
    }

    /** A part by its id, or by its name where that names one only. */
    Part named(String told) {
        Catalog lists = pages.bench().workshop().lists();
        Part part = lists.find(told);
        if (part != null) {
            return part;
        }
        List<Part> named = lists.byId().values().stream()
                .filter(one -> one.facts().name().equalsIgnoreCase(told))
                .toList();
        if (named.size() != 1) {
            throw new Refusal(422, Words.say("why.unknown", told), PartIds.maybe(told, lists));
        }
        return named.get(0);
    }
}
