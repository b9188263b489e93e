package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GuideSpacingTest {
    /** House table of spacings, computed, plausible; printed to 5 mm and two decimals of ratio, so 6 mm and 0.006. */
    @ParameterizedTest
    @CsvSource({
        "80 180 300 445 625 850 1120,1.23",
        "95 215 360 540 770 1050 1400,1.24",
        "95 205 340 495 680 895 1150 1450,1.18",
        "105 230 375 545 750 985 1270 1600,1.18",
        "95 205 330 470 630 815 1030 1270,1.14",
        "95 200 320 455 605 770 955 1165 1400,1.12",
        "95 200 315 440 580 730 895 1080 1280 1500,1.10",
        "150 330 545 800 1105 1465 1900,1.19"
    })
    void tabledRods(String places, double ratio) {
        double[] expected = Arrays.stream(places.split(" "))
                .mapToDouble(Double::parseDouble)
                .toArray();
        double last = expected[expected.length - 1];
        GuideSpacing spacing = GuideSpacing.reach(last, expected.length, expected[0], expected[0])
                .orElseThrow();
        assertEquals(ratio, spacing.ratio(), 0.006);
        assertArrayEquals(expected, spacing.fromTipMm(), 6.0);
        assertEquals(last, spacing.fromTipMm()[expected.length - 1], 1e-9 * last);
    }

    @Test
    void prefersTheMiddleFirstSpace() {
        assertEquals(
                95.0, GuideSpacing.reach(1400.0, 8, 90.0, 100.0).orElseThrow().firstMm(), 1e-12);
        assertEquals(
                95.0, GuideSpacing.reach(95.0, 1, 90.0, 100.0).orElseThrow().firstMm(), 1e-12);
    }

    @Test
    void takesTheNearestFirstSpaceWhenTheMiddleFitsNoRatio() {
        GuideSpacing spacing = GuideSpacing.reach(1450.0, 7, 90.0, 110.0).orElseThrow();
        assertTrue(spacing.firstMm() >= 90.0 && spacing.firstMm() <= 110.0);
        assertTrue(spacing.ratio() <= GuideSpacing.LARGEST_RATIO);
        assertEquals(1450.0, spacing.fromTipMm()[6], 1e-6);
    }

    @Test
    void emptyWhenNoRatioFits() {
        assertTrue(GuideSpacing.reach(2400.0, 6, 90.0, 110.0).isEmpty());
        assertTrue(GuideSpacing.reach(600.0, 8, 90.0, 110.0).isEmpty());
        assertTrue(GuideSpacing.reach(500.0, 1, 90.0, 110.0).isEmpty());
    }

    /** Property, seed 5: spaces grow toward the stripper, ratio inside its bounds, the last guide at the distance asked. */
    @Test
    void spacesGrowAndReach() {
        SplittableRandom random = new SplittableRandom(5L);
        int met = 0;
        for (int run = 0; run < 2000; run++) {
            double distance = random.nextDouble(700.0, 2200.0);
            int count = random.nextInt(4, 12);
            var found = GuideSpacing.reach(distance, count, 75.0, 180.0);
            if (found.isPresent()) {
                met++;
                GuideSpacing spacing = found.get();
                double[] places = spacing.fromTipMm();
                assertTrue(spacing.ratio() >= 1.05 && spacing.ratio() <= 1.25, "run " + run + " of seed 5");
                assertEquals(distance, places[count - 1], 1e-7, "run " + run + " of seed 5");
                for (int i = 2; i < count; i++) {
                    assertTrue(places[i] - places[i - 1] > places[i - 1] - places[i - 2], "run " + run + " of seed 5");
                }
            }
        }
        assertTrue(met > 500, "met " + met);
    }

    @Test
    void guidesMoveOffFerrules() {
        double[] x = {700, 1040, 1300, 1600};
        double[] moved = GuideSpacing.clearOfFerrules(x, 10.0, List.of(new GuideSpacing.Zone(1000, 1070)))
                .orElseThrow();
        assertArrayEquals(new double[] {700, 1100, 1300, 1600}, moved, 1e-9);
        assertArrayEquals(x, GuideSpacing.clearOfFerrules(x, 10.0, List.of()).orElseThrow(), 0.0);
    }

    @Test
    void twoGuidesOnOneFerruleCantBothMove() {
        List<GuideSpacing.Zone> ferrule = List.of(new GuideSpacing.Zone(1000, 1070));
        assertArrayEquals(
                new double[] {970, 1100},
                GuideSpacing.clearOfFerrules(new double[] {1034, 1040}, 10.0, ferrule)
                        .orElseThrow(),
                1e-9);
        assertTrue(GuideSpacing.clearOfFerrules(new double[] {1036, 1040}, 10.0, ferrule)
                .isEmpty());
    }

    /** So many can be spaced with any first space that is long enough, and never one more. */
    @Test
    void noMoreGuidesReach() {
        for (double mm = 300; mm <= 3000; mm += 37) {
            int most = GuideSpacing.mostGuides(mm, 75, 20);
            assertTrue(most > 1 && GuideSpacing.reach(mm, most, 75, mm).isPresent(), mm + " mm");
            for (int more = most + 1; more <= 20; more++) {
                assertTrue(GuideSpacing.reach(mm, more, 75, mm).isEmpty(), more + " guides on " + mm + " mm");
            }
        }
        assertEquals(20, GuideSpacing.mostGuides(1e6, 75, 20));
        assertEquals(0, GuideSpacing.mostGuides(-5, 75, 20));
    }

    /** Nothing else does as well: wherever the others stand instead, ratios of neighbouring gaps change more, in the sum of squares of their logarithms. */
    @Test
    void theGuidesBesideAMovedOneFollowItAsEvenlyAsCanBe() {
        Random random = new Random(20261128);
        int followed = 0;
        for (int i = 0; i < 200; i++) {
            double tip = 1800 + 900 * random.nextDouble();
            int count = 5 + random.nextInt(5);
            Optional<GuideSpacing> spacing = GuideSpacing.reach(tip - 780, count, 90, 110);
            if (spacing.isEmpty()) {
                continue;
            }
            double[] x = rising(tip, spacing.get().fromTipMm());
            List<GuideSpacing.Zone> ferrules = new ArrayList<>();
            for (int joint = 1; joint <= 1 + i % 3; joint++) {
                double at = tip * joint / (2 + i % 3);
                ferrules.add(new GuideSpacing.Zone(at - 25, at + 25));
            }
            double[] moved = GuideSpacing.clearOfFerrules(x, 15, ferrules).orElse(x);
            double[] even = GuideSpacing.clearAndEven(x, tip, 15, ferrules).orElse(x);
            if (Arrays.equals(even, moved)) {
                continue;
            }
            followed++;
            double least = change(x, even, tip);
            assertTrue(least < change(x, moved, tip));
            for (int k = 0; k < count; k++) {
                boolean stays = k == 0 || moved[k] != x[k];
                assertTrue(!stays || even[k] == moved[k], "guide " + (k + 1) + " of " + Arrays.toString(even));
                for (double by : stays ? new double[0] : new double[] {-0.2, -0.001, 0.001, 0.2}) {
                    double[] other = even.clone();
                    other[k] += by;
                    assertTrue(change(x, other, tip) > least, "guide " + (k + 1) + " of " + Arrays.toString(even));
                }
            }
        }
        assertTrue(followed > 60, "only " + followed + " had to follow");
        double[] x = {700, 1040, 1300, 1600};
        assertArrayEquals(x, GuideSpacing.clearAndEven(x, 1750, 10.0, List.of()).orElseThrow(), 0.0);
    }

    private static double[] rising(double tip, double[] fromTip) {
        double[] x = fromTip.clone();
        for (int i = 0; i < x.length; i++) {
            x[i] = tip - fromTip[x.length - 1 - i];
        }
        return x;
    }

    private static double change(double[] before, double[] after, double tip) {
        double sum = 0;
        for (int i = 0; i + 1 < before.length; i++) {
            double change = Math.log(ratio(after, i, tip)) - Math.log(ratio(before, i, tip));
            sum += change * change;
        }
        return sum;
    }

    private static double ratio(double[] x, int i, double tip) {
        double next = i + 2 == x.length ? tip : x[i + 2];
        return (x[i + 1] - x[i]) / (next - x[i + 1]);
    }

    /** By hand: of three equal gaps the guide between the first two is moved by half a gap; the other stands where the ratios 3:x and x:y change alike. */
    @Test
    void oneOfThreeGapsIsMoved() {
        List<GuideSpacing.Zone> ferrule = List.of(new GuideSpacing.Zone(970, 1010));
        double[] even = GuideSpacing.clearAndEven(new double[] {900, 1000, 1100}, 1200, 20.0, ferrule)
                .orElseThrow();
        assertArrayEquals(new double[] {900, 1050, even[2]}, even, 1e-9);
        double gap = even[2] - 1050;
        double last = 150 - gap;
        double byHand = Math.log(150 / gap) * (1 / gap) - Math.log(gap / last) * (1 / gap + 1 / last);
        assertEquals(0, byHand, 1e-9);
    }

    /** Where following would bring a guide to the next ferrule, only the one that has to move does. */
    @Test
    void noGuideFollowsIntoAFerrule() {
        double[] x = {700, 1040, 1300, 1600};
        double follows = GuideSpacing.clearAndEven(x, 1850, 10.0, List.of(new GuideSpacing.Zone(1000, 1070)))
                .orElseThrow()[2];
        assertTrue(follows > 1310, "" + follows);
        List<GuideSpacing.Zone> ferrules =
                List.of(new GuideSpacing.Zone(1000, 1070), new GuideSpacing.Zone(follows - 5 + 30, follows + 5 + 30));
        assertArrayEquals(
                new double[] {700, 1100, 1300, 1600},
                GuideSpacing.clearAndEven(x, 1850, 10.0, ferrules).orElseThrow(),
                1e-9);
        assertTrue(GuideSpacing.clearAndEven(
                        new double[] {1036, 1040}, 1850, 10.0, List.of(new GuideSpacing.Zone(1000, 1070)))
                .isEmpty());
    }
}
