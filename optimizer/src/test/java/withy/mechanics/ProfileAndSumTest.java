package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import org.junit.jupiter.api.Test;

/** Figures by hand, each chosen so that a changed sign, edge or factor shows. */
class ProfileAndSumTest {
    /** From 100 mm on, with a step from 6 to 8 at 300 mm, as a ferrule makes one. */
    private static final TaperProfile STEPPED =
            new TaperProfile(new double[] {100, 300, 300, 600}, new double[] {10, 6, 8, 2});

    @Test
    void aProfileMayBeginAnywhereAndStep() {
        assertEquals(100, STEPPED.startMm());
        assertEquals(600, STEPPED.endMm());
        assertEquals(500, STEPPED.lengthMm());
        assertEquals(10, STEPPED.at(50));
        assertEquals(10, STEPPED.at(100));
        assertEquals(8, STEPPED.at(200));
        assertEquals(8, STEPPED.at(300), "the tip's side");
        assertEquals(6, STEPPED.before(300), "the butt's side");
        assertEquals(8, STEPPED.before(200));
        assertEquals(2, STEPPED.at(600));
        assertEquals(2, STEPPED.at(700));
    }

    @Test
    void theLargestBetweenTwoPlacesCountsWhatStandsAtThem() {
        assertEquals(8, STEPPED.largestBetween(250, 350), "the step between them");
        assertEquals(7, STEPPED.largestBetween(250, 299.99), 0.001, "the end nearer the butt");
        assertEquals(8, STEPPED.largestBetween(300, 600));
        assertEquals(8, STEPPED.largestBetween(280, 300), "the step at the far end");
        assertEquals(4, STEPPED.largestBetween(500, 650));
    }

    @Test
    void profilesAreTheSameByContent() {
        TaperProfile again = new TaperProfile(new double[] {100, 300, 300, 600}, new double[] {10, 6, 8, 2});
        assertEquals(STEPPED, again);
        assertEquals(STEPPED.hashCode(), again.hashCode());
        assertNotEquals(STEPPED, TaperProfile.straight(500, 10, 2));
        assertNotEquals(STEPPED, new TaperProfile(new double[] {100, 300, 300, 601}, new double[] {10, 6, 8, 2}));
    }

    /** 12 g along 30 mm have 12·30²/12 = 900 g·mm² about their middle. */
    @Test
    void masses() {
        MassSum bar = MassSum.bar(12, 100, 30);
        assertEquals(new MassSum(12, 1200, 120_900), bar);
        assertEquals(900, bar.inertiaGmm2(100));
        assertEquals(new MassSum(7, 950, 117_150), bar.minus(MassSum.piece(5, 50, -8_750)));
        assertEquals(new MassSum(3, 300, 30_225), bar.scaled(0.25));
    }

    /** 10 g 300 mm ahead of the balance point are held by 30 g 100 mm behind it; nothing is needed where it lies behind already. */
    @Test
    void counterweights() {
        MassSum ahead = MassSum.point(10, 500);
        assertEquals(30, ahead.counterweightForBalanceG(200, 100), 1e-9);
        assertEquals(0, ahead.counterweightForBalanceG(600, 100));
        double moment = ahead.momentNmm(200);
        assertEquals(15, ahead.counterweightG(200, 100, moment / 2), 1e-9);
    }
}
