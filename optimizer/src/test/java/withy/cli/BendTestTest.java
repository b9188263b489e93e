package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Terminal.Shown;

/** The command {@code bendtest} as typed, and its result used by {@code bend}. */
class BendTestTest {
    @TempDir
    private Path folder;

    private static String blank() {
        for (JsonNode part : Demo.build(0).path("parts")) {
            if (part.path("station").asText().equals("blank")) {
                return part.path("part").asText();
            }
        }
        throw new AssertionError("the demo's build has no blank");
    }

    private static Shown test(String... more) {
        List<String> words = new ArrayList<>(List.of("bendtest", blank(), "--catalog", Terminal.BENCH));
        words.addAll(List.of(more));
        return new Terminal().run(words.toArray(String[]::new));
    }

    @Test
    void theCataloguesOwnTestComesOutAgain() {
        JsonNode plain = test("--reading", "250 g = 600 mm", "--json").json();
        double third = plain.path("thirdTestG").asDouble();
        double length = plain.path("along")
                .path(plain.path("along").size() - 1)
                .path("xMm")
                .asDouble();
        Shown again = test("--reading", third + " g=" + Math.round(length / 3 * 100) / 100.0 + " mm", "--json");
        assertEquals(third, again.json().path("thirdTestG").asDouble(), 0.2);
        assertEquals(List.of(), Terminal.faults("bendtest", again.out()));
        assertEquals(
                plain.path("scaleNmm").asDouble(),
                again.json().path("scaleNmm").asDouble(),
                1e-3 * plain.path("scaleNmm").asDouble());
    }

    @Test
    void whereDropsCountFromIsSaidAndMatters() {
        Shown straight = test("--reading", "250g=600mm");
        Shown droop = test("--reading", "250g=600mm", "--from", "droop");
        assertTrue(straight.out().contains("straight line of the unbent blank"), straight.out());
        assertTrue(droop.out().replaceAll("\\s+", " ").contains("own weight had already taken"), droop.out());
        double one = test("--reading", "250g=600mm", "--json")
                .json()
                .path("thirdTestG")
                .asDouble();
        double two = test("--reading", "250g=600mm", "--from", "droop", "--json")
                .json()
                .path("thirdTestG")
                .asDouble();
        assertTrue(two < one, two + " against " + one);
    }

    @Test
    void threeReadingsTellTheExponentAndShowTheResidual() {
        Shown shown = test("--reading", "100g=330mm", "--reading", "200g=540mm", "--reading", "400g=820mm", "--json");
        assertEquals(0, shown.code(), shown.err());
        assertTrue(shown.json().path("exponentFitted").asBoolean());
        double squares = 0;
        for (JsonNode reading : shown.json().path("readings")) {
            double off =
                    reading.path("fittedMm").asDouble() - reading.path("dropMm").asDouble();
            assertEquals(off, reading.path("residualMm").asDouble(), 0.011);
            squares += off * off;
        }
        assertEquals(Math.sqrt(squares / 3), shown.json().path("rmsMm").asDouble(), 0.02);
    }

    @Test
    void aTraceIsFittedAndFaultsComeInOneList() throws IOException {
        Path good = Files.writeString(
                folder.resolve("trace.csv"), "ahead;down\n0;0\n500;40\n1000;190\n1500;480\n1700;660\n1850;850\n");
        Shown shown = test("--trace", good.toString(), "--load", "300g", "--json");
        assertEquals(0, shown.code(), shown.err());
        assertEquals(List.of(), Terminal.faults("bendtest", shown.out()));
        assertEquals("trace", shown.json().path("dropFrom").asText());
        assertEquals(6, shown.json().path("points").size());
        Path bad = Files.writeString(folder.resolve("bad.csv"), "0 0\n1,5 2,5\nx y\n3 4\n");
        Shown faults = test("--trace", bad.toString(), "--load", "300g");
        assertEquals(3, faults.code(), faults.err());
        assertTrue(faults.err().contains("line 2") && faults.err().contains("line 3"), faults.err());
    }

