package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

class NaturalFrequencyTest {
    private static final double L = 2100.0;
    private static final double EI = 4.0e6;

    /** Mass per length at the butt, g/mm. */
    private static final double BUTT = 0.04;

    /** λ = ω·L²·√(m'_butt/EI_butt), with EI in g·mm³/s². */
    private static double lambda(double hertz) {
        return 2.0 * Math.PI * hertz * L * L * Math.sqrt(BUTT / (EI * 1e6));
    }

    /** A blank with m' ~ d^n, EI ~ d^p from 1 at the butt to r at the tip; cone n 2, p 4; thin tube n 1, p 3. */
    private record Taper(double r, double n, double p) {
        TubeMass mass() {
            TaperProfile d = TaperProfile.straight(L, 10.0, 10.0 * r);
            double share = PowerIntegral.of(1.0, r, n).i0();
            return TubeMass.of(d, BUTT * L * share, n, List.of());
        }

        StiffnessProfile stiffness() {
            return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10.0, 10.0 * r), EI, p);
        }

        List<Double> lambdas(List<double[]> ratioAndPlace, int elements, int modes) {
            List<NaturalFrequency.PointMass> points = new ArrayList<>();
            for (double[] point : ratioAndPlace) {
                points.add(new NaturalFrequency.PointMass(point[1] * L, point[0] * BUTT * L));
            }
            NaturalFrequency.Outcome outcome =
                    NaturalFrequency.lowest(stiffness(), 0.0, mass(), points, elements, modes);
            return assertInstanceOf(NaturalFrequency.Outcome.Modes.class, outcome).hertz().stream()
                    .map(NaturalFrequencyTest::lambda)
                    .toList();
        }
    }

    private static final Taper EVEN = new Taper(1.0, 1.0, 3.0);

    /** Validates: even cantilever, cosh b·cos b = −1, computed (Blevins, Table 8-1, from memory); 3e-6 with 60 elements. */
    @Test
    void evenCantilever() {
        double[] squares = {3.5160152685, 22.0344915647, 61.6972144135, 120.901916052, 199.859530117};
        List<Double> found = EVEN.lambdas(List.of(), 60, 5);
        for (int i = 0; i < squares.length; i++) {
            assertEquals(squares[i], found.get(i), 3e-6 * squares[i], "mode " + (i + 1));
        }
    }

    /** Validates: mass at the tip, exact transcendental equation, computed (Laura, Pombo, Susemihl 1974, from memory); 2e-6. */
    @ParameterizedTest
    @CsvFileSource(resources = "tip-mass-frequency.csv", numLinesToSkip = 1)
    void massAtTheTip(double mu, double b1, double b2, double b3) {
        List<Double> found = EVEN.lambdas(List.of(new double[] {mu, 1.0}), 40, 3);
        assertEquals(b1 * b1, found.get(0), 2e-6 * b1 * b1);
        assertEquals(b2 * b2, found.get(1), 2e-6 * b2 * b2);
        assertEquals(b3 * b3, found.get(2), 4e-6 * b3 * b3);
    }

    /**
     * Validates: truncated cone and wedge (thin tube), exact Bessel solutions, computed; 2e-5 with 60 elements down to r 0.1, then
     * 1e-3 where the section changes fastest at the tip.
     */
    @ParameterizedTest
    @CsvFileSource(resources = "tapered-frequency.csv", numLinesToSkip = 1)
    void tapers(double r, double c1, double c2, double c3, double w1, double w2, double w3) {
        double tolerance = r >= 0.1 ? 2e-5 : 1e-3;
        List<Double> cone = new Taper(r, 2.0, 4.0).lambdas(List.of(), 60, 3);
        List<Double> wedge = new Taper(r, 1.0, 3.0).lambdas(List.of(), 60, 3);
        double[] cones = {c1, c2, c3};
        double[] wedges = {w1, w2, w3};
        for (int i = 0; i < 3; i++) {
            assertEquals(cones[i], cone.get(i), tolerance * cones[i], "cone, mode " + (i + 1));
            assertEquals(wedges[i], wedge.get(i), tolerance * wedges[i], "wedge, mode " + (i + 1));
        }
    }

    /**
     * Validates: cone of r 0.25 by its tip, λ = 23.289, 73.9, 165.23, 299.7, 478.1 (Mabie and Rogers 1972, as quoted in a public
     * validation manual, V2.02.009); 0.2 %.
     */
    @Test
    void publishedCone() {
        List<Double> found = new Taper(0.25, 2.0, 4.0).lambdas(List.of(), 60, 5);
        double[] published = {23.289, 73.9, 165.23, 299.7, 478.1};
        for (int i = 0; i < 5; i++) {
            assertEquals(published[i], 4.0 * found.get(i), 2e-3 * published[i], "mode " + (i + 1));
        }
    }

    /** Guards: guide-like masses, computed by shooting, no published source; 1e-5. Rows: r, n, p, λ₁, λ₂, masses as ratio@place. */
    @ParameterizedTest
    @CsvSource({
        "1,1,3,3.43725030,20.14984228,.1@.5", "1,1,3,2.89123840,14.22542832,1@.5",
        "1,1,3,3.29418276,20.95035502,.02@.6 .02@.8 .02@1", "0.25,2,4,4.94533131,14.86414092,.01@1",
        "0.25,2,4,3.29709116,12.30882962,.05@1", "0.2,2,4,5.64003654,16.06799044,.01@.5 .005@.75 .0025@1",
        "0.25,1,3,3.21709999,12.68223304,.05@1", "0.2,1,3,4.01798414,14.43178994,.02@.5 .01@.75 .005@1"
    })
    void massesAlongTheRod(double r, double n, double p, double l1, double l2, String masses) {
        List<double[]> points = new ArrayList<>();
        for (String mass : masses.split(" ")) {
            String[] parts = mass.split("@");
            points.add(new double[] {Double.parseDouble(parts[0]), Double.parseDouble(parts[1])});
        }
        List<Double> found = new Taper(r, n, p).lambdas(points, 60, 2);
        assertEquals(l1, found.get(0), 1e-5);
        assertEquals(l2, found.get(1), 1e-4);
    }

    /** Property, seed 21: more mass anywhere never raises any frequency (1e-10 for rounding). */
    @Test
    void addedMassNeverRaisesAFrequency() {
        SplittableRandom random = new SplittableRandom(21L);
        for (int run = 0; run < 25; run++) {
            Taper taper =
                    new Taper(random.nextDouble(0.12, 0.9), random.nextDouble(0.5, 2.0), random.nextDouble(2.5, 4.0));
            List<double[]> points = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                points.add(new double[] {random.nextDouble(0.001, 0.03), random.nextDouble(0.2, 1.0)});
            }
            List<Double> before = taper.lambdas(points, 20, 4);
            int heavier = random.nextInt(points.size());
            points.get(heavier)[0] += random.nextDouble(0.001, 0.05);
            List<Double> after = taper.lambdas(points, 20, 4);
            for (int mode = 0; mode < 4; mode++) {
                assertTrue(after.get(mode) <= before.get(mode) * (1.0 + 1e-10), "run " + run + " of seed 21");
            }
        }
    }

    /** Refining from above at the fourth order of cubic elements: halving the mesh divides the error by about 16. */
    @Test
    void meshConvergesFromAboveAtFourthOrder() {
        Taper cone = new Taper(0.25, 2.0, 4.0);
        double exact = 18.479704772;
        double coarse = cone.lambdas(List.of(), 5, 2).get(1) - exact;
        double middle = cone.lambdas(List.of(), 10, 2).get(1) - exact;
        double fine = cone.lambdas(List.of(), 20, 2).get(1) - exact;
        assertTrue(coarse > middle && middle > fine && fine > 0.0);
        assertEquals(4.0, Math.log(middle / fine) / Math.log(2.0), 0.4);
    }

    /** The usual mesh is good to 1e-5 in the first mode of a taper to a fifth. */
    @Test
    void usualMeshIsFineEnough() {
        double first = new Taper(0.2, 1.0, 3.0)
                .lambdas(List.of(), NaturalFrequency.USUAL_ELEMENTS, 1)
                .get(0);
        assertEquals(4.2924945392, first, 1e-5 * first);
    }

    /** Held further up, the free part is shorter and quicker: an even beam by (L/l)². */
    @Test
    void clampFurtherUp() {
        NaturalFrequency.Outcome all = NaturalFrequency.lowest(EVEN.stiffness(), 0.0, EVEN.mass(), List.of(), 20, 1);
        NaturalFrequency.Outcome held = NaturalFrequency.lowest(
                EVEN.stiffness(), 300.0, EVEN.mass(), List.of(new NaturalFrequency.PointMass(100, 50)), 20, 1);
        double ratio =
                ((NaturalFrequency.Outcome.Modes) held).firstHz() / ((NaturalFrequency.Outcome.Modes) all).firstHz();
        assertEquals(Math.pow(2100.0 / 1800.0, 2.0), ratio, 1e-6);
    }

    @Test
    void refusesMoreModesThanTheMeshHolds() {
        assertThrows(
                IllegalArgumentException.class,
                () -> NaturalFrequency.lowest(EVEN.stiffness(), 0.0, EVEN.mass(), List.of(), 2, 3));
    }

    /** Guards: what a gram costs, by the mode's shape, is the slope of the frequency; central difference. */
    @Test
    void aGramCostsTheSlopeOfTheFrequency() {
        TaperProfile taper = TaperProfile.straight(2000.0, 12.0, 2.0);
        StiffnessProfile stiffness = StiffnessProfile.OfDiameter.withButt(taper, 3e7, 3);
        TubeMass tube = TubeMass.of(taper, 50.0, 1.0, List.of());
        for (double at : new double[] {700.0, 1500.0, 2000.0}) {
            NaturalFrequency.Outcome.Modes middle = modes(stiffness, tube, at, 0.5);
            double slope = (modes(stiffness, tube, at, 0.501).firstHz()
                            - modes(stiffness, tube, at, 0.499).firstHz())
                    / 0.002;
            assertEquals(-slope, middle.hertzPerGramAt(at), 1e-4 * Math.abs(slope), "at " + at);
        }
        assertEquals(0.0, modes(stiffness, tube, 700.0, 0.5).hertzPerGramAt(-5.0), 0.0);
    }

    private static NaturalFrequency.Outcome.Modes modes(
            StiffnessProfile stiffness, TubeMass tube, double at, double massG) {
        NaturalFrequency.Outcome outcome = NaturalFrequency.lowest(
                stiffness,
                0.0,
                tube,
                List.of(new NaturalFrequency.PointMass(at, massG)),
                NaturalFrequency.USUAL_ELEMENTS,
                1);
        return assertInstanceOf(NaturalFrequency.Outcome.Modes.class, outcome);
    }
}
