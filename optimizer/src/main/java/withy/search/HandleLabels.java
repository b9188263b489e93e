package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.BooleanSupplier;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;
import withy.search.Walk.Test;

/**
 * The handles of one layout dressed with one thread that no other beats. Any guide train goes with any handle; ahead of one seat, anything that lets the
 * same rear grips stand goes with anything that may stand behind it: so what is beaten ahead of a seat, behind it, or as a whole is left out there.
 */
final class HandleLabels {
    /** Pairs of what stands ahead of a seat and behind it that come to nothing, counted as one step. */
    private static final int TRIED_A_STEP = 64;

    /** What stands ahead of one seat before those that are beaten are sifted out. */
    private static final int MOST_MET = 50_000;

    /** Handles kept of one layout before it is given up: more would fill the memory. */
    private static final int MOST_KEPT = 300_000;

    private final Dressing with;
    private final List<Test> tests;
    private final Linear[] bare;
    private final boolean[] decides;
    private final TrainCosts[] costs;
    private final TestSeats seats;
    private final TrainRooms rooms;
    private final LongSupplier under;
    private final BooleanSupplier step;
    private final Runnable tooMany;
    private final Map<SeatGroup, Map<BitSet, Ways>> known;
    private final Unbeaten<Chosen> handles;
    private Map<BitSet, Ahead> fronts = new IdentityHashMap<>();
    private @Nullable SeatGroup seat;

    /**
     * @param tests prices, the first those last set
     * @param decides in which of them one must be beaten
     * @param costs the train under each
     * @param seats what handles with each seat cost at least under each
     * @param known what was found behind seats before, with another thread
     * @param under what a build must cost less than under the first prices
     * @param limit the limit of the walk
     * @param step told of each part of a handle met; false ends it
     * @param tooMany told where it is given up because there are too many
     */
    HandleLabels(
            Dressing with,
            List<Test> tests,
            boolean[] decides,
            TrainCosts[] costs,
            TestSeats seats,
            Map<SeatGroup, Map<BitSet, Ways>> known,
            LongSupplier under,
            long limit,
            BooleanSupplier step,
            Runnable tooMany) {
        this.with = with;
        this.tests = tests;
        this.bare = tests.stream().map(test -> test.k().withoutConstant()).toArray(Linear[]::new);
        this.decides = decides;
        this.costs = costs;
        this.seats = seats;
        this.rooms = TrainRooms.of(with, tests, costs, limit);
        this.known = known;
        this.under = under;
        this.step = step;
        this.tooMany = tooMany;
        this.handles = new Unbeaten<>(decides);
    }

    /**
     * What may stand behind a seat.
     *
     * @param under all that cost less than this under the first prices
     * @param room and less than this in every test
     */
    record Ways(List<Unbeaten.Of<Behind.Way>> list, long under, long[] room) {
        boolean holds(long[] wanted) {
            boolean all = true;
            for (int f = 0; f < room.length; f++) {
                all &= room[f] >= wanted[f];
            }
            return all;
        }
    }

    /** What stands from one seat on ahead and lets the same rear grips stand, and the least it costs. */
    private final class Ahead {
        private final List<Unbeaten.Of<Front>> met = new ArrayList<>();
        private final Unbeaten<Front> unbeaten = new Unbeaten<>(decides);
        private final long[] least = new long[tests.size()];
        private final TrainRooms rooms;
        private long leastCost = Long.MAX_VALUE;

        /** What these leave room for besides may go with something behind the seat. */
        Ahead(TrainRooms rooms) {
            this.rooms = rooms;
            Arrays.fill(least, Long.MAX_VALUE);
        }

        void add(Front front, long cost) {
            long[] sums = sums(front.tally(with.tally()), false);
            if (!rooms.hold(sums)) {
                return;
            }
            leastCost = Math.min(leastCost, cost);
            for (int f = 0; f < sums.length; f++) {
                least[f] = Math.min(least[f], sums[f]);
            }
            met.add(new Unbeaten.Of<>(front, sums));
            if (met.size() >= MOST_MET) {
                met.forEach(one -> unbeaten.add(one.thing(), one.sums()));
                met.clear();
            }
        }

        /** Those that no other beats, of what may go with something behind the seat. */
        List<Unbeaten.Of<Front>> beside(List<Unbeaten.Of<Behind.Way>> ways, TrainRooms rooms) {
            TrainRooms left = rooms.beside(leasts(ways));
            for (Unbeaten.Of<Front> one : met) {
                if (left.hold(one.sums())) {
                    unbeaten.add(one.thing(), one.sums());
                }
            }
            return unbeaten.all();
        }

        boolean none() {
            return leastCost == Long.MAX_VALUE;
        }

