package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** No command but the one that serves the page asks the network for anything: in a process that refuses every socket and knows no name. */
class OfflineTest {
    @TempDir
    private Path folder;

    @Test
    void everyCommandWorksWithoutANetwork() throws IOException, InterruptedException {
        Path shop = Files.createDirectory(folder.resolve("shop"));
        ShopCommandsTest.copySample(shop);
        String brief = Terminal.brief("brook-trout-cork");
        List<String> lines = new ArrayList<>(List.of(
                "check|--catalog|" + Terminal.BENCH,
                "parts|--catalog|" + Terminal.BENCH,
                "stock|--catalog|" + shop,
                "job|--new|" + brief + "|--catalog|" + shop,
                "backup|" + folder.resolve("copy.db") + "|--catalog|" + shop,
                "doctor|--catalog|" + shop,
                "schema|answer"));
        for (List<String> question : FewParts.questions(Files.createDirectory(folder.resolve("few")))) {
            if (question.contains("--json")) {
                lines.add(String.join("|", question));
            }
        }
        for (String command : List.of("propose", "whynot", "lighter", "plan")) {
            assertTrue(lines.stream().anyMatch(line -> line.startsWith(command + "|")), command + " is not asked");
        }
        String told = run(lines);
        assertEquals(
                lines.size(), told.lines().filter(line -> line.startsWith("0 ")).count(), told);
    }

    /** The refusal is real: asked for a socket, the same process ends. */
    @Test
    void aSocketWouldBeSeen() {
        AssertionError seen =
                org.junit.jupiter.api.Assertions.assertThrows(AssertionError.class, () -> run(List.of("ask-for-one")));
        assertTrue(String.valueOf(seen.getMessage()).contains(Offline.word()), seen.getMessage());
    }

    private String run(List<String> lines) throws IOException, InterruptedException {
        Path out = folder.resolve("out");
        Path err = folder.resolve("err");
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-Djava.nio.channels.spi.SelectorProvider=" + Offline.class.getName(),
                "-Djdk.net.hosts.file=" + Files.writeString(folder.resolve("hosts"), ""),
                "-cp",
                HostileInputTest.places(),
                Offline.class.getName()));
        command.addAll(lines);
        Process child = new ProcessBuilder(command)
                .redirectOutput(out.toFile())
                .redirectError(err.toFile())
                .start();
        assertTrue(child.waitFor(5, TimeUnit.MINUTES));
        assertEquals("", Files.readString(err));
        assertEquals(0, child.exitValue());
        return Files.readString(out);
    }
}
