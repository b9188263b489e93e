package withy.explain;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Wishes that cannot be had together, none of which could be left out.
 *
 * @param wishes fields of the brief with the part or material they are about
 * @param sentence told as on the phone
 * @param breach what the nearest build breaks, or null where nothing can be built even without the last of them
 * @param nearest that build: the best with the last of the wishes dropped, the cheapest where that is the budget; null likewise
 */
public record Conflict(
        List<Asked> wishes,
        String sentence,
        @Nullable Breach breach,
        @Nullable Found nearest) {
    public Conflict {
        wishes = List.copyOf(wishes);
    }

    /**
     * One wish.
     *
     * @param field field of the brief
     * @param about part or material, or empty
     * @param words as said on the phone
     */
    public record Asked(String field, String about, String words) {
        static Asked of(Demand demand) {
            return new Asked(demand.key(), demand.about(), demand.words());
        }
    }
}
