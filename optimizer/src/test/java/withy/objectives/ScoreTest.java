package withy.objectives;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import withy.brief.Brief;
import withy.brief.Objective;
import withy.fixture.Fixtures;
import withy.rod.Rod;

/** The score and dominance by hand. Steps of the fixture: 3 g, 15 N·mm, 0.0015 kg·m², 3000 minor units, 10 points, one class. */
class ScoreTest {
    private static final Fixtures FIXTURE = Fixtures.legal();
    private static final ObjectiveVector ONE = new ObjectiveVector(100, 200, 300, 400, 500, 2, 700);

    private static Scoring scoring(Map<Objective, Double> priorities) {
        return Scoring.of(FIXTURE.theBrief(), FIXTURE.catalog().rates(), priorities);
    }

    /** Standard gravity 9.80665 m/s² (CGPM 1901) turns mg·mm into N·mm; margin 20 % and tax 10 % make a price of a cost. */
    @Test
    void aStepAtMeanPriorityCountsOneScale() {
        Scoring even = Scoring.of(FIXTURE.theBrief(), FIXTURE.catalog().rates());
        assertEquals(Math.round(1e12 / 3000), even.perMg());
        assertEquals(Math.round(1e12 * 9.80665e-6 / 15), even.perOutsideMgMm());
        assertEquals(Math.round(1e12 / (0.0015 * 1e12)), even.perMgMm2());
        assertEquals(Math.round(1e12 * 1.2 * 1.1 / 3_000_000), even.perCostMilli());
        assertEquals(1_000_000_000L, even.perStyleCenti());
        assertEquals(1_000_000_000_000L, even.perClass());
        assertEquals(1_000_000_000L, even.perMilliStep());
        assertEquals(1.0, Scoring.steps(1_000_000_000_000L));
    }

    @Test
    void prioritiesCountAgainstTheirMean() {
        Scoring twice = scoring(Map.of(Objective.WEIGHT, 8.0, Objective.STYLE, 4.0));
        assertEquals(Math.round(4e12 / 3000), twice.perMg());
        assertEquals(2_000_000_000L, twice.perStyleCenti());
        assertEquals(
                Math.round(1e-4 * 1e12 * 1.32 / 3_000_000), twice.perCostMilli(), "ten-thousandth where none is told");
        assertEquals(Math.round(4e12 / 3), twice.perClass(), "a class is not traded for under a gram");
        assertEquals(Math.round(1e-4 * 1e12 / 3000), scoring(Map.of()).perMg(), "no priority at all");
        assertEquals(1, scoring(Map.of()).perMgMm2(), "and never for nothing");
        Scoring sturdy = scoring(Map.of(Objective.DURABILITY, 5.0, Objective.WEIGHT, 1.0));
        assertEquals(5_000_000_000_000L, sturdy.perClass());
    }

    @Test
    void theScoreIsTheSumOfItsShares() {
        Scoring prices = new Scoring(2, 3, 5, 7, 11, 13, 17);
        assertEquals(200, prices.share(Objective.WEIGHT, ONE));
        assertEquals(600, prices.share(Objective.BALANCE, ONE));
        assertEquals(1500, prices.share(Objective.SWING_WEIGHT, ONE));
        assertEquals(2800, prices.share(Objective.PRICE, ONE));
        assertEquals(-5500, prices.share(Objective.STYLE, ONE));
        assertEquals(-26, prices.share(Objective.DURABILITY, ONE));
        assertEquals(11900, prices.missed(ONE));
        assertEquals(200 + 600 + 1500 + 2800 - 5500 - 26 + 11900, prices.score(ONE));
    }

    @Test
    void whatIsBetterMoreIsLostLess() {
        assertEquals(
                List.of(100L, 200L, 300L, 400L, 500L, 2L),
                List.of(Objective.values()).stream().map(ONE::value).toList());
        assertEquals(
                List.of(100L, 200L, 300L, 400L, -500L, -2L),
                List.of(Objective.values()).stream().map(ONE::loss).toList());
    }

    @Test
    void dominanceNeedsOneBetterAndNoneWorse() {
        assertFalse(ONE.dominates(ONE));
        List<ObjectiveVector> worse = List.of(
                new ObjectiveVector(101, 200, 300, 400, 500, 2, 700),
                new ObjectiveVector(100, 201, 300, 400, 500, 2, 700),
                new ObjectiveVector(100, 200, 301, 400, 500, 2, 700),
                new ObjectiveVector(100, 200, 300, 401, 500, 2, 700),
                new ObjectiveVector(100, 200, 300, 400, 499, 2, 700),
                new ObjectiveVector(100, 200, 300, 400, 500, 1, 700));
        for (ObjectiveVector other : worse) {
            assertTrue(ONE.dominates(other), "" + other);
            assertFalse(other.dominates(ONE), "" + other);
        }
        assertFalse(ONE.dominates(new ObjectiveVector(100, 200, 300, 400, 500, 2, 900)), "wishes are not of the six");
        ObjectiveVector mixed = new ObjectiveVector(99, 200, 300, 401, 500, 2, 700);
        assertFalse(ONE.dominates(mixed) || mixed.dominates(ONE));
    }

    @Test
    void aRodsObjectivesAreItsFigures() {
        Rod rod = FIXTURE.rod();
        Brief brief = FIXTURE.theBrief();
        Style style = new Style(FIXTURE.catalog(), brief);
        ObjectiveVector vector = ObjectiveVector.of(rod, style, new NiceWishes(brief));
        assertEquals(rod.figures().weightG(), vector.weightMg() / 1000.0, 1e-9);
        assertEquals(rod.figures().balanceOutsideZoneNmm(), vector.outsideMgMm() * 9.80665e-6, 1e-6);
        assertEquals(rod.figures().swingWeightKgM2(), vector.inertiaMgMm2() * 1e-12, 1e-12);
        assertEquals(rod.costMilli(), vector.costMilli());
        assertEquals(style.of(rod), vector.styleCenti());
        assertEquals(1, vector.durabilityClasses(), "class 4 where 3 is asked");
        assertEquals(0, vector.missedMilliSteps());
        Fixtures weak =
                Fixtures.legal().part("tip-top", "facts.durabilityClass", 2).part("cap", "facts.durabilityClass", 1);
        assertEquals(
                -1, ObjectiveVector.of(weak.rod(), style, new NiceWishes(brief)).durabilityClasses());
    }
}
