package withy.search;

import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;

/**
 * Candidates of one station as they come out at certain places of one stand, each worked out when first asked for.
 *
 * @param <P> kind of part
 */
final class Fits<P extends Part> {
    private static final Option<?> MISFIT = new Option<>(null, 0, 0, Sums.NONE, 0, 0);

    private final int size;
    private final Maker<P> maker;
    private final Map<Long, Option<?>> known = new HashMap<>();

    Fits(int size, Maker<P> maker) {
        this.size = size;
        this.maker = maker;
    }

    /** Fits a candidate to a place. */
    interface Maker<P extends Part> {
        /** The option, or null where it does not fit there. */
        @Nullable
        Option<P> make(int candidate, double atMm);
    }

    /** A candidate at a place, or null where it does not fit there. */
    @SuppressWarnings("unchecked")
    @Nullable
    Option<P> at(int candidate, double atMm) {
        Long key = Stand.key(atMm) * size + candidate;
        Option<?> option = known.get(key);
        if (option == null) {
            option = maker.make(candidate, atMm);
            option = option == null ? MISFIT : option;
            known.put(key, option);
        }
        return option == MISFIT ? null : (Option<P>) option;
    }
}
