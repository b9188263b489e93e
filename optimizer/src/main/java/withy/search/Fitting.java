package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;

/**
 * Candidates of a station that go on at one place, priced, in the order of what each costs at least; found as far as they are asked for.
 *
 * @param <P> kind of part
 */
final class Fitting<P extends Part> {
    private final Ranked ranks;
    private final Linear k;
    private final IntFunction<@Nullable Option<P>> here;
    private final IntFunction<Object> trait;
    private final Map<Object, Long> cheapest = new HashMap<>();
    private final List<One<P>> found = new ArrayList<>();
    private int next;

    /**
     * @param here a candidate at the place, or null where it does not go on
     * @param trait all of a candidate there that what stands beside it depends upon, by {@code equals}
     */
    Fitting(Ranked ranks, Linear k, IntFunction<@Nullable Option<P>> here, IntFunction<Object> trait) {
        this.ranks = ranks;
        this.k = k;
        this.here = here;
        this.trait = trait;
    }

    /**
     * One that goes on.
     *
     * @param <P> kind of part
     * @param place its index on the shelf
     * @param option the part where it stands
     * @param floor it and those after it cost no less
     * @param beaten true where one before it does the same and costs no more
     */
    record One<P extends Part>(int place, Option<P> option, long floor, boolean beaten) {}

    /** The one of a rank, or null where none that costs less than a limit is left. */
    @Nullable
    One<P> below(int rank, long limit) {
        while (found.size() <= rank && ranks.has(next) && ranks.floor(next) < limit) {
            int place = ranks.at(next);
            Option<P> option = here.apply(place);
            if (option != null) {
                option.price(k);
                Long before = cheapest.get(trait.apply(place));
                boolean beaten = before != null && before <= option.cost;
                if (!beaten) {
                    cheapest.put(trait.apply(place), option.cost);
                }
                found.add(new One<>(place, option, ranks.floor(next), beaten));
            }
            next++;
        }
        return found.size() > rank && found.get(rank).floor < limit ? found.get(rank) : null;
    }
}
