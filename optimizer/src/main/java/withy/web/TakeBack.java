package withy.web;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.shop.Bookings.Booking;
import withy.shop.Shop;
import withy.shop.ShopFault;
import withy.units.QuantityText;

/**
 * The last booking of a part beside the button that takes it back.
 *
 * @param booking its number; where it is not the last one any more nothing is taken back
 * @param part catalogue id
 * @param words what was booked
 * @param said what is said once it is taken back
 * @param next {@code any} where the page of the scale is gone on with, else empty
 * @param job job whose pieces are being weighed, or 0
 */
public record TakeBack(long booking, String part, String words, String said, String next, long job) {

    /** What the form asks for. */
    static final String DO = "back";

    /** Of a booking, to be shown on the part's own page. */
    static @Nullable TakeBack of(@Nullable Booking last, QuantityText units) {
        return of(last, units, "", 0);
    }

    /** Of a booking, to be shown where it was made; null where there is none. */
    static @Nullable TakeBack of(@Nullable Booking last, QuantityText units, String next, long job) {
        if (last == null) {
            return null;
        }
        String what = what(last, units);
        return new TakeBack(
                last.booking(),
                last.part(),
                Words.say("booked.last", last.day(), what),
                Words.say("booked.undone", what),
                next,
                job);
    }

    private static String what(Booking last, QuantityText units) {
        List<String> told = new ArrayList<>();
        told.add(Words.say("booked." + last.what()));
        Double grams = last.weightG();
        if (grams != null && last.number() != null) {
            told.add(Words.say("booked.reading", last.number(), units.fineMass(grams)));
        }
        StockPage.add(told, "moved.shelf", last.shelf());
        StockPage.add(told, "moved.ordered", last.ordered());
        return String.join(", ", told);
    }

    /** Takes back what the form names, and goes on where it was booked. */
    static void act(Pages pages, Context ctx, Part part) {
        String told = Pages.told(ctx, "booking");
        if (!told.matches("\\d{1,15}")) {
            throw new Refusal(422, Words.say("page.number", told));
        }
        pages.once(ctx, () -> {
            try (Shop shop = pages.bench().workshop().open()) {
                shop.bookings().takeBack(part.id(), Long.valueOf(told));
            } catch (ShopFault fault) {
                throw refused(fault, part);
            }
            String job = Pages.told(ctx, "job");
            if (job.matches("[1-9]\\d{0,8}")) {
                return String.format(Locale.ROOT, "/jobs/%s/scale", job);
            }
            return Pages.told(ctx, "next").equals("any") ? "/weigh?piece=" + part.id() : "/stock/" + part.id();
        });
    }

    /** The part by its name, and no word of a command line. */
    private static RuntimeException refused(ShopFault fault, Part part) {
        return fault.ofDisk()
                ? fault
                : new Refusal(409, Words.say("booked.gone", part.facts().name()), Words.say("booked.gone.maybe"));
    }
}
