package withy.web;

import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import org.jspecify.annotations.Nullable;
import withy.app.OnScale;
import withy.app.ScaleReading;
import withy.app.StockAnswer;
import withy.catalog.Part;
import withy.shop.Bookings;
import withy.shop.Piece;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.units.QuantityText;

/** What the scale says is booked, whichever page it was typed on. */
final class ScaleActs {
    /** Fields of the form. */
    private static final String WEIGHT = "weight";

    private static final String NEXT = "next";

    /** Readings there were when the form was made. */
    private static final String SEEN = "seen";

    private static final List<String> FIELDS = List.of("piece", WEIGHT, "job", NEXT, SEEN);

    private final Pages pages;
    private final ScalePage scale;
    private final StockPage stock;

    ScaleActs(Pages pages, ScalePage scale, StockPage stock) {
        this.pages = pages;
        this.scale = scale;
        this.stock = stock;
    }

    /** Books what the scale says of one piece, or of a piece of a part that was not weighed yet. What is far off, or counts over another reading, is asked back first. */
    void weigh(Context ctx) {
        String told = Pages.told(ctx, "piece").strip();
        Matcher numbered = ScalePage.PIECE.matcher(told);
        Part part = scale.named(numbered.matches() ? numbered.group(1) : told);
        Integer number = numbered.matches() ? Integer.valueOf(numbered.group(2)) : null;
        try {
            weigh(ctx, part, number);
        } catch (Slip.Fault fault) {
            ctx.status(422);
            String piece = part.id() + (number == null ? "" : "#" + number);
            again(ctx, part, piece, Slip.of(ctx, fault));
        }
    }

    /** The page it was typed on, with what was typed. */
    private void again(Context ctx, Part part, String piece, Slip slip) {
        String job = ofJob(ctx);
        if (!job.isEmpty()) {
            scale.job(ctx, Long.parseLong(job), piece, slip);
        } else if (Pages.told(ctx, NEXT).equals("any")) {
            scale.all(ctx, piece, slip);
        } else {
            stock.one(ctx, part, slip);
        }
    }

    private static String ofJob(Context ctx) {
        String job = Pages.told(ctx, "job");
        return job.matches("[1-9]\\d{0,8}") ? job : "";
    }

    private void weigh(Context ctx, Part part, @Nullable Integer number) {
        String right = pages.bench().units().fineMass(part.facts().weightG());
        long mg = Slip.read(ctx, WEIGHT, right, ScaleReading::milligrams);
        String doubt = Sure.told(ctx)
                ? null
                : ScaleReading.doubt(
                        pages.bench().workshop(), part, mg, pages.bench().units());
        if (doubt != null) {
            String again = form(ctx, part, number);
            Sure.ask(pages, ctx, "scale.sure", "weigh", doubt + "\n" + Words.say("scale.sure.maybe"), again, FIELDS);
            return;
        }
        try {
            pages.once(ctx, () -> booked(ctx, part, number, mg));
        } catch (Again again) {
            ask(ctx, part, number, mg, again.now);
        }
    }

    /** Books it, unless the piece was weighed since the form was made, or would be weighed again though nobody said so. */
    private String booked(Context ctx, Part part, @Nullable Integer number, long mg) {
        OnScale now = OnScale.of(pages.bench().workshop(), part.id(), number);
        String told = Pages.told(ctx, SEEN);
        int seen = told.matches("\\d{1,9}") ? Integer.parseInt(told) : now.readings();
        Double weightG = now.weightG();
        boolean since = now.readings() > seen && (number == null ? last(part) != null : weightG != null);
        boolean same = number != null && weightG != null && Math.round(weightG * 1000) == mg;
        if (since && !same || number == null && weightG != null) {
            throw new Again(now);
        }
        try (Shop shop = pages.bench().workshop().open()) {
            Piece piece =
                    shop.scale().weigh(part.id(), number, mg, now.readings()).piece();
            String weighed = "?weighed=" + part.id() + "%23" + piece.number();
            return there(ctx, part, weighed);
        } catch (ShopFault fault) {
            throw Slip.of(fault, WEIGHT, part);
        }
    }

    /** The piece was weighed in the meantime. */
    private static final class Again extends RuntimeException {
        private static final long serialVersionUID = 1L;

        private final transient OnScale now;

        Again(OnScale now) {
            super("weighed since", null, false, false);
            this.now = now;
        }
    }

    private void ask(Context ctx, Part part, @Nullable Integer number, long mg, OnScale now) {
        QuantityText units = pages.bench().units();
        String name = part.facts().name();
        String read = units.fineMass(mg / 1000.0);
        Piece piece = now.piece();
        if (piece != null && piece.weightG() != null) {
            // a named piece, or all were weighed and this one is the first
            Map<String, String> otherwise = Map.of(
                    "piece",
                    piece.name(),
                    SEEN,
                    String.valueOf(OnScale.of(pages.bench().workshop(), part.id(), piece.number())
                            .readings()));
            String key = number == null ? "scale.again.question" : "scale.since.question";
            String question = Words.say(key, name, piece.number(), units.fineMass(piece.weightG()), read);
            Sure.ask(pages, ctx, "scale.since", "weigh", question, there(ctx, part, ""), FIELDS, otherwise);
            return;
        }
        Bookings.Reading last = Objects.requireNonNull(last(part));
        Map<String, String> otherwise = Map.of(SEEN, String.valueOf(now.readings()));
        String question =
                Words.say("scale.another.question", name, last.number(), units.fineMass(last.weightG()), read);
        String same = form(ctx, part, last.number());
        Sure.ask(pages, ctx, "scale.another", "weigh", question, same, FIELDS, otherwise);
    }

    /** The last reading of any piece of it that counts, or null. */
    private Bookings.@Nullable Reading last(Part part) {
        return StockAnswer.one(pages.bench().workshop(), part.id()).readings().stream()
                .filter(reading -> !reading.takenBack())
                .findFirst()
                .orElse(null);
    }

    /** Where it goes on. */
    private static String there(Context ctx, Part part, String weighed) {
        String job = ofJob(ctx);
        if (!job.isEmpty()) {
            return "/jobs/" + job + "/scale" + weighed;
        }
        return Pages.told(ctx, NEXT).equals("any") ? "/weigh" + weighed : "/stock/" + part.id();
    }

    /** The form for a piece again, with what was typed. */
    private static String form(Context ctx, Part part, @Nullable Integer number) {
        String job = ofJob(ctx);
        String piece = "?piece=" + part.id() + (number == null ? "" : "%23" + number);
        boolean shelf = job.isEmpty() && !Pages.told(ctx, NEXT).equals("any");
        String path = shelf && number == null
                ? "/stock/" + part.id()
                : (job.isEmpty() ? "/weigh" : "/jobs/" + job + "/scale") + piece;
        String typed = URLEncoder.encode(Pages.told(ctx, WEIGHT), StandardCharsets.UTF_8);
        return path + (path.contains("?") ? "&" : "?") + WEIGHT + "=" + typed;
    }
}
