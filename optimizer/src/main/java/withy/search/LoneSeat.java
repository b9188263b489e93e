package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.Face;
import withy.rod.SeatSet;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Seams;

/**
 * What stands around the one seat of a shelf costs at least on one blank, or on any, under one set of prices: only grips and rings that join its faces, and what
 * ends the handle ahead of it. Not for several threads at once.
 */
final class LoneSeat {
    private static final long NONE = TrainGraph.NONE;

    private final Shelf shelf;
    private final Linear k;
    private final BlankPrices prices;
    private final Refusal refusal = new Refusal();

    LoneSeat(BlankPrices prices) {
        this.prices = prices;
        this.shelf = prices.list.shelf;
        this.k = prices.list.k;
    }

    /**
     * A number nothing around the seat costs less than, keeper and inscription included; what the best grip behind it is worth beside it is not credited.
     * {@link TrainGraph#NONE} where nothing goes around it.
     */
    long around() {
        long least = NONE;
        for (SeatSet set : faces()) {
            least = Math.min(least, new Around(set).least());
        }
        return TrainGraph.sum(least, prices.list.keeperFloor);
    }

    /** The seat with each hood that gives it other faces. */
    private List<SeatSet> faces() {
        ReelSeat seat = shelf.seats[0];
        Map<List<Double>, SeatSet> sets = new HashMap<>();
        List<SeatSet> all = new ArrayList<>();
        if (shelf.stations.optional(Station.HOOD)) {
            all.add(new SeatSet(seat, null, null, 0));
        }
        for (Hood hood : shelf.hoodsFor(seat)) {
            all.add(new SeatSet(seat, hood, null, 0));
        }
        all.forEach(set -> sets.putIfAbsent(List.of(set.rearFaceMm(), set.frontFaceMm()), set));
        return List.copyOf(sets.values());
    }

    /** Of one pair of faces. */
    private final class Around {
        private final SeatSet set;
        private final Joins joins;
        private final Neighbours.Pairs pairs;
        private final Map<BitSet, Long> behind = new IdentityHashMap<>();
        private final Map<Double, Long> endsOfRings = new HashMap<>();
        private long least = NONE;

        private Around(SeatSet set) {
            this.set = set;
            this.joins = shelf.joins(set);
            this.pairs = shelf.neighbours.pairs(set.seat());
        }

        private long least() {
            if (!shelf.mustHaveForeGrip()) {
                bare();
            }
            if (shelf.mayHaveForeGrip()) {
                foreGrips();
            }
            return least;
        }

        private void bare() {
            long wished = k.perMilliStep() * shelf.ground.wishes.foreGrip(false);
            long ahead = NONE;
            if (shelf.stations.optional(Station.FORE_CHECK)) {
                ahead = end(Seams.frontOf(set), set.seat().frontFinished());
            }
            Ranked rings = prices.foreChecks();
            long leastEnd = Math.min(0, prices.endChecks().least());
            for (int r = 0; rings.has(r) && rings.floor(r) + leastEnd < ahead; r++) {
                Check ring = shelf.checks[rings.at(r)];
                if (goesOn(ring)) {
                    ahead = Math.min(ahead, TrainGraph.sum(rings.floor(r), endOf(ring)));
                }
            }
            with(TrainGraph.sum(ahead, wished), shelf.neighbours.rears(null));
        }

        private void foreGrips() {
            Ranked fores = prices.fores();
            long besides = TrainGraph.sum(
                    Math.min(0, prices.foreChecks().least())
                            + Math.min(0, prices.endChecks().least()),
                    behindAny());
            for (int f = 0; fores.has(f) && TrainGraph.sum(fores.floor(f), besides) < least; f++) {
                int fore = fores.at(f);
                Grip grip = shelf.fores[fore].grip();
                long ring = ringBefore(fore);
                if (!TrainGraph.none(ring)) {
                    long end = end(Seams.frontOf(Station.FORE_GRIP, grip), grip.frontFinished());
                    long ahead = TrainGraph.sum(fores.floor(f), TrainGraph.sum(ring, end));
                    with(ahead, shelf.neighbours.rears(fore));
                }
            }
        }

        private void with(long ahead, BitSet beside) {
            if (!TrainGraph.none(ahead)) {
                least = Math.min(least, TrainGraph.sum(ahead, behind(beside)));
            }
        }

        /** The same whatever stands ahead of the seat. */
        private long behindAny() {
            return behind(shelf.neighbours.rears(null));
        }

        /** The cheapest rear grip among some with what joins it. */
        private long behind(BitSet beside) {
            return behind.computeIfAbsent(beside, this::behindNow);
        }

        private long behindNow(BitSet beside) {
            Ranked rears = prices.rears();
            long ringLeast = Math.min(0, prices.rearChecks().least());
            long cheapest = NONE;
            for (int r = 0; rears.has(r) && rears.floor(r) + ringLeast < cheapest; r++) {
                Cut cut = shelf.rears[rears.at(r)];
                if (beside.get(cut.index())) {
                    long missed = pairs.most() - pairs.each()[cut.index()];
                    long pair = TrainGraph.sum(rears.floor(r), k.perStyleCenti() * missed);
                    cheapest = Math.min(cheapest, TrainGraph.sum(pair, ringBehind(joins.rings(cut))));
                }
            }
            return cheapest;
        }

        /** The cheapest of some rings by their index plus one; 0 stands for none. */
        private long ringBehind(BitSet joining) {
            Ranked rings = prices.rearChecks();
            long cheapest = joining.get(0) ? 0 : NONE;
            for (int r = 0; rings.has(r) && rings.floor(r) < cheapest; r++) {
                if (joining.get(rings.at(r) + 1)) {
                    cheapest = rings.floor(r);
                }
            }
            return cheapest;
        }

        /** The cheapest ring, or none, between the seat and a fore grip. */
        private long ringBefore(int fore) {
            boolean bare =
                    shelf.stations.optional(Station.FORE_CHECK) && shelf.foreJoins.goes(set, ForeJoins.NO_RING, fore);
            Ranked rings = prices.foreChecks();
            long cheapest = bare ? 0 : NONE;
            for (int r = 0; rings.has(r) && rings.floor(r) < cheapest; r++) {
                if (shelf.foreJoins.goes(set, rings.at(r), fore)) {
                    cheapest = rings.floor(r);
                }
            }
            return cheapest;
        }

        private boolean goesOn(Check ring) {
            shelf.ground.seams.aheadOfSeat(shelf.ground.anySetting(), set, ring, null, refusal.reset());
            return !refusal.refused();
        }

        private long endOf(Check ring) {
            return endsOfRings.computeIfAbsent(ring.outerMm(), any -> end(Seams.of(Station.FORE_CHECK, ring), true));
        }
    }

    /** The cheapest check, or none, that ends the handle at a face. */
    private long end(Face face, boolean finished) {
        long cheapest = NONE;
        if (shelf.stations.optional(Station.WINDING_CHECK)) {
            shelf.ground.seams.frontEnd(shelf.ground.anySetting(), face, finished, null, refusal.reset());
            cheapest = refusal.refused() ? NONE : 0;
        }
        Ranked checks = prices.endChecks();
        for (int c = 0; checks.has(c) && checks.floor(c) < cheapest; c++) {
            Check check = shelf.checks[checks.at(c)];
            shelf.ground.seams.frontEnd(shelf.ground.anySetting(), face, finished, check, refusal.reset());
            if (!refusal.refused()) {
                cheapest = checks.floor(c);
            }
        }
        return cheapest;
    }
}
