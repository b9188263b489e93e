package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.cli.Terminal.Shown;

/** Papers of a shop's jobs, as typed, on a copy of the sample shop. */
class PaperJobTest {
    @TempDir
    private Path folder;

    private final Terminal terminal = new Terminal().choosing(Demo::replay);

    @BeforeEach
    void aShopWithAnAcceptedJob() throws IOException {
        ShopCommandsTest.copySample(folder);
        terminal.with("WITHY_CATALOG", folder.toString());
        run(0, "job", "--new", Terminal.brief("kayak-estuary"));
        run(0, "job", "1", "--offer", "--customer", "Ruth Alder", "--deposit", "30");
        run(0, "job", "1", "--accept", "1");
    }

    private Shown run(int code, String... args) {
        Shown shown = terminal.run(args);
        assertEquals(code, shown.code(), shown.err() + shown.out());
        return shown;
    }

    private String paper(String name, String... args) throws IOException {
        Path file = folder.resolve(name);
        List<String> all = new ArrayList<>(List.of("paper"));
        all.addAll(List.of(args));
        all.addAll(List.of("--out", file.toString(), "--json"));
        Shown shown = run(0, all.toArray(String[]::new));
        assertEquals(List.of(), Terminal.faults("paper", shown.out()));
        if (name.endsWith(".xlsx")) {
            return "";
        }
        if (!name.endsWith(".pdf")) {
            return Files.readString(file);
        }
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            return new PDFTextStripper().getText(document).replace('\u00a0', ' ');
        }
    }

    private JsonNode build() {
        return run(0, "job", "1", "--json").json().path("build").path("parts");
    }

    private String partAt(String station) {
        for (JsonNode at : build()) {
            if (at.path("station").asText().equals(station)) {
                return at.path("part").asText();
            }
        }
        return "";
    }

    @Test
    void anOldOfferPrintsAsItWasGivenWhateverTheListsSayNow() throws IOException {
        String given = paper("given.html", "offer", "--job", "1");
        assertTrue(given.contains("Offer for Ruth Alder"), given);
        Path seats = folder.resolve("reel-seats.csv");
        Files.writeString(
                seats, Files.readString(seats).replaceAll("(?m)^([^,]+,[^,]+),([^,]+),([0-9.]+),", "$1,$2 New,30.00,"));
        assertEquals(given, paper("old.html", "offer", "--job", "1", "--offer", "1"));
        String answer = folder.resolve("answer.json").toString();
        Files.writeString(
                Path.of(answer), run(0, "job", "1", "--read-offer", "--json").out());
        String today = paper("new.html", "offer", answer, "--customer", "Ruth Alder", "--deposit", "30");
        assertTrue(today.contains(" New") && !given.contains(" New"), today);
        Files.delete(seats);
        assertEquals(
                3,
                terminal.run("paper", "bench", "--job", "1", "--out", "x.pdf").code(),
                "no lists, no bench");
    }

    @Test
    void aFileThatWasSentPrintsAgain() throws IOException {
        String given = paper("sent.html", "offer", "--job", "1");
        String again = paper("again.html", "offer", folder.resolve("sent.html").toString());
        assertEquals(given, again);
        assertTrue(given.contains("Content-Security-Policy\" content=\"default-src 'none'"), given);
        String loads = given.replace("http://www.w3.org/2000/svg", "").replace("http://www.w3.org/1999/xhtml", "");
        for (String never :
                List.of("http:", "https:", "url(", "src=", "href=", "@import", "<link", "<iframe", "onload")) {
            assertFalse(loads.contains(never), never);
        }
        String broken = given.replace("\"currency\" : \"EUR\"", "\"currency\" : \"XXQ\"");
        assertNotEquals(given, broken);
        Files.writeString(folder.resolve("broken.html"), broken);
        told(3, "changed by hand", "offer", folder.resolve("broken.html").toString());
        Files.writeString(folder.resolve("newer.html"), given.replaceFirst("\"schema\" : 1", "\"schema\" : 7"));
        told(3, "newer than this program", "offer", folder.resolve("newer.html").toString());
        Files.writeString(folder.resolve("cut.html"), given.substring(0, given.indexOf("\"builds\"")));
        told(3, "cut off", "offer", folder.resolve("cut.html").toString());
        told(2, "stay as they are", "offer", "--job", "1", "--deposit", "50");
    }

    private void told(int code, String words, String... args) {
        List<String> all = new ArrayList<>(List.of("paper"));
        all.addAll(List.of(args));
        all.addAll(List.of("--out", folder.resolve("never.pdf").toString()));
        Shown shown = terminal.run(all.toArray(String[]::new));
        assertEquals(code, shown.code(), shown.err());
        assertTrue(shown.err().contains(words) && shown.err().contains("Maybe "), shown.err());
        assertFalse(Files.exists(folder.resolve("never.pdf")));
    }

    /** Under its title and in the talk; the offer itself, the one beside it and what is taken back stay as they were. */
    @Test
    void anOfferThatEndedSaysSoOnPaperAndThatItCannotBeTaken() throws IOException {
        run(0, "job", "--new", Terminal.brief("kayak-estuary"));
        run(0, "job", "2", "--offer", "--date", "2026-06-01");
        String given = paper("given.pdf", "offer", "--job", "2");
        assertFalse(given.contains("any more"), given);
        run(0, "job", "2", "--withdraw", "--date", "2026-06-03");
        String withdrawn = paper("withdrawn.pdf", "offer", "--job", "2", "--country", "en-GB");
        String said = "This offer was withdrawn on 3 Jun 2026. It can't be taken any more.";
        assertTrue(withdrawn.startsWith("Offer\n" + said), withdrawn);
        assertEquals(given, withdrawn.replace(said + "\n", ""), "what was offered stays as it was given");
        Shown told = run(
                0,
                "paper",
                "offer",
                "--job",
                "2",
                "--out",
                folder.resolve("said.pdf").toString());
        assertTrue(told.out().contains(said), told.out());
        run(0, "job", "2", "--undo");
        assertEquals(given, paper("stands.pdf", "offer", "--job", "2"));
        run(0, "job", "2", "--withdraw", "--date", "2026-07-01");
        assertTrue(paper("lapsed.pdf", "offer", "--job", "2")
                .startsWith("Offer\nThis offer lapsed: it held until 15 Jun 2026. It can't be taken any more."));
        run(0, "job", "2", "--offer", "--date", "2026-07-02");
        assertFalse(paper("anew.pdf", "offer", "--job", "2").contains("any more"));
        JsonNode offers = run(0, "job", "2", "--json").json().path("offers");
        String first = offers.get(0).path("offer").asText();
        assertTrue(paper("first.pdf", "offer", "--job", "2", "--offer", first).contains("This offer lapsed"));
    }

    @Test
    void theBenchSheetFillsInWhatTheScaleSaid() throws IOException {
        String before = paper("bench.pdf", "bench", "--job", "1");
        assertTrue(before.contains("Job 1: Kayak estuary"), before);
        String tip = partAt("tipTop");
        assertTrue(before.replaceAll("\\s", "").contains(tip + "#1"), before);
        assertFalse(before.contains("readings of its own pieces"), before);
        run(0, "weigh", tip + "#1", "0.17 g");
        run(0, "stock", partAt("blank"), "--receive", "1");
        run(0, "job", "1", "--built");
        run(0, "job", "1", "--weighed", "98.7g", "--balance", "103.5mm");
        String after = paper("after.pdf", "bench", "--job", "1", "--country", "de-DE");
        for (String words : List.of("0,17 g", "98,7 g", "103,5 mm", "readings of its own pieces")) {
            assertTrue(after.contains(words), words + " in " + after);
        }
        String labels = paper("labels.pdf", "labels", "--job", "1").replaceAll("\\s+", " ");
        assertTrue(labels.contains("Weighed: 0.17 g.") && labels.contains("Job 1 · guide 7"), labels);
        for (JsonNode at : build()) {
            String part = at.path("part").asText();
            if (!List.of("thread", "finish", "adhesive", "seatArbors")
                    .contains(at.path("station").asText())) {
                assertTrue(labels.replace(" ", "").contains(part + "#"), part);
            }
        }
    }

    @Test
    void picksAndCutsAreOfAllAcceptedJobs() throws IOException {
        run(0, "job", "--new", Terminal.brief("kayak-estuary"));
        run(0, "job", "2", "--offer");
        run(0, "job", "2", "--accept", "1");
        String picks = paper("picks.pdf", "picks").replaceAll("\\s+", " ");
        assertTrue(picks.contains("Job 2: Kayak estuary"), picks);
        assertTrue(picks.contains("still to be ordered"), picks);
        assertTrue(picks.contains("Not here yet, from "), picks);
        assertTrue(picks.matches("(?s).*job 1: #1;? job 2: #2.*"), picks);
        assertTrue(picks.indexOf("drawer 2") < picks.indexOf("drawer 4"), picks);
        String cuts = paper("cuts.pdf", "cuts", "--kerf", "2 mm").replaceAll("\\s+", " ");
        // three rings of 25 mm and their cuts out of a piece of 100 mm leave 100 - 3 x 27 mm
        assertTrue(cuts.contains("Each cut takes 2 mm") && cuts.contains("left over 19 mm"), cuts);
        run(0, "job", "2", "--cancel");
        run(0, "job", "1", "--cancel");
        assertTrue(paper("none.pdf", "picks").contains("No job is accepted yet."));
    }

    /** A blank that is still on order may come a little thicker than its list says. */
    @Test
    void nothingIsGluedToABlankThatIsNotHereWithoutAWord() throws IOException {
        String blank = partAt("blank");
        String bench = paper("bench.html", "bench", "--job", "1").replace('\u00a0', ' ');
        assertTrue(bench.contains("is not here yet (due ") && bench.contains("nothing to it before"), bench);
        JsonNode glued = run(0, "job", "1", "--glue", "seat", "--json").json();
        assertTrue(glued.path("warnings").path(0).asText().contains("glue nothing to it"), glued.toString());
        run(0, "stock", blank, "--receive", "1");
        assertFalse(paper("here.html", "bench", "--job", "1").contains("nothing to it before"));
        assertEquals(
                0,
                run(0, "job", "1", "--glue", "rearGrip", "--json")
                        .json()
                        .path("warnings")
                        .size());
    }

    @Test
    void aListOfPartsGoesIntoASpreadsheetAndBack() throws IOException {
        String csv = paper("parts.csv", "bom", "--job", "1");
        assertTrue(csv.startsWith("\uFEFFstation,part,name"), csv);
        paper("parts.xlsx", "bom", "--job", "1");
        assertEquals(
                csv,
                paper("back.csv", "bom", "--list", folder.resolve("parts.xlsx").toString()));
        String german = paper("german.csv", "bom", "--job", "1", "--country", "de-DE");
        assertTrue(german.contains("station;part;name") && german.contains(";16,9;"), german);
        assertEquals(
                csv,
                paper("two.csv", "bom", "--list", folder.resolve("german.csv").toString()));
    }
}
