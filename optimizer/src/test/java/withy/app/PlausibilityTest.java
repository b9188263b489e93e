package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import withy.catalog.Blank;
import withy.fixture.Fixtures;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** What is legal and yet worth a look; bounds are common practice. */
class PlausibilityTest {
    private static List<String> told(double shareOfRating) {
        Fixtures shop = Fixtures.legal();
        double ratedG = ((Blank) shop.partOf("blank")).lureMaxG();
        return Plausibility.of(
                shop.brief("lure.usualG", shareOfRating * ratedG).rod(),
                List.of(),
                new QuantityText(UnitSystem.METRIC));
    }

    @Test
    void aLureFarFromHalfToThreeQuartersOfTheRatingIsWorthALook() {
        List<String> usual = told(0.6);
        assertFalse(usual.stream().anyMatch(line -> line.contains("casts best")), usual.toString());
        assertEquals(usual, told(0.5));
        assertEquals(usual, told(0.75));
        for (double share : new double[] {0.49, 0.76}) {
            List<String> told = told(share);
            assertEquals(usual.size() + 1, told.size(), told.toString());
            assertTrue(told.stream().anyMatch(line -> line.contains("casts best with lures of")), told.toString());
        }
    }
}
