package withy.search;

import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.objectives.Scoring;
import withy.search.Prices.Kind;

/**
 * Finds multipliers one at a time. For each, the build that is cheapest under the present ones tells which way the bound rises: a broken ceiling
 * asks for more, a kept one for less. A range that closes ends the search for that multiplier.
 */
final class Brackets {
    /** A range is closed when it is this share of its scale. */
    private static final double CLOSED = 1.0 / 512;

    /** Largest multiplier, in what the score pays at even priorities; beyond it nothing is gained but overflow. */
    private static final long MOST_SCALES = 64;

    /** First step of a multiplier that may rise without end, as a share of the same. */
    private static final long FIRST_STEP = 8;

    private final Task task;
    private final Scoring even;
    private final Map<Kind, Range> sums = new EnumMap<>(Kind.class);
    private Range slope;

    Brackets(Task task, Prices start) {
        this.task = task;
        this.even = Scoring.even(task.brief, task.ground.catalog.rates());
        this.slope = slopeRange();
        for (Kind kind : Kind.values()) {
            long least = Prices.scale(even, kind);
            long scale = Math.max(Prices.scale(task.scoring, kind), least / FIRST_STEP);
            sums.put(kind, new Range(0, Long.MAX_VALUE, scale, Math.max(scale, least) * MOST_SCALES));
        }
    }

    private Range slopeRange() {
        long own = task.scoring.perOutsideMgMm();
        boolean open = task.bounds.outsideMgMm() != Long.MAX_VALUE;
        long least = even.perOutsideMgMm();
        long scale = open ? Math.max(own, least / FIRST_STEP) : own;
        long most = Math.max(own, least) * MOST_SCALES;
        return new Range(open ? Long.MIN_VALUE : -own, open ? Long.MAX_VALUE : own, scale, most);
    }

    /** Better multipliers after seeing the cheapest build under these; null where none promise anything. */
    @Nullable
    Prices next(Prices now, Task.Measured cheapest) {
        double promise = 0;
        Kind chosen = null;
        boolean bySlope = false;
        long slopeRise = slopeRise(now.slope(), cheapest);
        if (slopeRise != 0 && !slope.closed()) {
            promise = Math.abs((double) slopeRise) * slope.scale;
            bySlope = true;
        }
        for (Kind kind : Kind.values()) {
            long rise = rise(now, cheapest, kind);
            Range range = range(kind);
            double worth = Math.abs((double) rise) * Math.max(now.of(kind), rise > 0 ? range.scale : 0);
            if (rise != 0 && !range.closed() && worth > promise) {
                promise = worth;
                chosen = kind;
                bySlope = false;
            }
        }
        if (bySlope) {
            return now.slope(slope.step(now.slope(), slopeRise > 0));
        }
        if (chosen == null) {
            return null;
        }
        Prices next = now.with(chosen, range(chosen).step(now.of(chosen), rise(now, cheapest, chosen) > 0));
        slope = slopeRange();
        return next;
    }

    private Range range(Kind kind) {
        Range range = sums.get(kind);
        if (range == null) {
            throw new IllegalStateException("no range for " + kind);
        }
        return range;
    }

    private long rise(Prices now, Task.Measured cheapest, Kind kind) {
        if (!Prices.bounded(task.bounds, kind)) {
            return 0;
        }
        long over = Prices.over(cheapest.vector(), task.bounds, kind);
        return now.of(kind) == 0 && over <= 0 ? 0 : over;
    }

    private long slopeRise(long now, Task.Measured cheapest) {
        long own = task.scoring.perOutsideMgMm();
        long ceiling = task.bounds.outsideMgMm();
        long ahead = cheapest.aheadMgMm();
        long behind = cheapest.behindMgMm();
        if (now == 0) {
            return ahead > 0 ? ahead : behind > 0 ? -behind : 0;
        }
        long side = now > 0 ? ahead : behind;
        long beyond = Math.abs(now) >= own && side > 0 ? (ceiling == Long.MAX_VALUE ? side : side - ceiling) : side;
        if (ceiling == Long.MAX_VALUE && Math.abs(now) >= own && side >= 0) {
            return 0;
        }
        return now > 0 ? beyond : -beyond;
    }

    /** Where a multiplier may still lie. */
    private static final class Range {
        private long low;
        private long high;
        private final long scale;
        private final long most;

        Range(long low, long high, long scale, long most) {
            this.low = low;
            this.high = high;
            this.scale = scale;
            this.most = most;
        }

        boolean closed() {
            return low != Long.MIN_VALUE && high != Long.MAX_VALUE && high - low <= scale * CLOSED
                    || low != Long.MIN_VALUE && low >= most
                    || high != Long.MAX_VALUE && high <= -most;
        }

        long step(long now, boolean up) {
            if (up) {
                low = now;
                return high == Long.MAX_VALUE ? now + Math.max(Math.abs(now), scale) : low + (high - low + 1) / 2;
            }
            high = now;
            return low == Long.MIN_VALUE ? now - Math.max(Math.abs(now), scale) : low + (high - low) / 2;
        }
    }
}
