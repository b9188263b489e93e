package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.junit.jupiter.api.io.TempDir;

/** Bombs and hostile text on every input, in a process of 256 MB: each ends in a fault that says what would be right, and steers no terminal. */
class HostileInputTest {
    private static final Set<String> REFUSED = Set.of("" + Exit.USAGE, "" + Exit.BAD_DATA, "" + Exit.DISK);

    /** So that no case is lost on the way. */
    private static final int CASES = 96;

    @TempDir
    private static Path folder;

    @TestFactory
    Stream<DynamicTest> everyInputRefusesThem() throws IOException, InterruptedException {
        Path told = folder.resolve("told.txt");
        Path loud = folder.resolve("loud.txt");
        Process child = new ProcessBuilder(List.of(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-Xmx256m",
                        "-Dstdout.encoding=UTF-8",
                        "-Dfile.encoding=UTF-8",
                        "-cp",
                        places(),
                        Hostile.class.getName(),
                        Files.createDirectory(folder.resolve("work")).toString()))
                .redirectOutput(told.toFile())
                .redirectError(loud.toFile())
                .start();
        assertTrue(child.waitFor(10, TimeUnit.MINUTES), "it hangs");
        assertEquals("", Files.readString(loud), "nothing but what a case tells");
        assertEquals(0, child.exitValue());
        List<String> lines = Files.readAllLines(told, StandardCharsets.UTF_8);
        assertEquals(CASES, lines.size());
        return lines.stream()
                .map(line -> line.split("\t", -1))
                .map(words -> DynamicTest.dynamicTest(words[0], () -> {
                    assertTrue(REFUSED.contains(words[1]), () -> "exit code " + words[1] + ": " + words[4]);
                    assertEquals("true", words[2], "says what may be wrong: " + words[4]);
                    assertEquals("true", words[3], "steers no terminal: " + words[4]);
                }));
    }

    static String places() {
        return Hostile.class.getClassLoader() instanceof URLClassLoader loader
                ? Stream.of(loader.getURLs()).map(URL::getPath).collect(Collectors.joining(File.pathSeparator))
                : System.getProperty("java.class.path");
    }
}
