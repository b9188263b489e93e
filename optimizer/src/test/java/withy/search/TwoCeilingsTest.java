package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import withy.objectives.ObjectiveVector;

/** Edges of builds that are nothing but a weight and a cost. */
class TwoCeilingsTest {
    private static final long MOST_MG = 100_000;
    private static final long MOST_MILLI = 5_000_000;
    private static final Bounds BOUNDS =
            new Bounds(MOST_MG, Long.MAX_VALUE, Long.MAX_VALUE, MOST_MILLI, Long.MIN_VALUE, Long.MIN_VALUE);

    private static ObjectiveVector build(long weightMg, long costMilli) {
        return new ObjectiveVector(weightMg, 0, 0, costMilli, 0, 0, 0);
    }

    private static long cost(Linear k, ObjectiveVector build) {
        return k.perMg() * build.weightMg() + k.perMilli() * build.costMilli();
    }

    /** Tells what the cheapest costs, as a layout does: above a limit only that it is not below. */
    private record Some(List<ObjectiveVector> builds, Linear[] last) implements TwoCeilings.Builds {
        @Override
        public long least(Linear k, long limit) {
            last[0] = k;
            return Math.min(
                    limit,
                    builds.stream().mapToLong(build -> cost(k, build)).min().orElse(Long.MAX_VALUE));
        }

        @Override
        public @Nullable ObjectiveVector cheapest(long least) {
            return builds.stream()
                    .filter(build -> cost(last[0], build) == least)
                    .findFirst()
                    .orElse(null);
        }
    }

    private static TwoCeilings.@Nullable Edge edge(List<ObjectiveVector> builds) {
        return edge(new Some(builds, new Linear[1]));
    }

    private static TwoCeilings.@Nullable Edge edge(TwoCeilings.Builds builds) {
        return new TwoCeilings(BOUNDS, Prices.Kind.WEIGHT, Prices.Kind.COST)
                .edge(builds, builds.least(Prices.Kind.WEIGHT), builds.least(Prices.Kind.COST));
    }

    /** What costs so much is not always met: then nothing is said. */
    @Test
    void whatIsNotMetRulesNothingOut() {
        Some some = new Some(List.of(build(90_000, 8_000_000), build(130_000, 4_000_000)), new Linear[1]);
        TwoCeilings.Builds shy = new TwoCeilings.Builds() {
            @Override
            public long least(Linear k, long limit) {
                boolean both = k.perMg() > 0 && k.perMilli() > 0;
                return both ? Math.min(limit - 1, some.least(k, limit)) : some.least(k, limit);
            }

            @Override
            public @Nullable ObjectiveVector cheapest(long least) {
                return some.cheapest(least);
            }
        };
        assertNull(edge(shy));
    }

    @Test
    void lightAndCheapButNotBothIsRuledOut() {
        TwoCeilings.Edge edge = edge(List.of(build(90_000, 8_000_000), build(130_000, 4_000_000)));
        assertNotNull(edge);
        assertTrue(edge.rulesOut());
    }

    @Test
    void aGapBetweenTwoBuildsIsNotRuledOut() {
        TwoCeilings.Edge edge = edge(List.of(build(95_000, 6_000_000), build(101_000, 3_000_000)));
        assertNotNull(edge);
        assertFalse(edge.rulesOut());
    }

    /** Whatever the builds: none costs less than the edge says, one within its ceilings never more than it allows, and none is there where it rules them out. */
    @Test
    void itHoldsForBuildsAtRandom() {
        Random random = new Random(7);
        int ruledOut = 0;
        int open = 0;
        for (int round = 0; round < 500; round++) {
            List<ObjectiveVector> builds = new ArrayList<>();
            for (int i = 0; i < 30; i++) {
                double light = random.nextDouble();
                long weight = Math.round(MOST_MG * (0.8 + 0.6 * light));
                double cheapest = 0.64 + 0.75 * (1 - light) * (1 - light) + 0.4 * random.nextDouble();
                builds.add(build(weight, Math.round(MOST_MILLI * cheapest)));
            }
            TwoCeilings.Edge edge = edge(builds);
            boolean some = builds.stream().anyMatch(BOUNDS::keeps);
            if (edge == null) {
                continue;
            }
            for (ObjectiveVector build : builds) {
                assertTrue(cost(edge.k(), build) >= edge.least(), "round " + round);
                assertTrue(!BOUNDS.keeps(build) || cost(edge.k(), build) <= edge.most(), "round " + round);
            }
            assertEquals(edge.k().perMg() * MOST_MG + edge.k().perMilli() * MOST_MILLI, edge.most(), "round " + round);
            assertFalse(edge.rulesOut() && some, "round " + round);
            ruledOut += edge.rulesOut() ? 1 : 0;
            open += edge.rulesOut() ? 0 : 1;
        }
        assertTrue(ruledOut > 50 && open > 50, ruledOut + " ruled out, " + open + " open");
    }
}
