package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.ReelSeat;
import withy.objectives.Style;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Station;

/**
 * Everything behind the seat under one set of prices: for each rear grip the cheapest way on to the butt end, and for each seat the cheapest
 * way behind it. Prices change by making a new one over the same graph.
 */
final class Behind {
    private static final long NONE = TrainGraph.NONE;

    private final HandleGraph graph;
    private final Linear k;
    private final long mostPair;
    private final long[] rearFloor;
    private final int[] rearOrder;
    private final long[] buttFloor;
    private final Map<BitSet, int[]> buttOrder = new HashMap<>();
    private final int[] allButts;
    private final long capFloor;
    private final long onFloor;
    private final Map<Long, @Nullable Rear[]> rears = new HashMap<>();
    private final @Nullable Butt[] butts;
    private final Map<String, List<Option<ButtCap>>> capsOf = new HashMap<>();
    private final Map<BestKey, Best> best = new HashMap<>();
    private final long checkFloor;

    Behind(HandleGraph graph, Linear k) {
        this.graph = graph;
        this.k = k;
        this.mostPair = k.perStyleCenti() * Style.mostGripAndSeat();
        double foot = graph.setting.footMm();
        this.rearFloor = graph.rears().floors(k, -foot, 0);
        this.rearOrder = Cuts.order(rearFloor);
        this.buttFloor = graph.butts().floors(k, -foot, 0);
        this.allButts = Cuts.order(buttFloor);
        this.butts = new Butt[buttFloor.length];
        this.capFloor = capFloor();
        this.checkFloor = graph.checkFloor(k, Station.REAR_CHECK, -foot, 0);
        this.onFloor = graph.split ? (allButts.length == 0 ? NONE : buttFloor[allButts[0]] + capFloor) : capFloor;
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
            long cost) {}

    private record BestKey(String seatId, double rearFaceMm, BitSet match) {
        @Override
        public int hashCode() {
            // sets are few and shared: the seat tells most
            return seatId.hashCode() * 31 + Double.hashCode(rearFaceMm);
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof BestKey key
                    && key.seatId.equals(seatId)
                    && key.rearFaceMm == rearFaceMm
                    && (key.match == match || key.match.equals(match));
        }
    }

    /** Takes ways; gives the cost under which further ones are still of interest. */
    interface Visitor {
        long way(Way way);
    }

    /** A number no way behind any seat costs less than. */
    long floor() {
        return rearOrder.length == 0 ? NONE : Math.min(0, checkFloor) + rearFloor[rearOrder[0]] + onFloor - mostPair;
    }

    /**
     * Cheapest way behind a seat, beside certain rear grips; {@link TrainGraph#none} where there is none below the limit.
     *
     * @param under from here on it is of no interest
     */
    long best(SeatSet set, BitSet match, long under) {
        BestKey key = new BestKey(set.seat().id(), set.rearFaceMm(), match);
        Best known = best.get(key);
        if (known == null || TrainGraph.none(known.cost) && known.under < under) {
            known = new Best(bestNow(set, match, under), under);
            best.put(key, known);
        }
        return known.cost;
    }

    /** What was found below a limit. */
    private record Best(long cost, long under) {}

    private long bestNow(SeatSet set, BitSet match, long under) {
        long least = Math.min(NONE, under);
        boolean found = false;
        for (Option<Check> check : graph.rearChecksEndingAt(set.fromMm())) {
            check.price(k);
            double front = set.fromMm() - check.lengthMm;
            for (int i : rearOrder) {
                if (check.cost + rearFloor[i] + onFloor - mostPair >= least) {
                    break;
                }
                Rear rear = beside(i, match) ? rear(i, front) : null;
                if (rear != null && rear.option != null && check.cost + rear.total - mostPair < least) {
                    long cost = check.cost + rear.total + pair(set.seat(), rear.option);
                    if (cost < least && meets(rear.option, check, set)) {
                        least = cost;
                        found = true;
                    }
                }
            }
        }
        return found ? least : NONE;
    }

    /** Every way behind a seat that costs less than a limit, which may fall as they come. */
    void ways(SeatSet set, @Nullable Grip foreGrip, long under, Visitor visitor) {
        BitSet match = graph.task.gripMatch.rearsBeside(graph.setting, foreGrip, graph.split);
        long limit = under;
        for (Option<Check> check : graph.rearChecksEndingAt(set.fromMm())) {
            check.price(k);
            double front = set.fromMm() - check.lengthMm;
            for (int i : rearOrder) {
                if (check.cost + rearFloor[i] + onFloor - mostPair >= limit) {
                    break;
                }
                Rear rear = beside(i, match) ? rear(i, front) : null;
                if (rear != null && rear.option != null) {
                    long pair = check.cost + pair(set.seat(), rear.option);
                    if (pair + rear.total < limit && meets(rear.option, check, set)) {
                        limit = onward(check, rear.option, pair, limit, visitor);
                    }
                }
            }
        }
    }