    @Test
    void faultsAreToldWithWhatIsAllowed() {
        Shown many = test("--reading", "5", "--held", "5 m", "--from", "tip");
        assertEquals(2, many.code(), many.err());
        for (String word : List.of("--reading 5", "--held 5 m", "--from tip")) {
            assertTrue(many.err().contains(word), many.err());
        }
        assertEquals(2, test().code());
        assertEquals(2, test("--load", "300g", "--reading", "1g=1mm").code());
        assertEquals(2, test("--reading", "100 g = 9 m").code());
        Shown unknown =
                new Terminal().run("bendtest", blank() + "x", "--catalog", Terminal.BENCH, "--reading", "1g=1mm");
        assertEquals(2, unknown.code());
        assertTrue(unknown.err().contains("\"" + blank() + "\" was meant"), unknown.err());
    }

    /** A drop smaller than the blank's own weight makes can't be: said so, nothing printed. */
    @Test
    void whatCannotBeFittedIsSaidSo() {
        Shown shown = test("--reading", "300g=2mm");
        assertEquals(3, shown.code(), shown.out());
        assertEquals("", shown.out());
        assertTrue(shown.err().contains("No stiffness fits"), shown.err());
    }

    /** A slip of the decimal point in a weight is ten times; nothing rests on it unless the builder says that it is so. */
    @Test
    void whatIsManyTimesOffTheListIsMeasuredAgainOrMeant() {
        JsonNode right = test("--reading", "250g=600mm", "--json").json();
        double listed = right.path("catalogThirdTestG").asDouble();
        double third = right.path("along")
                        .path(right.path("along").size() - 1)
                        .path("xMm")
                        .asDouble()
                / 3;
        for (double times : new double[] {1.9, 1 / 1.9}) {
            Shown near = test("--reading", String.format(Locale.ROOT, "%.3fg=%.2fmm", listed * times, third), "--json");
            assertEquals(0, near.code(), near.err());
        }
        for (double times : new double[] {10, 2.1, 1 / 2.1}) {
            String reading = String.format(Locale.ROOT, "%.3fg=%.2fmm", listed * times, third);
            Shown far = test("--reading", reading, "--json");
            assertEquals(2, far.code(), far.out());
            assertEquals("", far.out());
            assertTrue(far.err().contains(times > 1 ? " times what the list says" : " times less than"), far.err());
            assertTrue(far.err().contains("measure again; --sure"), far.err());
            Shown sure = test("--reading", reading, "--sure", "--json");
            assertEquals(listed * times, sure.json().path("thirdTestG").asDouble(), 0.01 * listed * times);
        }
    }

    @Test
    void bendUsesTheTest() throws IOException {
        Shown test = test("--reading", "200g=600mm", "--json");
        Path file = Files.writeString(folder.resolve("test.json"), test.out());
        Shown bend = new Terminal()
                .typing(Demo.build(0).toString())
                .run(
                        "bend",
                        "-",
                        "--brief",
                        Terminal.brief("kayak-estuary"),
                        "--catalog",
                        Terminal.BENCH,
                        "--bendtest",
                        file.toString(),
                        "--json");
        assertEquals(0, bend.code(), bend.err());
        JsonNode stiffness = bend.json().path("machine").path("stiffness");
        assertEquals("bend-test", stiffness.path("source").asText());
        assertEquals(test.json().path("along"), stiffness.path("along"));
        assertEquals(List.of(), Terminal.faults("bend", bend.out()));
        Path other = Files.writeString(folder.resolve("other.json"), test.out().replace(blank(), "another"));
        Shown wrong = new Terminal()
                .typing(Demo.build(0).toString())
                .run(
                        "bend",
                        "-",
                        "--brief",
                        Terminal.brief("kayak-estuary"),
                        "--catalog",
                        Terminal.BENCH,
                        "--bendtest",
                        other.toString());
        assertEquals(3, wrong.code(), wrong.err());
    }
}
