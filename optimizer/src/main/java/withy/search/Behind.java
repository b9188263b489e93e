package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.ReelSeat;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Share;
import withy.rod.Station;

/**
 * Everything behind the seat of one stand under one set of prices: for each rear grip the cheapest way on to the butt end, and for each seat the
 * cheapest way behind it.
 */
final class Behind {
    private static final long NONE = TrainGraph.NONE;

    private static final Rear NO_REAR = new Rear(null, NONE);
    private static final Butt NO_BUTT = new Butt(null, NONE);

    private final Stand stand;
    private final Linear k;
    private final Ranked rearRanks;
    private final Ranked buttRanks;
    private final Ranked checkRanks;
    private final PriceList list;
    private final long dearer;
    private final List<Option<ButtCap>> caps;
    private final int[] capPlaces;
    private final Map<String, Long> capFloors = new HashMap<>();
    private final Map<BitSet, Long> onFloors = new IdentityHashMap<>();
    private final Map<Long, Rear> rears = new HashMap<>();
    private final Map<BitSet, Matching> matching = new IdentityHashMap<>();
    private final GripMasses rearMasses;
    private final double armMm;
    private final @Nullable Butt[] butts;
    private final Map<String, List<Option<ButtCap>>> capsOf = new HashMap<>();
    private final Map<Stand.SeatGroup, Map<BitSet, Best>> best = new IdentityHashMap<>();
    private final @Nullable Option<Check> noCheck;

    Behind(Stand stand, PriceList list) {
        this.stand = stand;
        this.k = list.k;
        BlankShape shape = stand.setting.shape();
        this.rearRanks = list.rears(shape);
        this.rearMasses = stand.shelf.rearMasses(shape);
        double foot = stand.setting.footMm();
        this.armMm = foot - stand.setting.handMm();
        this.list = list;
        this.caps = stand.caps();
        caps.forEach(cap -> cap.price(k));
        this.capPlaces = capPlaces();
        this.buttRanks = stand.shelf.buttMasses(shape).rankedAt(-foot, k, armMm, this::cheapestCap);
        this.checkRanks = list.rearChecks(shape);
        this.butts = new Butt[stand.shelf.butts.length];
        this.dearer = dearer();
        this.noCheck = stand.stations.optional(Station.REAR_CHECK) ? new Option<>(null, 0, 0, Share.NONE, 0, 0) : null;
    }

    /**
     * A rear grip with the cheapest way from it to the butt end.
     *
     * @param option the grip, or null where it does not fit or nothing leads on
     * @param total its cost and that of the way on
     */
    private record Rear(@Nullable Option<Grip> option, long total) {}

