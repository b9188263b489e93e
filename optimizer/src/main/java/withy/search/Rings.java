package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.rod.Station;

/** The checks between rear grip and seat of one stand under one set of prices, by their index on the shelf plus one; 0 stands for none. */
final class Rings {
    private final Stand stand;
    private final Linear k;
    private final Ranked ranks;
    private final @Nullable Option<Check> none;
    private final Map<Long, Below> known = new HashMap<>();

    Rings(Stand stand, Ranked ranks, Linear k) {
        this.stand = stand;
        this.k = k;
        this.ranks = ranks;
        this.none = stand.stations.optional(Station.REAR_CHECK) ? new Option<>(null, 0, 0, Sums.NONE, 0, 0) : null;
    }

    /** The first rank: -1 where there may be none. */
    int first() {
        return none == null ? 0 : -1;
    }

    /** True where there is one of a rank. */
    boolean has(int rank) {
        return rank < 0 || ranks.has(rank);
    }

    /** A number the one of a rank and those after it cost no less than. */
    long floor(int rank) {
        return rank < 0 ? Long.MIN_VALUE / 4 : ranks.floor(rank);
    }

    /** Index of the one of a rank. */
    int at(int rank) {
        return rank < 0 ? 0 : ranks.at(rank) + 1;
    }

    /** The one of a rank with its front face here, priced; null where it does not go there. */
    @Nullable
    Option<Check> check(int rank, double frontMm) {
        if (rank < 0) {
            return none;
        }
        Option<Check> check = stand.rearCheck(ranks.at(rank), frontMm);
        if (check != null) {
            check.price(k);
        }
        return check;
    }

    /** A number no check costs less than, none among them. */
    long least() {
        return Math.min(0, ranks.least());
    }

    /** Those with the front face at one place that cost less than a limit, and perhaps some that do not: of such as leave the same behind and before them the cheapest. */
    Below below(double frontMm, long limit) {
        Long key = Stand.key(frontMm);
        Below of = known.get(key);
        if (of == null || of.under < limit) {
            of = new Below(frontMm, limit);
            known.put(key, of);
        }
        return of;
    }

    /** All with the front face at one place, of such as leave the same behind and before them the cheapest. */
    Below all(double frontMm) {
        return below(frontMm, TrainGraph.NONE);
    }

    /** All of a ring that what stands beside it depends upon: how far it moves that, and its faces. */
    record Trait(double widthMm, double outerMm) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Trait that
                    && Double.compare(widthMm, that.widthMm) == 0
                    && Double.compare(outerMm, that.outerMm) == 0;
        }

        @Override
        public int hashCode() {
            return 31 * Double.hashCode(widthMm) + Double.hashCode(outerMm);
        }

        private static final Trait NONE = new Trait(0, 0);

        static Trait of(@Nullable Check ring) {
            return ring == null ? NONE : new Trait(ring.widthMm(), ring.outerMm());
        }
    }

    /** Those below a limit at one place. */
    final class Below {
        private final long under;
        private final List<Ring> rings = new ArrayList<>();
        private long least = TrainGraph.NONE;

        private Below(double frontMm, long limit) {
            under = limit;
            Map<Trait, Ring> cheapest = new LinkedHashMap<>();
            for (int rank = first(); has(rank) && floor(rank) < limit; rank++) {
                Option<Check> check = check(rank, frontMm);
                if (check != null && check.cost < limit) {
                    Ring ring = new Ring(at(rank), check, check.cost);
                    cheapest.merge(Trait.of(check.part), ring, (one, other) -> other.cost < one.cost ? other : one);
                    least = Math.min(least, check.cost);
                }
            }
            rings.addAll(cheapest.values());
        }

        /** They. */
        List<Ring> rings() {
            return rings;
        }

        /** What the cheapest costs. */
        long least() {
            return least;
        }
    }

    /**
     * One of them.
     *
     * @param place its index on the shelf plus one; 0 for none
     * @param check the check, or the empty choice
     * @param cost what it costs
     */
    record Ring(int place, Option<Check> check, long cost) {}
}
