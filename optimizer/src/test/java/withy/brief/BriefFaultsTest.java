package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;
import withy.brief.BriefFault.Notation;

/** Every fault a brief can have: where, what stands there, what is allowed, and a guess. */
class BriefFaultsTest {
    /**
     * A brief with one fault.
     *
     * @param schemaToo true where the schema refuses it as well; false for what only the reader can see
     */
    record Broken(String json, String path, String value, String allowed, String maybe, boolean schemaToo) {}

    static final List<Broken> BROKEN =
            Stream.of(BrokenTackle.ALL, BrokenWishes.ALL).flatMap(List::stream).toList();

    @TestFactory
    Stream<DynamicTest> eachFaultIsToldInFull() {
        return BROKEN.stream()
                .map(broken -> DynamicTest.dynamicTest(broken.json(), () -> {
                    BriefReading reading = BriefReader.read(broken.json(), ShopRates.CONTEXT);
                    assertNull(reading.brief());
                    assertEquals(
                            1, reading.faults().size(), () -> reading.faults().toString());
                    BriefFault fault = reading.faults().get(0);
                    assertEquals(broken.path(), fault.path());
                    assertTrue(fault.value().contains(broken.value()), fault::message);
                    assertTrue(fault.allowed().contains(broken.allowed()), fault::message);
                    assertTrue(fault.maybe().startsWith(broken.maybe()), fault::message);
                    assertEquals(1, fault.line());
                    assertTrue(
                            fault.column() > 0
                                    && fault.column() <= broken.json().length(),
                            fault::message);
                }));
    }

    /** A page that has no file leaves out what speaks of one: that is a fact of the fault, and holds of every hint. */
    @Test
    void whatSpeaksOfAFileIsKnownAsThat() {
        Pattern ofFiles = Pattern.compile("quotes|\\bkey\\b|brackets|\": ");
        int hints = 0;
        for (Broken broken : BROKEN) {
            BriefFault fault =
                    BriefReader.read(broken.json(), ShopRates.CONTEXT).faults().get(0);
            boolean hint = fault.notation().contains(Notation.HINT);
            assertEquals(ofFiles.matcher(fault.maybe()).find(), hint, fault::message);
            assertFalse(fault.plain().contains("object of") || fault.plain().contains("text with"), fault::message);
            assertEquals(
                    fault.notation().contains(Notation.RANGE), fault.allowed().contains(" object of min and max"));
            hints += hint ? 1 : 0;
        }
        assertTrue(hints > 5 && hints < BROKEN.size(), hints + " of " + BROKEN.size());
    }

    @Test
    void allFaultsComeInOneListInTheOrderOfTheText() {
        List<BriefFault> faults = ShopRates.faults("""
                {
                  "rodtype": "spinning",
                  "lengthMm": 3,
                  "lure": { "usualG": 9000, "colour": "red" },
                  "budget": "free"
                }
                """);
        assertEquals(
                List.of("rodtype", "lengthMm", "lure.usualG", "lure.colour", "budget"),
                faults.stream().map(BriefFault::path).toList());
        assertEquals(
                List.of(2, 3, 4, 4, 5), faults.stream().map(BriefFault::line).toList());
        assertEquals(
                "lure.usualG (line 4, column 13): 9000 g; allowed is 0.1 to 500 g.\n"
                        + "Maybe another unit was meant: 90 g would be allowed.",
                faults.get(2).message());
    }

    @Test
    void aValueInAMessageIsShortAndOnOneLine() {
        BriefFault fault = new BriefFault("name", 1, 1, "a\n" + "b".repeat(500), "text", "Maybe shorten it.");
        assertEquals(60, fault.value().length());
        assertEquals(2, fault.message().lines().count());
    }
}