        Front any() {
            return met.isEmpty() ? unbeaten.any() : met.get(0).thing();
        }
    }

    /** All of them, with their sums and those of everything but the train. */
    List<Unbeaten.Of<Chosen>> all() {
        Handle handle = with.stand.priced(tests.get(0).k());
        long rest = with.rest();
        long[] besides = sums(with.tally(), false);
        boolean[] more = {true};
        handle.fronts(
                with.stand.dress(with.with),
                with.leastClass,
                under.getAsLong() - rest,
                group -> seats.mayStand(group, besides, rooms),
                (front, cost) -> {
                    if (front.seat().group() != seat) {
                        more[0] = more[0] && combine(handle);
                        seat = front.seat().group();
                    }
                    more[0] = more[0] && step.getAsBoolean();
                    if (more[0]) {
                        fronts.computeIfAbsent(handle.rearsBeside(front), any -> new Ahead(seats.ahead(seat, rooms)))
                                .add(front, cost);
                    }
                    return more[0] ? under.getAsLong() - rest : Long.MIN_VALUE;
                });
        boolean whole = more[0] && combine(handle);
        return whole ? handles.all() : List.of();
    }

    private long[] sums(Tally tally, boolean withoutConstant) {
        long[] sums = new long[tests.size()];
        for (int f = 0; f < sums.length; f++) {
            sums[f] = tally.cost(withoutConstant ? bare[f] : tests.get(f).k());
        }
        return sums;
    }

    /** Puts what stands ahead of the seat so far together with what may stand behind it. */
    private boolean combine(Handle handle) {
        boolean more = true;
        for (Map.Entry<BitSet, Ahead> one : fronts.entrySet()) {
            more = more && (one.getValue().none() || combine(handle, one.getKey(), one.getValue()));
        }
        fronts = new IdentityHashMap<>();
        return more;
    }

    private boolean combine(Handle handle, BitSet match, Ahead ahead) {
        List<Unbeaten.Of<Behind.Way>> ways = behind(
                handle,
                ahead.any(),
                match,
                this.under.getAsLong() - with.rest() - ahead.leastCost,
                rooms.beside(ahead.least).widest());
        List<Unbeaten.Of<Front>> list = ways.isEmpty() ? List.of() : ahead.beside(ways, rooms);
        long first = rooms.widest()[0];
        boolean more = true;
        int tried = 0;
        for (Unbeaten.Of<Front> front : list) {
            for (Unbeaten.Of<Behind.Way> way : ways) {
                if (!more || front.sums()[0] + way.sums()[0] >= first) {
                    break; // the ways after it cost more under the first prices
                }
                long[] sums = rooms.together(front.sums(), way.sums());
                boolean counts = sums != null || ++tried % TRIED_A_STEP == 0;
                more = !counts || step.getAsBoolean();
                if (sums != null) {
                    handles.add(front.thing().with(way.thing()), sums);
                }
                if (handles.size() > MOST_KEPT) {
                    tooMany.run();
                    more = false;
                }
            }
        }
        return more;
    }

    /**
     * What may stand behind a seat beside certain rear grips; the thread does not matter there.
     *
     * @param room what it must cost less than in each test, or nothing ahead goes with it
     */
    private List<Unbeaten.Of<Behind.Way>> behind(Handle handle, Front any, BitSet match, long under, long[] room) {
        Map<BitSet, Ways> of = known.computeIfAbsent(any.seat().group(), group -> new IdentityHashMap<>());
        Ways before = of.get(match);
        boolean counted = before == null || before.under < under;
        if (before != null && !counted && before.holds(room)) {
            return before.list;
        }
        Unbeaten<Behind.Way> behind = new Unbeaten<>(decides);
        boolean[] more = {true};
        handle.behind(any, under, way -> {
            more[0] = !counted || step.getAsBoolean();
            Tally tally = way.tally(
                    new Tally(), with.stand.ground.style, any.seat().set().seat());
            long[] sums = sums(tally, true);
            if (below(sums, room)) {
                behind.add(way, sums);
            }
            return more[0] ? under : Long.MIN_VALUE;
        });
        Ways ways = new Ways(behind.all(), under, room);
        of.put(match, ways);
        return ways.list;
    }

    private static boolean below(long[] sums, long[] room) {
        for (int f = 0; f < room.length; f++) {
            if (sums[f] >= room[f]) {
                return false;
            }
        }
        return true;
    }

    /** The least of each sum. */
    private static <T> long[] leasts(List<Unbeaten.Of<T>> list) {
        long[] least = list.get(0).sums().clone();
        for (Unbeaten.Of<T> one : list) {
            for (int f = 0; f < least.length; f++) {
                least[f] = Math.min(least[f], one.sums()[f]);
            }
        }
        return least;
    }
}
