package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;
import withy.catalog.Lab;

/** Colours on screen. Validates: CIE L*a*b* of the sRGB primaries under D65 as widely published (from memory), to one level of 255. */
class ScreenInkTest {
    @Test
    void primariesAndGreys() {
        near(0xffffff, new Lab(100, 0, 0));
        near(0x000000, new Lab(0, 0, 0));
        near(0xff0000, new Lab(53.24, 80.09, 67.20));
        near(0x00ff00, new Lab(87.73, -86.18, 83.18));
        near(0x0000ff, new Lab(32.30, 79.19, -107.86));
        near(0x777777, new Lab(50.03, 0, 0));
    }

    @Test
    void whatNoScreenShowsIsTakenToItsEdge() {
        assertEquals(7, ScreenInk.of(new Lab(50, -160, 160)).length());
    }

    private static void near(int wanted, Lab lab) {
        int shown = Integer.parseInt(ScreenInk.of(lab).substring(1), 16);
        for (int shift = 0; shift <= 16; shift += 8) {
            assertEquals((wanted >> shift) & 255, (shown >> shift) & 255, 1, Integer.toHexString(wanted));
        }
    }
}
