package withy.brief;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Texts that are no brief at all are refused soon, with a place. */
class BriefTextTest {
    @TempDir
    Path folder;

    @Test
    void aSyntaxFaultHasLineAndColumn() {
        BriefFault fault = only("{\n  \"name\": \"a\"\n  \"hands\": 1\n}");
        assertEquals(3, fault.line());
        assertTrue(fault.column() >= 3 && fault.column() <= 4, fault.message());
        assertEquals("Maybe the comma is missing.", fault.maybe());
    }

    @Test
    void aKeyTwiceIsAFault() {
        assertEquals(
                "\"hands\" a second time", only("{\"hands\": 1, \"hands\": 2}").value());
    }

    @Test
    void deepNestingIsAFault() {
        assertTrue(only("[".repeat(50_000)).allowed().contains("nested at most 16 deep"));
        assertTrue(
                only("{\"look\":".repeat(30) + "1" + "}".repeat(30)).allowed().contains("nested at most 16 deep"));
    }

    @Test
    void longTextsNumbersAndWordsAreFaults() {
        assertTrue(only("{\"name\": \"" + "x".repeat(300_000) + "\"}").allowed().contains("at most 262144 characters"));
        assertEquals(1, only("{\"hands\": " + "1".repeat(1000) + "}").line());
        assertEquals(1, only("{\"name\": \"" + "x".repeat(10_000) + "\"}").line());
    }

    @Test
    void nothingAndTrailingWordsAreFaults() {
        assertTrue(only(" \n").maybe().contains("saved empty"));
        assertEquals(1, only("{} {}").line());
        assertEquals(1, only("{\"hands\": NaN}").line());
    }

    @Test
    void aFileWithByteOrderMarkReads() throws IOException {
        Path file = folder.resolve("brief.json");
        Files.write(file, "\uFEFF{\"name\": \"Größe\"}".getBytes(StandardCharsets.UTF_8));
        assertEquals(
                "Größe", BriefReader.read(file, ShopRates.CONTEXT).orThrow().name());
    }

    @Test
    void aHugeFileIsRefusedUnread() throws IOException {
        Path file = folder.resolve("brief.json");
        Files.write(file, new byte[2_000_000]);
        BriefFault fault = BriefReader.read(file, ShopRates.CONTEXT).faults().get(0);
        assertTrue(fault.value().contains("2000000 bytes"), fault.message());
    }

    @Test
    void anyChangeOfABriefReadsOrFaultsButNeverThrows() {
        long seed = 20_260_302L;
        Random random = new Random(seed);
        String pieces = "{}[]:,\"-+.eE0123456789 truefalsn\\u/#'";
        int read = 0;
        for (int i = 0; i < 4000; i++) {
            StringBuilder text = new StringBuilder(FullBrief.JSON);
            int changes = 1 + random.nextInt(3);
            for (int c = 0; c < changes; c++) {
                int at = random.nextInt(text.length());
                char other = pieces.charAt(random.nextInt(pieces.length()));
                switch (random.nextInt(3)) {
                    case 0 -> text.setCharAt(at, other);
                    case 1 -> text.deleteCharAt(at);
                    default -> text.insert(at, other);
                }
            }
            BriefReading reading = BriefReader.read(text.toString(), ShopRates.CONTEXT);
            for (BriefFault fault : reading.faults()) {
                assertTrue(fault.line() > 0 && fault.column() > 0, () -> "seed " + seed + " " + fault + "\n" + text);
            }
            read += reading.brief() == null ? 0 : 1;
        }
        assertTrue(read > 100 && read < 3000, "read without a fault: " + read);
    }

    private static BriefFault only(String json) {
        List<BriefFault> faults = ShopRates.faults(json);
        assertEquals(1, faults.size(), faults::toString);
        assertNotNull(faults.get(0).message());
        return faults.get(0);
    }
}
