package withy.search;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is left of many things with random sums: nothing that was left out was needed, and with three sums that decide nothing is left that is not. */
class UnbeatenTest {
    @ParameterizedTest
    @CsvSource({"3, 300, 1", "3, 2000, 2", "3, 2000, 3", "3, 120000, 4", "2, 2000, 5", "4, 2000, 6", "5, 120000, 7"})
    void onlyWhatIsBeatenIsLeftOut(int deciding, int things, long seed) {
        Random random = new Random(seed);
        boolean[] decides = new boolean[deciding + 2];
        for (int f = 0; f < deciding; f++) {
            decides[f + 1] = true; // the first and the last do not decide
        }
        // few different numbers, so that many are equal
        int numbers = seed % 2 == 0 ? 50 : 1_000_000;
        Unbeaten<Integer> unbeaten = new Unbeaten<>(decides);
        List<long[]> all = new ArrayList<>();
        for (int i = 0; i < things; i++) {
            long[] sums = random.longs(decides.length, 0, numbers).toArray();
            all.add(sums);
            unbeaten.add(i, sums);
        }

        List<Unbeaten.Of<Integer>> left = unbeaten.all();

        for (int i = 0; i < things; i++) {
            long[] sums = all.get(i);
            assertTrue(left.stream().anyMatch(one -> beats(one.sums(), sums, deciding)), "left out: " + i);
        }
        for (int i = 1; i < left.size(); i++) {
            assertTrue(left.get(i - 1).sums()[0] <= left.get(i).sums()[0], "in order of the first sum");
        }
        if (deciding == 3) {
            for (Unbeaten.Of<Integer> one : left) {
                for (Unbeaten.Of<Integer> other : left) {
                    assertFalse(one != other && beats(one.sums(), other.sums(), deciding), one + " beats " + other);
                }
            }
        }
    }

    /** Of equal things the one with the least first sum is left, and of those the one that came first. */
    @ParameterizedTest
    @CsvSource({"3, 500", "3, 10", "4, 500"})
    void ofEqualOnesTheFirst(int deciding, int things) {
        boolean[] decides = new boolean[deciding + 1];
        Arrays.fill(decides, 1, decides.length, true);
        Unbeaten<Integer> unbeaten = new Unbeaten<>(decides);
        for (int i = 0; i < things; i++) {
            long[] sums = new long[deciding + 1];
            sums[0] = 7;
            sums[1] = i % 5;
            sums[2] = 4 - i % 5;
            unbeaten.add(i, sums);
        }

        List<Integer> left =
                unbeaten.all().stream().map(Unbeaten.Of::thing).sorted().toList();

        assertEquals(List.of(0, 1, 2, 3, 4), left);
    }

    private static boolean beats(long[] one, long[] other, int deciding) {
        for (int f = 1; f <= deciding; f++) {
            if (one[f] > other[f]) {
                return false;
            }
        }
        return true;
    }
}
