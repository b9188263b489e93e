package withy.web;

import io.javalin.http.Context;
import java.util.List;
import java.util.regex.Matcher;
import org.jspecify.annotations.Nullable;
import withy.app.ScaleReading;
import withy.catalog.Part;
import withy.shop.Piece;
import withy.shop.Shop;
import withy.shop.ShopFault;

/** What the scale says is booked, whichever page it was typed on. */
final class ScaleActs {
    /** Fields of the form. */
    private static final String WEIGHT = "weight";

    private static final String NEXT = "next";

    private final Pages pages;
    private final ScalePage scale;
    private final StockPage stock;

    ScaleActs(Pages pages, ScalePage scale, StockPage stock) {
        this.pages = pages;
        this.scale = scale;
        this.stock = stock;
    }

    /** Books what the scale says of one piece, or of a piece of a part that was not weighed yet. What is many times off is asked back first. */
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
        String job = ofJob(ctx);
        String back = job.isEmpty() ? "" : "/jobs/" + job + "/scale";
        String doubt = ScaleReading.doubt(part, mg, pages.bench().units());
        boolean next = Pages.told(ctx, NEXT).equals("any");
        if (doubt != null && !Sure.told(ctx)) {
            String piece = "?piece=" + part.id() + (number == null ? "" : "%23" + number);
            String again = !back.isEmpty() ? back + piece : next ? "/weigh" + piece : "/stock/" + part.id();
            Sure.ask(pages, ctx, "scale.sure", "weigh", doubt, again, List.of("piece", WEIGHT, "job", NEXT));
            return;
        }
        pages.once(ctx, () -> {
            try (Shop shop = pages.bench().workshop().open()) {
                Piece piece = shop.scale().weigh(part.id(), number, mg).piece();
                String weighed = "?weighed=" + part.id() + "%23" + piece.number();
                String there = next ? "/weigh" + weighed : "/stock/" + part.id();
                return back.isEmpty() ? there : back + weighed;
            } catch (ShopFault fault) {
                throw Slip.of(fault, WEIGHT, part);
            }
        });
    }
}
