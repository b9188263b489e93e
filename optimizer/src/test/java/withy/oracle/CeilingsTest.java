package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import withy.brief.Objective;
import withy.objectives.NiceWishes;
import withy.objectives.ObjectiveVector;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.objectives.Style;
import withy.rod.Rod;
import withy.search.Search;

/** Two ceilings that can hardly be kept together, all of them as some build keeps them, and one objective that alone counts: against every build of seeded small catalogues. */
class CeilingsTest {
    private static final List<Objective> SUMS =
            List.of(Objective.WEIGHT, Objective.PRICE, Objective.SWING_WEIGHT, Objective.STYLE);
    private static final int PAIRS = 6;
    private static final int BUILDS = 6;
    private static final long SEEDS = 20;

    private static int kept;
    private static int refused;

    private record Legal(ObjectiveVector vector, long score) {}

    @TestFactory
    Stream<DynamicTest> sameAsOfEveryBuild() {
        return LongStream.range(0, SEEDS)
                .mapToObj(seed -> DynamicTest.dynamicTest("seed " + seed, () -> {
                    SmallShop.Case shop = SmallShop.of(seed, 12_000);
                    List<Legal> legal = legal(shop);
                    underTwoCeilings("seed " + seed, shop, legal, new Random(seed));
                    underAllCeilings("seed " + seed, shop, legal, new Random(seed));
                    leastOfOneAlone("seed " + seed, shop, legal);
                }));
    }

    @AfterAll
    static void cornersWereTight() {
        assertTrue(kept >= SEEDS && refused >= SEEDS, kept + " kept, " + refused + " refused");
    }

    private static void underTwoCeilings(String told, SmallShop.Case shop, List<Legal> legal, Random random) {
        for (int i = 0; i < PAIRS && !legal.isEmpty(); i++) {
            Objective one = SUMS.get(random.nextInt(SUMS.size()));
            Objective other = SUMS.get((SUMS.indexOf(one) + 1 + random.nextInt(SUMS.size() - 1)) % SUMS.size());
            compare(told, shop, legal, corner(legal, one, other, random));
        }
    }

    /** Those of some build, at times one of them a hair less: as where what beats a build is looked for. */
    private static void underAllCeilings(String told, SmallShop.Case shop, List<Legal> legal, Random random) {
        for (int i = 0; i < BUILDS && !legal.isEmpty(); i++) {
            ObjectiveVector vector = legal.get(random.nextInt(legal.size())).vector;
            Map<Objective, Long> ceilings = new EnumMap<>(Objective.class);
            for (Objective objective : Objective.values()) {
                ceilings.put(objective, vector.loss(objective));
            }
            Objective one = SUMS.get(random.nextInt(SUMS.size()));
            ceilings.merge(one, (long) -random.nextInt(2), Long::sum);
            compare(told, shop, legal, ceilings);
        }
    }

    private static void leastOfOneAlone(String told, SmallShop.Case shop, List<Legal> legal) {
        for (Objective one : Objective.values()) {
            long least = legal.stream()
                    .mapToLong(build -> build.vector.loss(one))
                    .min()
                    .orElse(Long.MAX_VALUE);
            Solution found =
                    new Search(shop.catalog()).solve(shop.query().withPriorities(Map.of(one, 1.0)), Watch.NONE);
            ObjectiveVector vector = found.objectives();
            assertEquals(least, vector == null ? Long.MAX_VALUE : vector.loss(one), () -> told + ", " + one);
            assertTrue(found.proven(), () -> told + ", " + one);
        }
    }

    private static List<Legal> legal(SmallShop.Case shop) {
        List<Legal> legal = new ArrayList<>();
        Style style = new Style(shop.catalog(), shop.query().brief());
        NiceWishes wishes = new NiceWishes(shop.query().brief());
        new Enumeration(shop.catalog(), shop.query(), true).eachLegal((build, score) -> {
            Rod rod = Rod.measure(shop.catalog(), shop.query().brief(), build);
            legal.add(new Legal(ObjectiveVector.of(rod, style, wishes), score));
        });
        return legal;
    }

    /** The least of one that any build has within what some build has of the other; at times a hair less. */
    private static Map<Objective, Long> corner(List<Legal> legal, Objective one, Objective other, Random random) {
        long within = legal.get(random.nextInt(legal.size())).vector.loss(other);
        long least = legal.stream()
                .filter(build -> build.vector.loss(other) <= within)
                .mapToLong(build -> build.vector.loss(one))
                .min()
                .orElseThrow();
        return Map.of(one, least - random.nextInt(2), other, within);
    }

    private static void compare(String told, SmallShop.Case shop, List<Legal> legal, Map<Objective, Long> ceilings) {
        long best = legal.stream()
                .filter(build -> ceilings.entrySet().stream()
                        .allMatch(ceiling -> build.vector.loss(ceiling.getKey()) <= ceiling.getValue()))
                .mapToLong(Legal::score)
                .min()
                .orElse(Long.MAX_VALUE);
        Query query = shop.query().under(ceilings);
        Solution found = new Search(shop.catalog()).solve(query, Watch.NONE);
        assertEquals(best, found.score(), () -> told + ", " + ceilings);
        assertTrue(found.proven(), () -> told + ", " + ceilings);
        kept += best < Long.MAX_VALUE ? 1 : 0;
        refused += best == Long.MAX_VALUE ? 1 : 0;
    }
}
