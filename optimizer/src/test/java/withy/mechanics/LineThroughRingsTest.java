package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import withy.mechanics.LineCase.Ring;

/** No published table of a rod with a line was found: checked by equilibrium, energy and the limits that have one. */
class LineThroughRingsTest {
    private static final double L = 2080.0;
    private static final double CLAMP = 380.0;
    private static final StiffnessProfile BLANK = StiffnessProfile.OfDiameter.withButt(
            new TaperProfile(new double[] {0, 1012, 1012, L}, new double[] {11.4, 6.5, 8.1, 1.7}), 33e6, 3);
    private static final TubeMass OWN = TubeMass.of(
            new TaperProfile(new double[] {0, 1012, 1012, L}, new double[] {11.4, 6.5, 8.1, 1.7}),
            52.0,
            1.0,
            List.of());

    private static LineCase rod(double side, double tensionN, double clampDeg, double pullDeg) {
        double[] from = {1390, 1010, 750, 530, 350, 205, 95};
        double[] height = {30, 18, 10, 7, 6, 6, 6};
        List<Ring> rings = new ArrayList<>();
        for (int i = 0; i < from.length; i++) {
            rings.add(new Ring(L - from[i], side * (height[i] + 2)));
        }
        rings.add(new Ring(L, side * 4));
        BendCase held = new BendCase(
                BLANK,
                CLAMP,
                Math.toRadians(clampDeg),
                OWN,
                List.of(PointLoad.hung(690, 3.1), PointLoad.hung(1330, 0.4), PointLoad.hung(L, 0.5)));
        return new LineCase(held, rings, new Ring(300, side * 46), tensionN, Math.toRadians(pullDeg));
    }

    private static LineResult.Held held(LineCase line) {
        LineResult result = LineThroughRings.solve(line);
        return assertInstanceOf(LineResult.Held.class, result, result::toString);
    }

    /** Equilibrium at every node from the places alone: pull, line in the span and weights outboard; 1e-6 of the root moment. */
    @Test
    void everyNodeIsInEquilibrium() {
        for (double side : new double[] {-1, 1}) {
            LineResult.Held held = held(rod(side, 18.0, 45, 0));
            LineResult.RingLoad tip = held.rings().get(held.rings().size() - 1);
            for (BendResult.Node node : held.nodes()) {
                int ring = 0;
                while (held.rings().get(ring).sMm() <= node.sMm() + 1e-9
                        && ring < held.rings().size() - 1) {
                    ring++;
                }
                LineResult.RingLoad next = held.rings().get(ring);
                double fromX =
                        ring == 0 ? held.reelXMm() : held.rings().get(ring - 1).xMm();
                double fromY =
                        ring == 0 ? held.reelYMm() : held.rings().get(ring - 1).yMm();
                double span = Math.hypot(next.xMm() - fromX, next.yMm() - fromY);
                double moment = -18.0 * (tip.yMm() - node.yMm())
                        + 18.0
                                * ((next.xMm() - node.xMm()) * (fromY - next.yMm())
                                        - (next.yMm() - node.yMm()) * (fromX - next.xMm()))
                                / span;
                moment -= weights(held, node);
                if (held.rings().stream().noneMatch(r -> Math.abs(r.sMm() - node.sMm()) < 1e-9)) {
                    assertEquals(moment, node.momentNmm(), 2e-4 * Math.abs(held.rootMomentNmm()), "at " + node.sMm());
                }
            }
            assertEquals(held.leverMomentNmm(), held.rootMomentNmm(), 1e-6 * Math.abs(held.rootMomentNmm()));
        }
    }

    /** Moment of blank and guides outboard of a node, blank by midpoints between nodes. */
    private static double weights(LineResult.Held held, BendResult.Node node) {
        double moment = 0.0;
        List<BendResult.Node> nodes = held.nodes();
        for (int i = 1; i < nodes.size(); i++) {
            BendResult.Node a = nodes.get(i - 1);
            BendResult.Node b = nodes.get(i);
            if (a.sMm() >= node.sMm() - 1e-9 && b.sMm() > a.sMm()) {
                double middle = (a.sMm() + b.sMm()) / 2;
                moment += OWN.perLengthGPerMm(middle)
                        * (b.sMm() - a.sMm())
                        * ((a.xMm() + b.xMm()) / 2 - node.xMm())
                        * MassSum.NMM_PER_GMM;
            }
        }
        double[][] masses = {{690, 3.1}, {1330, 0.4}, {L, 0.5}};
        for (double[] mass : masses) {
            for (BendResult.Node at : nodes) {
                if (Math.abs(at.sMm() - mass[0]) < 1e-6) {
                    if (mass[0] >= node.sMm() - 1e-9) {
                        moment += mass[1] * MassSum.NMM_PER_GMM * (at.xMm() - node.xMm());
                    }
                    break;
                }
            }
        }
        return moment;
    }

