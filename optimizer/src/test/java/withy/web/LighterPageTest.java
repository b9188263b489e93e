package withy.web;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

/** How many parts of a station are lighter, and how many of them go on, as it is said aloud. */
class LighterPageTest {
    @Test
    void oneAndAllAreNotToldAsSome() {
        assertEquals("Finish: one lighter, and it fits", LighterPage.stationTitle("Finish", 1, 0));
        assertEquals("Adhesive: 2 lighter, all fit", LighterPage.stationTitle("Adhesive", 2, 0));
        assertEquals("Blank: 7 lighter, one of them fits", LighterPage.stationTitle("Blank", 1, 6));
        assertEquals("Blank: 7 lighter, 3 of them fit", LighterPage.stationTitle("Blank", 3, 4));
        assertEquals("Butt grip: 1 lighter, none fits", LighterPage.stationTitle("Butt grip", 0, 1));
    }
}
