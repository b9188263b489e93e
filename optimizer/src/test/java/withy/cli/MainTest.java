package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class MainTest {

    private final StringWriter out = new StringWriter();
    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Main.commandLine(new PrintWriter(out, true), new PrintWriter(err, true))
                .execute(args);
    }

    @Test
    void versionIsTheOneOfTheBuild() {
        assertEquals(0, run("--version"));
        assertTrue(out.toString().strip().matches("withy \\d+\\.\\d+\\.\\d+"), out.toString());
        assertEquals("", err.toString());
    }

    @Test
    void helpLeadsWithExamples() {
        assertEquals(0, run("--help"));
        String help = out.toString();
        assertTrue(help.startsWith("Examples:"), help);
        assertTrue(help.indexOf("withy demo") < help.indexOf("Usage: withy"), help);
    }

    @Test
    void anUnknownOptionIsAUsageFault() {
        assertEquals(2, run("--heavier"));
        assertTrue(err.toString().contains("--heavier"), err.toString());
        assertEquals("", out.toString());
    }
}
