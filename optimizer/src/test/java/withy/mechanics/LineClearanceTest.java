package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.mechanics.BendResult.Node;
import withy.mechanics.LineResult.RingLoad;

/** Clearances by hand: a straight blank of 10 to 6 mm, rings 30 and 10 mm off its axis, the reel 70 mm off. */
class LineClearanceTest {
    private static final TaperProfile BLANK = TaperProfile.straight(1000, 10, 6);

    /** Nodes every 100 mm from the clamp at 200, all turned by an angle and moved; distances along and off the axis stay. */
    private static LineResult.Held held(double angle, double x, double y, int side) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        List<Node> nodes = new ArrayList<>();
        for (int s = 200; s <= 1000; s += 100) {
            nodes.add(new Node(s, x + (s - 200) * cos, y + (s - 200) * sin, angle, 0));
        }
        double[] reel = {x - 100 * cos - side * 70 * sin, y - 100 * sin + side * 70 * cos};
        double[][] at = {{500, 30}, {1000, 10}};
        List<RingLoad> rings = new ArrayList<>();
        for (double[] ring : at) {
            double along = ring[0] - 200;
            double off = side * ring[1];
            rings.add(new RingLoad(ring[0], x + along * cos - off * sin, y + along * sin + off * cos, 0, 0, 0));
        }
        return new LineResult.Held(nodes, rings, reel[0], reel[1], 0, 0, 0, 0, 0);
    }

    /**
     * From the reel 100 mm behind the clamp the line falls 40 mm in 400: at s it is 70 − 0.1·(s − 100) off, less half a blank of 10 − 0.004·s, less
     * half the line; least at the last node before the ring. From ring to tip-top it falls 20 mm in 500.
     */
    @Test
    void byHand() {
        for (int side : new int[] {1, -1}) {
            for (double angle : new double[] {0, 0.4, -1.2, 2.0}) {
                List<LineClearance.Approach> near = LineClearance.of(held(angle, 17, -5, side), BLANK, 0.4, side);
                assertEquals(2, near.size());
                assertEquals(1, near.get(0).ring());
                assertEquals(400, near.get(0).sMm());
                assertEquals(40 - (10 - 1.6) / 2 - 0.2, near.get(0).gapMm(), 1e-9);
                assertEquals(2, near.get(1).ring());
                assertEquals(900, near.get(1).sMm());
                assertEquals(14 - (10 - 3.6) / 2 - 0.2, near.get(1).gapMm(), 1e-9);
            }
        }
    }

    /** On the wrong side everything lies below the blank. */
    @Test
    void theSideCounts() {
        List<LineClearance.Approach> near = LineClearance.of(held(0, 0, 0, 1), BLANK, 0.4, -1);
        assertEquals(200, near.get(0).sMm());
        assertEquals(-60 - (10 - 0.8) / 2 - 0.2, near.get(0).gapMm(), 1e-9);
        assertEquals(600, near.get(1).sMm());
        assertEquals(-26 - (10 - 2.4) / 2 - 0.2, near.get(1).gapMm(), 1e-9);
    }

    /** Nodes at a ring belong to no span, and a span without a node between has no approach. */
    @Test
    void nodesAtRingsAreLeftOut() {
        List<Node> nodes = List.of(
                new Node(200, 0, 0, 0, 0),
                new Node(500, 300, 0, 0, 0),
                new Node(700, 500, 0, 0, 0),
                new Node(1000, 800, 0, 0, 0));
        List<RingLoad> rings = List.of(
                new RingLoad(500, 300, 30, 0, 0, 0),
                new RingLoad(700, 500, 20, 0, 0, 0),
                new RingLoad(1000, 800, 10, 0, 0, 0));
        LineResult.Held held = new LineResult.Held(nodes, rings, -100, 70, 0, 0, 0, 0, 0);
        List<LineClearance.Approach> near = LineClearance.of(held, BLANK, 0, 1);
        assertEquals(List.of(new LineClearance.Approach(1, 200, 60 - 4.6)), near);
        assertEquals(new Node(1000, 800, 0, 0, 0), held.tip());
    }

    /** Where the blank has a step the butt's side counts: it is the thicker. */
    @Test
    void aStepCountsOnItsThickSide() {
        TaperProfile stepped = new TaperProfile(new double[] {0, 400, 400, 1000}, new double[] {12, 12, 6, 6});
        assertEquals(
                40 - 6 - 0.2,
                LineClearance.of(held(0, 0, 0, 1), stepped, 0.4, 1).get(0).gapMm(),
                1e-9);
    }

    /** A line that stands square to the blank has no place on the normal but its ring's. */
    @Test
    void aLineAcrossTheBlankIsAsFarAsItsRing() {
        List<Node> nodes = List.of(new Node(200, 0, 0, 0, 0), new Node(600, 400, 0, 0, 0));
        List<RingLoad> rings = List.of(new RingLoad(600, 50, 25, 0, 0, 0));
        LineResult.Held held = new LineResult.Held(nodes, rings, 50, 90, 0, 0, 0, 0, 0);
        assertEquals(25 - 4.6, LineClearance.of(held, BLANK, 0, 1).get(0).gapMm(), 1e-9);
    }
}
