package withy.search;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.mechanics.HighestPoint;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.search.Prices.Kind;

/**
 * Looks for the multipliers under which the least cost of a layout's builds is highest, all of them at once. What one build costs is a few planes over
 * the multipliers, and the least cost lies nowhere above them; the next to look at are those at which the planes met so far leave it most room (the
 * cutting planes of J. E. Kelley, 1960; from memory). A multiplier by itself would stop where two of them pull against each other.
 */
final class CuttingPlanes {
    /** By how much a bound must promise to rise, a thousandth of a step. */
    private static final double WORTH_A_LOOK = Scoring.SCALE / 1000;

    /** Of what lies between the bound and the limit, what it must promise besides. */
    private static final double WORTH_OF_REST = 1.0 / 32;

    /** Largest multiplier, in what the score pays at its own or at even priorities; beyond it nothing is gained but overflow. */
    private static final double MOST_SCALES = 64;

    /** Largest that is looked at to begin with, in the same. */
    private static final double FIRST_SCALES = 2;

    /** How many times as far is looked where the best lies at the end. */
    private static final double FURTHER = 4;

    /** From this share of what is looked at on, something lies at the end. */
    private static final double AT_END = 0.99;

    private final Bounds bounds;
    /** The sums with a ceiling, in the order of their axes; the slope of the balance has the first axis. */
    private final List<Kind> kinds = new ArrayList<>();
    /** What the score pays for a mg·mm outside the zone. */
    private final double own;
    /** True where the moment outside the zone has a ceiling, so that the slope may run further than the score's own. */
    private final boolean open;

    private final double[] scale;
    private final double[] reach;
    private final double[] most;
    private final boolean[] asked;
    private final List<double[]> planes = new ArrayList<>();
    private @Nullable Long base;

    /**
     * @param bounds the ceilings
     * @param scoring what a score is made of
     * @param even the same at even priorities
     * @param start the multipliers that are looked at first
     */
    CuttingPlanes(Bounds bounds, Scoring scoring, Scoring even, Prices start) {
        this.bounds = bounds;
        this.own = scoring.perOutsideMgMm();
        this.open = bounds.outsideMgMm() != Long.MAX_VALUE;
        for (Kind kind : Kind.values()) {
            if (Prices.bounded(bounds, kind)) {
                kinds.add(kind);
            }
        }
        int axes = 1 + kinds.size();
        scale = new double[axes];
        reach = new double[axes];
        most = new double[axes];
        asked = new boolean[axes];
        scale[0] = Math.max(1, Math.max(own, even.perOutsideMgMm()));
        most[0] = open ? MOST_SCALES * scale[0] : own;
        reach[0] = open ? Math.max(Math.abs(start.slope()), FIRST_SCALES * scale[0]) : own;
        asked[0] = most[0] > 0;
        for (int axis = 1; axis < axes; axis++) {
            Kind kind = kinds.get(axis - 1);
            scale[axis] = Math.max(1, Math.max(Prices.scale(scoring, kind), Prices.scale(even, kind)));
            most[axis] = MOST_SCALES * scale[axis];
            reach[axis] = Math.max(start.of(kind), FIRST_SCALES * scale[axis]);
            asked[axis] = start.of(kind) > 0;
        }
    }

    /**
     * Takes the cheapest build under some multipliers.
     *
     * @param aheadMgMm its moment ahead of the balance zone, negative behind its far edge
     * @param behindMgMm the same behind it
     * @param bound what it costs under them
     */
    void met(Prices at, ObjectiveVector cheapest, long aheadMgMm, long behindMgMm, long bound) {
        long from = base == null ? bound : base;
        base = from;
        double slope = at.slope();
        double side = Math.abs(slope) * (slope > 0 ? aheadMgMm : behindMgMm);
        double beyond = open ? Math.max(0, Math.abs(slope) - own) * bounds.outsideMgMm() : 0;
        double height = (double) (bound - from) - side + beyond;
        double[] plane = new double[scale.length + 1];
        for (int axis = 1; axis < scale.length; axis++) {
            Kind kind = kinds.get(axis - 1);
            double over = Prices.over(cheapest, bounds, kind);
            plane[axis + 1] = over * scale[axis] / WORTH_A_LOOK;
            height -= at.of(kind) * over;
            asked[axis] |= over > 0;
        }
        add(plane, height, aheadMgMm);
        add(plane, height, -behindMgMm);
        if (open) {
            double ceiling = bounds.outsideMgMm();
            add(plane, height + own * ceiling, aheadMgMm - ceiling);
            add(plane, height + own * ceiling, ceiling - behindMgMm);
        }
    }

    private void add(double[] sums, double height, double slope) {
        double[] plane = sums.clone();
        plane[0] = height / WORTH_A_LOOK;
        plane[1] = slope * scale[0] / WORTH_A_LOOK;
        planes.add(plane);
    }

    /**
     * The multipliers to look at next; null where none promise enough.
     *
     * @param bound the highest bound met
     * @param limit builds that cost as much are of no interest
     */
    @Nullable
    Prices next(long bound, long limit) {
        double met = base == null ? 0 : (bound - base) / WORTH_A_LOOK;
        double rest = limit == Long.MAX_VALUE ? 0 : (limit - bound) / WORTH_A_LOOK;
        double enough = met + Math.max(1, WORTH_OF_REST * rest);
        double[] point;
        do {
            point = highest();
            if (point == null) {
                return null;
            }
        } while (HighestPoint.height(planes, point) < enough && further(point));
        return HighestPoint.height(planes, point) < enough ? null : prices(point);
    }

    private double @Nullable [] highest() {
        double[] from = new double[scale.length];
        double[] to = new double[scale.length];
        for (int axis = 0; axis < scale.length; axis++) {
            to[axis] = asked[axis] ? reach[axis] / scale[axis] : 0;
        }
        from[0] = -to[0];
        return planes.isEmpty() ? null : HighestPoint.of(planes, from, to);
    }

    /** Looks further on the axes on which a point lies at the end of what is looked at; false where there is nothing further. */
    private boolean further(double[] point) {
        boolean further = false;
        for (int axis = 0; axis < scale.length; axis++) {
            if (asked[axis] && reach[axis] < most[axis] && Math.abs(point[axis]) * scale[axis] > AT_END * reach[axis]) {
                reach[axis] = Math.min(most[axis], FURTHER * reach[axis]);
                further = true;
            }
        }
        return further;
    }

    private Prices prices(double[] point) {
        Prices prices = new Prices(Math.round(point[0] * scale[0]), 0, 0, 0, 0);
        for (int axis = 1; axis < scale.length; axis++) {
            prices = prices.with(kinds.get(axis - 1), Math.max(0, Math.round(point[axis] * scale[axis])));
        }
        return prices;
    }
}
