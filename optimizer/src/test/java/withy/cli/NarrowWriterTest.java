package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class NarrowWriterTest {
    private static String shown(String text) {
        StringWriter out = new StringWriter();
        PrintWriter writer = new PrintWriter(new NarrowWriter(out), true);
        writer.println(text);
        return out.toString();
    }

    @Test
    void noWordIsLostAndNoLineIsWiderThanATerminal() {
        String text = "lengthMm.min: 20000 mm; allowed is 900 to 6000 mm, and many words more. "
                .repeat(5)
                .strip();
        String shown = shown(text);
        shown.lines().forEach(line -> assertTrue(line.length() <= 80, line));
        assertEquals(text, String.join(" ", shown.strip().split("\\s+")));
        assertTrue(shown.lines().skip(1).allMatch(line -> line.startsWith("  ")), shown);
    }

    @Test
    void aLineThatFitsStaysAsItIs() {
        String just = "x".repeat(39) + " " + "y".repeat(40);
        assertEquals(just + System.lineSeparator(), shown(just));
    }

    @Test
    void aWordWiderThanATerminalStaysWhole() {
        String path = "/" + "folder/".repeat(20);
        assertEquals(
                "Can't read" + System.lineSeparator() + "  " + path + System.lineSeparator(),
                shown("Can't read " + path));
        assertEquals(path + System.lineSeparator(), shown(path));
    }
}
