package withy.rod;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.catalog.Blank;
import withy.fixture.Fixtures;

/** Validates finished and packed length against sums by hand (handbook, rule 3). */
class LengthsTest {
    private static Blank of(Double... sectionsMm) {
        Fixtures shop = Fixtures.legal();
        String id = shop.rod().setting().blank().id();
        return shop.part(id, "sectionLengthsMm", List.of(sectionsMm))
                .rod()
                .setting()
                .blank();
    }

    @Test
    void theLongestSectionCountsWithWhatItCarries() {
        assertEquals(1020, Lengths.packedMm(of(1000.0, 1000.0), 8, 20));
        assertEquals(1018, Lengths.packedMm(of(990.0, 1010.0), 8, 20));
        assertEquals(1011, Lengths.packedMm(of(900.0, 1011.0, 900.0), 8, 20));
    }

    @Test
    void onePieceCarriesBoth() {
        assertEquals(2128, Lengths.packedMm(of(2100.0), 8, 20));
    }

    @Test
    void theFinishedRodIsBlankTipTopAndCap() {
        Blank blank = Fixtures.legal().rod().setting().blank();
        assertEquals(blank.lengthMm() + 28, Lengths.finishedMm(blank, 8, 20));
    }
}
