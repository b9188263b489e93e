package withy.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.rod.Station;

/** The chance that one rod really is the lighter one. */
class LighterOddsTest {
    private static final int DRAWS = 200_000;

    /** Validates: one even error of reach r about d gives (1 − d/r)/2, two give a triangle; closed forms of the even distribution. */
    @Test
    void evenErrorsHaveClosedForms() {
        double one = LighterOdds.draw(0.4, new double[] {1.0}, 5L, DRAWS).probability();
        assertEquals((1 - 0.4) / 2, one, 0.005, "seed 5");
        double d = 0.7;
        double two = LighterOdds.draw(d, new double[] {1.0, 1.0}, 6L, DRAWS).probability();
        assertEquals((2 - d) * (2 - d) / 8, two, 0.005, "seed 6");
        LighterOdds spread = LighterOdds.draw(0, new double[] {3.0}, 7L, 10);
        assertEquals(Math.sqrt(3.0), spread.spreadG(), 1e-12);
    }

    @Test
    void aSeedGivesTheSameAgain() {
        Rod rod = Fixtures.legal().rod();
        Rod other = Fixtures.legal().put(Station.guide(3), "guide-5").rod();
        assertEquals(LighterOdds.of(rod, other, Map.of(), 9L, 1000), LighterOdds.of(rod, other, Map.of(), 9L, 1000));
    }

    /** What both rods have in common cancels; against itself a rod is as likely lighter as heavier. */
    @Test
    void commonPartsCancel() {
        Rod rod = Fixtures.legal().rod();
        LighterOdds even = LighterOdds.of(rod, rod, Map.of(), 3L, DRAWS);
        assertEquals(0.5, even.probability(), 0.01, "seed 3");
        assertEquals(0, even.differenceG(), 0);
        double workmanship = rod.setting().catalog().rates().workmanshipToleranceG();
        assertEquals(workmanship * Math.sqrt(2.0 / 3), even.spreadG(), 1e-12);
    }

    /** Property, seed 21: swapping the rods gives the other side, and a scale reading never widens the spread. */
    @Test
    void readingsNarrowAndShift() {
        SplittableRandom random = new SplittableRandom(21L);
        for (int run = 0; run < 10; run++) {
            double lighter = random.nextDouble(1, 4);
            Fixtures changed = Fixtures.legal().copy("seat", "seat-b");
            double seat = changed.partOf("seat").facts().weightG();
            Rod two = changed.part("seat-b", "facts.weightG", seat - lighter)
                    .part("seat-b", "facts.weightTolG", 2.0)
                    .put(Station.SEAT, "seat-b")
                    .rod();
            Rod one = Fixtures.legal().part("seat", "facts.weightTolG", 2.0).rod();
            LighterOdds odds = LighterOdds.of(two, one, Map.of(), 4L, 20_000);
            LighterOdds swapped = LighterOdds.of(one, two, Map.of(), 4L, 20_000);
            assertEquals(-lighter, odds.differenceG(), 2e-3, "run " + run + " of seed 21");
            assertEquals(1, odds.probability() + swapped.probability(), 0.02, "run " + run + " of seed 21");
            LighterOdds weighed = LighterOdds.of(two, one, Map.of("seat-b", seat - lighter), 4L, 20_000);
            assertTrue(weighed.spreadG() < odds.spreadG(), "run " + run + " of seed 21");
            assertTrue(weighed.probability() >= odds.probability() - 0.01, "run " + run + " of seed 21");
            LighterOdds heavier = LighterOdds.of(two, one, Map.of("seat-b", seat + 10), 4L, 20_000);
            assertEquals(10, heavier.differenceG(), 2e-3);
            assertTrue(heavier.probability() < 0.01);
        }
    }
}
