package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.rod.Share;
import withy.rod.Station;

/** The checks between rear grip and seat of one stand under one set of prices, by their index on the shelf plus one; 0 stands for none. */
final class Rings {
    private final Stand stand;
    private final Linear k;
    private final Ranked ranks;
    private final @Nullable Option<Check> none;
    private final Map<Long, Below> all = new HashMap<>();

    Rings(Stand stand, Ranked ranks, Linear k) {
        this.stand = stand;
        this.k = k;
        this.ranks = ranks;
        this.none = stand.stations.optional(Station.REAR_CHECK) ? new Option<>(null, 0, 0, Share.NONE, 0, 0) : null;
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

    /** Those with the front face at one place that cost less than a limit. */
    Below below(double frontMm, long limit) {
        return new Below(frontMm, limit);
    }

    /** All with the front face at one place. */
    Below all(double frontMm) {
        return all.computeIfAbsent(Stand.key(frontMm), any -> new Below(frontMm, TrainGraph.NONE));
    }

    /** Those below a limit at one place. */
    final class Below {
        /** Which there are. */
        final BitSet all = new BitSet();

        private final @Nullable Option<Check>[] options;
        private long least = TrainGraph.NONE;

        @SuppressWarnings("unchecked")
        private Below(double frontMm, long limit) {
            options = new Option[stand.shelf.checks.length + 1];
            for (int rank = first(); has(rank) && floor(rank) < limit; rank++) {
                Option<Check> check = check(rank, frontMm);
                if (check != null && check.cost < limit) {
                    options[at(rank)] = check;
                    all.set(at(rank));
                    least = Math.min(least, check.cost);
                }
            }
        }

        /** One of them, or null. */
        @Nullable
        Option<Check> of(int ring) {
            return options[ring];
        }

        /** What the cheapest costs. */
        long least() {
            return least;
        }
    }
}
