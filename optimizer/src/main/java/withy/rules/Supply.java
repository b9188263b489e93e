package withy.rules;

import java.time.LocalDate;
import withy.brief.Brief;
import withy.catalog.Part;
import withy.catalog.PartFacts;

/**
 * Where the pieces of a part come from. A part the customer brings is one piece and is not ordered.
 *
 * @param free pieces on the shelf (or brought)
 * @param orderable true where more arrive by the date wanted
 * @param packQty pieces that must be ordered together
 */
public record Supply(int free, boolean orderable, int packQty) {

    /** Of one part for one brief, counted from a day. */
    public static Supply of(Part part, Brief brief, LocalDate asOf) {
        if (brief.owned().contains(part.id())) {
            return new Supply(1, false, 1);
        }
        PartFacts facts = part.facts();
        return new Supply(facts.stock(), arrives(facts, brief, asOf), Math.max(1, facts.packQty()));
    }

    /** True where so many pieces can be had. */
    public boolean covers(int pieces) {
        return orderable || pieces <= free;
    }

    /** Pieces to order so that so many are at hand: what is missing, in whole packs. */
    public int toOrder(int pieces) {
        int missing = Math.max(0, pieces - free);
        return (missing + packQty - 1) / packQty * packQty;
    }

    private static boolean arrives(PartFacts facts, Brief brief, LocalDate asOf) {
        Integer days = facts.leadDays();
        LocalDate wanted = brief.wantedBy();
        return days != null && (wanted == null || !asOf.plusDays(days).isAfter(wanted));
    }
}
