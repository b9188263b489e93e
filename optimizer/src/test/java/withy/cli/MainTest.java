package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
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

    /** {@code withy parts | head -1}: the reader has seen enough, and nobody is at fault. */
    @Test
    void aReaderThatLeavesIsNoFault() throws IOException, InterruptedException {
        Process child = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        HostileInputTest.places(),
                        Main.class.getName(),
                        "man"))
                .start();
        child.getInputStream().close();
        assertEquals("", new String(child.getErrorStream().readAllBytes(), StandardCharsets.UTF_8));
        assertEquals(0, child.waitFor());
    }

    /** A full disk is told as before; only what came of the pipe is forgiven. */
    @Test
    void whatCannotBeWrittenElsewhereIsAFault() {
        for (String said : List.of("No space left on device", "Broken pipe")) {
            Outlet outlet = new Outlet(new OutputStream() {
                @Override
                public void write(int one) throws IOException {
                    throw new IOException(said);
                }
            });
            assertThrows(IOException.class, () -> outlet.write(7));
            assertEquals(said.equals("Broken pipe"), outlet.leftByReader());
        }
    }

    @Test
    void anUnknownOptionIsAUsageFault() {
        assertEquals(2, run("--heavier"));
        assertTrue(err.toString().contains("--heavier"), err.toString());
        assertEquals("", out.toString());
    }
}
