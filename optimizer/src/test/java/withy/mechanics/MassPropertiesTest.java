package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Validates against computed tables of frusta and assemblies (closed form and Simpson agree to 1e-12); tolerance 1e-9 relative. */
class MassPropertiesTest {
    private static final double REL = 1e-9;

    @ParameterizedTest
    @CsvSource({
        "1000,10,10,8,8,1.55,28274.333882,43.825218,500,14608855.047672,3652550.668278,898.416959",
        "300,30,20,0,0,0.24,149225.651046,35.814156,130.263158,866686.087911,258973.924796,2982.942225",
        "2100,12,1.8,10.4,0.2,1.55,32195.041514,49.902314,757.377049,42691419.233447,14066453.946123,796.690449",
        "2100,12,2,9.6,1.6,1.55,34042.297994,52.765562,622.674419,32469696.559316,12011251.833382,938.809786",
        "250,26,22,10,9,0.24,95622.226394,22.949334,117.599247,436862.600639,119482.878585,1933.239908",
        "100,20,0,0,0,1.0,10471.975512,10.471976,25,10629.055145,4084.070450,314.159265"
    })
    void frusta(
            double length,
            double d0,
            double d1,
            double b0,
            double b1,
            double rho,
            double volume,
            double mass,
            double centre,
            double end,
            double own,
            double axial) {
        Frustum piece = new Frustum(length, d0, d1, b0, b1);
        assertEquals(volume, piece.volumeMm3(), 1e-6);
        assertEquals(mass, piece.massG(rho), 1e-6);
        assertEquals(centre, piece.centreMm(), 1e-6);
        assertEquals(end, piece.endInertiaGmm2(rho), 1e-6);
        assertEquals(own, piece.centreInertiaGmm2(rho), 1e-6);
        assertEquals(axial, piece.axialInertiaGmm2(rho), 1e-6);
    }

    /** CG/L of a solid cone: (1 + 2r + 3r²)/(4(1 + r + r²)); of a thin tube of constant wall: (1 + 2r)/(3(1 + r)). */
    @ParameterizedTest
    @CsvSource({
        "1,0.5,0.5",
        "0.5,0.392857143,0.444444444",
        "0.25,0.321428571,0.4",
        "0.2,0.306451613,0.388888889",
        "0.1,0.277027027,0.363636364",
        "0,0.25,0.333333333"
    })
    void balanceOfTapers(double r, double cone, double tube) {
        TaperProfile profile = TaperProfile.straight(1000.0, 10.0, 10.0 * r);
        assertEquals(1000.0 * cone, TubeMass.of(profile, 50.0, 2.0, List.of()).balanceMm(), 1e-5);
        assertEquals(1000.0 * tube, TubeMass.of(profile, 50.0, 1.0, List.of()).balanceMm(), 1e-5);
        assertEquals(1000.0 * cone, Frustum.solid(1000.0, 10.0, 10.0 * r).centreMm(), 1e-5);
    }

    private static MassSum bareAssembly() {
        MassSum sum =
                new Frustum(2100, 12, 1.8, 10.4, 0.2).at(0.0, 1.55).plus(new Frustum(250, 26, 22, 10, 9).at(0.0, 0.24));
        double[][] guides = {{2.0, 700}, {1.2, 1050}, {0.8, 1400}, {0.5, 1750}, {0.4, 2095}};
        for (double[] guide : guides) {
            sum = sum.plus(MassSum.point(guide[0], guide[1]));
        }
        return sum;
    }

    /** Computed assembly: tapered blank, grip, five point guides, pivot at 180 mm; g = 9.80665 m/s². */
    @Test
    void assemblyWithoutReel() {
        MassSum sum = bareAssembly();
        assertEquals(77.751649, sum.massG(), 1e-6);
        assertEquals(591.456166, sum.centreMm(), 1e-5);
        assertEquals(313.72842, sum.momentNmm(180.0), 1e-4);
        assertEquals(0.0362500861, sum.swingWeightKgM2(180.0), 1e-9);
        assertEquals(188.184678, sum.counterweightG(180.0, 10.0, 0.0), 1e-4);
        MassSum cured = sum.plus(MassSum.point(sum.counterweightG(180.0, 10.0, 0.0), 10.0));
        assertEquals(0.0, cured.momentNmm(180.0), 1e-9);
        assertEquals(0.0416886, cured.swingWeightKgM2(180.0), 1e-7);
    }

