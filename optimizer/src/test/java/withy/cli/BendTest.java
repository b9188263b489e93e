package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Terminal.Shown;

/** The command {@code bend} as typed. */
class BendTest {
    @TempDir
    private Path folder;

    private static Shown bend(String... more) {
        List<String> words = new ArrayList<>(
                List.of("bend", "-", "--brief", Terminal.brief("kayak-estuary"), "--catalog", Terminal.BENCH));
        words.addAll(List.of(more));
        return new Terminal().typing(Demo.build(0).toString()).run(words.toArray(String[]::new));
    }

    @Test
    void theAnswerKeepsItsSchemaAndTheRodsWeight() {
        Shown shown = bend("--json", "--reel", "4000");
        assertEquals(0, shown.code(), shown.err());
        assertEquals(List.of(), Terminal.faults("bend", shown.out()));
        JsonNode answer = shown.json();
        double weight = Demo.build(0).path("figures").path("weightG").asDouble();
        assertEquals(weight, answer.path("weightG").asDouble(), 0);
        double along = 0;
        for (JsonNode stretch : answer.path("machine").path("massAlong")) {
            along += stretch.path("blankG").asDouble() + stretch.path("partsG").asDouble();
        }
        assertEquals(weight, along, 0.02);
        double balance =
                Demo.build(0).path("figures").path("balanceFromReelFootMm").asDouble();
        assertEquals(
                balance,
                answer.path("machine")
                        .path("handle")
                        .path("reels")
                        .path(0)
                        .path("balanceMm")
                        .asDouble(),
                0.01);
        assertEquals(
                "4000",
                answer.path("machine")
                        .path("handle")
                        .path("reels")
                        .path(1)
                        .path("name")
                        .asText());
    }

    @Test
    void theSameInputGivesTheSameAnswer() {
        assertEquals(bend("--json").out(), bend("--json").out());
    }

    @Test
    void theWorkingLoadIsTheDragUnlessTold() {
        JsonNode usual = bend("--json").json().path("machine").path("working");
        assertEquals(3, usual.path("pullKg").asDouble(), 1e-9);
        assertEquals(45, usual.path("buttDeg").asDouble(), 0);
        JsonNode told =
                bend("--json", "--pull", "2 lb", "--butt", "60", "--line=-20").json();
        JsonNode working = told.path("machine").path("working");
        assertEquals(0.907, working.path("pullKg").asDouble(), 1e-3);
        assertEquals(60, working.path("buttDeg").asDouble(), 0);
        assertEquals(-20, working.path("pullDeg").asDouble(), 0);
        JsonNode less = bend("--json", "--pull", "2 lb").json().path("machine").path("working");
        assertTrue(less.path("dropMm").asDouble() < usual.path("dropMm").asDouble());
    }

    @Test
    void theTextIsNarrowAndSaysWhereDropsCountFrom() {
        for (String units : List.of("metric", "imperial", "both")) {
            Shown shown = bend("--units", units, "--reel", "310 g");
            assertEquals(0, shown.code(), shown.err());
            shown.out().lines().forEach(line -> assertTrue(line.codePointCount(0, line.length()) <= 80, line));
            String flat = shown.out().replaceAll("\\s+", " ");
            assertTrue(flat.contains("from the straight line"), flat);
            assertTrue(flat.contains("not from its own droop"), flat);
        }
    }

    @Test
    void faultsAreToldWithWhatIsAllowed() {
        for (String[] wrong : new String[][] {
            {"--butt", "95"},
            {"--line", "200"},
            {"--pull", "0"},
            {"--pull", "3 furlongs"},
            {"--reel", "3.5"},
            {"--reel", "310"},
            {"--reel", ""}
        }) {
            Shown shown = bend(wrong);
            assertEquals(2, shown.code(), shown.err());
            assertTrue(shown.err().contains(wrong[0]), shown.err());
            assertTrue(shown.err().contains("allowed is"), shown.err());
            assertTrue(shown.err().lines().anyMatch(line -> line.startsWith("Maybe ")), shown.err());
            assertFalse(shown.err().contains("\tat "), shown.err());
        }
    }

    /** A pull no one could hold: no number is shown that is not believed. */
    @Test
    void whatCannotBeSolvedIsSaidSo() {
        Shown shown = bend("--pull", "95 kg", "--json");
        JsonNode working = shown.json().path("machine").path("working");
        assertEquals(0, shown.code(), shown.err());
        assertEquals(working.path("doubt").isNull(), !working.path("dropMm").isNull());
    }

    @Test
    void theLighterOfTwoIsToldWithItsChance() throws IOException {
        Path file =
                Files.writeString(folder.resolve("other.json"), Demo.build(1).toString());
        Shown shown = bend("--against", file.toString(), "--json");
        assertEquals(0, shown.code(), shown.err());
        JsonNode odds = shown.json().path("odds");
        double difference = Demo.build(0).path("figures").path("weightG").asDouble()
                - Demo.build(1).path("figures").path("weightG").asDouble();
        assertEquals(difference, odds.path("differenceG").asDouble(), 1e-6);
        assertTrue(odds.path("probabilityLighter").asDouble() > 0.5 == difference < 0, odds.toString());
        assertEquals(List.of(), Terminal.faults("bend", shown.out()));
        Shown wrong = bend("--against", file.toString(), "--weighed", "no-such=3g", "--weighed", "x");
        assertEquals(2, wrong.code());
        assertTrue(wrong.err().contains("no-such=3g") && wrong.err().contains("--weighed x"), wrong.err());
    }
}
