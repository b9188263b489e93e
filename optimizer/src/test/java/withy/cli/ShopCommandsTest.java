package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Terminal.Shown;

/** Stock, scale, lists, back-up and doctor as typed, on a copy of the sample shop. */
class ShopCommandsTest {
    private static final String PART = "ferrowick-keeper-ti";

    @TempDir
    private Path folder;

    private final Terminal terminal = new Terminal();

    @BeforeEach
    void copyOfTheSample() throws IOException {
        copySample(folder);
        terminal.with("WITHY_CATALOG", folder.toString());
    }

    static void copySample(Path to) throws IOException {
        try (Stream<Path> files = Files.list(Path.of(Terminal.BENCH))) {
            for (Path file : files.filter(Files::isRegularFile)
                    .filter(f -> !f.toString().endsWith(".db"))
                    .toList()) {
                Files.copy(file, to.resolve(file.getFileName()));
            }
        }
    }

    private JsonNode answer(String schema, String... args) {
        return answer(0, schema, args);
    }

    private JsonNode answer(int code, String schema, String... args) {
        Shown shown = terminal.run(args);
        assertEquals(code, shown.code(), shown.err() + shown.out());
        assertEquals(List.of(), Terminal.faults(schema, shown.out()), shown.out());
        return shown.json();
    }

    private void told(int code, String word, String... args) {
        Shown shown = terminal.run(args);
        assertEquals(code, shown.code(), shown.err() + shown.out());
        assertTrue(shown.err().contains(word), shown.err());
        assertTrue(shown.err().lines().anyMatch(line -> line.startsWith("Maybe ")), shown.err());
    }

    private int free(String part) {
        JsonNode parts = answer("parts", "parts", "--liked", part, "--json").path("parts");
        assertEquals(1, parts.size(), parts.toString());
        return parts.get(0).path("stock").asInt();
    }

