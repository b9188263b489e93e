package withy.rod;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Map;
import org.junit.jupiter.api.Test;
import withy.catalog.Rates;
import withy.fixture.Fixtures;

/** Validates what the customer pays against sums by hand (handbook, section 7: rounded half up, once, at the end). */
class TariffTest {
    private static Tariff with(double marginPercent, double taxPercent) {
        Rod rod = Fixtures.legal().rod();
        Rates rates = rod.setting().catalog().rates();
        Rates other = new Rates(
                rates.currency(),
                taxPercent,
                marginPercent,
                rates.hourlyRateMinor(),
                rates.labourDiscountPercent(),
                rates.labourMinutes(),
                rates.sundriesMinor(),
                rates.houseFinish(),
                rates.houseAdhesive(),
                rates.threadLetters(),
                rates.finishFilmMm(),
                rates.adhesiveFilmMm(),
                rates.finishMixMinMl(),
                rates.adhesiveMixMl(),
                rates.tapeDensityGMm3(),
                rates.houseToleranceG(),
                rates.workmanshipToleranceG(),
                rates.steps(),
                rates.usualPriceMinor());
        return new Tariff(other, rod.brief());
    }

    @Test
    void halfACoinIsRoundedUpAndLessIsNot() {
        Tariff plain = with(0, 0);
        assertEquals(101, plain.priceMinor(100_500));
        assertEquals(100, plain.priceMinor(100_499));
        // 100.00 with 10 % and then 5 % more is 115.50, with 25 % and 21 % 151.25: neither is rounded on the way.
        assertEquals(11_550, with(10, 5).priceMinor(10_000_000));
        assertEquals(15_125, with(25, 21).priceMinor(10_000_000));
        // 0.30 with 12 % and 20 % more is 0.4032 (rounded on the way 0.41), 0.31 is 0.41664.
        assertEquals(40, with(12, 20).priceMinor(30_000));
        assertEquals(42, with(12, 20).priceMinor(31_000));
    }

    @Test
    void theCostWithinACeilingIsTheLastThatKeepsIt() {
        for (Map.Entry<Integer, Integer> rate : Map.of(0, 0, 12, 20, 25, 19).entrySet()) {
            Tariff tariff = with(rate.getKey(), rate.getValue());
            long most = tariff.costWithin(55_000);
            assertTrue(tariff.priceMinor(most) <= 55_000);
            assertTrue(tariff.priceMinor(most + 1) > 55_000);
            BigDecimal exact = BigDecimal.valueOf(most)
                    .multiply(BigDecimal.valueOf((100 + rate.getKey()) * (100L + rate.getValue())))
                    .movePointLeft(7);
            assertTrue(exact.compareTo(new BigDecimal("55000.5")) < 0, exact.toString());
        }
    }
}
