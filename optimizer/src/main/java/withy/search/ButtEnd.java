package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Grip;
import withy.rod.Placed;
import withy.rod.Station;

/** What leads on from the rear grips of one stand to its butt end under one set of prices: a cap, in a split handle a butt grip before it. */
final class ButtEnd {
    private static final long NONE = TrainGraph.NONE;

    /** As much as grips may seem to overlap by rounding, mm. */
    private static final double OVERLAP_MM = 0.01;

    private static final Butt NO_BUTT = new Butt(null, NONE);

    private final Stand stand;
    private final Linear k;
    private final BlankPrices prices;
    private final List<Option<ButtCap>> caps;
    private final int[] capPlaces;
    private final Ranked ranks;
    private final @Nullable Butt[] butts;
    private final Map<BitSet, Long> capFloors = new IdentityHashMap<>();
    private final Map<BitSet, Long> floors = new IdentityHashMap<>();
    private final Map<BitSet, Matching> matching = new IdentityHashMap<>();
    private final Map<BitSet, List<Option<ButtCap>>> capsOf = new IdentityHashMap<>();
    private double shortest = Double.NaN;

    ButtEnd(Stand stand, BlankPrices prices) {
        this.stand = stand;
        this.k = prices.list.k;
        this.prices = prices;
        this.caps = stand.caps();
        caps.forEach(cap -> cap.price(k));
        this.capPlaces = capPlaces();
        double foot = stand.setting.footMm();
        double armMm = foot - stand.setting.handMm();
        this.ranks = stand.shelf.buttMasses(stand.setting.shape()).rankedAt(-foot, k, armMm, this::cheapestCap);
        this.butts = new Butt[stand.shelf.butts.length];
    }

    /**
     * A butt grip with its cheapest cap.
     *
     * @param option the grip, or null where it does not fit or no cap goes with it
     * @param total its cost and that of the cap
     */
    private record Butt(@Nullable Option<Grip> option, long total) {}

    /** Takes ways on with their cost; gives the cost under which further ones are still of interest. */
    interface Visitor {
        long way(@Nullable Option<Grip> buttGrip, Option<ButtCap> cap, long cost);
    }

    /** False where nothing ends a handle here. */
    boolean any() {
        return !caps.isEmpty() && (!stand.split || ranks.has(0));
    }

    /** False where nothing ends a handle here, be it that no butt grip of a split handle fits with a cap or needs none. */
    boolean closes() {
        return !stand.split ? !caps.isEmpty() : shortestMm() < Double.MAX_VALUE;
    }

    /** False where a rear grip of a split handle with its front end here or further back would lie over any butt grip. */
    boolean mayLieBehind(Cut rear, double frontMm) {
        boolean overlaps = stand.split && frontMm - rear.lengthMm() < shortestMm() - OVERLAP_MM;
        return !overlaps || !stand.ground.handleRule;
    }

    /** Length of the shortest butt grip that fits with a cap or needs none, mm; the largest number where none does. */
    private double shortestMm() {
        double known = shortest;
        if (Double.isNaN(known)) {
            known = Double.MAX_VALUE;
            for (int i = 0; i < butts.length; i++) {
                Option<Grip> option = butt(i).option;
                known = option == null ? known : Math.min(known, option.lengthMm);
            }
            shortest = known;
        }
        return known;
    }

    /** What the way on from any rear grip of a split handle costs more here than wherever the reel stands. */
    long dearer() {
        long least = NONE;
        for (BitSet may : stand.shelf.neighbours.buttSets()) {
            least = Math.min(least, dearer(least(may), prices.onward(may)));
        }
        return TrainGraph.none(least) ? NONE : Math.max(0, least);
    }

    private static long dearer(long here, long anywhere) {
        return TrainGraph.none(here) || TrainGraph.none(anywhere) ? NONE : here - anywhere;
    }

    /** A number no way on from a rear grip costs less than. */
    long least(Cut rear) {
        return stand.split ? least(stand.shelf.neighbours.butts(rear)) : cheapestCap(rear);
    }

    private long least(BitSet may) {
        return floors.computeIfAbsent(may, any -> prices.least(ranks, may));
    }

