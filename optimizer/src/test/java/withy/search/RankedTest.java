package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Candidates come in the order of their floors, equal ones in content order, as sorting all of them at once puts them. */
class RankedTest {
    private static final int MANY = 300;
    private static final int ASKED = 200;

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void asSortedAtOnce(int seed) {
        Random random = new Random(seed);
        long[] lower = random.longs(MANY, -50, 50).toArray();
        // one off is rounding
        long[] exact = IntStream.range(0, MANY)
                .mapToLong(i -> lower[i] + (random.nextInt(9) == 0 ? -1 : random.nextInt(40)))
                .toArray();
        for (int i = 0; i < MANY; i += 7) {
            exact[i] = TrainGraph.NONE;
        }
        for (int i = 3; i < MANY; i += 11) {
            lower[i] = TrainGraph.NONE;
            exact[i] = TrainGraph.NONE;
        }
        IntPredicate possible = i -> i % 5 != 0;
        Ranked all = new Ranked(lower.clone());
        Set<Integer> looked = new HashSet<>();
        Ranked lazy = Ranked.lazily(all, possible, i -> {
            assertTrue(looked.add(i), "looked at twice: " + i);
            return exact[i];
        });
        Ranked beside = Ranked.lazily(all, i -> true, i -> exact[i]);
        compare(new Ranked(exact.clone(), possible), exact, possible, random);
        compare(lazy, exact, possible, random);
        compare(beside, exact, i -> true, random);
    }

    /** Only those are looked at that may be among the first. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3})
    void onlyTheFirstAreLookedAt(int seed) {
        Random random = new Random(seed);
        long[] lower = random.longs(MANY, 0, 1_000).toArray();
        Set<Integer> looked = new HashSet<>();
        Ranked lazy = Ranked.lazily(new Ranked(lower.clone()), i -> true, i -> {
            looked.add(i);
            return lower[i] + 10;
        });
        long least = lazy.least();
        assertTrue(looked.stream().allMatch(i -> lower[i] <= least + 1), "looked at for nothing");
        assertFalse(looked.isEmpty());
    }

    private static void compare(Ranked ranked, long[] floors, IntPredicate possible, Random random) {
        List<Integer> sorted = new ArrayList<>();
        for (int i = 0; i < floors.length; i++) {
            if (possible.test(i) && !TrainGraph.none(floors[i])) {
                sorted.add(i);
            }
        }
        sorted.sort(Comparator.comparingLong(i -> floors[i]));
        for (int n = 0; n < ASKED; n++) {
            int rank = random.nextInt(floors.length);
            int part = random.nextInt(20) + 1;
            IntPredicate among = i -> i % 20 < part && i % 3 != 0;
            long least = sorted.stream()
                    .filter(among::test)
                    .mapToLong(i -> floors[i])
                    .min()
                    .orElse(TrainGraph.NONE);
            assertEquals(least, ranked.least(among));
            boolean has = rank < Math.min(n, sorted.size());
            if (has) {
                assertTrue(ranked.has(rank));
                assertEquals(sorted.get(rank), ranked.at(rank));
                assertEquals(floors[sorted.get(rank)], ranked.floor(rank));
            }
        }
        assertEquals(
                sorted.size(),
                IntStream.range(0, floors.length).filter(ranked::has).count());
        assertEquals(
                sorted, sorted.stream().map(i -> ranked.at(sorted.indexOf(i))).toList());
        assertEquals(TrainGraph.NONE, ranked.floor(sorted.size()));
    }
}