    private byte[] lists() throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file :
                    files.filter(f -> f.toString().endsWith(".csv")).sorted().toList()) {
                all.append(Files.readString(file));
            }
        }
        return all.toString().getBytes(StandardCharsets.UTF_8);
    }

    @Test
    void bookingsCountFromTheFirstOneAndTheListsAreNeverWritten() throws IOException {
        byte[] before = lists();
        assertFalse(answer("stock", "stock", "--json").path("remembered").asBoolean());
        assertEquals(12, free(PART));
        JsonNode counted = answer("stock", "stock", PART, "--count", "4", "--note", "shelf 1", "--json");
        assertEquals(-8, counted.path("movements").get(0).path("shelf").asInt());
        assertEquals(4, free(PART));
        answer("stock", "stock", PART, "--receive", "3", "--json");
        answer("stock", "stock", PART, "--use", "1", "--json");
        answer("stock", "stock", PART, "--return", "1", "--json");
        answer("stock", "stock", PART + "#3", "--broken", "--json");
        assertEquals(4, free(PART));
        JsonNode order = answer("stock", "stock", PART, "--order", "6", "--due", "2026-12-10", "--json");
        assertEquals(
                6, order.path("parts").get(0).path("freeDue").path("2026-12-10").asInt());
        answer("stock", "stock", PART, "--cancel", "2", "--json");
        JsonNode one = answer("stock", "stock", PART, "--json");
        assertEquals(8, one.path("pieces").size());
        JsonNode history = answer("stock", "stock", "--history", "--json").path("movements");
        assertEquals("cancelled", history.get(0).path("reason").asText());
        assertTrue(answer("stock", "stock", "--json").path("remembered").asBoolean());
        assertEquals(new String(before, StandardCharsets.UTF_8), new String(lists(), StandardCharsets.UTF_8));
    }

    @Test
    void theScaleSpeaksInPartsAndWeights() {
        JsonNode weighed = answer("weigh", "weigh", PART, "0.16", "g", "--json");
        assertEquals(PART + "#1", weighed.path("piece").asText());
        JsonNode part = answer("parts", "parts", "--liked", PART, "--json")
                .path("parts")
                .get(0);
        assertEquals(0.16, part.path("weightG").asDouble());
        assertTrue(part.path("weighed").asBoolean());
        JsonNode all = answer("weigh", "weigh", "--json");
        assertEquals("Ferrowick", all.path("drift").get(0).path("maker").asText());
        assertEquals(14.29, all.path("drift").get(0).path("meanPercent").asDouble());
        told(3, PART + "#99", "weigh", PART + "#99", "0.2 g");
        told(2, "No weight is told", "weigh", PART);
        told(2, "weight 0.2 mm", "weigh", PART, "0.2 mm");
        told(2, "weight 9 kg", "weigh", PART, "9 kg");
    }

    @Test
    void aReadingFarOffTheListOrOverAnotherIsAskedBackFirst() {
        told(2, "is listed at 0.14 g", "weigh", PART, "1.6 g");
        told(2, "Maybe something else lies on the scale", "weigh", PART, "1.6 g");
        answer("weigh", "weigh", PART + "#1", "0.16 g", "--json");
        told(2, "piece 1 was weighed already: 0.16 g. Now it would be 0.17 g.", "weigh", PART + "#1", "0.17 g");
        answer("weigh", "weigh", PART + "#1", "0.16 g", "--json");
        answer("weigh", "weigh", PART + "#1", "0.17 g", "--sure", "--json");
        JsonNode one = answer("stock", "stock", PART, "--json");
        assertEquals(0.17, one.path("pieces").get(0).path("weightG").asDouble());
    }

    @Test
    void aWrongBookingOfAPartIsTakenBackAndStaysInTheHistory() {
        answer("stock", "stock", PART, "--count", "0", "--json");
        JsonNode there = answer("stock", "stock", PART, "--json");
        assertEquals("count", there.path("last").path("what").asText());
        answer("weigh", "weigh", PART, "1.6", "g", "--sure", "--json");
        String undone = terminal.run("stock", PART, "--undo").out();
        assertTrue(undone.startsWith("The last booking of the part was taken back.\n"), undone);
        JsonNode one = answer("stock", "stock", PART, "--json");
        assertTrue(one.path("readings").get(0).path("takenBack").asBoolean());
        answer("stock", "stock", PART, "--undo", "--json");
        assertEquals(12, free(PART));
        String told = terminal.run("stock", PART).out();
        assertTrue(told.contains("taken back later"), told);
        told(3, "no booking that can be taken back", "stock", PART, "--undo");
        told(2, "not of one piece", "stock", PART + "#1", "--undo");
    }

    @Test
    void aListIsLookedAtThenTakenOverThenTakenBack() throws IOException {
        Path list = folder.resolve("count.csv");
        Files.writeString(list, "bin;id;counted;price\nA;" + PART + ";9;4,45\n;ferrowick-keeper-steel;12;\n");
        JsonNode look = answer("import", "stock", "--import", list.toString(), "--json");
        assertFalse(look.path("applied").asBoolean());
        assertEquals(2, look.path("rows").asInt());
        assertEquals(1, look.path("changes").size());
        assertEquals(12, free(PART));
        JsonNode done = answer("import", "stock", "--import", list.toString(), "--apply", "--json");
        assertTrue(done.path("applied").asBoolean());
        assertTrue(Files.exists(
                folder.resolve("backups").resolve(done.path("backup").asText())));
        assertEquals(9, free(PART));
        JsonNode part = answer("parts", "parts", "--liked", PART, "--json")
                .path("parts")
                .get(0);
        assertEquals(445, part.path("priceMinor").asInt());
        answer("stock", "stock", "--undo", "--json");
        assertEquals(12, free(PART));
        told(3, "no import", "stock", "--undo");
        Files.writeString(list, "id;price\n" + PART + ";4,75\n");
        answer("import", "stock", "--import", list.toString(), "--apply", "--json");
        assertEquals(
                "The last import was taken back.\n",
                terminal.run("stock", "--undo").out());
        told(3, "withy stock " + PART + " --count NUMBER", "stock", PART, "--broken=200");
        told(5, "it is a folder", "stock", "--import", folder.toString());
        Files.writeString(list, "id;counted\n");
        String none = terminal.run("stock", "--import", list.toString()).out();
        assertTrue(none.endsWith("Nothing differs, so there is nothing to take over.\n"), none);
    }

    @Test
    void aWorkbookIsReadLikeAListAndEveryFaultOfItIsTold() throws IOException {
        Path book = folder.resolve("count.xlsx");
        try (OutputStream out = Files.newOutputStream(book);
                Workbook workbook = new Workbook(out, "test", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("count");
            sheet.value(0, 0, "Part");
            sheet.value(0, 1, "Counted");
            sheet.value(1, 0, PART);
            sheet.value(1, 1, 7);
            sheet.value(2, 0, "ferrowick-keeper-tj");
            sheet.value(2, 1, 1);
            sheet.value(3, 0, PART);
            sheet.value(3, 1, 2);
            sheet.value(4, 0, "ferrowick-keeper-steel");
            sheet.value(4, 1, 2.5);
        }
        JsonNode refused = answer(3, "import", "stock", "--import", book.toString(), "--apply", "--json");
        assertEquals(3, refused.path("faults").size(), refused.toString());
        assertEquals(3, refused.path("faults").get(0).path("line").asInt());
        assertFalse(refused.path("applied").asBoolean());
        assertEquals(12, free(PART));
        try (OutputStream out = Files.newOutputStream(book);
                Workbook workbook = new Workbook(out, "test", "1.0")) {
            Worksheet sheet = workbook.newWorksheet("count");
            sheet.value(0, 0, "id");
            sheet.value(0, 1, "counted");
            sheet.value(1, 0, PART);
            sheet.value(1, 1, 7);
        }
        answer("import", "stock", "--import", book.toString(), "--apply", "--json");
        assertEquals(7, free(PART));
        Files.writeString(book, "no workbook at all");
        JsonNode broken = answer(3, "import", "stock", "--import", book.toString(), "--json");
        assertTrue(broken.path("faults").get(0).path("message").asText().contains("Maybe "));
        told(5, "no such file", "stock", "--import", folder.resolve("none.csv").toString());
    }

    @Test
    void backUpRestoreAndDoctor() throws IOException {
        told(5, "nothing was booked", "doctor");
        told(5, "nothing was booked", "backup");
        answer("stock", "stock", PART, "--count", "4", "--json");
        JsonNode copy = answer("folder", "backup", "--json");
        answer("stock", "stock", PART, "--count", "1", "--json");
        told(3, "is there already", "backup", copy.path("file").asText());
        JsonNode second = answer("folder", "backup", "--json");
        assertEquals(
                copy.path("file").asText().replace(".db", "-002.db"),
                second.path("file").asText());
        JsonNode restored = answer("folder", "restore", copy.path("file").asText(), "--json");
        assertEquals(copy.path("movements"), restored.path("movements"));
        assertEquals(4, free(PART));
        assertTrue(answer("folder", "doctor", "--json").path("sound").asBoolean());
        assertTrue(Files.exists(folder.resolve("backups/shop-before-restore-001.db")));
        told(5, "no such file", "restore", folder.resolve("none.db").toString());
        String nowhere = folder.resolve("nowhere").toString();
        told(5, "no such folder", "restore", copy.path("file").asText(), "--catalog", nowhere);
        told(5, "it is a folder", "restore", folder.resolve("backups").toString());
        Path junk = folder.resolve("junk.db");
        Files.writeString(junk, "this is no database, whatever its name says; it is only a text of some length");
        told(5, "back-ups lie in " + folder.resolve("backups"), "restore", junk.toString());
        assertEquals(4, free(PART));
    }

    @Test
    void slipsAreToldWithWhatWasMeant() {
        told(2, "ferrowick-keeper-ti", "stock", "ferrowick-keeper-tx", "--count", "4");
        told(2, "No part is named", "stock", "--count", "4");
        told(2, "--count", "stock", PART, "--count", "4", "--receive", "2");
        told(2, "only --broken", "stock", PART + "#2", "--count", "4");
        told(3, "promised to nobody", "stock", PART, "--use", "400");
        told(2, "--due 3/4/2026", "stock", PART, "--order", "4", "--due", "3/4/2026");
        assertFalse(Files.exists(folder.resolve("backups")));
    }

    @Test
    void textsAreNarrow() {
        terminal.run("stock", PART, "--count", "4");
        terminal.run("weigh", PART, "0.16 g");
        for (String[] args : List.<String[]>of(
                new String[] {"stock"},
                new String[] {"stock", PART},
                new String[] {"stock", "--history"},
                new String[] {"weigh"},
                new String[] {"doctor"})) {
            Shown shown = terminal.run(args);
            assertEquals(0, shown.code(), shown.err());
            assertTrue(shown.out().lines().allMatch(line -> line.codePointCount(0, line.length()) <= 80), shown.out());
        }
        for (String command : List.of("stock", "weigh", "backup", "restore", "doctor")) {
            String help = terminal.run(command, "--help").out();
            assertTrue(help.startsWith("Examples:"), help);
            assertTrue(help.lines().allMatch(line -> line.length() <= 80), help);
        }
    }
}