    private long onward(Option<Check> check, Option<Grip> rear, long before, long under, Visitor visitor) {
        long limit = under;
        long soFar = before + rear.cost;
        if (!graph.split) {
            for (Option<ButtCap> cap : capsFor(Station.REAR_GRIP, rear)) {
                if (soFar + cap.cost >= limit) {
                    break;
                }
                limit = visitor.way(new Way(check, rear, null, cap, soFar + cap.cost));
            }
            return limit;
        }
        for (int i : buttsBeside(rear)) {
            if (soFar + buttFloor[i] + capFloor >= limit) {
                break;
            }
            Butt butt = butt(i);
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
        return -k.perStyleCenti() * graph.task.style.gripAndSeat(Objects.requireNonNull(rear.part), seat);
    }

    private boolean beside(int i, BitSet match) {
        return match.get(graph.task.gripMatch.index(graph.rears().grip(i), graph.split));
    }

    private boolean meets(Option<Grip> rear, Option<Check> check, SeatSet set) {
        graph.task.seams.behindSeat(graph.setting, rear.part, check.part, set, graph.refusal.reset());
        return !graph.refusal.refused();
    }

    private Rear rear(int i, double frontMm) {
        @Nullable Rear[] at = rears.computeIfAbsent(HandleGraph.key(frontMm), key -> new Rear[rearFloor.length]);
        Rear known = at[i];
        if (known == null) {
            Option<Grip> option = graph.rears().fitted(i, frontMm);
            if (option != null) {
                option.price(k);
            }
            long on = option == null ? NONE : wayOn(option);
            known = option == null || TrainGraph.none(on) ? new Rear(null, NONE) : new Rear(option, option.cost + on);
            at[i] = known;
        }
        return known;
    }

    private long wayOn(Option<Grip> rear) {
        if (!graph.split) {
            List<Option<ButtCap>> caps = capsFor(Station.REAR_GRIP, rear);
            return caps.isEmpty() ? NONE : caps.get(0).cost;
        }
        long least = NONE;
        for (int i : buttsBeside(rear)) {
            if (buttFloor[i] + capFloor >= least) {
                break;
            }
            Butt butt = butt(i);
            if (butt.option != null && butt.total < least && splits(butt.option, rear)) {
                least = butt.total;
            }
        }
        return least;
    }

    private boolean splits(Option<Grip> butt, Option<Grip> rear) {
        graph.task.seams.split(
                graph.setting, placed(Station.BUTT_GRIP, butt), placed(Station.REAR_GRIP, rear), graph.refusal.reset());
        return !graph.refusal.refused();
    }

    private static Placed placed(Station station, Option<Grip> option) {
        return new Placed(station, Objects.requireNonNull(option.part), option.fromMm, option.lengthMm);
    }

    /** Butt grips that go with a rear grip as grips, least floor first; the bare blank between is still to be asked. */
    private int[] buttsBeside(Option<Grip> rear) {
        BitSet match = graph.task.gripMatch.buttsBeside(graph.setting, Objects.requireNonNull(rear.part));
        int[] order = buttOrder.get(match);
        if (order == null) {
            order = Arrays.stream(allButts)
                    .filter(i -> match.get(
                            graph.task.gripMatch.buttIndex(graph.butts().grip(i))))
                    .toArray();
            buttOrder.put(match, order);
        }
        return order;
    }

    private Butt butt(int i) {
        Butt known = butts[i];
        if (known == null) {
            Option<Grip> option = graph.butts().fitted(i, 0);
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

    /** Cheapest cap whatever the grip; nothing where a grip may be closed. */
    private long capFloor() {
        long least = NONE;
        boolean closed = false;
        Cuts last = graph.split ? graph.butts() : graph.rears();
        for (int i = 0; i < last.size(); i++) {
            closed |= last.grip(i).rearClosed();
        }
        for (Option<ButtCap> cap : graph.caps()) {
            if (cap.part != null || closed) {
                cap.price(k);
                least = Math.min(least, cap.cost);
            }
        }
        return TrainGraph.none(least) ? 0 : least;
    }

    /** Caps that go with the grip nearest the butt, cheapest first. */
    private List<Option<ButtCap>> capsFor(Station station, Option<Grip> first) {
        Grip grip = Objects.requireNonNull(first.part);
        return capsOf.computeIfAbsent(grip.id(), key -> {
            List<Option<ButtCap>> list = new ArrayList<>();
            for (Option<ButtCap> cap : graph.caps()) {
                graph.task.seams.butt(graph.setting, cap.part, station, grip, graph.refusal.reset());
                if (!graph.refusal.refused()) {
                    cap.price(k);
                    list.add(cap);
                }
            }
            list.sort((a, b) -> Long.compare(a.cost, b.cost));
            return list;
        });
    }
}