    /** Energy: d(energy)/d(tension) is the line's length less the tip's way along the pull (envelope theorem); central difference. */
    @Test
    void energyGrowsByTheLineForEachNewton() {
        SplittableRandom random = new SplittableRandom(11L);
        for (int run = 0; run < 8; run++) {
            double side = run % 2 == 0 ? -1 : 1;
            double tension = random.nextDouble(3.0, 25.0);
            double clamp = random.nextDouble(10.0, 70.0);
            double pull = random.nextDouble(-30.0, 5.0);
            double h = 1e-3 * tension;
            LineResult.Held middle = held(rod(side, tension, clamp, pull));
            double difference = held(rod(side, tension + h, clamp, pull)).energyNmm()
                    - held(rod(side, tension - h, clamp, pull)).energyNmm();
            LineResult.RingLoad tip = middle.rings().get(middle.rings().size() - 1);
            double expected = middle.lineMm()
                    - tip.xMm() * Math.cos(Math.toRadians(pull))
                    - tip.yMm() * Math.sin(Math.toRadians(pull));
            assertEquals(expected, difference / (2 * h), 1e-4 * Math.abs(expected), "run " + run + " of seed 11");
        }
    }

    /** Limit: with rings on the axis and many of them, rod and line together carry the pull alone, so the shape nears that without rings. */
    @Test
    void manyRingsOnTheAxisAreAPullAtTheTip() {
        double before = Double.MAX_VALUE;
        BendCase bare = new BendCase(BLANK, CLAMP, 0.5, null, List.of(PointLoad.pull(L, 12.0, -0.3)));
        double expected = assertInstanceOf(BendResult.Bent.class, BendUnderLoad.solve(bare))
                .dropMm();
        for (int count : new int[] {8, 16, 32}) {
            List<Ring> rings = new ArrayList<>();
            for (int i = 1; i <= count; i++) {
                rings.add(new Ring(CLAMP + (L - CLAMP) * i / count, 0.0));
            }
            BendCase held = new BendCase(BLANK, CLAMP, 0.5, null, List.of());
            double drop = held(new LineCase(held, rings, new Ring(CLAMP - 50, 0.0), 12.0, -0.3))
                    .dropMm();
            double miss = Math.abs(drop - expected);
            assertTrue(miss < before / 3, count + " rings miss by " + miss + " after " + before);
            before = miss;
        }
        assertTrue(before < 0.01 * expected, "misses by " + before);
    }

    /** What no one pulls hangs as it would without a line. */
    @Test
    void aTinyPullLeavesTheDroop() {
        LineResult.Held held = held(rod(-1, 1e-6, 0, 0));
        BendResult.Bent droop = assertInstanceOf(
                BendResult.Bent.class, BendUnderLoad.solve(rod(-1, 1e-6, 0, 0).held()));
        assertEquals(droop.dropMm(), held.dropMm(), 1e-2);
    }

    /** Rings above the blank are pressed toward it, rings below pulled off it, when the rod bends down. */
    @Test
    void theLinePullsRingsBelowOffTheBlank() {
        for (double side : new double[] {-1, 1}) {
            LineResult.Held held = held(rod(side, 20.0, 30, -80));
            for (LineResult.RingLoad ring : held.rings()) {
                BendResult.Node at = held.nodes().stream()
                        .filter(node -> Math.abs(node.sMm() - ring.sMm()) < 1e-6)
                        .findFirst()
                        .orElseThrow();
                double off = -ring.forwardN() * Math.sin(at.angleRad()) + ring.upN() * Math.cos(at.angleRad());
                assertTrue(off < 0.0, "ring at " + ring.sMm() + ", side " + side + ": " + off + " N");
            }
        }
    }

    /** Seed 12: random rods, pulls and directions: believed or said not to be, never wrong. */
    @Test
    void randomRodsAreInEquilibriumOrSaidNotToBe() {
        SplittableRandom random = new SplittableRandom(12L);
        int believed = 0;
        for (int run = 0; run < 40; run++) {
            LineCase line = rod(
                    random.nextBoolean() ? 1 : -1,
                    random.nextDouble(1.0, 60.0),
                    random.nextDouble(-10.0, 80.0),
                    random.nextDouble(-90.0, 10.0));
            if (LineThroughRings.solve(line) instanceof LineResult.Held held) {
                believed++;
                double scale = held.nodes().stream()
                        .mapToDouble(n -> Math.abs(n.momentNmm()))
                        .max()
                        .orElse(0);
                assertEquals(held.leverMomentNmm(), held.rootMomentNmm(), 1e-6 * scale, "run " + run + " of seed 12");
            }
        }
        assertTrue(believed >= 36, believed + " of 40");
    }

    @Test
    void refusesRingsThatAreNotAhead() {
        BendCase held = new BendCase(BLANK, CLAMP, 0.0, null, List.of());
        assertThrows(
                IllegalArgumentException.class,
                () -> new LineCase(held, List.of(new Ring(CLAMP, 5)), new Ring(200, 5), 5, 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> new LineCase(held, List.of(new Ring(L - 1, 5)), new Ring(200, 5), 5, 0));
        assertThrows(
                IllegalArgumentException.class,
                () -> new LineCase(held, List.of(new Ring(L, 5)), new Ring(L, 5), 5, 0));
        assertThrows(IllegalArgumentException.class, () -> new LineCase(held, List.of(), new Ring(200, 5), 5, 0));
    }
}
