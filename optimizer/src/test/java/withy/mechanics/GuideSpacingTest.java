package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
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

    /** By hand: the second guide is moved by 60; the two ahead of it follow by two thirds and one third, the stripper and the tip-top stay. */
    @Test
    void theGuidesBesideAMovedOneFollowIt() {
        List<GuideSpacing.Zone> ferrule = List.of(new GuideSpacing.Zone(1000, 1070));
        double[] x = {700, 1040, 1300, 1600};
        assertArrayEquals(
                new double[] {700, 1100, 1340, 1620},
                GuideSpacing.clearAndEven(x, 10.0, ferrule).orElseThrow(),
                1e-9);
        assertArrayEquals(x, GuideSpacing.clearAndEven(x, 10.0, List.of()).orElseThrow(), 0.0);
    }

    /** Between two moved guides each follows the nearer one more: 1040 goes 60 ahead, 1640 goes 30 back, what stands between them 30 and 0. */
    @Test
    void betweenTwoMovedGuidesTheOthersFollowBoth() {
        List<GuideSpacing.Zone> ferrules =
                List.of(new GuideSpacing.Zone(1000, 1070), new GuideSpacing.Zone(1640, 1700));
        assertArrayEquals(
                new double[] {700, 1100, 1270, 1430, 1610, 1890},
                GuideSpacing.clearAndEven(new double[] {700, 1040, 1240, 1430, 1640, 1905}, 10.0, ferrules)
                        .orElseThrow(),
                1e-9);
    }

    /** Where following would bring a guide to the next ferrule, only the one that has to move does. */
    @Test
    void noGuideFollowsIntoAFerrule() {
        List<GuideSpacing.Zone> ferrules =
                List.of(new GuideSpacing.Zone(1000, 1070), new GuideSpacing.Zone(1340, 1400));
        double[] x = {700, 1040, 1300, 1600};
        assertArrayEquals(
                new double[] {700, 1100, 1300, 1600},
                GuideSpacing.clearAndEven(x, 10.0, ferrules).orElseThrow(),
                1e-9);
        assertTrue(
                GuideSpacing.clearAndEven(new double[] {1036, 1040}, 10.0, List.of(new GuideSpacing.Zone(1000, 1070)))
                        .isEmpty());
    }
}
