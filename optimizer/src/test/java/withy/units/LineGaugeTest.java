package withy.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LineGaugeTest {
    @Test
    void readsTheLabelsOfTheTrade() {
        assertEquals(new LineGauge.Braid(0.8), LineGauge.read("PE 0.8", LineGauge.Kind.NYLON));
        assertEquals(new LineGauge.Braid(0.8), LineGauge.read("#0.8", LineGauge.Kind.BRAID));
        assertEquals(new LineGauge.Nylon(2), LineGauge.read("no. 2", LineGauge.Kind.NYLON));
        assertEquals(new LineGauge.Nylon(2.5), LineGauge.read("2,5", LineGauge.Kind.NYLON));
        assertEquals(new LineGauge.Tippet(5), LineGauge.read("5X", LineGauge.Kind.NYLON));
        assertEquals(0.13, LineGauge.read("0.13 mm", LineGauge.Kind.BRAID).standardDiameterMm(), 1e-12);
        assertInstanceOf(LineGauge.Diameter.class, LineGauge.read("0.011 in", LineGauge.Kind.NYLON));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "9X", "4.5X", "PE", "PE 0", "PE 1 mm", "10 lb", "no no 2", "-1X", "0 mm"})
    void refusesWhatIsNoGauge(String text) {
        UnitsFault fault = assertThrows(UnitsFault.class, () -> LineGauge.read(text, LineGauge.Kind.BRAID));
        assertTrue(fault.maybe().startsWith("Maybe "));
    }

    /** JAFTMA standard diameters as quoted in public tables; exact to the printed digit. */
    @ParameterizedTest
    @CsvSource({
        "0.25,0.083",
        "0.6,0.128",
        "1,0.165",
        "1.2,0.185",
        "1.5,0.205",
        "2,0.235",
        "4,0.330",
        "8,0.470",
        "20,0.740"
    })
    void nylonNumbersHaveTheirStandardDiameter(double number, double mm) {
        assertEquals(mm, LineStandards.nylonDiameterMm(number), 1e-12);
    }

    /** Validates the square-root rule against the tables: within 0.75 % but for the numbers that are rounded up. */
    @ParameterizedTest
    @CsvSource({"0.25,0.75", "0.5,0.75", "1.2,2.4", "1.5,1.5", "1.75,0.8", "3,0.75", "6,0.75", "14,0.75", "20,0.75"})
    void nylonTableFollowsTheSquareRoot(double number, double percent) {
        assertEquals(
                0.165 * Math.sqrt(number),
                LineStandards.nylonDiameterMm(number),
                LineStandards.nylonDiameterMm(number) * percent / 100.0);
    }

    /** Braid: number 1 = 200 denier; the table implies 968 ± 9 kg/m³ but for 1.2 and 1.7. */
    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.15, 0.3, 0.4, 0.5, 0.6, 0.8, 1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10})
    void braidTableIsPackedSolidFibre(double number) {
        double mm = LineStandards.braidDiameterMm(number);
        double kgPerM3 = LineStandards.braidDenier(number) / 9e6 / (Math.PI / 4.0 * mm * mm * 1e-6);
        assertEquals(968.0, kgPerM3, 9.0);
    }

    @Test
    void aNumberBetweenTheTableFollowsTheSquareRoot() {
        assertEquals(0.171 * Math.sqrt(3.5), LineStandards.braidDiameterMm(3.5), 1e-12);
        assertEquals(0.165 * Math.sqrt(9), LineStandards.nylonDiameterMm(9), 1e-12);
    }

    @Test
    void aBraidIsThickerOverAllThanItsFibre() {
        assertEquals(0.153 * 1.2, new LineGauge.Braid(0.8).overallDiameterMm(), 1e-12);
        assertEquals(0.235, new LineGauge.Nylon(2).overallDiameterMm(), 1e-12);
    }

    /** d = 0.011 in − 0.001 in·X; 0X 0.2794 … 8X 0.0762 mm, exact. */
    @ParameterizedTest
    @CsvSource({"0,0.2794", "1,0.2540", "4,0.1778", "5,0.1524", "8,0.0762"})
    void tippetRatings(int rating, double mm) {
        assertEquals(mm, new LineGauge.Tippet(rating).standardDiameterMm(), 1e-12);
    }

    /** Record classes as quoted: the kilogram defines, the pound is nominal. */
    @Test
    void recordClasses() {
        assertEquals(OptionalInt.of(30), LineStandards.classPounds(15));
        assertEquals(OptionalInt.of(24), LineStandards.classKilograms(50));
        assertEquals(OptionalInt.empty(), LineStandards.classPounds(5));
    }

    /** Solid diameters by d = 1000·√(4·(den/9e6)/(πρ)), computed; tolerance 1e-6 mm. */
    @ParameterizedTest
    @CsvSource({"100,1140,0.111399", "100,1380,0.101250", "200,970,0.170790"})
    void solidDiameterOfYarn(double denier, double density, double mm) {
        assertEquals(mm, LineStandards.solidDiameterMm(denier / 9.0, density), 1e-6);
    }

    @Test
    void labelsComeBackAsTyped() {
        assertEquals("PE 0.8", new LineGauge.Braid(0.8).label());
        assertEquals("no. 2", new LineGauge.Nylon(2).label());
        assertEquals("5X", new LineGauge.Tippet(5).label());
        assertEquals("0.13 mm", new LineGauge.Diameter(new Length(0.13)).label());
    }
}
