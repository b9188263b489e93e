package withy.search;

import java.util.ArrayList;
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
    private final Map<Long, List<Rear>> rears = new HashMap<>();
    private final Map<String, List<Option<ButtCap>>> capsOf = new HashMap<>();
    private final Map<BestKey, Long> best = new HashMap<>();
    private @Nullable List<Butt> butts;

    Behind(HandleGraph graph, Linear k) {
        this.graph = graph;
        this.k = k;
        this.mostPair = k.perStyleCenti() * Style.mostGripAndSeat();
    }

    /**
     * A rear grip with the cheapest way from it to the butt end.
     *
     * @param option the grip
     * @param total its cost and that of the way on
     */
    record Rear(Option<Grip> option, long total) {}

    /**
     * A butt grip with its cheapest cap.
     *
     * @param option the grip
     * @param total its cost and that of the cap
     */
    record Butt(Option<Grip> option, long total) {}

    /** A whole way behind a seat. */
    record Way(
            Option<Check> rearCheck,
            Option<Grip> rearGrip,
            @Nullable Option<Grip> buttGrip,
            Option<ButtCap> cap,
            long cost) {}

    private record BestKey(String seatId, double rearFaceMm, BitSet match) {}

    /** Takes ways; gives the cost under which further ones are still of interest. */
    interface Visitor {
        long way(Way way);
    }

    /** Cheapest way behind a seat, beside a fore grip or none; {@link TrainGraph#none} where there is none. */
    long best(SeatSet set, @Nullable Grip foreGrip) {
        BitSet match = graph.task.gripMatch.rearsBeside(graph.setting, foreGrip, graph.split);
        BestKey key = new BestKey(set.seat().id(), set.rearFaceMm(), match);
        Long known = best.get(key);
        if (known == null) {
            known = bestNow(set, match);
            best.put(key, known);
        }
        return known;
    }

    private long bestNow(SeatSet set, BitSet match) {
        long least = NONE;
        for (Option<Check> check : graph.rearChecksEndingAt(set.fromMm())) {
            check.price(k);
            for (Rear rear : rearsEndingAt(set.fromMm() - check.lengthMm)) {
                if (check.cost + rear.total - mostPair >= least) {
                    break;
                }
                long cost = check.cost + rear.total + pair(set.seat(), rear.option);
                if (cost < least && beside(rear, match) && meets(rear, check, set)) {
                    least = cost;
                }
            }
        }
        return least;
    }

    /** Every way behind a seat that costs less than a limit, which may fall as they come. */
    void ways(SeatSet set, @Nullable Grip foreGrip, long under, Visitor visitor) {
        BitSet match = graph.task.gripMatch.rearsBeside(graph.setting, foreGrip, graph.split);
        long limit = under;
        for (Option<Check> check : graph.rearChecksEndingAt(set.fromMm())) {
            check.price(k);
            for (Rear rear : rearsEndingAt(set.fromMm() - check.lengthMm)) {
                if (check.cost + rear.total - mostPair >= limit) {
                    break;
                }
                long pair = check.cost + pair(set.seat(), rear.option);
                if (pair + rear.total < limit && beside(rear, match) && meets(rear, check, set)) {
                    limit = onward(check, rear, pair, limit, visitor);
                }
            }
        }
    }

    private long onward(Option<Check> check, Rear rear, long before, long under, Visitor visitor) {
        long limit = under;
        long soFar = before + rear.option.cost;
        if (!graph.split) {
            for (Option<ButtCap> cap : capsFor(Station.REAR_GRIP, rear.option)) {
                if (soFar + cap.cost >= limit) {
                    break;
                }
                limit = visitor.way(new Way(check, rear.option, null, cap, soFar + cap.cost));
            }
            return limit;
        }
        for (Butt butt : butts()) {
            if (soFar + butt.total >= limit) {
                break;
            }
            if (splits(butt.option, rear.option)) {
                for (Option<ButtCap> cap : capsFor(Station.BUTT_GRIP, butt.option)) {
                    long cost = soFar + butt.option.cost + cap.cost;
                    if (cost >= limit) {
                        break;
                    }
                    limit = visitor.way(new Way(check, rear.option, butt.option, cap, cost));
                }
            }
        }
        return limit;
    }

    private long pair(ReelSeat seat, Option<Grip> rear) {
        return -k.perStyleCenti() * graph.task.style.gripAndSeat(Objects.requireNonNull(rear.part), seat);
    }

    private boolean beside(Rear rear, BitSet match) {
        return match.get(graph.task.gripMatch.index(Objects.requireNonNull(rear.option.part), graph.split));
    }

    private boolean meets(Rear rear, Option<Check> check, SeatSet set) {
        graph.task.seams.behindSeat(graph.setting, rear.option.part, check.part, set, graph.refusal.reset());
        return !graph.refusal.refused();
    }

    private List<Rear> rearsEndingAt(double frontMm) {
        return rears.computeIfAbsent(HandleGraph.key(frontMm), key -> {
            List<Rear> list = new ArrayList<>();
            for (Option<Grip> option : graph.rearGripsEndingAt(frontMm)) {
                option.price(k);
                long on = wayOn(option);
                if (!TrainGraph.none(on)) {
                    list.add(new Rear(option, option.cost + on));
                }
            }
            list.sort((a, b) -> Long.compare(a.total, b.total));
            return list;
        });
    }

    private long wayOn(Option<Grip> rear) {
        if (!graph.split) {
            List<Option<ButtCap>> caps = capsFor(Station.REAR_GRIP, rear);
            return caps.isEmpty() ? NONE : caps.get(0).cost;
        }
        for (Butt butt : butts()) {
            if (splits(butt.option, rear)) {
                return butt.total;
            }
        }
        return NONE;
    }

    private boolean splits(Option<Grip> butt, Option<Grip> rear) {
        graph.task.seams.split(
                graph.setting, placed(Station.BUTT_GRIP, butt), placed(Station.REAR_GRIP, rear), graph.refusal.reset());
        return !graph.refusal.refused();
    }

    private static Placed placed(Station station, Option<Grip> option) {
        return new Placed(station, Objects.requireNonNull(option.part), option.fromMm, option.lengthMm);
    }

    private List<Butt> butts() {
        List<Butt> known = butts;
        if (known == null) {
            known = new ArrayList<>();
            for (Option<Grip> option : graph.buttGrips()) {
                option.price(k);
                List<Option<ButtCap>> caps = capsFor(Station.BUTT_GRIP, option);
                if (!caps.isEmpty()) {
                    known.add(new Butt(option, option.cost + caps.get(0).cost));
                }
            }
            known.sort((a, b) -> Long.compare(a.total, b.total));
            butts = known;
        }
        return known;
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
