package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.mechanics.BendResult.Bent;
import withy.mechanics.BendResult.Node;
import withy.mechanics.BendResult.NotConverged;

/** Single parts of a bend: what acts, what is believed, the axis between nodes, energy. */
class BendPartsTest {
    private static final double L = 2100.0;
    private static final double EI = 4.0e6;

    private static StiffnessProfile even() {
        return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10, 10), EI, 0);
    }

    private static Bent bent(BendCase held) {
        BendResult result = BendUnderLoad.solve(held);
        return assertInstanceOf(Bent.class, result, () -> String.valueOf(result));
    }

    /** From tip to clamp; nothing at or behind the clamp, nothing without force or couple, no lump beyond the tip. */
    @Test
    void loadsAheadOfTheClamp() {
        TubeMass own = TubeMass.of(
                TaperProfile.straight(L + 100, 10, 10),
                60,
                1,
                List.of(
                        new TubeMass.Lump(300, 1),
                        new TubeMass.Lump(900, 2),
                        new TubeMass.Lump(L, 3),
                        new TubeMass.Lump(L + 50, 4)));
        PointLoad twist = new PointLoad(700, 0, 0, -5);
        BendCase held = new BendCase(
                even(),
                300,
                0,
                own,
                List.of(
                        PointLoad.hung(300, 9),
                        new PointLoad(500, 0, 0, 0),
                        twist,
                        PointLoad.hung(301, 8),
                        PointLoad.hung(1500, 7)));
        List<PointLoad> ahead = held.loadsAhead();
        assertEquals(
                List.of(L, 1500.0, 900.0, 700.0, 301.0),
                ahead.stream().map(PointLoad::sMm).toList());
        assertSame(twist, ahead.get(3));
        assertEquals(3 * 9.80665e-3, ahead.get(0).size(), 1e-12);
    }

    /** The clamp's direction counted from the load's: level under a weight is a quarter turn, whatever twists ahead of it. */
    @Test
    void turnFromTheOutermostForce() {
        PointLoad twist = new PointLoad(L, 0, 0, 50);
        PointLoad hung = PointLoad.hung(900, 20);
        assertEquals(Math.PI / 2, BendUnderLoad.turn(new BendCase(even(), 0, 0, null, List.of(twist, hung))), 1e-12);
        assertEquals(Math.PI / 2, BendUnderLoad.turn(new BendCase(even(), 0, 0, null, List.of(twist))), 1e-12);
        PointLoad up = PointLoad.pull(L, 3, 2.0);
        assertEquals(-1.4, BendUnderLoad.turn(new BendCase(even(), 0, 0.6, null, List.of(hung, up))), 1e-12);
    }

    @Test
    void withoutLoadItStandsStraight() {
        Bent shape = bent(new BendCase(even(), 100, 0.3, null, List.of(PointLoad.hung(50, 500))));
        assertEquals(2000 * Math.sin(0.3), shape.tip().yMm(), 1e-9);
        assertEquals(2000 * Math.cos(0.3), shape.tip().xMm(), 1e-9);
        assertEquals(100, shape.nodes().get(0).sMm());
        assertEquals(L, shape.tip().sMm());
        assertEquals(0.3, shape.tip().angleRad());
    }

    private static Bent made(Node tip, double rootMoment, double leverMoment, double energy) {
        return new Bent(List.of(new Node(0, 0, 0, 0.2, -1000), tip), 0, rootMoment, leverMoment, energy);
    }

    /** Believed to 1e-8 radians and to a millionth of the largest moment, and only with numbers throughout. */
    @Test
    void whatIsBelieved() {
        Node tip = new Node(L, 2000, 300, 0.1, 0);
        BendCase held = new BendCase(even(), 0, 0.2 + 0.9e-8, null, List.of());
        assertSame(
                Bent.class,
                BendUnderLoad.believed(held, made(tip, -1000, -1000.0009, 5)).getClass());
        NotConverged lever =
                assertInstanceOf(NotConverged.class, BendUnderLoad.believed(held, made(tip, -1000, -1000.0011, 5)));
        assertTrue(lever.reason().contains("1.1e-03 N·mm"), lever.reason());
        BendCase off = new BendCase(even(), 0, 0.2 + 1.1e-8, null, List.of());
        NotConverged angle =
                assertInstanceOf(NotConverged.class, BendUnderLoad.believed(off, made(tip, -1000, -1000, 5)));
        assertTrue(angle.reason().contains("1.1e-08 radians"), angle.reason());
        for (Node bad : List.of(
                new Node(L, Double.NaN, 300, 0.1, 0),
                new Node(L, 2000, Double.NEGATIVE_INFINITY, 0.1, 0),
                new Node(L, 2000, 300, Double.NaN, 0),
                new Node(L, 2000, 300, 0.1, Double.POSITIVE_INFINITY),
                new Node(L, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY, 0.1, 0))) {
            NotConverged none =
                    assertInstanceOf(NotConverged.class, BendUnderLoad.believed(held, made(bad, -1000, -1000, 5)));
            assertTrue(none.reason().contains("2100.0 mm"), none.reason());
        }
        assertInstanceOf(
                NotConverged.class, BendUnderLoad.believed(held, made(tip, -1000, -1000, Double.POSITIVE_INFINITY)));
    }

    /** A rough search may put the root a hair outside its bracket, by a hundredth of its width; farther off there is none. */
    @Test
    void rootsOfARoughSearch() {
        assertEquals(0.5, BendUnderLoad.root(x -> x - 0.5, 0, 1).orElseThrow(), 1e-12);
        assertEquals(1.009, BendUnderLoad.root(x -> x - 1.009, 0, 1).orElseThrow(), 1e-12);
        assertEquals(-0.009, BendUnderLoad.root(x -> x + 0.009, 0, 1).orElseThrow(), 1e-12);
        assertTrue(BendUnderLoad.root(x -> x - 1.011, 0, 1).isEmpty());
        assertTrue(BendUnderLoad.root(x -> x + 0.011, 0, 1).isEmpty());
        assertEquals(0.5009, BendUnderLoad.root(x -> x - 0.5009, 0.4, 0.5).orElseThrow(), 1e-12);
        assertTrue(BendUnderLoad.root(x -> x - 0.5011, 0.4, 0.5).isEmpty());
        assertTrue(BendUnderLoad.root(x -> x - 7.02, 0, 7).isEmpty());
    }

    @Test
    void aHopelessLoadIsToldWithTheClampsAngle() {
        PointLoad load = new PointLoad(L, 0.0, -1e5 * EI / (L * L), 0.0);
        BendResult result = BendUnderLoad.solve(new BendCase(even(), 0, Math.toRadians(45), null, List.of(load)));
        String reason = assertInstanceOf(NotConverged.class, result).reason();
        assertTrue(reason.contains("clamp at 45.0 degrees"), reason);
    }

    /** Castigliano: the energy falls by the tip's way forward for each newton forward, and by its turn for each N·mm; central difference. */
    @Test
    void energyFallsByTheWayOfEachForceAndCouple() {
        TubeMass own = TubeMass.of(TaperProfile.straight(L, 10, 10), 40, 1, List.of());
        double[] energy = new double[4];
        double[][] steps = {{1e-3, 0}, {-1e-3, 0}, {0, 1}, {0, -1}};
        for (int i = 0; i < 4; i++) {
            energy[i] = bent(new BendCase(even(), 0, 0.5, own, List.of(at(steps[i][0], steps[i][1]))))
                    .energyNmm();
        }
        Bent middle = bent(new BendCase(even(), 0, 0.5, own, List.of(at(0, 0))));
        assertEquals(
                -middle.tip().xMm(),
                (energy[0] - energy[1]) / 2e-3,
                1e-4 * middle.tip().xMm());
        assertEquals(-middle.tip().angleRad(), (energy[2] - energy[3]) / 2, 1e-4);
        assertTrue(Math.abs(middle.tip().angleRad()) > 0.1, "the tip turns");
    }

    private static PointLoad at(double forward, double couple) {
        return new PointLoad(L, 0.8 + forward, -1.5, 300 + couple);
    }

    /** What bends the rod at each node is the weight times its lever there, and the curvature between two nodes is the moment over EI. */
    @Test
    void theMomentAtEachNode() {
        Bent shape = bent(new BendCase(even(), 200, 0.4, null, List.of(PointLoad.hung(L, 150))));
        assertTrue(shape.nodes().size() > 30, "nodes: " + shape.nodes().size());
        double newtons = 150 * 9.80665e-3;
        for (int i = 0; i < shape.nodes().size(); i++) {
            Node node = shape.nodes().get(i);
            assertEquals(-newtons * (shape.tip().xMm() - node.xMm()), node.momentNmm(), 1e-3, "at " + node.sMm());
            if (i > 0) {
                Node before = shape.nodes().get(i - 1);
                double mean = (node.momentNmm() + before.momentNmm()) / 2;
                double turn = mean * (node.sMm() - before.sMm()) / EI;
                assertEquals(turn, node.angleRad() - before.angleRad(), 2e-5, "at " + node.sMm());
            }
        }
    }

    /** A circle of 1,000 mm: cubic between nodes a tenth of a radian apart it is met to 1e-6 of its radius, normal and all. */
    @Test
    void theAxisOfACircle() {
        List<Node> nodes = new ArrayList<>();
        for (int i = 0; i <= 10; i++) {
            double a = 0.2 - 0.1 * i;
            nodes.add(new Node(
                    500 + 100 * i, 1000 * (Math.sin(0.2) - Math.sin(a)), 1000 * (Math.cos(a) - Math.cos(0.2)), a, 7));
        }
        BentAxis axis = new BentAxis(nodes);
        for (double s : new double[] {500, 525, 550, 610, 777, 900, 1490, 1500}) {
            double a = 0.2 - (s - 500) / 1000;
            Node at = axis.at(s);
            assertEquals(1000 * (Math.sin(0.2) - Math.sin(a)), at.xMm(), 1e-3, "at " + s);
            assertEquals(1000 * (Math.cos(a) - Math.cos(0.2)), at.yMm(), 1e-3, "at " + s);
            assertEquals(a, at.angleRad(), 1e-12, "at " + s);
            double[] beside = axis.beside(s, 30);
            assertEquals(1000 * Math.sin(0.2) - 1030 * Math.sin(a), beside[0], 1e-3, "beside " + s);
            assertEquals(1030 * Math.cos(a) - 1000 * Math.cos(0.2), beside[1], 1e-3, "beside " + s);
        }
        Node behind = axis.at(400);
        assertEquals(-100 * Math.cos(0.2), behind.xMm(), 1e-9);
        assertEquals(-100 * Math.sin(0.2), behind.yMm(), 1e-9);
        assertEquals(0.2, behind.angleRad());
        assertEquals(nodes.get(10), axis.at(1600), "beyond the tip, the tip");
    }

    /** Behind a first node that does not lie at nought, and past two nodes at one place. */
    @Test
    void theAxisBehindItsFirstNodeAndAtADoubleNode() {
        BentAxis axis = new BentAxis(List.of(
                new Node(100, 10, 20, 0.3, 0),
                new Node(200, 10 + 100 * Math.cos(0.3), 20 + 100 * Math.sin(0.3), 0.3, 0),
                new Node(200, 10 + 100 * Math.cos(0.3), 20 + 100 * Math.sin(0.3), 0.3, 0),
                new Node(300, 10 + 200 * Math.cos(0.3), 20 + 200 * Math.sin(0.3), 0.3, 0)));
        for (double s : new double[] {0, 60, 100, 150, 200, 260, 300}) {
            double[] on = {axis.at(s).xMm(), axis.at(s).yMm()};
            assertArrayEquals(
                    new double[] {10 + (s - 100) * Math.cos(0.3), 20 + (s - 100) * Math.sin(0.3)}, on, 1e-9, "at " + s);
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
    void noFormulaIsFedWithWhatIsNoNumber(double bad) {
        assertThrows(IllegalArgumentException.class, () -> Finite.any(bad, "x"));
        assertThrows(IllegalArgumentException.class, () -> Finite.positive(bad, "x"));
        assertThrows(IllegalArgumentException.class, () -> Finite.notNegative(bad, "x"));
        assertThrows(IllegalArgumentException.class, () -> Finite.positive(0, "x"));
        assertEquals(-3.5, Finite.any(-3.5, "x"));
        assertEquals(3.5, Finite.positive(3.5, "x"));
        assertEquals(0.0, Finite.notNegative(0.0, "x"));
    }
}
