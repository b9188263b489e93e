package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import withy.mechanics.LoadedStretches.Stretch;

/** How a rod is cut, and the sums that guide a search, against the closed forms of small bends. */
class LoadedStretchesTest {
    private static final double L = 2000.0;
    private static final double CLAMP = 300.0;
    private static final double FREE = L - CLAMP;
    private static final double EI = 5.0e6;
    private static final double G = 9.80665e-3;

    private static StiffnessProfile even() {
        return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10, 10), EI, 0);
    }

    /** Thick behind 1,200 mm, thin ahead: stiffness 10⁴ and 5⁴ times 1,000. */
    private static StiffnessProfile stepped() {
        TaperProfile diameter = new TaperProfile(new double[] {0, 1200, 1200, L}, new double[] {10, 10, 5, 5});
        return new StiffnessProfile.OfDiameter(diameter, 1000, 4);
    }

    private static LoadedStretches of(StiffnessProfile stiffness, TubeMass own, double reference, PointLoad... loads) {
        return new LoadedStretches(new BendCase(stiffness, CLAMP, 0.0, own, List.of(loads)), reference);
    }

    /** Fine stations of one width, so that midpoints are as good as the integral. */
    private static TubeMass evenOwn(double gramsAMm) {
        double[] x = new double[81];
        double[] d = new double[81];
        for (int i = 0; i < x.length; i++) {
            x[i] = i * L / 80;
            d[i] = 10;
        }
        return TubeMass.of(new TaperProfile(x, d), gramsAMm * L, 1.0, List.of());
    }

    /** Σ of all forces, a couple as the force that makes it over the free length, own weight and the line among them. */
    @Test
    void theForceIsTheSumOfWhatActs() {
        PointLoad slanted = new PointLoad(1500, 3, -4, 0);
        PointLoad twisting = new PointLoad(1800, 0, 0, -340);
        assertEquals(5.0 + 340 / FREE, of(even(), null, 0, slanted, twisting).forceN(), 1e-12);
        assertEquals(5.0 + 60 * G, of(even(), evenOwn(0.03), 0, slanted).forceN(), 1e-12);
        BendCase held = new BendCase(even(), CLAMP, 0, null, List.of(slanted));
        assertEquals(12.0, new LoadedStretches(held, 0, 7, List.of(900.0)).forceN(), 1e-12);
        LoadedStretches none = of(even(), null, 0);
        assertEquals(0.0, none.forceN());
        assertTrue(none.all().isEmpty());
    }

    /** Cut at the step, at each load ahead of the clamp and at each ring, told as shares of the free length from the tip. */
    @Test
    void cutWhereSomethingChanges() {
        BendCase held = new BendCase(
                stepped(),
                CLAMP,
                0,
                null,
                List.of(PointLoad.hung(100, 50), PointLoad.hung(640, 10), PointLoad.hung(L, 20)));
        List<Stretch> all = new LoadedStretches(held, 0, 5, List.of(1490.0, 640.0 + 4e-7)).all();
        double[] ends = {0, 510 / FREE, 800 / FREE, 1360 / FREE, 1};
        assertEquals(4, all.size());
        for (int i = 0; i < 4; i++) {
            assertEquals(ends[i], all.get(i).u0(), 1e-9);
            assertEquals(ends[i + 1], all.get(i).u1(), 1e-9);
        }
        assertEquals(625_000, all.get(1).stiffness().atNmm2(1300), 1e-6);
        assertEquals(10_000_000, all.get(2).stiffness().atNmm2(1100), 1e-6);
        double force = 5 + 30 * G;
        assertEquals(-20 * G / force, all.get(2).up(), 1e-12);
        assertEquals(-30 * G / force, all.get(3).up(), 1e-12);
    }

    /** Forces in a frame turned by 30 degrees: along it and square to it; the couple joins at its own place alone. */
    @Test
    void forcesAreTurnedIntoTheFrame() {
        double reference = Math.toRadians(30);
        List<Stretch> all = of(even(), null, reference, new PointLoad(L, 6, 8, 0), new PointLoad(1000, 0, 0, 17))
                .all();
        double force = 10 + 17 / FREE;
        assertEquals(2, all.size());
        assertEquals((6 * Math.cos(reference) + 8 * 0.5) / force, all.get(0).forward(), 1e-12);
        assertEquals((8 * Math.cos(reference) - 6 * 0.5) / force, all.get(0).up(), 1e-12);
        assertEquals(0.0, all.get(0).couple());
        assertEquals(17 / (force * FREE), all.get(1).couple(), 1e-15);
        assertEquals(all.get(0).forward(), all.get(1).forward());
    }

    /** A tube that ends before the tip, or begins ahead of the clamp, weighs nothing where it is not. */
    @Test
    void ownWeightActsWhereTheTubeIs() {
        TaperProfile part = new TaperProfile(new double[] {500, 900, 1400}, new double[] {8, 6, 4});
        TubeMass own = TubeMass.of(part, 30, 2.0, List.of());
        List<Stretch> all = of(even(), own, 0, PointLoad.hung(L, 5)).all();
        assertEquals(4, all.size());
        assertNull(all.get(0).weight());
        assertNull(all.get(3).weight());
        LoadedStretches.TaperedWeight front = present(all.get(1));
        LoadedStretches.TaperedWeight rear = present(all.get(2));
        assertEquals(own.perLengthGPerMm(1250) * G, front.at(1250), 1e-12);
        assertEquals(own.perLengthGPerMm(700) * G, rear.at(700), 1e-12);
        assertEquals(4.0, own.perLengthGPerMm(500) / own.perLengthGPerMm(1400), 1e-12, "the square of 8 over 4");
    }

    private static LoadedStretches.TaperedWeight present(Stretch stretch) {
        LoadedStretches.TaperedWeight weight = stretch.weight();
        assertNotNull(weight);
        return weight;
    }

    /** Even rod: L³/(3·EI) a newton. Stepped: [a³/EI₁ + (L³ − a³)/EI₂]/3, a from tip to step. Linear taper of the 4th power: L³/(3·EI·r). */
    @Test
    void aNewtonDropsTheTipAsInSmallBends() {
        PointLoad load = PointLoad.hung(L, 1);
        assertEquals(FREE * FREE * FREE / (3 * EI), of(even(), null, 0, load).dropMmPerN(), 1e-9);
        double a = L - 1200;
        double expected = (Math.pow(a, 3) / 625_000 + (Math.pow(FREE, 3) - Math.pow(a, 3)) / 10_000_000) / 3;
        assertEquals(expected, of(stepped(), null, 0, load).dropMmPerN(), 1e-9 * expected);
        double[] x = new double[41];
        double[] d = new double[41];
        for (int i = 0; i < x.length; i++) {
            x[i] = i * L / 40;
            d[i] = 12 - 9.0 * i / 40;
        }
        StiffnessProfile taper = new StiffnessProfile.OfDiameter(new TaperProfile(x, d), 1000, 4);
        double root = 12 - 9.0 * CLAMP / L;
        double closed = Math.pow(FREE, 3) / (3 * 1000 * Math.pow(root, 4)) * root / 3.0;
        assertEquals(closed, of(taper, null, 0, load).dropMmPerN(), 1e-4 * closed);
    }

    /** An even rod under P at its tip e-folds √(P/EI)·L times; with weight q a length ⅔·[(P + q·L)^1.5 − P^1.5]/(q·√EI), any frame. */
    @Test
    void growthOfAnEvenRod() {
        PointLoad pull = PointLoad.pull(L, 9, -1.1);
        for (double reference : new double[] {0, 0.7, -1.1, 2.5}) {
            assertEquals(
                    FREE * Math.sqrt(9 / EI), of(even(), null, reference, pull).growth(), 1e-12);
            double q = 0.4 * G;
            double p = 3;
            double closed = 2.0 / 3 * (Math.pow(p + q * FREE, 1.5) - Math.pow(p, 1.5)) / (q * Math.sqrt(EI));
            PointLoad down = new PointLoad(L, 0, -p, 0);
            assertEquals(closed, of(even(), evenOwn(0.4), reference, down).growth(), 1e-5 * closed);
        }
    }

    /** A level pull and a weight stand square to each other: √(P² + (q·s)²) acts at s, here summed by Simpson. */
    @Test
    void growthUnderAPullAcrossTheWeight() {
        double q = 0.4 * G;
        int parts = 2000;
        double sum = 0;
        for (int i = 0; i <= parts; i++) {
            double factor = i == 0 || i == parts ? 1 : i % 2 == 0 ? 2 : 4;
            sum += factor * Math.sqrt(Math.hypot(3, q * FREE * i / parts) / EI);
        }
        double expected = sum * FREE / parts / 3;
        for (double reference : new double[] {0, 0.7, -1.1, 2.5}) {
            double growth = of(even(), evenOwn(0.4), reference, new PointLoad(L, 3, 0, 0))
                    .growth();
            assertEquals(expected, growth, 1e-4 * expected, "reference " + reference);
        }
    }

    @Test
    void stifferAtTheClampThanAtTheTip() {
        PointLoad load = PointLoad.hung(L, 1);
        assertEquals(16.0, of(stepped(), null, 0, load).stiffer(), 1e-9);
        StiffnessProfile taper = new StiffnessProfile.OfDiameter(TaperProfile.straight(L, 12, 3), 1000, 4);
        assertEquals(
                Math.pow((12 - 9 * CLAMP / L) / 3, 4), of(taper, null, 0, load).stiffer(), 1e-9);
        assertEquals(
                0.0,
                Arrays.stream(taper.breaksMm()).filter(at -> at > 0 && at < L).sum());
    }
}
