package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.ReelSeat;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.SeatSet;

/**
 * Everything behind the seat of one stand under one set of prices: for each rear grip the cheapest way on to the butt end, and for each seat the
 * cheapest way behind it.
 */
final class Behind {
    private static final long NONE = TrainGraph.NONE;

    /** As much as places may be off by rounding, mm. */
    private static final double PLAY_MM = 0.01;

    private static final BitSet NOTHING = new BitSet();
    private static final Rear NO_REAR = new Rear(null, NONE);

    final Stand stand;
    final Linear k;
    final Ranked rearRanks;
    final Rings rings;
    final ButtEnd buttEnd;
    final long dearer;
    private final Map<Long, Rear> rears = new HashMap<>();
    private final Map<Long, Boolean> leadsOn = new HashMap<>();
    final GripMasses rearMasses;
    final double armMm;
    private final Map<Rearward, Map<BitSet, Best>> best = new HashMap<>();
    private final Map<Rearward, Map<BitSet, Boolean>> some = new HashMap<>();
    private final Map<Neighbours.Pairs, Long> floors = new IdentityHashMap<>();
    private @Nullable LikelyRears likely;

    Behind(Stand stand, BlankPrices prices) {
        this.stand = stand;
        this.k = prices.list.k;
        BlankShape shape = stand.setting.shape();
        this.rearMasses = stand.shelf.rearMasses(shape);
        this.armMm = stand.setting.footMm() - stand.setting.handMm();
        this.buttEnd = new ButtEnd(stand, prices);
        this.rings = new Rings(stand, prices.rearChecks(), k);
        int foot = stand.setting.footMm();
        boolean welcome = k.perMgAt(-foot, armMm) < 0;
        if (!stand.split) {
            this.rearRanks = rearMasses.filledAt(foot, k, armMm, buttEnd::least);
        } else {
            // where weight is a burden, a grip costs least near the seat, wherever that is; where it is welcome, how
            // far back there is room for it counts
            this.rearRanks = welcome
                    ? rearMasses.rankedAhead(prices.rears(), -foot - PLAY_MM, k, armMm, buttEnd::least)
                    : prices.rears();
        }
        this.dearer = stand.split && !welcome ? buttEnd.dearer() : 0;
    }

    /**
     * A rear grip with the cheapest way from it to the butt end.
     *
     * @param option the grip, or null where it does not fit or nothing leads on
     * @param total its cost and that of the way on
     */
    private record Rear(@Nullable Option<Grip> option, long total) {}

    /** A whole way behind a seat. */
    record Way(
            Option<Check> rearCheck,
            Option<Grip> rearGrip,
            @Nullable Option<Grip> buttGrip,
            Option<ButtCap> cap,
            long cost) {

        /** Adds all of it, behind this seat, to what else is there. */
        Tally tally(Tally to, Style style, ReelSeat seat) {
            to.looks(style.gripAndSeat(Objects.requireNonNull(rearGrip.part), seat), 0);
            to.add(cap).add(rearGrip).add(rearCheck);
            return buttGrip == null ? to : to.add(buttGrip);
        }
    }

    /** Takes ways; gives the cost under which further ones are still of interest. */
    interface Visitor {
        long way(Way way);
    }

    /** A number no way behind any seat costs less than, but for what grip and seat are worth side by side. */
    long floor() {
        return !rearRanks.has(0) || !buttEnd.any() || TrainGraph.none(dearer)
                ? NONE
                : rings.least() + rearRanks.least() + dearer;
    }

    /** The same with what grip and seat are worth side by side, behind seats that are worth the same beside rear grips; only where {@link #floor} is not none. */
    long floor(Neighbours.Pairs pairs) {
        return floors.computeIfAbsent(pairs, this::floorNow);
    }

    private long floorNow(Neighbours.Pairs pairs) {
        long most = k.perStyleCenti() * pairs.most();
        long least = NONE;
        for (int r = 0; rearRanks.floor(r) - most < least; r++) {
            long pair = k.perStyleCenti() * pairs.each()[stand.shelf.rears[rearRanks.at(r)].index()];
            least = Math.min(least, rearRanks.floor(r) - pair);
        }
        return rings.least() + least + dearer;
    }

    /**
     * Cheapest way behind a seat, beside certain rear grips; {@link TrainGraph#none} where there is none below the limit.
     *
     * @param under from here on it is of no interest
     */
    long best(SeatGroup seat, BitSet match, long under) {
        Map<BitSet, Best> of = best.computeIfAbsent(seat.rearward(), any -> new IdentityHashMap<>());
        Best known = of.get(match);
        if (known == null || TrainGraph.none(known.cost) && known.under < under) {
            known = new Best(bestNow(seat, match, under), under);
            of.put(match, known);
        }
        return known.cost;
    }

    /** What was found below a limit. */
    private record Best(long cost, long under) {}

    private long bestNow(SeatGroup seat, BitSet match, long under) {
        long least = Math.min(NONE, under);
        SeatSet set = seat.set();
        LikelyRears likely = likely(seat, least);
        int first = likely.first(match);
        if (!likely.has(first)) {
            return NONE;
        }
        Rings.Below below = rings.below(set.fromMm(), least - likely.floor(first));
        boolean found = false;
        for (int r = first; likely.has(r) && below.least() + likely.floor(r) < least; r++) {
            Cut cut = stand.shelf.rears[likely.at(r)];
            if (!match.get(cut.index())) {
                continue;
            }
            BitSet joined = likely.joins.rings(cut);
            for (Rings.Ring ring : below.rings()) {
                if (ring.cost() + likely.floor(r) < least && joined.get(ring.place())) {
                    Rear rear = rear(likely.at(r), set.fromMm() - ring.check().lengthMm);
                    if (rear.option != null) {
                        long cost = ring.cost() + rear.total + likely.pair(cut);
                        found |= cost < least;
                        least = Math.min(least, cost);
                    }
                }
            }
        }
        return found ? least : NONE;
    }