    /** A reel whose centre lies on the pivot moves the balance point but neither tip-heaviness nor swing weight. */
    @Test
    void assemblyWithReelOnThePivot() {
        MassSum sum = bareAssembly().plus(MassSum.point(220.0, 180.0));
        assertEquals(297.751649, sum.massG(), 1e-6);
        assertEquals(287.443218, sum.centreMm(), 1e-5);
        assertEquals(313.72842, sum.momentNmm(180.0), 1e-4);
        assertEquals(0.0362500861, sum.swingWeightKgM2(180.0), 1e-9);
    }

    /** Property, seed 11: moment = M·g·(centre − pivot); a counterweight adds m·(p − x)² to the inertia. */
    @Test
    void momentIsWeightTimesLever() {
        SplittableRandom random = new SplittableRandom(11L);
        for (int run = 0; run < 500; run++) {
            MassSum sum = MassSum.NONE;
            for (int i = 0; i < 12; i++) {
                sum = sum.plus(MassSum.bar(
                        random.nextDouble(0.1, 80.0), random.nextDouble(0.0, 3000.0), random.nextDouble(300.0)));
            }
            double pivot = random.nextDouble(100.0, 600.0);
            double expected = sum.massG() * 9.80665e-3 * (sum.centreMm() - pivot);
            assertEquals(
                    expected, sum.momentNmm(pivot), 1e-9 * Math.abs(expected) + 1e-9, "run " + run + " of seed 11");
            double target = random.nextDouble(0.0, 50.0);
            double grams = sum.counterweightG(pivot, 5.0, target);
            MassSum cured = sum.plus(MassSum.point(grams, 5.0));
            if (grams > 0.0) {
                assertEquals(target, cured.momentNmm(pivot), 1e-7, "run " + run + " of seed 11");
            }
            assertEquals(
                    sum.inertiaGmm2(pivot) + grams * (pivot - 5.0) * (pivot - 5.0),
                    cured.inertiaGmm2(pivot),
                    1e-9 * cured.inertiaGmm2(pivot));
        }
    }

    @Test
    void movedMassesKeepTheirOwnInertia() {
        MassSum sum = bareAssembly();
        assertEquals(sum.inertiaGmm2(sum.centreMm()), sum.moved(37.5).inertiaGmm2(sum.centreMm() + 37.5), 1e-3);
        assertEquals(sum.centreMm() + 37.5, sum.moved(37.5).centreMm(), 1e-9);
    }

    /** Guards the closed form of any exponent, either side of its series, against Gauss–Legendre sums over 2000 pieces. */
    @ParameterizedTest
    @CsvSource({
        "12,1.8,1.37",
        "12,1.8,3.2",
        "12,11.9999999,1.37",
        "12,12,2.5",
        "12,9.9,0.4",
        "12,9.7,0.4",
        "2,11,3.9",
        "5,0,1.5"
    })
    void powerIntegralsMatchQuadrature(double d0, double d1, double n) {
        PowerIntegral closed = PowerIntegral.of(d0, d1, n);
        int pieces = 2000;
        double[] sums = new double[3];
        for (int i = 0; i < pieces; i++) {
            for (double t : new double[] {-Math.sqrt(0.6), 0.0, Math.sqrt(0.6)}) {
                double s = (i + (1.0 + t) / 2.0) / pieces;
                double f = Math.pow(d0 + (d1 - d0) * s, n) * (t == 0.0 ? 8.0 : 5.0) / 18.0 / pieces;
                sums[0] += f;
                sums[1] += f * s;
                sums[2] += f * s * s;
            }
        }
        assertEquals(sums[0], closed.i0(), 2e-10 * sums[0]);
        assertEquals(sums[1], closed.i1(), 2e-10 * sums[1]);
        assertEquals(sums[2], closed.i2(), 2e-10 * sums[2]);
    }

    /** The exact polynomials are what the general form tends to. */
    @Test
    void powerIntegralsAreContinuousInTheExponent() {
        for (double n : new double[] {0.0, 1.0, 2.0}) {
            PowerIntegral exact = PowerIntegral.of(12.0, 2.0, n);
            PowerIntegral near = PowerIntegral.of(12.0, 2.0, n + 1e-9);
            assertEquals(exact.i0(), near.i0(), 1e-7 * exact.i0());
            assertEquals(exact.i1(), near.i1(), 1e-7 * exact.i1());
            assertEquals(exact.i2(), near.i2(), 1e-7 * exact.i2());
        }
    }

