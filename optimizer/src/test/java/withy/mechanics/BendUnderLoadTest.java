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

class BendUnderLoadTest {
    private static final double L = 2100.0;
    private static final double EI = 4.0e6;

    private static StiffnessProfile tapered(double p, double r) {
        return StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10.0, 10.0 * r), EI, p);
    }

    private static BendResult.Bent bent(BendCase held) {
        BendResult result = BendUnderLoad.solve(held);
        return assertInstanceOf(BendResult.Bent.class, result, () -> String.valueOf(result));
    }

    private static BendCase tipLoad(StiffnessProfile stiffness, double alpha, double clampDeg) {
        PointLoad load = new PointLoad(L, 0.0, -alpha * EI / (L * L), 0.0);
        return new BendCase(stiffness, 0.0, Math.toRadians(clampDeg), null, List.of(load));
    }

    /** Validates: even cantilever, closed form of Bisshopp and Drucker (1945), computed to 12 digits; 1e-9. */
    @ParameterizedTest
    @CsvFileSource(resources = "elastica.csv", numLinesToSkip = 1)
    void evenBeamIsTheElastica(
            double alpha, double tipRad, double tipDeg, double drop, double shortening, double kappa) {
        BendResult.Bent shape = bent(tipLoad(tapered(0.0, 1.0), alpha, 0.0));
        assertEquals(-tipRad, shape.tip().angleRad(), 1e-9);
        assertEquals(-tipDeg, Math.toDegrees(shape.tip().angleRad()), 1e-8);
        assertEquals(drop, shape.dropMm() / L, 1e-9);
        assertEquals(shortening, 1.0 - shape.tip().xMm() / L, 1e-9);
        assertEquals(-kappa, shape.rootMomentNmm() * L / EI, 1e-8);
    }

    /** Validates: K. Mattiasson, Int. J. Numer. Meth. Engng 17 (1981) 145–153, Table 1, as quoted in public test files; 5e-6. */
    @ParameterizedTest
    @CsvSource({"1,0.30172,0.05643", "2,0.49346,0.16064", "5,0.71379,0.38763", "10,0.81061,0.55500"})
    void publishedElastica(double alpha, double drop, double shortening) {
        BendResult.Bent shape = bent(tipLoad(tapered(0.0, 1.0), alpha, 0.0));
        assertEquals(drop, shape.dropMm() / L, 5.1e-6);
        assertEquals(shortening, 1.0 - shape.tip().xMm() / L, 5.1e-6);
    }

    /** Guards: clamp raised, computed by two methods, no published table; 1e-7 (angles printed to 1e-6 degrees). */
    @ParameterizedTest
    @CsvFileSource(resources = "raised-clamp.csv", numLinesToSkip = 1)
    void raisedClamp(double clampDeg, double alpha, double tipDownDeg, double x, double up) {
        BendResult.Bent shape = bent(tipLoad(tapered(0.0, 1.0), alpha, clampDeg));
        assertEquals(-tipDownDeg, Math.toDegrees(shape.tip().angleRad()), 1e-6);
        assertEquals(x, shape.tip().xMm() / L, 1e-7);
        assertEquals(up, shape.tip().yMm() / L, 1e-7);
        assertEquals(x, -shape.rootMomentNmm() / (alpha * EI / L), 1e-7);
    }

    /** Guards: tapered blanks, computed by two methods, no published table; 1e-6. */
    @ParameterizedTest
    @CsvFileSource(resources = "tapered-bend.csv", numLinesToSkip = 1)
    void taperedBlanks(double p, double r, double alpha, double tipDeg, double drop, double shortening) {
        BendResult.Bent shape = bent(tipLoad(tapered(p, r), alpha, 0.0));
        assertEquals(-tipDeg, Math.toDegrees(shape.tip().angleRad()), 1e-6);
        assertEquals(drop, shape.dropMm() / L, 1e-6);
        assertEquals(shortening, 1.0 - shape.tip().xMm() / L, 1e-6);
    }

    /** Guards: own weight alone, computed by two methods (after F. V. Rohde 1953, from memory); 1e-7. */
    @ParameterizedTest
    @CsvSource({
        "0.5,4.7633755,0.0623057682,0.0022209997", "1,9.4604247,0.1234714020,0.0087536047",
        "2,18.4259673,0.2385065829,0.0331070531", "5,39.9354321,0.4959050446,0.1533428200",
        "10,60.3120079,0.7001997155,0.3436462388", "20,76.7477850,0.8298814434,0.5547679478"
    })
    void ownWeight(double q, double tipDeg, double drop, double shortening) {
        double massG = q * EI / (L * L) / MassSum.NMM_PER_GMM;
        TubeMass own = TubeMass.of(TaperProfile.straight(L, 10.0, 10.0), massG, 1.0, List.of());
        BendResult.Bent shape = bent(new BendCase(tapered(0.0, 1.0), 0.0, 0.0, own, List.of()));
        assertEquals(-tipDeg, Math.toDegrees(shape.tip().angleRad()), 1e-6);
        assertEquals(drop, shape.dropMm() / L, 1e-9);
        assertEquals(shortening, 1.0 - shape.tip().xMm() / L, 1e-9);
    }

    /** Guards: load of a one-third drop, computed; 1e-7. The tip's angle is the action angle of that ideal blank. */
    @ParameterizedTest
    @CsvSource({
        "0,1,1.13134276,29.332434,0.06940440", "4,0.5,0.59876095,38.911632,0.08145550",
        "4,0.3,0.39365317,50.794121,0.09670565", "4,0.2,0.29916641,63.406823,0.11341787",
        "3,0.5,0.71712832,35.772921,0.07732485", "3,0.3,0.54101143,42.676650,0.08554541",
        "3,0.2,0.44950553,49.723519,0.09366950"
    })
    void oneThirdDrop(double p, double r, double alpha, double tipDeg, double shortening) {
        OneThirdDrop.Outcome outcome = OneThirdDrop.of(tapered(p, r), 0.0, null, List.of());
        OneThirdDrop.Outcome.Found found = assertInstanceOf(OneThirdDrop.Outcome.Found.class, outcome);
        assertEquals(alpha, found.weightG() * MassSum.NMM_PER_GMM * L * L / EI, 1e-7);
        assertEquals(tipDeg, found.actionAngleDeg(), 2e-6);
        assertEquals(shortening, 1.0 - found.shape().tip().xMm() / L, 1e-7);
    }

    /** Even 2.1 m blank that drops a third under 102.5 g: EI = 3.918221 N·m², computed. */
    @Test
    void measuredOneThirdGivesStiffness() {
        StiffnessProfile even = StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(L, 10, 10), 3.918221e6, 0.0);
        OneThirdDrop.Outcome outcome = OneThirdDrop.of(even, 0.0, null, List.of());
        assertEquals(
                102.5,
                assertInstanceOf(OneThirdDrop.Outcome.Found.class, outcome).weightG(),
                1e-4);
    }

    /** Own weight takes part of the drop, so less is hung; a rod too limp for itself has no such weight. */
    @Test
    void oneThirdDropCountsFromTheStraightLine() {
        TubeMass own = TubeMass.of(TaperProfile.straight(L, 10, 10), 40.0, 1.0, List.of());
        double bare = ((OneThirdDrop.Outcome.Found) OneThirdDrop.of(tapered(0, 1), 0.0, null, List.of())).weightG();
        double with = ((OneThirdDrop.Outcome.Found) OneThirdDrop.of(tapered(0, 1), 0.0, own, List.of())).weightG();
        assertTrue(with < bare - 5.0, with + " against " + bare);
        TubeMass lead = TubeMass.of(TaperProfile.straight(L, 10, 10), 4000.0, 1.0, List.of());
        assertInstanceOf(OneThirdDrop.Outcome.None.class, OneThirdDrop.of(tapered(0, 1), 0.0, lead, List.of()));
    }

    /** Small loads: drop → α/3, tip slope → α/2, shortening → α²/15 (linear beam theory). */
    @Test
    void smallLoadsAreLinear() {
        BendResult.Bent shape = bent(tipLoad(tapered(0, 1), 1e-3, 0.0));
        assertEquals(1e-3 / 3.0, shape.dropMm() / L, 1e-9);
        assertEquals(-5e-4, shape.tip().angleRad(), 1e-9);
    }

    /** Linear taper, small load: drop·EI/(PL³) in closed form, p = 4: 1/(3r); p = 3 computed; 1e-4 at α = 1e-4. */
    @ParameterizedTest
    @CsvSource({
        "4,0.5,0.6666666667",
        "4,0.25,1.3333333333",
        "4,0.1,3.3333333333",
        "3,0.5,0.5451774445",
        "3,0.2,0.9559334227",
        "3,0.1,1.3684294828"
    })
    void taperedSmallDeflection(double p, double r, double factor) {
        assertEquals(factor, bent(tipLoad(tapered(p, r), 1e-5, 0.0)).dropMm() / L / 1e-5, 1e-6 * factor);
    }

    private static StiffnessProfile randomBlank(SplittableRandom random) {
        double join = random.nextDouble(0.4, 0.6) * L;
        double butt = random.nextDouble(8.0, 14.0);
        double middle = butt * random.nextDouble(0.5, 0.8);
        TaperProfile diameter = new TaperProfile(
                new double[] {0, join, join, L},
                new double[] {butt, middle, middle * 0.85, random.nextDouble(1.4, 2.4)});
        return StiffnessProfile.OfDiameter.withButt(diameter, random.nextDouble(5e6, 3e7), random.nextDouble(2.5, 4.0));
    }

    /** Property, seed 3: root moment = load × lever to 1e-6 on random rods, loads of many directions; drop rises with load. */
    @Test
    void equilibriumOnRandomRods() {
        SplittableRandom random = new SplittableRandom(3L);
        for (int run = 0; run < 60; run++) {
            StiffnessProfile blank = randomBlank(random);
            TubeMass own = TubeMass.of(
                    ((StiffnessProfile.OfDiameter) blank).diameter(), 55.0, 1.0, List.of(new TubeMass.Lump(1000, 2)));
            List<PointLoad> loads = new ArrayList<>();
            for (int g = 0; g < 7; g++) {
                loads.add(PointLoad.hung(random.nextDouble(500, L), random.nextDouble(0.2, 3.0)));
            }
            double angle = Math.toRadians(random.nextDouble(-20.0, 60.0));
            loads.add(
                    PointLoad.pull(L, random.nextDouble(0.5, 15.0), Math.toRadians(random.nextDouble(-110.0, -20.0))));
            BendResult.Bent shape = bent(new BendCase(blank, 200.0, angle, own, loads));
            double scale = Math.abs(shape.rootMomentNmm());
            assertEquals(shape.leverMomentNmm(), shape.rootMomentNmm(), 1e-6 * scale, "run " + run + " of seed 3");
            assertEquals(angle, shape.nodes().get(0).angleRad(), 1e-8, "run " + run + " of seed 3");
            assertEquals(0.0, shape.tip().momentNmm(), 0.0, "run " + run + " of seed 3");
        }
    }

    /** Property, seed 4: the lever check again, worked out here from the nodes alone, for one hung weight. */
    @Test
    void rootMomentIsWeightTimesReach() {
        SplittableRandom random = new SplittableRandom(4L);
        for (int run = 0; run < 40; run++) {
            double grams = random.nextDouble(50.0, 3000.0);
            BendCase held = new BendCase(
                    randomBlank(random),
                    0.0,
                    Math.toRadians(random.nextDouble(0.0, 75.0)),
                    null,
                    List.of(PointLoad.hung(L, grams)));
            BendResult.Bent shape = bent(held);
            double expected = -grams * 9.80665e-3 * shape.tip().xMm();
            assertEquals(expected, shape.rootMomentNmm(), 1e-6 * Math.abs(expected), "run " + run + " of seed 4");
        }
    }

    /** Property, seed 6: the tip drops further with every gram, and never below its own length. */
    @Test
    void dropRisesStrictlyWithLoad() {
        SplittableRandom random = new SplittableRandom(6L);
        for (int run = 0; run < 10; run++) {
            StiffnessProfile blank = randomBlank(random);
            double before = 0.0;
            for (double grams = 20.0; grams < 6000.0; grams *= 1.6) {
                double drop =
                        bent(BendCase.level(blank, PointLoad.hung(L, grams))).dropMm();
                assertTrue(drop > before && drop < L, grams + " g, run " + run + " of seed 6");
                before = drop;
            }
        }
    }

    /** Guards: the general search finds the same shape as the one for loads that all pull one way. */
    @Test
    void aTinySidewaysForceChangesNothing() {
        for (double alpha : new double[] {0.5, 3.0, 10.0, 40.0}) {
            double force = alpha * EI / (L * L);
            BendResult.Bent plain = bent(tipLoad(tapered(3, 0.3), alpha, 30.0));
            BendResult.Bent general = bent(new BendCase(
                    tapered(3, 0.3),
                    0.0,
                    Math.toRadians(30.0),
                    null,
                    List.of(new PointLoad(L, 0.0, -force, 0.0), new PointLoad(L / 2, 1e-9 * force, 0.0, 0.0))));
            assertEquals(plain.dropMm(), general.dropMm(), 1e-5);
        }
    }

    /** A load a hair beside a step or another load is one with it, and two halves of a load are the whole. */
    @Test
    void loadsAHairApartAreOne() {
        TaperProfile stepped = new TaperProfile(new double[] {0, 1050, 1050, L}, new double[] {11, 7.2, 6.1, 1.9});
        StiffnessProfile blank = StiffnessProfile.OfDiameter.withButt(stepped, 2e7, 3.2);
        BendResult.Bent whole =
                bent(new BendCase(blank, 0.0, 0.4, null, List.of(PointLoad.hung(1050, 100), PointLoad.hung(L, 300))));
        BendResult.Bent halves = bent(new BendCase(
                blank,
                0.0,
                0.4,
                null,
                List.of(
                        PointLoad.hung(1050 + 1e-11, 50),
                        PointLoad.hung(1050 - 1e-11, 50),
                        PointLoad.hung(L, 150),
                        PointLoad.hung(L - 1e-10, 150))));
        assertEquals(whole.dropMm(), halves.dropMm(), 1e-6);
    }

    /** Guards: a couple at the tip of an even beam makes an arc of a circle, κ = M/EI. */
    @Test
    void aCoupleAtTheTipMakesAnArc() {
        double moment = -1.2 * EI / L;
        BendResult.Bent shape = bent(BendCase.level(tapered(0, 1), new PointLoad(L, 0.0, 0.0, moment)));
        assertEquals(-1.2, shape.tip().angleRad(), 1e-9);
        assertEquals(L * Math.sin(1.2) / 1.2, shape.tip().xMm(), 1e-6);
        assertEquals(L * (1.0 - Math.cos(1.2)) / 1.2, shape.dropMm(), 1e-6);
    }

    /** Energy: the elastic energy of a linear bend is half the load's work, so the total is minus half. */
    @Test
    void energyOfALinearBend() {
        BendResult.Bent shape = bent(tipLoad(tapered(0, 1), 1e-3, 0.0));
        double work = 1e-3 * EI / (L * L) * shape.dropMm();
        assertEquals(-0.5 * work, shape.energyNmm(), 1e-4 * work);
    }

    /** Property, seed 8: the energy falls by the drop for each newton more (Castigliano); central difference, 1e-5. */
    @Test
    void energyFallsByTheDropForEachNewton() {
        SplittableRandom random = new SplittableRandom(8L);
        for (int run = 0; run < 15; run++) {
            StiffnessProfile blank = randomBlank(random);
            TubeMass own = TubeMass.of(((StiffnessProfile.OfDiameter) blank).diameter(), 55.0, 1.0, List.of());
            double force = random.nextDouble(0.5, 12.0);
            double step = 1e-3 * force;
            double[] energy = new double[3];
            double drop = 0.0;
            for (int i = 0; i < 3; i++) {
                PointLoad load = new PointLoad(L, 0.0, -(force + (i - 1) * step), 0.0);
                BendResult.Bent shape = bent(new BendCase(blank, 0.0, 0.0, own, List.of(load)));
                energy[i] = shape.energyNmm();
                drop = i == 1 ? shape.dropMm() : drop;
            }
            assertEquals(-drop, (energy[2] - energy[0]) / (2.0 * step), 1e-5 * drop, "run " + run + " of seed 8");
        }
    }

    @Test
    void noLoadLeavesItStraight() {
        BendResult.Bent shape = bent(new BendCase(tapered(3, 0.2), 100.0, 0.3, null, List.of()));
        assertEquals(0.0, shape.dropMm(), 0.0);
        assertEquals((L - 100.0) * Math.cos(0.3), shape.tip().xMm(), 1e-9);
    }

    @Test
    void aLoadBeyondBeliefIsSaidSo() {
        BendResult result = BendUnderLoad.solve(tipLoad(tapered(4, 0.1), 1e4, 45.0));
        assertInstanceOf(BendResult.NotConverged.class, result);
    }

    @Test
    void refusesWhatCannotBeHeld() {
        StiffnessProfile blank = tapered(3, 0.2);
        assertThrows(IllegalArgumentException.class, () -> new BendCase(blank, L, 0.0, null, List.of()));
        assertThrows(IllegalArgumentException.class, () -> new BendCase(blank, 0.0, 1.6, null, List.of()));
        assertThrows(IllegalArgumentException.class, () -> BendCase.level(blank, PointLoad.hung(L + 1, 5)));
        assertThrows(IllegalArgumentException.class, () -> PointLoad.hung(L, Double.NaN));
    }

    /** Stiffness of a wall: E·π/64·(D⁴ − d⁴), by hand for D 10, t 1, E 60 000 N/mm². */
    @Test
    void stiffnessFromWall() {
        StiffnessProfile wall = new StiffnessProfile.OfWall(
                TaperProfile.straight(L, 10.0, 2.0), TaperProfile.straight(L, 1.0, 1.0), 60_000.0);
        assertEquals(60_000.0 * Math.PI / 64.0 * (10_000.0 - 4_096.0), wall.atNmm2(0.0), 1e-3);
        assertEquals(60_000.0 * Math.PI / 64.0 * 16.0, wall.atNmm2(L), 1e-6);
        assertEquals(2.0 * wall.atNmm2(500.0), wall.scaled(2.0).atNmm2(500.0), 1e-6);
    }

    /** Guards: under a pull far too large the shape of least energy can't be met closely; a coil of more energy, which can, is not told instead. */
    @ParameterizedTest
    @CsvSource({"2,2,3.0e6", "3,2,5.0e6", "3,3,3.5e6"})
    void aCoilDoesNotStandInForTheShapeOfLeastEnergy(double exponent, double tipMm, double buttNmm2) {
        StiffnessProfile soft =
                StiffnessProfile.OfDiameter.withButt(TaperProfile.straight(3000.0, 15.0, tipMm), buttNmm2, exponent);
        List<PointLoad> loads = List.of(new PointLoad(3000.0, 9.5, -94.0, 0.0), PointLoad.hung(2000.0, 5.0));
        BendResult result = BendUnderLoad.solve(new BendCase(soft, 0.0, Math.toRadians(67.0), null, loads));
        assertInstanceOf(BendResult.NotConverged.class, result, () -> String.valueOf(result));
    }
}
