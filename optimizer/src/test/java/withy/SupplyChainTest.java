package withy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.net.URL;
import java.net.URLClassLoader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;

/** Every library that the program or its tests load stands in {@code DEPENDENCIES.csv} with its licence and its reason, and nothing else does. */
class SupplyChainTest {
    private static final Path LIST = Path.of("DEPENDENCIES.csv");

    /** Licences under which the program may be handed on with the library beside it, as it is. */
    private static final Set<String> WITH_THE_PROGRAM = Set.of(
            "Apache-2.0",
            "MIT",
            "BSD-2-Clause",
            "BSD-3-Clause",
            "CC0-1.0",
            "EPL-2.0 OR Apache-2.0",
            "LGPL-2.1-or-later");

    /** The junit console brings itself; Maven's booter is no library of ours. */
    private static final Set<String> RUNNERS = Set.of("junit-platform-console-standalone", "surefirebooter");

    private record Entry(String licence, String in, String why) {}

    @Test
    void theListIsWhatIsLoaded() throws IOException {
        TreeSet<String> loaded = new TreeSet<>();
        for (String place : places()) {
            String name = Path.of(place).getFileName().toString();
            if (name.endsWith(".jar")) {
                loaded.add(name.replaceFirst("-[0-9]+(\\.[0-9A-Za-z]+)+(-.*)?\\.jar$", "")
                        .replaceFirst("\\.jar$", ""));
            }
        }
        loaded.removeIf(name -> RUNNERS.stream().anyMatch(name::startsWith) || name.startsWith("surefire"));
        assertTrue(loaded.size() > 100, () -> "libraries seen: " + loaded);
        assertEquals(entries().keySet(), loaded);
    }

    @Test
    void everyLicenceAllowsHandingTheProgramOn() throws IOException {
        entries().forEach((name, entry) -> {
            assertTrue(!entry.why().isBlank() && !entry.licence().isBlank(), name);
            if (entry.in().equals("program")) {
                boolean allowed = WITH_THE_PROGRAM.contains(entry.licence())
                        || Stream.of(entry.licence().split(" OR ")).anyMatch(WITH_THE_PROGRAM::contains);
                assertTrue(allowed, name + ": " + entry.licence());
            } else {
                assertEquals("tests", entry.in(), name);
            }
        });
    }

    /** No class stands in two libraries: which of them is loaded would hang on their order. */
    @Test
    void noClassIsThereTwice() throws IOException {
        Map<String, String> first = new HashMap<>();
        TreeSet<String> twice = new TreeSet<>();
        for (String place : places()) {
            if (place.endsWith(".jar") && RUNNERS.stream().noneMatch(place::contains)) {
                try (ZipFile jar = new ZipFile(place)) {
                    jar.stream()
                            .map(ZipEntry::getName)
                            .filter(SupplyChainTest::loadable)
                            .forEach(name -> {
                                String other = first.putIfAbsent(name, place);
                                if (other != null && !other.equals(place)) {
                                    twice.add(Path.of(other).getFileName() + " and "
                                            + Path.of(place).getFileName());
                                }
                            });
                }
            }
        }
        assertTrue(first.size() > 20_000, () -> "classes seen: " + first.size());
        assertEquals(Set.of(), twice);
    }

    /** A class that a program names; versions for newer Java and descriptions of modules and packages are none. */
    private static boolean loadable(String name) {
        return name.endsWith(".class") && !name.startsWith("META-INF/") && !name.endsWith("-info.class");
    }

    private static TreeMap<String, Entry> entries() throws IOException {
        TreeMap<String, Entry> entries = new TreeMap<>();
        List<String> lines = Files.readAllLines(LIST);
        assertEquals("library,licence,in,why", lines.get(0));
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", 4);
            assertEquals(4, cells.length, line);
            assertEquals(null, entries.put(cells[0], new Entry(cells[1], cells[2], cells[3])), line);
        }
        return entries;
    }

    private static List<String> places() {
        return SupplyChainTest.class.getClassLoader() instanceof URLClassLoader loader
                ? Stream.of(loader.getURLs()).map(URL::getPath).toList()
                : List.of(System.getProperty("java.class.path").split(File.pathSeparator, -1));
    }
}