    private static TaperProfile stepped() {
        return new TaperProfile(new double[] {0, 1050, 1050, 2100}, new double[] {12, 7.5, 6.0, 1.8});
    }

    @Test
    void aStepTakesTheTipSideAndLargestSeesBoth() {
        assertEquals(6.0, stepped().at(1050.0), 0.0);
        assertEquals(7.5, stepped().at(1050.0 - 1e-9), 1e-6);
        assertEquals(7.5, stepped().largestBetween(1000.0, 1100.0), 0.25);
        assertEquals(12.0, stepped().at(-5.0), 0.0);
        assertEquals(1.8, stepped().at(9999.0), 0.0);
    }

    /** Sections weighed apart: the stepped tube is the sum of its two frusta of thin wall, and the lump stands beside them. */
    @Test
    void steppedTubeWithLumpKeepsItsTotal() {
        TubeMass tube = TubeMass.of(stepped(), 48.0, 1.0, List.of(new TubeMass.Lump(1020.0, 2.5)));
        double butt = 1050.0 * (12.0 + 7.5) / 2.0;
        double tip = 1050.0 * (6.0 + 1.8) / 2.0;
        double a = 45.5 / (butt + tip);
        double first = a * (1050.0 * 1050.0 * (12.0 + 15.0) / 6.0 + 1050.0 * tip + 1050.0 * 1050.0 * (6.0 + 3.6) / 6.0);
        assertEquals(48.0, tube.massG(), 1e-12);
        assertEquals((first + 2.5 * 1020.0) / 48.0, tube.balanceMm(), 1e-9);
        assertEquals(a * 6.0, tube.perLengthGPerMm(1050.0), 1e-12);
    }

    @Test
    void exponentComesBackFromTheBalancePointItMakes() {
        for (double n : new double[] {0.2, 1.0, 1.37, 2.0, 3.1}) {
            double balance = TubeMass.of(stepped(), 48.0, n, List.of()).balanceMm();
            TubeMass.BalanceFit fit = TubeMass.balancedAt(stepped(), 48.0, balance, List.of());
            TubeMass tube =
                    assertInstanceOf(TubeMass.BalanceFit.Fitted.class, fit).tube();
            assertEquals(n, tube.exponent(), 1e-8);
            assertEquals(balance, tube.balanceMm(), 1e-7);
        }
    }

    @Test
    void anImpossibleBalancePointIsSaidSo() {
        TubeMass.BalanceFit fit = TubeMass.balancedAt(stepped(), 48.0, 1500.0, List.of());
        TubeMass.BalanceFit.Impossible no = assertInstanceOf(TubeMass.BalanceFit.Impossible.class, fit);
        assertEquals(1050.0, no.highestMm(), 1e-9);
        assertTrue(no.lowestMm() < no.highestMm());
    }

    @Test
    void refusesWhatIsNoTube() {
        assertThrows(IllegalArgumentException.class, () -> TubeMass.of(stepped(), Double.NaN, 1.0, List.of()));
        assertThrows(
                IllegalArgumentException.class,
                () -> TubeMass.of(stepped(), 5.0, 1.0, List.of(new TubeMass.Lump(9, 6))));
        assertThrows(IllegalArgumentException.class, () -> TubeMass.of(stepped(), 5.0, -1.0, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new Frustum(100, 10, 8, 9, 8.5));
        assertThrows(IllegalArgumentException.class, () -> TaperProfile.straight(0.0, 10, 2));
        assertThrows(
                IllegalArgumentException.class, () -> new TaperProfile(new double[] {0, 5, 4}, new double[] {3, 2, 1}));
        assertThrows(
                IllegalArgumentException.class,
                () -> new TaperProfile(new double[] {0, 5, 5, 5}, new double[] {3, 2, 1, 1}));
    }

    @Test
    void aProfileKeepsItsOwnCopy() {
        double[] x = {0, 100};
        double[] d = {10, 5};
        TaperProfile profile = new TaperProfile(x, d);
        x[1] = 1;
        profile.value()[0] = 99;
        assertEquals(100.0, profile.lengthMm(), 0.0);
        assertEquals(10.0, profile.at(0.0), 0.0);
        assertEquals(profile, new TaperProfile(new double[] {0, 100}, new double[] {10, 5}));
    }
}
