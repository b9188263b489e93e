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

    /** By how much a bound must promise to rise, a thousandth of a step. */
    private static final double WORTH_A_LOOK = Scoring.SCALE / 1000;

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

    /**
     * Better multipliers after seeing the cheapest build under these; null where none promise anything.
     *
     * @param bound what that build costs
     */
    @Nullable
    Prices next(Prices now, Task.Measured cheapest, long bound) {
        while (true) {
            Promise most = most(now, cheapest);
            if (most == null) {
                return null;
            }
            Kind kind = most.kind;
            Prices others = kind == null ? now.slope(0) : now.with(kind, 0);
            Long step = most.range.step(new Seen(others, most.at, bound, most.rise));
            if (step != null && kind != null) {
                slope = slopeRange();
            }
            if (step != null) {
                return kind == null ? now.slope(step) : now.with(kind, step);
            }
        }
    }

    /**
     * A multiplier that may be worth changing.
     *
     * @param kind of a sum; null for the slope
     * @param at its value
     * @param rise by how much the bound rises with it, a unit
     */
    private record Promise(@Nullable Kind kind, Range range, long at, long rise) {}

    /** The multiplier that promises most, or null. */
    private @Nullable Promise most(Prices now, Task.Measured cheapest) {
        double promise = 0;
        Promise most = null;
        long slopeRise = slopeRise(now.slope(), cheapest);
        if (slopeRise != 0 && slope.open(now.slope(0))) {
            promise = Math.abs((double) slopeRise) * slope.scale;
            most = new Promise(null, slope, now.slope(), slopeRise);
        }
        for (Kind kind : Kind.values()) {
            long rise = rise(now, cheapest, kind);
            Range range = range(kind);
            double worth = Math.abs((double) rise) * Math.max(now.of(kind), rise > 0 ? range.scale : 0);
            if (rise != 0 && range.open(now.with(kind, 0)) && worth > promise) {
                promise = worth;
                most = new Promise(kind, range, now.of(kind), rise);
            }
        }
        return most;
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

    /**
     * What was seen at one value of a multiplier.
     *
     * @param others all other multipliers
     * @param at the value
     * @param bound the bound there
     * @param rise by how much it rises there with the multiplier, at most so much further up
     */
    private record Seen(Prices others, long at, long bound, long rise) {}

    /** Where a multiplier may still lie. */
    private static final class Range {
        private final long lowest;
        private final long highest;
        private final long scale;
        private final long most;
        private long low;
        private long high;
        private @Nullable Seen below;
        private @Nullable Seen above;
        /** The other multipliers beside which the best value was found, or null. */
        private @Nullable Prices settled;

        Range(long low, long high, long scale, long most) {
            this.lowest = low;
            this.highest = high;
            this.low = low;
            this.high = high;
            this.scale = scale;
            this.most = most;
        }

        /** True where better values may lie in it beside other multipliers. */
        boolean open(Prices others) {
            if (settled != null && !settled.equals(others)) {
                settled = null;
                low = lowest;
                high = highest;
                below = null;
                above = null;
            }
            return settled == null && !closed();
        }

        private boolean closed() {
            return low != Long.MIN_VALUE && high != Long.MAX_VALUE && high - low <= scale * CLOSED
                    || low != Long.MIN_VALUE && low >= most
                    || high != Long.MAX_VALUE && high <= -most;
        }

        /** The value to look at next; null where none promises enough. */
        @Nullable
        Long step(Seen now) {
            if (now.rise > 0) {
                low = now.at;
                below = now;
            } else {
                high = now.at;
                above = now;
            }
            if (high == Long.MAX_VALUE) {
                return now.at + Math.max(Math.abs(now.at), scale);
            }
            if (low == Long.MIN_VALUE) {
                return now.at - Math.max(Math.abs(now.at), scale);
            }
            if (low < 0 && high > 0 || low == 0 && below == null) {
                return 0L; // where the two sides of the zone meet, or no sum is paid for
            }
            return between(below, above);
        }

        /** Where the lines of both ends cross, which no bound between them exceeds; else the middle. */
        private @Nullable Long between(@Nullable Seen one, @Nullable Seen other) {
            if (one != null && other != null && one.others.equals(other.others)) {
                double width = (double) other.at - one.at;
                double up = (other.bound - one.bound - other.rise * width) / ((double) one.rise - other.rise);
                double promised = one.bound + one.rise * up - Math.max(one.bound, other.bound);
                if (promised < WORTH_A_LOOK) {
                    settled = other.others;
                    return null;
                }
                long crossing = one.at + Math.round(up);
                if (crossing > low && crossing < high) {
                    return crossing;
                }
            }
            return low + (high - low) / 2;
        }
    }
}