    /**
     * A butt grip with its cheapest cap.
     *
     * @param option the grip, or null where it does not fit or no cap goes with it
     * @param total its cost and that of the cap
     */
    private record Butt(@Nullable Option<Grip> option, long total) {}

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
        return !rearRanks.has(0) || stand.split && !buttRanks.has(0) || caps.isEmpty() || TrainGraph.none(dearer)
                ? NONE
                : Math.min(0, checkRanks.least()) + rearRanks.least() + dearer;
    }

    /** What the way on from any rear grip costs more here than wherever the reel stands. */
    private long dearer() {
        Map<Object, Long> asked = new IdentityHashMap<>();
        long least = NONE;
        for (Cut cut : stand.shelf.rears) {
            Object key = stand.split ? list.buttsBeside(cut) : cut.grip();
            least = Math.min(least, asked.computeIfAbsent(key, any -> {
                long here = onward(cut);
                long anywhere = list.onward(stand.setting.shape(), cut);
                return TrainGraph.none(here) || TrainGraph.none(anywhere) ? NONE : here - anywhere;
            }));
        }
        return TrainGraph.none(least) ? NONE : Math.max(0, least);
    }

    /** A number no way on from a rear grip costs less than. */
    long onward(Cut rear) {
        return stand.split
                ? onFloors.computeIfAbsent(list.buttsBeside(rear), may -> list.least(buttRanks, may))
                : cheapestCap(rear);
    }

    /** Cheapest cap that may go beside a grip. */
    long cheapestCap(Cut cut) {
        return capFloors.computeIfAbsent(cut.grip().id(), id -> {
            BitSet may = stand.shelf.capsBeside(stand.setting.shape(), cut.grip());
            long least = NONE;
            for (int c = 0; c < capPlaces.length; c++) {
                if (may.get(capPlaces[c])) {
                    least = Math.min(least, caps.get(c).cost);
                }
            }
            return least;
        });
    }

    /** Where each cap stands among those of the blank ({@link Shelf#capsOn}), which keep their order; behind the last for none. */
    private int[] capPlaces() {
        List<ButtCap> all = stand.shelf.capsOn(stand.setting.shape());
        int[] places = new int[caps.size()];
        int place = 0;
        for (int c = 0; c < places.length; c++) {
            ButtCap cap = caps.get(c).part;
            while (cap != null && all.get(place) != cap) {
                place++;
            }
            places[c] = cap == null ? all.size() : place;
        }
        return places;
    }

    /**
     * Cheapest way behind a seat, beside certain rear grips; {@link TrainGraph#none} where there is none below the limit.
     *
     * @param under from here on it is of no interest
     */
    long best(Stand.SeatGroup seat, BitSet match, long under) {
        Map<BitSet, Best> of = best.computeIfAbsent(seat, any -> new IdentityHashMap<>());
        Best known = of.get(match);
        if (known == null || TrainGraph.none(known.cost) && known.under < under) {
            known = new Best(bestNow(seat.set(), match, under), under);
            of.put(match, known);
        }
        return known.cost;
    }

    /** Worked out only where there is one seat, which is then asked about on every blank. */
    private @Nullable Joins joins(SeatSet set) {
        return stand.shelf.seats.length == 1 ? stand.shelf.joins(set) : null;
    }

    /** What was found below a limit. */
    private record Best(long cost, long under) {}

    private long bestNow(SeatSet set, BitSet match, long under) {
        long least = Math.min(NONE, under);
        Likely likely = new Likely(set, match, least);
        Joins joins = joins(set);
        boolean found = false;
        for (int c = noCheck == null ? 0 : -1; c < 0 || checkRanks.has(c); c++) {
            if (c >= 0 && checkRanks.floor(c) + likely.least() >= least) {
                break;
            }
            int ring = c < 0 ? -1 : checkRanks.at(c);
            if (joins != null && !joins.through(ring)) {
                continue;
            }
            Option<Check> check = check(c, set.fromMm());
            if (check == null || check.cost + likely.least() >= least) {
                continue;
            }
            double front = set.fromMm() - check.lengthMm;
            for (int r = 0; likely.has(r) && check.cost + likely.floor(r) < least; r++) {
                Cut cut = stand.shelf.rears[likely.at(r)];
                boolean asked = joins != null || !rears.containsKey(rearKey(likely.at(r), front));
                if (asked && !(joins == null ? meets(cut.grip(), check, set) : joins.through(ring, cut))) {
                    continue;
                }
                Rear rear = rear(likely.at(r), front);
                if (rear.option != null) {
                    long cost = check.cost + rear.total + pair(set.seat(), rear.option);
                    if (cost < least && (asked || meets(rear.option.part, check, set))) {
                        least = cost;
                        found = true;
                    }
                }
            }
        }
        return found ? least : NONE;
    }

    /** Rear grips that may matter behind one seat, the likeliest first, each with a number it and its way on do not cost less than there. */
    private final class Likely {
        private final int[] cuts;
        private final Ranked ranks;

        Likely(SeatSet set, BitSet match, long under) {
            long most =
                    k.perStyleCenti() * stand.ground.gripMatch.bestPair(stand.ground.style, set.seat(), stand.split);
            long room = under - Math.min(0, checkRanks.least());
            long dear = TrainGraph.none(dearer) ? 0 : dearer;
            double front = set.fromMm() - stand.setting.footMm();
            Joins joins = joins(set);
            int n = 0;
            int[] kept = new int[stand.shelf.rears.length];
            long[] floors = new long[stand.shelf.rears.length];
            for (int r = 0; rearRanks.floor(r) + dear - most < room && rearRanks.has(r); r++) {
                int i = rearRanks.at(r);
                Cut cut = stand.shelf.rears[i];
                if (match.get(cut.index()) && (joins == null || joins.some(cut))) {
                    long on = cut.fills() ? 0 : onward(cut);
                    if (TrainGraph.none(on)) {
                        continue;
                    }
                    long floor = cut.fills()
                            ? rearRanks.floor(r) + dear
                            : on
                                    + rearMasses.near(
                                            i,
                                            front - stand.shelf.widestCheckMm - cut.lengthMm(),
                                            front - cut.lengthMm(),
                                            k,
                                            armMm);
                    long pair = k.perStyleCenti() * stand.ground.style.gripAndSeat(cut.grip(), set.seat());
                    if (floor - pair < room) {
                        kept[n] = i;
                        floors[n++] = floor - pair;
                    }
                }
            }
            this.cuts = Arrays.copyOf(kept, n);
            this.ranks = new Ranked(Arrays.copyOf(floors, n));
        }

        boolean has(int rank) {
            return ranks.has(rank);
        }

        int at(int rank) {
            return cuts[ranks.at(rank)];
        }

        long floor(int rank) {
            return ranks.floor(rank);
        }

        long least() {
            return ranks.least();
        }
    }

    /** Every way behind a seat that costs less than a limit, which may fall as they come. */
    void ways(SeatSet set, @Nullable Grip foreGrip, long under, Visitor visitor) {
        Likely likely =
                new Likely(set, stand.ground.gripMatch.rearsBeside(stand.setting, foreGrip, stand.split), under);
        long limit = under;
        for (int c = noCheck == null ? 0 : -1; c < 0 || checkRanks.has(c); c++) {
            if (c >= 0 && checkRanks.floor(c) + likely.least() >= limit) {
                break;
            }
            Option<Check> check = check(c, set.fromMm());
            if (check == null) {
                continue;
            }
            double front = set.fromMm() - check.lengthMm;
            for (int r = 0; likely.has(r) && check.cost + likely.floor(r) < limit; r++) {
                Rear rear = rear(likely.at(r), front);
                if (rear.option != null) {
                    long pair = check.cost + pair(set.seat(), rear.option);
                    if (pair + rear.total < limit && meets(rear.option.part, check, set)) {
                        limit = onward(check, rear.option, pair, limit, visitor);
                    }
                }
            }
        }
    }

    /** The check of a rank with its front face at the seat, priced; rank -1 stands for none. */
    private @Nullable Option<Check> check(int rank, double frontMm) {
        if (rank < 0) {
            return noCheck;
        }
        Option<Check> check = stand.rearCheck(checkRanks.at(rank), frontMm);
        if (check != null) {
            check.price(k);
        }
        return check;
    }

    private long onward(Option<Check> check, Option<Grip> rear, long before, long under, Visitor visitor) {
        long limit = under;
        long soFar = before + rear.cost;
        if (!stand.split) {
            for (Option<ButtCap> cap : capsFor(Station.REAR_GRIP, rear)) {
                if (soFar + cap.cost >= limit) {
                    break;
                }
                limit = visitor.way(new Way(check, rear, null, cap, soFar + cap.cost));
            }
            return limit;
        }
        BitSet match = buttsBeside(rear);
        for (int b = 0; buttRanks.has(b); b++) {
            if (soFar + buttRanks.floor(b) >= limit) {
                break;
            }
            Butt butt = butt(buttRanks.at(b), match);
            if (butt.option != null && soFar + butt.total < limit && splits(butt.option, rear)) {
                for (Option<ButtCap> cap : capsFor(Station.BUTT_GRIP, butt.option)) {
                    long cost = soFar + butt.option.cost + cap.cost;
                    if (cost >= limit) {
                        break;
                    }
                    limit = visitor.way(new Way(check, rear, butt.option, cap, cost));
                }
            }
        }
        return limit;
    }

    private long pair(ReelSeat seat, Option<Grip> rear) {
        return -k.perStyleCenti() * stand.ground.style.gripAndSeat(Objects.requireNonNull(rear.part), seat);
    }

    private boolean meets(@Nullable Grip rear, Option<Check> check, SeatSet set) {
        stand.ground.seams.behindSeat(stand.setting, rear, check.part, set, stand.refusal.reset());
        return !stand.refusal.refused();
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
            long on = option == null ? NONE : wayOn(option);
            known = option == null || TrainGraph.none(on) ? NO_REAR : new Rear(option, option.cost + on);
            rears.put(key, known);
        }
        return known;
    }

    private long wayOn(Option<Grip> rear) {
        if (!stand.split) {
            List<Option<ButtCap>> caps = capsFor(Station.REAR_GRIP, rear);
            return caps.isEmpty() ? NONE : caps.get(0).cost;
        }
        long least = NONE;
        Matching match = matching.computeIfAbsent(buttsBeside(rear), Matching::new);
        for (int m = 0; match.has(m) && buttRanks.floor(match.at(m)) < least; m++) {
            Butt butt = butt(buttRanks.at(match.at(m)));
            if (butt.option != null && butt.total < least && splits(butt.option, rear)) {
                least = butt.total;
            }
        }
        return least;
    }

    /** Ranks of the butt grips that go with a rear grip and fit, found as far as they are asked for. */
    private final class Matching {
        private final BitSet match;
        private final List<Integer> ranks = new ArrayList<>();
        private int next;

        Matching(BitSet match) {
            this.match = match;
        }

        boolean has(int m) {
            while (ranks.size() <= m && buttRanks.has(next)) {
                if (butt(buttRanks.at(next), match).option != null) {
                    ranks.add(next);
                }
                next++;
            }
            return ranks.size() > m;
        }

        int at(int m) {
            return ranks.get(m);
        }
    }

    private boolean splits(Option<Grip> butt, Option<Grip> rear) {
        stand.ground.seams.split(
                stand.setting, placed(Station.BUTT_GRIP, butt), placed(Station.REAR_GRIP, rear), stand.refusal.reset());
        return !stand.refusal.refused();
    }

    private static Placed placed(Station station, Option<Grip> option) {
        return new Placed(station, Objects.requireNonNull(option.part), option.fromMm, option.lengthMm);
    }

    /** Butt grips that go with a rear grip as grips; the bare blank between is still to be asked. */
    private BitSet buttsBeside(Option<Grip> rear) {
        return stand.ground.gripMatch.buttsBeside(stand.setting, Objects.requireNonNull(rear.part));
    }

    private Butt butt(int i, BitSet match) {
        return match.get(stand.shelf.butts[i].index()) ? butt(i) : NO_BUTT;
    }

    private Butt butt(int i) {
        Butt known = butts[i];
        if (known == null) {
            Option<Grip> option = stand.buttGrip(i);
            List<Option<ButtCap>> caps = option == null ? List.of() : capsFor(Station.BUTT_GRIP, option);
            if (option == null || caps.isEmpty()) {
                known = new Butt(null, NONE);
            } else {
                option.price(k);
                known = new Butt(option, option.cost + caps.get(0).cost);
            }
            butts[i] = known;
        }
        return known;
    }

    /** Caps that go with the grip nearest the butt, cheapest first. */
    private List<Option<ButtCap>> capsFor(Station station, Option<Grip> first) {
        Grip grip = Objects.requireNonNull(first.part);
        return capsOf.computeIfAbsent(grip.id(), key -> {
            List<Option<ButtCap>> list = new ArrayList<>();
            for (Option<ButtCap> cap : caps) {
                stand.ground.seams.butt(stand.setting, cap.part, station, grip, stand.refusal.reset());
                if (!stand.refusal.refused()) {
                    cap.price(k);
                    list.add(cap);
                }
            }
            list.sort((a, b) -> Long.compare(a.cost, b.cost));
            return list;
        });
    }
}
