package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What keeps a text from being JSON is told in words, with its place. */
class JsonFaultTest {
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "{\"a\": 1 \"b\": 2} | 9 | \" | a comma before the next entry | Maybe the comma is missing.",
                "{\"a\": 2000,5} | 12 | 5 | a number with a decimal point | Maybe write 2000.5.",
                "{\"a\": 1,} | 9 | } | a key in quotation marks | Maybe the comma before it is one too many.",
                "{a: 1} | 2 | a | a key in quotation marks | Maybe the quotation marks are missing.",
                "{\"a\" 1} | 6 | 1 | a colon between key and value | Maybe the colon is missing.",
                "{\"a\": 1, \"a\": 2} | 13 | \"a\" a second time | each key once | Maybe drop one of the two.",
                "{\"a\": split} | 7 | split | text in quotation marks | Maybe the quotation marks are missing.",
                "{\"a\": 1}} | 9 | } | a bracket that closes an open one | Maybe it is one too many.",
                "{\"a\": [1 | 9 | the end | a closing bracket or quotation mark | Maybe the end is cut off."
            })
    void isToldInWordsAtItsPlace(String json, int column, String found, String allowed, String maybe) {
        BriefFault fault = assertThrows(BriefText.Unreadable.class, () -> BriefText.read(json))
                .fault();
        assertEquals(found, fault.value(), fault.message());
        assertTrue(fault.allowed().startsWith(allowed), fault.message());
        assertEquals(maybe, fault.maybe());
        assertEquals(1, fault.line());
        assertEquals(column, fault.column(), fault.message());
    }
}
