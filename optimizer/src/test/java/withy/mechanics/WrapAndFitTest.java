package withy.mechanics;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.mechanics.ArborRings.Filling;

class WrapAndFitTest {
    /** Computed table for D = 10 mm, 1140 kg/m³, fibre share 1; printed to four decimals of length, six of mass. */
    @ParameterizedTest
    @CsvSource({
        "0.10,10.0000,317.3024,2.840980,80.6", "0.13,7.6923,244.8046,3.704256,136.2",
                "0.15,6.6667,212.5835,4.282592,181.3",
        "0.18,5.5556,177.6773,5.154325,261.1", "0.20,5.0000,160.2243,5.738300,322.3",
                "0.25,4.0000,128.8092,7.208113,503.6",
        "0.30,3.3333,107.8660,8.692041,725.2", "0.35,2.8571,92.9068,10.190093,987.1"
    })
    void threadPerCoveredMillimetre(double t, double turns, double length, double milligrams, double denier) {
        ThreadWrap wrap = new ThreadWrap(1.0, 10.0, t);
        double tex = ThreadWrap.texOf(t, 1140.0, 1.0);
        assertEquals(denier, tex * 9.0, 0.06);
        assertEquals(turns, wrap.turns(), 5e-5);
        assertEquals(length, wrap.threadLengthMm(), 5.1e-5);
        assertEquals(milligrams, 1000.0 * wrap.threadMassG(tex), 5.1e-7);
    }

    /** Worked film, computed: D 10, t 0.2, 30 mm, film to 11.0 mm over all, 1.15 g/cm³. */
    @Test
    void workedFilm() {
        ThreadWrap wrap = new ThreadWrap(30.0, 10.0, 0.2);
        assertEquals(151.007888, wrap.threadVolumeMm3(), 1e-6);
        assertEquals(343.792954, wrap.resinVolumeMm3(0.3), 1e-6);
        assertEquals(0.395362, wrap.resinMassG(0.3, 1.15), 1e-6);
    }

    /** Thin thread is lighter for the same cover, in thread and in the resin that levels it. */
    @Test
    void thinThreadIsLighter() {
        ThreadWrap thin = new ThreadWrap(30.0, 6.0, 0.15);
        ThreadWrap thick = new ThreadWrap(30.0, 6.0, 0.20);
        assertTrue(thin.threadMassG(ThreadWrap.texOf(0.15, 1140, 0.8))
                < thick.threadMassG(ThreadWrap.texOf(0.20, 1140, 0.8)));
        assertTrue(thin.resinMassG(0.3, 1.15) < thick.resinMassG(0.3, 1.15));
        assertTrue(thin.threadLengthMm() > thick.threadLengthMm());
    }

    @Test
    void wrapRefusesNoThread() {
        assertThrows(IllegalArgumentException.class, () -> new ThreadWrap(10.0, 5.0, 0.0));
        assertThrows(IllegalArgumentException.class, () -> new ThreadWrap(Double.NaN, 5.0, 0.2));
    }

    /** House table of gaps, common practice: each edge of the table. */
    @ParameterizedTest
    @CsvSource({
        "-0.01,TOO_TIGHT",
        "0,GLUE",
        "0.2,GLUE",
        "0.21,TAPE_RINGS",
        "0.99,TAPE_RINGS",
        "1.0,ARBORS",
        "6.0,ARBORS",
        "6.01,TOO_WIDE"
    })
    void gapsHaveTheirFilling(double gap, Filling filling) {
        assertEquals(filling, ArborRings.fillingFor(gap));
    }

    @Test
    void arborCountAndPlaces() {
        assertEquals(2, ArborRings.count(105.0, 3));
        assertEquals(3, ArborRings.count(110.0, 3));
        assertEquals(3, ArborRings.count(90.0, 4));
        assertArrayEquals(new double[] {200, 237.5, 275}, ArborRings.places(200, 100, 25, 3), 1e-12);
        assertArrayEquals(new double[] {237.5}, ArborRings.places(200, 100, 25, 1), 1e-12);
        assertThrows(IllegalArgumentException.class, () -> ArborRings.places(200, 60, 25, 3));
    }

    /** π·12·100·0.1·1.1e-3 g, by hand. */
    @Test
    void adhesiveFilm() {
        assertEquals(0.414690230, ArborRings.adhesiveMassG(12.0, 100.0, 0.1, 1.1), 1e-8);
        assertEquals(
                Math.PI / 4.0 * (12.4 * 12.4 - 144.0) * 100.0 * 1.1e-3,
                ArborRings.fillMassG(12.4, 12.0, 100.0, 1.1),
                1e-9);
    }

    /** Trade bounds from memory: FG D + 2d to D + 4d, double uni 3D to 4D; ring 1.5 × a slim knot, 2 × a bulky one. */
    @Test
    void knotsAndTheRingTheyNeed() {
        double leader = 0.30;
        double braid = LineDiameter.overallMm(0.153, true);
        assertEquals(0.1836, braid, 1e-12);
        assertEquals(0.6672, KnotBulk.FG.lowMm(leader, braid), 1e-12);
        assertEquals(1.0344, KnotBulk.FG.highMm(leader, braid), 1e-12);
        assertEquals(1.5516, KnotBulk.FG.ringNeededMm(leader, braid), 1e-12);
        assertEquals(2.4, KnotBulk.DOUBLE_UNI.ringNeededMm(leader, braid), 1e-12);
        assertEquals(0.28, LineDiameter.overallMm(0.28, false), 0.0);
        for (KnotBulk knot : KnotBulk.values()) {
            assertTrue(knot.lowMm(leader, braid) <= knot.highMm(leader, braid), knot.name());
        }
    }

    /** Circle packing in a circle (Graham 1968, from memory); 3 strands: 1 + 2/√3, 4: 1 + √2, by hand. */
    @Test
    void bundles() {
        assertEquals(1.0 + 2.0 / Math.sqrt(3.0), KnotBulk.bundleMm(3, 1.0), 1e-6);
        assertEquals(1.0 + Math.sqrt(2.0), KnotBulk.bundleMm(4, 1.0), 1e-6);
        assertEquals(1.0 + 1.0 / Math.sin(Math.PI / 5.0), KnotBulk.bundleMm(5, 1.0), 1e-6);
        assertThrows(IllegalArgumentException.class, () -> KnotBulk.bundleMm(8, 1.0));
    }

    /** One turn is the long side of a right-angled triangle over the circumference and the thread: 24 and 7 give 25 (Pythagoras). */
    @Test
    void theSlantOfATurn() {
        double threadMm = 0.7;
        ThreadWrap wrap = new ThreadWrap(7, 2.4 / Math.PI - threadMm, threadMm);
        assertEquals(10 * 2.5, wrap.threadLengthMm(), 1e-12);
        assertEquals(1 - 24.0 / 25, wrap.slantShare(), 1e-12);
    }
}
