package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;

/**
 * Builds that are nothing but their sums: where the planes promise nothing more, no multipliers that are drawn make the least cost higher. What a
 * build costs under multipliers is stated here anew.
 */
class CuttingPlanesTest {
    private static final long NONE = Long.MAX_VALUE;
    private static final double WORTH = Scoring.SCALE / 1000;
    private static final int USUAL_ROUNDS = 16;

    /** Multipliers end there. */
    private static final double MOST_SCALES = 64;

    private static final Scoring EVEN = new Scoring(1_000_000_000, 2_000_000, 8_000, 40_000_000, 20_000_000, 0, 0);

    /** A build. */
    private record Sums(ObjectiveVector of, long ahead, long behind) {}

    private static double cost(Sums build, Scoring s, Bounds b, Prices at) {
        ObjectiveVector v = build.of;
        double cost = (double) s.perMg() * v.weightMg()
                + (double) s.perMgMm2() * v.inertiaMgMm2()
                + (double) s.perCostMilli() * v.costMilli()
                - (double) s.perStyleCenti() * v.styleCenti();
        double slope = Math.abs((double) at.slope());
        cost += slope * (at.slope() > 0 ? build.ahead : build.behind);
        if (slope > s.perOutsideMgMm()) {
            cost -= (slope - s.perOutsideMgMm()) * b.outsideMgMm();
        }
        cost += b.weightMg() == NONE ? 0 : (double) at.weight() * (v.weightMg() - b.weightMg());
        cost += b.inertiaMgMm2() == NONE ? 0 : (double) at.inertia() * (v.inertiaMgMm2() - b.inertiaMgMm2());
        cost += b.costMilli() == NONE ? 0 : (double) at.cost() * (v.costMilli() - b.costMilli());
        cost += b.styleCenti() == Long.MIN_VALUE ? 0 : (double) at.style() * (b.styleCenti() - v.styleCenti());
        return cost;
    }

    private static Sums cheapest(List<Sums> builds, Scoring s, Bounds b, Prices at) {
        Sums least = builds.get(0);
        for (Sums build : builds) {
            least = cost(build, s, b, at) < cost(least, s, b, at) ? build : least;
        }
        return least;
    }

    /** One question about drawn builds. */
    private static final class Drawn {
        final List<Sums> builds = new ArrayList<>();
        final Scoring scoring;
        final Bounds bounds;

        Drawn(Random random) {
            scoring = new Scoring(
                    random.nextInt(2) * 900_000_000L,
                    random.nextInt(3) * 1_000_000L,
                    random.nextInt(2) * 9_000L,
                    random.nextInt(2) * 30_000_000L,
                    random.nextInt(2) * 10_000_000L,
                    0,
                    0);
            for (int i = 2 + random.nextInt(40); i > 0; i--) {
                long ahead = random.nextInt(40_000) * 100L - 2_000_000;
                builds.add(new Sums(
                        new ObjectiveVector(
                                100_000 + random.nextInt(40_000),
                                0,
                                20_000_000_000L + random.nextInt(1_000_000_000) * 5L,
                                200_000 + random.nextInt(100_000),
                                random.nextInt(1_000),
                                0,
                                0),
                        ahead,
                        -ahead - random.nextInt(1_000_000)));
            }
            bounds = new Bounds(
                    random.nextInt(3) == 0 ? 110_000 + random.nextInt(30_000) : NONE,
                    random.nextInt(3) == 0 ? random.nextInt(1_500_000) : NONE,
                    random.nextInt(3) == 0 ? 21_000_000_000L + random.nextInt(1_000_000_000) : NONE,
                    random.nextInt(3) > 0 ? 220_000 + random.nextInt(60_000) : NONE,
                    random.nextInt(3) == 0 ? 200 + random.nextInt(600) : Long.MIN_VALUE,
                    Long.MIN_VALUE);
        }

        double height(Prices at) {
            return cost(cheapest(builds, scoring, bounds, at), scoring, bounds, at);
        }

