package withy.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;

import java.math.BigDecimal;
import java.text.NumberFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withy.catalog.Numbers.Mark;

/** Numbers of lists, held against how the Java platform writes them for the languages of a customer's spreadsheet (Unicode CLDR). */
class NumbersTest {
    private static final Map<Mark, List<Locale>> LANGUAGES = Map.of(
            Mark.POINT, List.of(Locale.US, Locale.UK, new Locale("de", "CH")),
            Mark.COMMA, List.of(Locale.GERMANY, Locale.FRANCE, Locale.ITALY, new Locale("da", "DK")));

    @Test
    void whatALanguageWritesIsReadBack() {
        Random random = new Random(20261128);
        for (int i = 0; i < 4_000; i++) {
            BigDecimal number = BigDecimal.valueOf(random.nextInt(i % 2 == 0 ? 3_000_000 : 30_000), i % 4);
            LANGUAGES.forEach((mark, languages) -> languages.forEach(language -> {
                NumberFormat format = NumberFormat.getNumberInstance(language);
                format.setMinimumFractionDigits(number.scale());
                format.setMaximumFractionDigits(number.scale());
                String written = format.format(number);
                BigDecimal read = Numbers.parse(written, mark);
                assertNotNull(read, written + " of " + language);
                assertEquals(0, number.compareTo(read), written + " of " + language + " is read as " + read);
            }));
        }
    }

    /** What speaks for a decimal comma (1), for a decimal point (-1), or for neither: three digits behind one mark may be thousands. */
    @ParameterizedTest
    @CsvSource(
            delimiter = ';',
            value = {
                "1500; 0",
                "1.500; 0",
                "1,500; 0",
                "12.5; -1",
                "12,5; 1",
                "0.850; -1",
                "0,850; 1",
                "1,234.5; -1",
                "1.234,5; 1",
                "1234.500; -1",
                "12.5000; -1",
                "1.234.567; 0",
                "x; 0",
                "1.2.3; 0"
            })
    void whatSpeaksForAMark(String text, int evidence) {
        assertEquals(evidence, Numbers.evidence(text), text);
    }

    @Test
    void whatMayBeTwoNumbersIsNoneUntilTheListTells() {
        assertNull(Numbers.parse("1,500", Mark.UNKNOWN));
        assertEquals(new BigDecimal("1500"), Numbers.parse("1,500", Mark.POINT));
        assertEquals(new BigDecimal("1.500"), Numbers.parse("1,500", Mark.COMMA));
        assertEquals(new BigDecimal("1500"), Numbers.parse("1.500", Mark.COMMA));
        assertEquals(new BigDecimal("1.500"), Numbers.parse("1.500", Mark.POINT));
        for (String none : List.of("", ".", "1.2.3", "12a", "--3")) {
            assertNull(Numbers.parse(none, Mark.POINT), none);
        }
        assertEquals(0, new BigDecimal("0.5").compareTo(Numbers.parse(".5", Mark.POINT)));
        assertEquals(0, BigDecimal.ONE.compareTo(Numbers.parse("1.", Mark.POINT)));
    }
}
