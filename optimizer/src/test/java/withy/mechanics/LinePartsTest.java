package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.mechanics.BendResult.Node;
import withy.mechanics.LineCase.Ring;

/** Rod and line piece by piece: each figure worked out again from the places that are told. */
class LinePartsTest {
    private static final double L = 2000.0;
    private static final double CLAMP = 350.0;
    private static final double PULL_N = 9.0;
    private static final StiffnessProfile BLANK =
            StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 11, 3), 2.4e7, 3);
    private static final Ring REEL = new Ring(280, 60);
    private static final List<Ring> RINGS =
            List.of(new Ring(700, 35), new Ring(1100, 18), new Ring(1450, 9), new Ring(1750, 7), new Ring(L, 4));

    private static LineCase line(double clampRad, double pullRad, PointLoad... loads) {
        BendCase held = new BendCase(BLANK, CLAMP, clampRad, null, List.of(loads));
        return new LineCase(held, RINGS, REEL, PULL_N, pullRad);
    }

    private static LineResult.Held held(LineCase line) {
        LineResult result = LineThroughRings.solve(line);
        return assertInstanceOf(LineResult.Held.class, result, result::toString);
    }

    /** Of each ring: the line's tension along the way to the next and along the way back, and the angle between the two. */
    @Test
    void forcesOnRings() {
        double pull = -0.5;
        LineResult.Held held = held(line(0.6, pull));
        double backX = held.reelXMm();
        double backY = held.reelYMm();
        int many = held.rings().size();
        assertEquals(5, many);
        double length = 0;
        for (int i = 0; i < many; i++) {
            LineResult.RingLoad ring = held.rings().get(i);
            assertEquals(RINGS.get(i).sMm(), ring.sMm());
            double ahead = i == many - 1
                    ? pull
                    : Math.atan2(
                            held.rings().get(i + 1).yMm() - ring.yMm(),
                            held.rings().get(i + 1).xMm() - ring.xMm());
            double here = Math.atan2(ring.yMm() - backY, ring.xMm() - backX);
            assertEquals(PULL_N * (Math.cos(ahead) - Math.cos(here)), ring.forwardN(), 1e-6, "ring " + i);
            assertEquals(PULL_N * (Math.sin(ahead) - Math.sin(here)), ring.upN(), 1e-6, "ring " + i);
            assertEquals(ahead - here, ring.turnRad(), 1e-7, "ring " + i);
            length += Math.hypot(ring.xMm() - backX, ring.yMm() - backY);
            backX = ring.xMm();
            backY = ring.yMm();
        }
        assertEquals(length, held.lineMm(), 1e-6);
    }

    /** Behind the clamp the blank is straight: the reel stands 70 mm back along it and 60 mm square to it, at any angle of the clamp. */
    @Test
    void theReelsPlace() {
        for (double clamp : new double[] {-0.3, 0.0, 0.9}) {
            LineResult.Held held = held(line(clamp, -0.4));
            assertEquals(-70 * Math.cos(clamp) - 60 * Math.sin(clamp), held.reelXMm(), 1e-6);
            assertEquals(-70 * Math.sin(clamp) + 60 * Math.cos(clamp), held.reelYMm(), 1e-6);
        }
    }

    /** Each ring stands off the axis by its height, square to the blank there; nodes divide each span in tenths or finer. */
    @Test
    void ringsStandOnTheBlankAndNodesLieClose() {
        LineResult.Held held = held(line(0.5, -0.6));
        for (int i = 0; i < RINGS.size(); i++) {
            LineResult.RingLoad ring = held.rings().get(i);
            Node at = held.nodes().stream()
                    .filter(node -> Math.abs(node.sMm() - ring.sMm()) < 1e-6)
                    .findFirst()
                    .orElseThrow();
            double height = RINGS.get(i).offsetMm();
            assertEquals(at.xMm() - height * Math.sin(at.angleRad()), ring.xMm(), 1e-6);
            assertEquals(at.yMm() + height * Math.cos(at.angleRad()), ring.yMm(), 1e-6);
        }
        for (int i = 1; i < held.nodes().size(); i++) {
            Node before = held.nodes().get(i - 1);
            Node node = held.nodes().get(i);
            double step = node.sMm() - before.sMm();
            assertTrue(step >= 0 && step <= 40 + 1e-6, before.sMm() + " to " + node.sMm());
            double chord = Math.hypot(node.xMm() - before.xMm(), node.yMm() - before.yMm());
            assertTrue(chord <= step + 1e-9 && chord >= step * (1 - 1e-3), "a blank does not stretch");
        }
        assertTrue(
                held.nodes().size() >= 51 && held.nodes().size() < 75,
                "nodes: " + held.nodes().size());
    }

    /** A slanted force and a couple on the blank, beside the line: the lever sum must meet the root moment, and energy falls by their ways. */
    @Test
    void otherLoadsBesideTheLine() {
        LineResult.Held middle = held(line(0.5, -0.5, new PointLoad(1450, 0.3, -0.4, 200)));
        assertEquals(middle.leverMomentNmm(), middle.rootMomentNmm(), 1e-6 * Math.abs(middle.rootMomentNmm()));
        Node at = middle.nodes().stream()
                .filter(node -> Math.abs(node.sMm() - 1450) < 1e-6)
                .findFirst()
                .orElseThrow();
        double h = 1e-3;
        double forward = energy(0.3 + h, -0.4, 200) - energy(0.3 - h, -0.4, 200);
        assertEquals(-at.xMm(), forward / (2 * h), 1e-3 * at.xMm());
        double up = energy(0.3, -0.4 + h, 200) - energy(0.3, -0.4 - h, 200);
        assertEquals(-at.yMm(), up / (2 * h), 1e-3 * Math.abs(at.yMm()) + 0.05);
        double couple = energy(0.3, -0.4, 201) - energy(0.3, -0.4, 199);
        assertEquals(-at.angleRad(), couple / 2, 1e-3);
    }

    private static double energy(double forward, double up, double couple) {
        return held(line(0.5, -0.5, new PointLoad(1450, forward, up, couple))).energyNmm();
    }

    /** On a straight level blank the guess is the slope from ring to ring, counted from the pull; within a whole turn. */
    @Test
    void theGuessIsTheSlopeFromRingToRing() {
        BentAxis level = new BentAxis(List.of(new Node(CLAMP, 0, 0, 0, 0), new Node(L, L - CLAMP, 0, 0, 0)));
        double pull = -0.5;
        double[] expected = {
            0.5,
            Math.atan2(4 - 7, 250) + 0.5,
            Math.atan2(7 - 9, 300) + 0.5,
            Math.atan2(9 - 18, 350) + 0.5,
            Math.atan2(18 - 35, 400) + 0.5,
            Math.atan2(35 - 60, 420) + 0.5
        };
        assertArrayEquals(expected, new LineShooter(line(0, pull), 0.5).guess(level), 1e-9);
        double[] around = new LineShooter(line(0, pull + 2 * Math.PI), 0.5).guess(level);
        assertArrayEquals(expected, around, 1e-9);
    }

    /** Slopes by differences are those of the misses themselves, column by column. */
    @Test
    void slopesOfTheMisses() {
        LineShooter shooter = new LineShooter(line(0.4, -0.5), 0.9);
        double[] at = {0.2, 0.3, 0.4, 0.55, 0.6, 0.7};
        double[] misses = shooter.misses(at);
        double[][] slopes = shooter.slopes(at, misses);
        for (int k = 0; k < at.length; k++) {
            double[] more = at.clone();
            double[] less = at.clone();
            more[k] += 1e-4;
            less[k] -= 1e-4;
            double[] up = shooter.misses(more);
            double[] down = shooter.misses(less);
            for (int i = 0; i < at.length; i++) {
                double expected = (up[i] - down[i]) / 2e-4;
                assertEquals(expected, slopes[i][k], 1e-4 * (1 + Math.abs(expected)), i + " by " + k);
            }
        }
    }

    /** Rings in order ahead of the clamp, the last the tip-top, the reel behind the first. */
    @Test
    void whereRingsMayStand() {
        BendCase held = new BendCase(BLANK, CLAMP, 0, null, List.of());
        LineCase fine = new LineCase(
                held, List.of(new Ring(CLAMP + 1e-3, 5), new Ring(L - 5e-7, 4)), new Ring(CLAMP, 60), 3, 0);
        assertEquals(2, fine.rings().size());
        assertTold("must stand ahead of the clamp", held, List.of(new Ring(CLAMP, 5), new Ring(L, 4)), REEL, 3);
        assertTold("in order", held, List.of(new Ring(900, 5), new Ring(900, 5), new Ring(L, 4)), REEL, 3);
        assertTold("must be the tip-top", held, List.of(new Ring(900, 5), new Ring(L - 2e-6, 4)), REEL, 3);
        assertTold("behind the first ring", held, List.of(new Ring(900, 5), new Ring(L, 4)), new Ring(900, 60), 3);
        assertTold("at least the tip-top", held, List.of(), REEL, 3);
        assertTold("pull in the line", held, RINGS, REEL, 0);
    }

    private static void assertTold(String told, BendCase held, List<Ring> rings, Ring reel, double tension) {
        String message = assertThrows(IllegalArgumentException.class, () -> new LineCase(held, rings, reel, tension, 0))
                .getMessage();
        assertTrue(message.contains(told), message);
    }

    /** A pull that no blank stands is said to be too much, with its size. */
    @Test
    void aHopelessPullIsToldWithItsSize() {
        BendCase held = new BendCase(BLANK, CLAMP, 1.4, null, List.of());
        LineResult result = LineThroughRings.solve(new LineCase(held, RINGS, REEL, 9_000, -1.4));
        String reason = assertInstanceOf(LineResult.NotConverged.class, result).reason();
        assertTrue(reason.contains("9000.0 N") || reason.contains("coil"), reason);
    }
}