        /** Multipliers near these, or anywhere. */
        Prices near(Prices found, Random random) {
            double far = Math.pow(10, -5 * random.nextDouble());
            boolean open = bounds.outsideMgMm() != NONE;
            double most = open ? 4e6 : scoring.perOutsideMgMm();
            double slope = found.slope() + far * most * (2 * random.nextDouble() - 1);
            Prices at = new Prices(Math.round(Math.max(-most, Math.min(most, slope))), 0, 0, 0, 0);
            for (Prices.Kind kind : Prices.Kind.values()) {
                double scale = Math.max(Prices.scale(EVEN, kind), Prices.scale(scoring, kind));
                double size = Math.max(scale, found.of(kind));
                double value = found.of(kind) + far * size * (2 * random.nextDouble() - 1) * random.nextInt(2);
                long within = Math.round(Math.max(0, Math.min(MOST_SCALES * scale, value)));
                at = at.with(kind, Prices.bounded(bounds, kind) ? within : 0);
            }
            return at;
        }
    }

    @Test
    void nothingDrawnIsHigher() {
        Random random = new Random(20261128);
        int several = 0;
        int usual = 0;
        for (int draw = 0; draw < 300; draw++) {
            Drawn drawn = new Drawn(random);
            Prices at = Prices.start(drawn.scoring);
            CuttingPlanes planes = new CuttingPlanes(drawn.bounds, drawn.scoring, EVEN, at);
            Prices found = at;
            double highest = Double.NEGATIVE_INFINITY;
            int rounds = 0;
            while (at != null && rounds < 200) {
                Sums met = cheapest(drawn.builds, drawn.scoring, drawn.bounds, at);
                double height = cost(met, drawn.scoring, drawn.bounds, at);
                found = height > highest ? at : found;
                highest = Math.max(highest, height);
                planes.met(at, met.of, met.ahead, met.behind, Math.round(height));
                at = planes.next(Math.round(highest), NONE);
                rounds++;
            }
            assertEquals(null, at, "draw " + draw + " did not end");
            usual += rounds <= USUAL_ROUNDS ? 1 : 0;
            several += paid(found) > 1 ? 1 : 0;
            for (int look = 0; look < 3_000; look++) {
                Prices other = drawn.near(found, random);
                double rise = drawn.height(other) - highest;
                assertTrue(rise < 1.5 * WORTH, () -> "steps: " + rise / Scoring.SCALE + " at " + other);
            }
        }
        assertTrue(several > 30, "with several multipliers: " + several);
        assertTrue(usual > 270, "within the usual rounds: " + usual);
    }

    private static int paid(Prices found) {
        int paid = found.slope() == 0 ? 0 : 1;
        for (Prices.Kind kind : Prices.Kind.values()) {
            paid += found.of(kind) == 0 ? 0 : 1;
        }
        return paid;
    }

    /** A rise is worth a look that is more than a little of what is left below the limit; further away it may promise more. */
    @Test
    void worthALook() {
        Scoring scoring = new Scoring(0, 0, 0, 40_000_000, 0, 0, 0);
        Bounds bounds = new Bounds(NONE, NONE, NONE, 200_000, Long.MIN_VALUE, Long.MIN_VALUE);
        Prices at = Prices.start(scoring);
        CuttingPlanes planes = new CuttingPlanes(bounds, scoring, EVEN, at);
        ObjectiveVector dear = new ObjectiveVector(0, 0, 0, 200_100, 0, 0, 0);
        planes.met(at, dear, 0, 0, 0);
        long promise = 2 * 40_000_000L * 100; // twice the natural multiplier, 100 over
        assertEquals(2 * 40_000_000L, planes.next(0, 31 * promise).cost());
        long most = 32 * promise; // at the largest multiplier
        assertEquals(null, planes.next(0, 33 * most));
        assertEquals(null, planes.next(most - 1, NONE));
        assertEquals(
                64 * 40_000_000L,
                planes.next(most - Math.round(2 * WORTH), NONE).cost());
    }
}
