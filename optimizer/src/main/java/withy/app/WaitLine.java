package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.explain.Phrases;
import withy.shop.Job;
import withy.shop.Shop;

/**
 * A part an accepted job waits for, because its pieces are on order.
 *
 * @param part catalogue id
 * @param name maker and model
 * @param pieces pieces it waits for
 * @param due day the last of them is due
 * @param toOrder of these, orders still to be sent
 * @param late true where that is after the day the rod is wanted
 */
public record WaitLine(String part, String name, int pieces, String due, int toOrder, boolean late) {

    /** What a job waits for, by part. */
    static List<WaitLine> of(Workshop workshop, Shop shop, Job job) {
        String wanted = job.wanted();
        return shop.jobs().waiting(job.id()).stream()
                .map(one -> new WaitLine(
                        one.part(),
                        workshop.name(one.part()),
                        one.pieces(),
                        one.due(),
                        one.unsent(),
                        late(one.due(), wanted)))
                .toList();
    }

    /** A wait by itself. */
    static WaitLine of(String part, String name, int pieces, String due, int toOrder, @Nullable String wanted) {
        return new WaitLine(part, name, pieces, due, toOrder, late(due, wanted));
    }

    /** The same by the number of a job that is there. */
    public static List<WaitLine> of(Workshop workshop, long job) {
        try (Shop shop = workshop.reading(job)) {
            return of(workshop, shop, shop.jobs().get(job));
        }
    }

    private static boolean late(String due, @Nullable String wanted) {
        return wanted != null && due.compareTo(wanted) > 0;
    }

    /** In a sentence. */
    public String sentence() {
        String order = toOrder == 0
                ? Phrases.of("text.plan.waits.due", due)
                : toOrder == pieces
                        ? Phrases.of("text.plan.waits.toOrder", due)
                        : Phrases.of("text.plan.waits.some", due, toOrder);
        String waits = Phrases.of("text.plan.waits", pieces, name, order);
        return late ? waits + " " + Phrases.of("text.plan.waits.late") : waits;
    }
}
