package withy.machine;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import withy.fixture.Fixtures;
import withy.mechanics.GuideSpacing;
import withy.rod.BlankShape;
import withy.rod.GuidePlan;
import withy.rod.Rod;
import withy.rod.Station;

/** Guide trains spaced for the bend, and compared; by properties, since no published train was found. */
class TrainDesignTest {
    private final Rod rod = Fixtures.legal().rod();
    private final BlankStiffness stiffness = BlankStiffness.of(rod.setting().shape());

    @Test
    void positionsDependOnTheLayoutAlone() {
        Rod other = Fixtures.legal()
                .put(Station.guide(2), "guide-6")
                .put(Station.guide(4), "guide-6")
                .rod();
        for (int count = 5; count <= 9; count++) {
            Optional<double[]> one = BendSpacing.of(rod.setting(), stiffness).positions(count);
            Optional<double[]> two = BendSpacing.of(other.setting(), stiffness).positions(count);
            assertEquals(one.isPresent(), two.isPresent());
            if (one.isPresent() && two.isPresent()) {
                assertArrayEquals(one.get(), two.get(), 0);
            }
        }
    }

    /** Stripper where the reel wants it, spaces that grow from the tip, first one in its range, no foot near a ferrule. */
    @Test
    void spacesGrowFromTheTipAndKeepOffFerrules() {
        int found = 0;
        for (int foot = 200; foot <= 280; foot += 20) {
            Rod at = Fixtures.legal().layout("reelFootMm", foot).rod();
            BendSpacing spacing = BendSpacing.of(at.setting(), stiffness);
            for (int count = 5; count <= 10; count++) {
                Optional<double[]> positions = spacing.positions(count);
                if (positions.isEmpty()) {
                    continue;
                }
                found++;
                double[] x = positions.get();
                assertEquals(count, x.length);
                double tip = at.setting().blank().lengthMm();
                double first = tip - x[count - 1];
                assertTrue(first >= GuidePlan.firstSpaceMinMm(at.brief()) - 31, "first space " + first);
                for (BlankShape.Joint joint : at.setting().shape().joints()) {
                    for (double place : x) {
                        assertTrue(
                                place <= joint.fromMm() - GuideSpacing.FERRULE_CLEARANCE_MM
                                        || place >= joint.toMm() + GuideSpacing.FERRULE_CLEARANCE_MM,
                                place + " near a ferrule at " + joint);
                    }
                }
                for (int i = 1; i < count; i++) {
                    assertTrue(x[i] > x[i - 1], "guide " + (i + 1));
                }
            }
        }
        assertTrue(found >= 10, found + " trains");
    }

    /** Shifting for the bend makes the runners turn the line more evenly than the house's geometric spacing, or as evenly. */
    @Test
    void turnsAreMoreEvenThanByTheRule() {
        TrainDesign design = TrainDesign.of(rod, stiffness, Pose.working(rod.brief()));
        TrainDesign.Train own = design.trains().get(0);
        TrainDesign.Train same = design.trains().stream()
                .filter(t -> t.forBend() && t.count() == own.count())
                .findFirst()
                .orElseThrow();
        assertTrue(spread(same) <= 1.05 * spread(own), spread(same) + " after " + spread(own));
    }

    /** Root mean square of the turns ahead of the stripper. */
    private static double spread(TrainDesign.Train train) {
        var held = train.staticTest().held();
        if (held == null) {
            throw new AssertionError(train.staticTest().doubt());
        }
        List<Double> turns = new ArrayList<>();
        for (int i = 1; i < held.rings().size() - 1; i++) {
            turns.add(held.rings().get(i).turnRad());
        }
        return Math.sqrt(turns.stream().mapToDouble(t -> t * t).average().orElse(0));
    }

    @Test
    void aTrainOfOneMoreGuideWeighsMoreAndSwingsSlower() {
        TrainDesign design = TrainDesign.of(rod, stiffness, Pose.working(rod.brief()));
        assertFalse(design.trains().get(0).forBend());
        List<TrainDesign.Train> bend =
                design.trains().stream().filter(TrainDesign.Train::forBend).toList();
        assertTrue(bend.size() >= 2, bend.size() + " trains");
        for (int i = 1; i < bend.size(); i++) {
            assertEquals(bend.get(i - 1).count() + 1, bend.get(i).count());
            assertTrue(bend.get(i).guidesG() > bend.get(i - 1).guidesG());
            assertTrue(bend.get(i).hertz() < bend.get(i - 1).hertz());
            assertTrue(bend.get(i).rod().figures().weightG()
                    > bend.get(i - 1).rod().figures().weightG());
        }
    }

    @Test
    void theRodsOwnTrainIsTheRodAsMeasured() {
        TrainDesign.Train own = TrainDesign.of(rod, stiffness, Pose.working(rod.brief()))
                .trains()
                .get(0);
        assertEquals(rod.figures().weightG(), own.rod().figures().weightG(), 0);
        for (int i = 1; i <= rod.setting().guideCount(); i++) {
            assertEquals(rod.setting().guideMm(i), TrainDesign.placesMm(own.rod())[i - 1], 0);
        }
    }

    /** Fewer guides are as good only where they clear the blank and turn the line no more, to a tenth. */
    @Test
    void fewerAreAsGoodOnlyWhereTheyAre() {
        TrainDesign design = TrainDesign.of(rod, stiffness, Pose.working(rod.brief()));
        TrainDesign.Train own = design.trains().get(0);
        Optional<TrainDesign.Train> fewer = design.trains().stream()
                .filter(t -> t.count() == own.count() - 1)
                .findFirst();
        boolean expected = fewer.isPresent()
                && fewer.get().leastGapMm() > 0
                && fewer.get().largestTurnRad() <= 1.1 * own.largestTurnRad();
        assertEquals(fewer.isPresent() ? expected : null, design.fewerIsAsGood());
    }

    /** Spinning: the stripper's ring inside is 0.35–0.5 of the lip (trade table, common practice); heights fall toward the choke. */
    @Test
    void placesAskForSmallerRingsTowardTheTip() {
        TrainDesign design = TrainDesign.of(rod, stiffness, Pose.working(rod.brief()));
        double lip = rod.brief().reel().lipDiameterMm();
        TrainDesign.Want stripper = design.wants().get(0);
        assertEquals(0.35 * lip, stripper.ringIdMinMm(), 1e-9);
        assertEquals(0.5 * lip, stripper.ringIdMaxMm(), 1e-9);
        for (int i = 1; i < design.wants().size(); i++) {
            assertTrue(design.wants().get(i).heightMm()
                    <= design.wants().get(i - 1).heightMm());
            assertTrue(design.wants().get(i).ringIdMaxMm()
                    <= design.wants().get(i - 1).ringIdMaxMm());
        }
    }
}
