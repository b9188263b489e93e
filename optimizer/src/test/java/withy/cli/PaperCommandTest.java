package withy.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** withy paper, from the demo's answer. */
class PaperCommandTest {
    @TempDir
    private Path folder;

    private Terminal.Shown paper(String typed, String paper, String out, String... more) {
        List<String> args = new ArrayList<>(List.of("paper", paper, "-", "--catalog", Terminal.BENCH, "--out", out));
        args.addAll(List.of(more));
        return new Terminal().typing(typed).run(args.toArray(String[]::new));
    }

    @Test
    void anOfferOfThreeBuildsIsOneSheet() throws IOException {
        Path file = folder.resolve("offer.pdf");
        Terminal.Shown shown = paper(Demo.JSON.out(), "offer", file.toString(), "--customer", "Ruth Alder", "--json");
        assertEquals(0, shown.code(), shown.err());
        assertEquals(List.of(), Terminal.faults("paper", shown.out()));
        assertEquals(3, shown.json().path("builds").size());
        try (PDDocument document = Loader.loadPDF(file.toFile())) {
            assertEquals(1, document.getNumberOfPages());
        }
    }

    @Test
    void aBenchSheetIsOfOneBuildOrOfABuildFile() throws IOException {
        Path file = folder.resolve("bench.html");
        Terminal.Shown second = paper(Demo.JSON.out(), "bench", file.toString(), "--build", "2");
        assertEquals(0, second.code(), second.err());
        String html = Files.readString(file);
        String[] name = Demo.build(1).path("name").asText().split(", ");
        assertTrue(html.contains(name[0] + ", " + name[1]), html);
        Terminal.Shown own = paper(
                Demo.build(1).toString(),
                "bench",
                folder.resolve("own.html").toString(),
                "--brief",
                Terminal.brief("kayak-estuary"));
        assertEquals(0, own.code(), own.err());
        assertEquals(html, Files.readString(folder.resolve("own.html")));
    }

    @Test
    void everyMistakeIsToldWithAWayOut() {
        String fine = folder.resolve("x.pdf").toString();
        String answer = Demo.JSON.out();
        told(paper(answer, "offer", fine, "--build", "4"), 2, "allowed is 1 to 3");
        told(paper(answer, "offer", fine, "--country", "xx"), 2, "en-GB");
        told(paper(answer, "offer", fine, "--deposit", "101"), 2, "0 to 100 percent");
        told(paper(answer, "offer", folder.resolve("x.doc").toString()), 2, ".pdf or .html");
        told(paper(answer, "offer", folder.resolve("no/such/x.pdf").toString()), 5, "Can't write");
        told(paper(Demo.build(1).toString(), "bench", fine), 2, "--brief is missing");
        told(paper(answer, "offer", fine, "--job", "1"), 2, "Both an answer and a job");
        told(paper(answer, "offer", fine, "--offer", "1"), 2, "of which job");
        told(new Terminal().run("paper", "bench", "--catalog", Terminal.BENCH, "--out", fine), 2, "Neither an answer");
        told(
                new Terminal().run("paper", "cuts", "--catalog", Terminal.BENCH, "--out", fine, "--kerf", "9 mm"),
                2,
                "0 to 5 mm");
        told(paper(answer, "bom", fine), 2, ".csv or .xlsx");
        String brief = Terminal.brief("kayak-estuary");
        told(paper("{", "bench", fine, "--brief", brief), 3, "Maybe");
        told(paper("{\"builds\": []}", "bench", fine, "--brief", brief), 3, "Maybe");
        assertFalse(Files.exists(folder.resolve("x.pdf")));
    }

    private static void told(Terminal.Shown shown, int code, String words) {
        assertEquals(code, shown.code(), shown.err());
        assertTrue(shown.err().contains(words) && shown.err().contains("Maybe "), shown.err());
    }
}
