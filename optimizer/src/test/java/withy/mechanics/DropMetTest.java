package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** The quick way to a weight or a stiffness: that it arrives, in how few bends, and where. */
class DropMetTest {
    private static final double L = 2100.0;
    private static final double EI = 4.0e6;

    private final List<Double> asked = new ArrayList<>();

    private static StiffnessProfile tapered(double p, double r) {
        return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10.0, 10.0 * r), EI, p);
    }

    /** A level rod under α·EI/L² at its tip, α asked for. */
    private DoubleFunction<BendCase> rod(StiffnessProfile stiffness) {
        return alpha -> {
            asked.add(alpha);
            return BendCase.level(stiffness, new PointLoad(L, 0, -alpha * EI / (L * L), 0));
        };
    }

    private static DropMet.Found met(DropMet.Found found) {
        assertNotNull(found);
        return found;
    }

    /** Validates: the even cantilever of Bisshopp and Drucker (1945) the other way round: from the drop to the load; 1e-8. */
    @ParameterizedTest
    @CsvFileSource(resources = "elastica.csv", numLinesToSkip = 1)
    void fromTheDropToTheLoad(
            double alpha, double tipRad, double tipDeg, double drop, double shortening, double kappa) {
        DropMet.Found found = met(DropMet.of(rod(tapered(0, 1)), 1.2 * alpha, drop * L));
        assertEquals(alpha, found.value(), 1e-7 * alpha);
        assertEquals(-tipRad, found.shape().tip().angleRad(), 1e-8);
        assertEquals(drop * L, found.shape().dropMm(), 1e-9 * L);
        assertEquals(shortening, 1 - found.shape().tip().xMm() / L, 1e-8);
    }

    /** Guards: loads of a one-third drop of tapers, computed; it arrives within 16 bends of the rod, from a small-bend guess. */
    @ParameterizedTest
    @CsvSource({
        "0,1,1.13134276",
        "4,0.5,0.59876095",
        "4,0.3,0.39365317",
        "4,0.2,0.29916641",
        "3,0.5,0.71712832",
        "3,0.3,0.54101143",
        "3,0.2,0.44950553"
    })
    void oneThirdOfTapers(double p, double r, double alpha) {
        StiffnessProfile rod = tapered(p, r);
        LoadedStretches small = new LoadedStretches(BendCase.level(rod, PointLoad.hung(L, 1)), 0.0);
        double guess = L / 3 / small.dropMmPerN() / (EI / (L * L));
        DropMet.Found found = met(DropMet.of(rod(rod), guess, L / 3));
        assertEquals(alpha, found.value(), 1e-7);
        assertEquals(guess, asked.get(0), 1e-12 * guess, "begins at the guess");
        assertTrue(asked.size() <= 16, asked.size() + " bends");
    }

    /** No guess, no answer: the slow way is asked instead. */
    @ParameterizedTest
    @CsvSource({"0", "-1", "NaN", "Infinity"})
    void aGuessMustBeANumberAboveNought(double guess) {
        assertNull(DropMet.of(rod(tapered(0, 1)), guess, L / 3));
        assertTrue(asked.isEmpty(), "no rod was bent");
    }

    /** A guess may be off by e³ either way, not by more: the value is 1.1313. */
    @Test
    void aGuessFarOffIsGivenUp() {
        assertNull(DropMet.of(rod(tapered(0, 1)), 1.13134276 * Math.exp(3.2), L / 3));
        assertNull(DropMet.of(rod(tapered(0, 1)), 1.13134276 * Math.exp(-3.2), L / 3));
        for (double factor : new double[] {0.5, 0.8, 1.5, 2.0}) {
            assertEquals(
                    1.13134276,
                    met(DropMet.of(rod(tapered(0, 1)), 1.13134276 * factor, L / 3))
                            .value(),
                    1e-7);
        }
    }

    /** Loads that pull two ways, twist, or are none at all are left to the slow way; so is a drop that no load makes. */
    @Test
    void onlyLoadsThatPullOneWay() {
        StiffnessProfile even = tapered(0, 1);
        double unit = EI / (L * L);
        assertNull(DropMet.of(
                a -> new BendCase(
                        even,
                        0,
                        0,
                        null,
                        List.of(new PointLoad(L, 0, -a * unit, 0), new PointLoad(L / 2, 0.1 * unit, 0, 0))),
                1.1,
                L / 3));
        assertNull(DropMet.of(
                a -> new BendCase(even, 0, 0, null, List.of(new PointLoad(L, 0, -a * unit, 10 * unit))), 1.1, L / 3));
        assertNull(DropMet.of(a -> new BendCase(even, 0, 0, null, List.of()), 1.1, L / 3));
        assertNull(DropMet.of(rod(even), 1.1, 1.2 * L));
        assertNull(DropMet.of(
                a -> new BendCase(even, 0, 0, null, List.of(new PointLoad(L, a * unit, 0, 0))), 1.1, L / 3));
    }
}
