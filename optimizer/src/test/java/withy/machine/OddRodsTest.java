package withy.machine;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import withy.fixture.Fixtures;
import withy.mechanics.BendResult;
import withy.rod.Rod;
import withy.rod.Station;

/** Rods no rule would let pass are measured too: each figure is there and believed, or its absence has a reason. Never a failure. */
class OddRodsTest {
    private static RodMachine machine(Rod rod) {
        return RodMachine.of(rod, BlankStiffness.of(rod.setting().shape()), Pose.working(rod.brief()), List.of());
    }

    private static void told(RodMachine machine, String what) {
        for (LineBend bend : new LineBend[] {machine.working(), machine.staticTest()}) {
            if (bend != null) {
                assertEquals(bend.held() == null, bend.doubt() != null, what);
                assertEquals(bend.held() == null, Double.isNaN(bend.handMomentNmm()), what);
            }
        }
        if (machine.quickness().doubt() == null) {
            assertTrue(machine.quickness().finishedHz() > 0, what);
        }
        machine.hung()
                .forEach(hung -> assertNotNull(
                        hung.bend() instanceof BendResult.NotConverged no ? no.reason() : hung.bend(), what));
    }

    /** Seed 41: reel foot, count and parts at random, stations left empty. */
    @Test
    void oddRodsAreMeasuredOrSaidNotToBe() {
        SplittableRandom random = new SplittableRandom(41L);
        for (int run = 0; run < 25; run++) {
            Fixtures odd = random.nextInt(3) == 0 ? Fixtures.legal().casting() : Fixtures.legal();
            odd.layout("reelFootMm", 5 * random.nextInt(8, 400));
            odd.layout("guideCount", random.nextInt(1, 13));
            for (Station station : List.of(
                    Station.TIP_TOP,
                    Station.SEAT,
                    Station.BUTT_CAP,
                    Station.REAR_GRIP,
                    Station.guide(1),
                    Station.guide(3))) {
                if (random.nextInt(6) == 0) {
                    odd.empty(station);
                }
            }
            if (random.nextInt(4) == 0) {
                odd.brief("dragKg", random.nextDouble(0.1, 60));
            }
            Rod rod = odd.rod();
            String what = "run " + run + " of seed 41: " + rod.build().signature();
            told(machine(rod), what);
            TrainDesign design =
                    TrainDesign.of(rod, BlankStiffness.of(rod.setting().shape()), Pose.working(rod.brief()));
            assertTrue(!design.trains().isEmpty(), what);
        }
    }

    /** Property, seed 42: at random poses the hand's moment and the clamp's agree with the levers, or no shape is handed out. */
    @Test
    void randomPosesAreBelievedOrRefused() {
        Rod rod = Fixtures.legal().rod();
        RodBend bend = new RodBend(rod, BlankStiffness.of(rod.setting().shape()));
        SplittableRandom random = new SplittableRandom(42L);
        int believed = 0;
        for (int run = 0; run < 40; run++) {
            Pose pose = new Pose(random.nextDouble(-20, 85), random.nextDouble(-100, 20), random.nextDouble(0.5, 60));
            LineBend line = bend.line(pose);
            if (line.held() != null) {
                believed++;
                double scale = Math.max(1, Math.abs(line.held().rootMomentNmm()));
                assertEquals(
                        line.held().leverMomentNmm(),
                        line.held().rootMomentNmm(),
                        1e-6 * scale + 1e-3,
                        "run " + run + " of seed 42: " + pose);
            }
        }
        assertTrue(believed >= 30, believed + " of 40");
    }
}
