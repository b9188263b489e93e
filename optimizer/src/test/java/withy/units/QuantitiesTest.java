package withy.units;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.time.LocalDate;
import java.util.Currency;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Factors: exact by the inch of 25.4 mm and the pound of 453.59237 g (NIST SP 811 App. B). Tolerance 1e-9 relative. */
class QuantitiesTest {
    private static final Currency EURO = Currency.getInstance("EUR");

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '~',
            value = {
                "7'3\" | 2209.8",
                "7 ft 3 in | 2209.8",
                "7ft 6in | 2286",
                "6 ft 10 in | 2082.8",
                "9 ft | 2743.2",
                "7'3 | 2209.8",
                "7' 3 1/2\" | 2222.5",
                "86 in | 2184.4",
                "5/64 | 1.984375",
                "5/64 in | 1.984375",
                "4.5/64 | 1.7859375",
                "1-1/2 in | 38.1",
                "3½ in | 88.9",
                "0.13 mm | 0.13",
                "1.98 m | 1980",
                "198 cm | 1980",
                "1,98 m | 1980",
                "0,125 mm | 0.125",
                "210 | 210",
            })
    void readsLengths(String text, double mm) {
        assertEquals(mm, Quantities.length(text, LengthUnit.MILLIMETRE).mm(), 1e-9 * mm);
    }

    @Test
    void aBareNumberTakesTheUnitStated() {
        assertEquals(
                5 * 0.396875, Quantities.length("5", LengthUnit.SIXTY_FOURTH).mm(), 1e-12);
        assertEquals(18.5, Quantities.mass("18,5", MassUnit.GRAM).grams(), 1e-12);
        assertEquals(
                44.482216152605, Quantities.force("10", ForceUnit.POUND_FORCE).newtons(), 1e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "1/2 oz, 14.1747615625",
        "1/2, 14.1747615625",
        "18.5 g, 18.5",
        "3 kg, 3000",
        "10 lb, 4535.9237",
        "1 lb 4 oz, 566.9904625",
        "120 gr, 7.7758692",
        "1 1/4 oz, 35.43690390625"
    })
    void readsMasses(String text, double grams) {
        assertEquals(grams, Quantities.mass(text, MassUnit.GRAM).grams(), 1e-9 * grams);
    }

    /** lbf = 4.4482216152605 N, derived exactly from the pound and standard gravity. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "10 lb | 44.482216152605",
                "4,5 kg | 44.129925",
                "44 N | 44",
                "500 g | 4.903325",
                "1 oz | 0.27801385095378125"
            })
    void readsStrengths(String text, double newtons) {
        assertEquals(newtons, Quantities.force(text, ForceUnit.NEWTON).newtons(), 1e-9 * newtons);
    }

    @ParameterizedTest
    @CsvSource({"650,65000", "650.00,65000", "€650,65000", "650 €,65000", "EUR 650.5,65050", "0,0", "19.99,1999"})
    void readsMoney(String text, long minor) {
        assertEquals(minor, Money.minor(text, EURO));
    }

    @Test
    void readsMoneyWithDecimalComma() {
        assertEquals(65050L, Money.minor("650,50", EURO));
        assertEquals(650L, Money.minor("650", Currency.getInstance("JPY")));
    }

    @Test
    void tellsHowAnAmountWithItsThousandsSetApartIsWritten() {
        for (String text : List.of("1.234,50", "1,234.50", "1 234,50", "€ 1'234.50")) {
            UnitsFault fault = assertThrows(UnitsFault.class, () -> Money.minor(text, EURO), text);
            assertEquals("Maybe write 1234.50.", fault.maybe(), text);
        }
    }

    @Test
    void refusesMoneyOfAnotherCurrencyAndTooManyDecimals() {
        assertThrows(UnitsFault.class, () -> Money.minor("$650", EURO));
        assertThrows(UnitsFault.class, () -> Money.minor("650.005", EURO));
        assertThrows(UnitsFault.class, () -> Money.minor("99999999999", EURO));
        assertThrows(UnitsFault.class, () -> Money.minor("650.5", Currency.getInstance("JPY")));
    }

    @Test
    void printsMoneyTheSameEverywhere() {
        assertEquals("650.05 EUR", Money.print(65005, EURO));
        assertEquals("-0.05 EUR", Money.print(-5, EURO));
        assertEquals("650 JPY", Money.print(650, Currency.getInstance("JPY")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "2026-11-30 | 2026-11-30 | true",
                "2026.11.30 | 2026-11-30 | true",
                "30.11.2026 | 2026-11-30 | true",
                "30. 11. 26 | 2026-11-30 | true",
                "11/30/2026 | 2026-11-30 | true",
                "the 30th of November, 2026 | 2026-11-30 | true",
                "30 November | 2026-11-30 | false",
                "29 November | 2026-11-29 | false",
                "28 November | 2027-11-28 | false",
                "20 June | 2027-06-20 | false",
                "June 20th | 2027-06-20 | false",
                "20. June | 2027-06-20 | false",
                "20.6. | 2027-06-20 | false",
                "20.06 | 2027-06-20 | false",
                "6/20 | 2027-06-20 | false",
                "29 Feb | 2028-02-29 | false",
            })
    void aDayWrittenByHandWithoutItsYearIsTheNextOne(String text, LocalDate day, boolean yearTold) {
        assertEquals(new Dates.Day(day, yearTold), Dates.byHand(text, LocalDate.of(2026, 11, 29)));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "June",
                "31 June",
                "30.2.",
                "3/4",
                "3/4/2027",
                "20 Juvember",
                "2026",
                "0.6.",
                "soon",
                "20.6.1"
            })
    void whatMayBeTwoDaysOrNoneIsNoDay(String text) {
        UnitsFault fault = assertThrows(UnitsFault.class, () -> Dates.byHand(text, LocalDate.of(2026, 11, 29)));
        assertTrue(String.valueOf(fault.getMessage()).contains("Maybe write it as 2026-05-31."), fault.getMessage());
    }

    @Test
    void readsDatesOfOneFormOnly() {
        assertEquals(LocalDate.of(2026, 5, 31), Dates.date(" 2026-05-31 "));
        for (String text : new String[] {"31.05.2026", "2026-02-30", "2026-5-1", "0999-01-01", "", "x".repeat(500)}) {
            assertThrows(UnitsFault.class, () -> Dates.date(text), text);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                " ",
                "mm",
                "-3 mm",
                "7'3\"x",
                "3 in 7 ft",
                "3 mm 4 mm",
                "1/0 in",
                "NaN",
                "Infinity",
                "1e400 m",
                "1e3 mm",
                "1,500 mm",
                "5//64",
                "5 oz",
                "1.2.3 mm",
                "9999999999999999999 mm",
                "3 5/4 in",
                "0x10",
                "+5 mm",
                "7 ' 3 ' mm"
            })
    void refusesWhatIsNoLength(String text) {
        UnitsFault fault = assertThrows(UnitsFault.class, () -> Quantities.length(text, LengthUnit.MILLIMETRE));
        assertTrue(fault.maybe().startsWith("Maybe "), fault.maybe());
        assertTrue(fault.getMessage().contains("\nMaybe "), fault.getMessage());
        assertTrue(fault.position() >= 0 && fault.position() <= text.length());
    }

    @Test
    void saysWhereItStumbledAndWhatIsAllowed() {
        UnitsFault fault = assertThrows(UnitsFault.class, () -> Quantities.length("7 ft 3 oz", LengthUnit.MILLIMETRE));
        assertEquals(7, fault.position());
        assertEquals("\"oz\"", fault.read());
        assertTrue(fault.allowed().contains("mm, cm, m"));
    }

    @Test
    void saysBothReadingsOfAnAmbiguousComma() {
        UnitsFault fault = assertThrows(UnitsFault.class, () -> Quantities.length("1,500 mm", LengthUnit.MILLIMETRE));
        assertEquals("Maybe 1500 or 1.500 was meant.", fault.maybe());
        assertEquals(1.5, Quantities.decimal("1,500", DecimalMark.COMMA), 0.0);
        assertThrows(UnitsFault.class, () -> Quantities.decimal("1,5", DecimalMark.POINT));
    }

    @Test
    void longTextIsRefusedAtOnce() {
        UnitsFault fault =
                assertThrows(UnitsFault.class, () -> Quantities.length("1".repeat(100_000), LengthUnit.MILLIMETRE));
        assertTrue(fault.getMessage().length() < 300);
    }

    /** Guards: whatever is typed, an answer or a fault comes at once, never another error, never a negative or endless value. */
    @Test
    void neverHangsOnAnyText() {
        SplittableRandom random = new SplittableRandom(20260531L);
        String signs = "0123456789.,/-'\" ftinmozkglbPE#x½−é\u00a0+eE";
        assertTimeoutPreemptively(Duration.ofSeconds(20), () -> {
            for (int i = 0; i < 50_000; i++) {
                StringBuilder text = new StringBuilder();
                for (int n = random.nextInt(14); n > 0; n--) {
                    text.append(signs.charAt(random.nextInt(signs.length())));
                }
                check(text.toString());
            }
        });
    }

    private static void check(String text) {
        try {
            double mm = Quantities.length(text, LengthUnit.MILLIMETRE).mm();
            assertTrue(mm >= 0.0 && Double.isFinite(mm), text);
        } catch (UnitsFault expected) {
            assertTrue(expected.maybe().startsWith("Maybe "), text);
        }
        try {
            assertTrue(LineGauge.read(text, LineGauge.Kind.BRAID).standardDiameterMm() > 0.0, text);
        } catch (UnitsFault expected) {
            assertTrue(expected.position() <= text.length(), text);
        }
        try {
            assertTrue(Money.minor(text, EURO) >= 0, text);
        } catch (UnitsFault expected) {
            assertTrue(expected.position() <= text.length(), text);
        }
    }

    @Test
    void printsTheSameInAnyLocale() {
        Locale before = Locale.getDefault();
        try {
            for (String tag : new String[] {"de-DE", "ar-EG", "tr-TR", "hi-IN-u-nu-deva"}) {
                Locale.setDefault(Locale.forLanguageTag(tag));
                QuantityText both = new QuantityText(UnitSystem.BOTH);
                assertEquals("2.21 m (7'3\")", both.rodLength(2209.8));
                assertEquals("1.79 mm (4.5/64\")", both.tubeSize(1.7859375));
                assertEquals("14.2 g (1/2 oz)", both.lureMass(14.1747615625));
                assertEquals(
                        2209.8,
                        Quantities.length("7 FT 3 IN", LengthUnit.MILLIMETRE).mm(),
                        1e-9);
            }
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void printsFractionsReduced() {
        QuantityText imperial = new QuantityText(UnitSystem.IMPERIAL);
        assertEquals("3 21/64\"", imperial.partLength(84.5));
        assertEquals("7'0\"", imperial.rodLength(2133.6));
        assertEquals("7'3 1/2\"", imperial.rodLength(2222.5));
        assertEquals("0.0051\"", imperial.thickness(0.13));
        assertEquals("0.65 oz", imperial.mass(18.5));
        assertEquals("10.0 lb", imperial.strength(44.482216152605));
        assertEquals("-1/2\"", imperial.partLength(-12.7));
    }

    /** 111.151 g and 110.749 g differ by 0.402 g; who reads 111.2 and 110.7 subtracts 0.5. */
    @Test
    void differencesAgreeWithTheFiguresBesideThem() {
        QuantityText metric = new QuantityText(UnitSystem.METRIC);
        assertEquals("111.2 g", metric.mass(111.151));
        assertEquals("110.7 g", metric.mass(110.749));
        assertEquals("0.5 g", metric.massBetween(110.749, 111.151));
        assertEquals("0.0 g", metric.massBetween(110.66, 110.74));
        assertEquals("2 N·mm", metric.momentBetween(314.4, 312.5 - 0.9));
        assertEquals("0.0003 kg·m²", metric.inertiaBetween(0.03625, 0.03605 - 0.00001));
        QuantityText both = new QuantityText(UnitSystem.BOTH);
        assertEquals("0.5 g (0.01 oz)", both.massBetween(111.151, 110.749));
    }

    @Test
    void printsMetricTrimmed() {
        QuantityText metric = new QuantityText(UnitSystem.METRIC);
        assertEquals("84.5 mm", metric.partLength(84.5));
        assertEquals("100 mm", metric.partLength(100.0));
        assertEquals("0.0 g", metric.mass(-0.01));
        assertEquals("314 N·mm", metric.moment(313.72842));
        assertEquals("0.0363 kg·m²", metric.inertia(0.0362500861));
    }
}