    /** Cheapest cap that may go beside a grip. */
    private long cheapestCap(Cut cut) {
        return capFloors.computeIfAbsent(stand.shelf.neighbours.caps(cut.grip()), may -> {
            long least = NONE;
            for (int c = 0; c < capPlaces.length; c++) {
                if (may.get(capPlaces[c])) {
                    least = Math.min(least, caps.get(c).cost);
                }
            }
            return least;
        });
    }

    /** Where each cap stands among those that are open ({@link Ground#caps}), which keep their order; behind the last for none. */
    private int[] capPlaces() {
        List<ButtCap> all = stand.ground.caps;
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

    /** Cost of the cheapest way on from a rear grip where it stands; {@link TrainGraph#NONE} where there is none. */
    long least(Option<Grip> rear) {
        if (!stand.split) {
            List<Option<ButtCap>> caps = capsFor(Station.REAR_GRIP, rear);
            return caps.isEmpty() ? NONE : caps.get(0).cost;
        }
        long least = NONE;
        Matching match = matching.computeIfAbsent(buttsBeside(rear), Matching::new);
        for (int m = 0; match.has(m) && ranks.floor(match.at(m)) < least; m++) {
            Butt butt = butt(ranks.at(match.at(m)));
            if (butt.option != null && butt.total < least && splits(butt.option, rear)) {
                least = butt.total;
            }
        }
        return least;
    }

    /** True where some way leads on from a rear grip where it stands. */
    boolean some(Option<Grip> rear) {
        if (!stand.split) {
            return !capsFor(Station.REAR_GRIP, rear).isEmpty();
        }
        Matching match = matching.computeIfAbsent(buttsBeside(rear), Matching::new);
        for (int m = 0; match.has(m); m++) {
            Option<Grip> butt = butt(ranks.at(match.at(m))).option;
            if (butt != null && splits(butt, rear)) {
                return true;
            }
        }
        return false;
    }

    /**
     * Every way on from a rear grip that costs less than a limit with what is there so far; the limit may fall as they come.
     *
     * @param soFar cost of what is there, the rear grip included
     */
    long ways(Option<Grip> rear, long soFar, long under, Visitor visitor) {
        long limit = under;
        if (!stand.split) {
            for (Option<ButtCap> cap : capsFor(Station.REAR_GRIP, rear)) {
                if (soFar + cap.cost >= limit) {
                    break;
                }
                limit = visitor.way(null, cap, soFar + cap.cost);
            }
            return limit;
        }
        BitSet match = buttsBeside(rear);
        for (int b = 0; ranks.has(b); b++) {
            if (soFar + ranks.floor(b) >= limit) {
                break;
            }
            Butt butt = butt(ranks.at(b), match);
            if (butt.option != null && soFar + butt.total < limit && splits(butt.option, rear)) {
                for (Option<ButtCap> cap : capsFor(Station.BUTT_GRIP, butt.option)) {
                    long cost = soFar + butt.option.cost + cap.cost;
                    if (cost >= limit) {
                        break;
                    }
                    limit = visitor.way(butt.option, cap, cost);
                }
            }
        }
        return limit;
    }

    /** Ranks of the butt grips that go with a rear grip and fit, found as far as they are asked for. */
    private final class Matching {
        private final BitSet match;
        private final List<Integer> found = new ArrayList<>();
        private int next;

        Matching(BitSet match) {
            this.match = match;
        }

        boolean has(int m) {
            while (found.size() <= m && ranks.has(next)) {
                if (butt(ranks.at(next), match).option != null) {
                    found.add(next);
                }
                next++;
            }
            return found.size() > m;
        }

        int at(int m) {
            return found.get(m);
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
        return capsOf.computeIfAbsent(stand.shelf.neighbours.caps(grip), may -> {
            List<Option<ButtCap>> list = new ArrayList<>();
            for (int c = 0; c < capPlaces.length; c++) {
                Option<ButtCap> cap = caps.get(c);
                if (may.get(capPlaces[c])) {
                    stand.ground.seams.butt(stand.setting, cap.part, station, grip, stand.refusal.reset());
                    if (!stand.refusal.refused()) {
                        cap.price(k);
                        list.add(cap);
                    }
                }
            }
            list.sort((a, b) -> Long.compare(a.cost, b.cost));
            return list;
        });
    }
}