    /**
     * What seats have in common behind which the same ways lead to the butt end and cost the same.
     *
     * @param rearEnd where the seat ends ({@link Stand#key})
     * @param joins what joins there
     * @param pairs what it is worth beside rear grips
     */
    record Rearward(long rearEnd, Joins joins, Neighbours.Pairs pairs) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Rearward that
                    && rearEnd == that.rearEnd
                    && joins.equals(that.joins)
                    && pairs == that.pairs;
        }

        @Override
        public int hashCode() {
            return 31 * (31 * Long.hashCode(rearEnd) + joins.hashCode()) + Long.hashCode(pairs.most());
        }

        static Rearward of(Shelf shelf, SeatSet set) {
            return new Rearward(Stand.key(set.fromMm()), shelf.joins(set), shelf.neighbours.pairs(set.seat()));
        }
    }

    /** True where some way leads from a seat to the butt end, beside certain rear grips, whatever it costs. */
    boolean some(SeatGroup seat, BitSet match) {
        if (!buttEnd.closes()) {
            return false;
        }
        Map<BitSet, Boolean> of = some.computeIfAbsent(seat.rearward(), any -> new IdentityHashMap<>());
        Boolean known = of.get(match);
        if (known == null) {
            known = someNow(seat, match);
            of.put(match, known);
        }
        return known;
    }

    private boolean someNow(SeatGroup seat, BitSet match) {
        SeatSet set = seat.set();
        LikelyRears likely = likely(seat, NONE);
        Rings.Below below = rings.all(set.fromMm());
        for (int r = likely.first(match); likely.has(r); r++) {
            Cut cut = stand.shelf.rears[likely.at(r)];
            boolean may = match.get(cut.index()) && buttEnd.mayLieBehind(cut, set.fromMm());
            BitSet joined = may ? likely.joins.rings(cut) : NOTHING;
            for (Rings.Ring ring : below.rings()) {
                if (joined.get(ring.place()) && leadsOn(likely.at(r), set.fromMm() - ring.check().lengthMm)) {
                    return true;
                }
            }
        }
        return false;
    }

    /** True where a rear grip of the shelf fits and something ends the handle behind it. */
    private boolean leadsOn(int i, double frontMm) {
        return leadsOn.computeIfAbsent(rearKey(i, frontMm), any -> {
            Option<Grip> rear = stand.rearGrip(i, frontMm);
            return rear != null && buttEnd.some(rear);
        });
    }

    /** The rear grips of interest below a limit, put in order once while one seat is asked about and the limit does not rise. */
    private LikelyRears likely(SeatGroup seat, long under) {
        LikelyRears known = likely;
        if (known == null || !known.rearward.equals(seat.rearward()) || known.under < under) {
            known = new LikelyRears(this, seat.set(), seat.rearward(), under);
            likely = known;
        }
        return known;
    }

    /** Every way behind a seat that costs less than a limit, which may fall as they come. */
    void ways(SeatGroup seat, @Nullable Grip foreGrip, long under, Visitor visitor) {
        SeatSet set = seat.set();
        BitSet match = stand.shelf.neighbours.rears(foreGrip);
        LikelyRears likely = likely(seat, under);
        int first = likely.first(match);
        long limit = under;
        for (int c = rings.first(); rings.has(c); c++) {
            if (rings.floor(c) + likely.floor(first) >= limit) {
                break;
            }
            Option<Check> check = rings.check(c, set.fromMm());
            if (check == null) {
                continue;
            }
            double front = set.fromMm() - check.lengthMm;
            for (int r = first; likely.has(r) && check.cost + likely.floor(r) < limit; r++) {
                Cut cut = stand.shelf.rears[likely.at(r)];
                Rear rear = match.get(cut.index()) ? rear(likely.at(r), front) : NO_REAR;
                if (rear.option != null) {
                    long pair = check.cost + likely.pair(cut);
                    if (pair + rear.total < limit && likely.joins.rings(cut).get(rings.at(c))) {
                        Option<Grip> grip = rear.option;
                        limit = buttEnd.ways(grip, pair + grip.cost, limit, (butt, cap, cost) -> {
                            return visitor.way(new Way(check, grip, butt, cap, cost));
                        });
                    }
                }
            }
        }
    }

    private Long rearKey(int i, double frontMm) {
        return Stand.key(frontMm) * stand.shelf.rears.length + i;
    }

    /** A rear grip of the shelf with the cheapest way on. */
    private Rear rear(int i, double frontMm) {
        Long key = rearKey(i, frontMm);
        Rear known = rears.get(key);
        if (known == null) {
            Option<Grip> option = stand.rearGrip(i, frontMm);
            if (option != null) {
                option.price(k);
            }
            long on = option == null ? NONE : buttEnd.least(option);
            known = option == null || TrainGraph.none(on) ? NO_REAR : new Rear(option, option.cost + on);
            rears.put(key, known);
        }
        return known;
    }
}
