package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import withy.app.BenchDesk;
import withy.app.PickSheet;
import withy.app.PickSheet.Bin;
import withy.app.PickSheet.Pick;
import withy.app.PickSheet.Take;
import withy.explain.Phrases;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Where papers of the bench break from page to page, and within their columns. */
class BenchPagesTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);
    private static final Reader UK = new Reader(UNITS, Locale.UK);

    private static List<String> pages(String html) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument document = Loader.loadPDF(Pdf.of(html))) {
            for (int page = 1; page <= document.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(true);
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(document).replace('\u00a0', ' '));
            }
        }
        return pages;
    }

    /** However much stands above it: longer orders of work push the list of parts down line by line. */
    @Test
    void theListOfPartsIsNeverTornApart() throws IOException {
        Rod rod = Fixtures.legal().rod();
        var sheet = BenchDesk.of(rod.setting().catalog(), rod.brief(), rod.build(), UNITS);
        String whole = BenchPaper.of(sheet, UK, Sheet.A4);
        String mark = "<h2>" + Phrases.of("paper.work") + "</h2>";
        assertTrue(whole.contains(mark), whole);
        for (int lines = 0; lines < 40; lines += 3) {
            String pushed = whole.replace(mark, "<p>above</p>".repeat(lines) + mark);
            List<String> rows = pages(pushed).stream()
                    .filter(page -> page.lines().anyMatch(line -> line.startsWith("guide 1 ")))
                    .toList();
            assertEquals(1, rows.size());
            String last = rows.get(0);
            for (String station : List.of("blank", "guide 7", "tip-top", "thread", "finish", "adhesive")) {
                assertTrue(
                        last.lines().anyMatch(line -> line.startsWith(station + " ")),
                        lines + " lines more, " + station + " is not on the page of the parts");
            }
        }
    }

    private static PickSheet picks() {
        List<Bin> bins = new ArrayList<>();
        for (int bin = 1; bin <= 4; bin++) {
            int from = 20 * bin;
            bins.add(new Bin(
                    "drawer " + bin,
                    IntStream.range(from, from + 20)
                            .mapToObj(i -> new Pick(
                                    "part-" + i, "Part " + i, 1, "pieces", List.of(new Take(1, 1, List.of(1)))))
                            .toList()));
        }
        return new PickSheet(1, "2026-06-01", List.of(), bins, List.of(), List.of(), List.of(), List.of());
    }

    @Test
    void everyLineOfThePickListSaysItsBin() throws IOException {
        List<String> pages = pages(PickPaper.of(picks(), UK, Sheet.A4));
        assertTrue(pages.size() > 1, "the list is longer than a page");
        List<String> lines = pages.stream()
                .flatMap(String::lines)
                .filter(line -> line.contains("Part "))
                .toList();
        assertEquals(80, lines.size());
        for (String line : lines) {
            int part = Integer.parseInt(line.replaceFirst(".*Part (\\d+).*", "$1"));
            assertTrue(line.startsWith("drawer " + part / 20 + " "), line);
        }
    }

    @Test
    void noHeadOfAColumnIsBrokenWithinAWord() throws IOException {
        String picks = pages(PickPaper.of(picks(), UK, Sheet.A4)).get(0);
        assertTrue(picks.contains(Phrases.of("paper.head.done")), picks);
        Rod rod = Fixtures.legal().rod();
        var sheet = BenchDesk.of(rod.setting().catalog(), rod.brief(), rod.build(), UNITS);
        List<String> pages = pages(BenchPaper.of(sheet, UK, Sheet.A4));
        List<String> words = pages.stream()
                .flatMap(page -> Arrays.stream(page.split("\\s+")))
                .toList();
        for (String head : List.of("number", "size", "ferrule", "turns", "expected", "measured", "done")) {
            for (String word : Phrases.of("paper.head." + head).split(" ")) {
                assertTrue(words.contains(word), head);
            }
        }
        for (String page : pages) {
            assertFalse(page.lines().anyMatch(line -> line.matches("m( m)*")), "a unit broken in two: " + page);
        }
    }
}
