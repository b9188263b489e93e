package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.app.Bom;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The list of parts as a spreadsheet, there and back. */
class BomFileTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);
    private static final List<Locale> READERS = List.of(Locale.UK, Locale.GERMANY, Locale.forLanguageTag("ar-EG"));
    private static final List<String> HOSTILE = List.of(
            "=HYPERLINK(\"http://x.invalid\",\"y\")",
            "+1+1",
            "-2",
            "@SUM(A1)",
            "'=1",
            "''=1",
            "'plain",
            "\t=1",
            "\uFF1D1",
            "a;b,\"c\"\r\nd",
            " padded ",
            "<b>&amp;</b>",
            "\u00fcber \u2713 \ud83d\udc1f");

    private static Bom demo() {
        Fixtures rod = Fixtures.legal()
                .part("cap", "facts.model", HOSTILE.get(0))
                .part("seat", "facts.supplier", HOSTILE.get(3))
                .part("blank", "facts.bin", HOSTILE.get(9));
        return Bom.of(rod.catalog(), rod.theBrief(), rod.build());
    }

    private static void thereAndBack(Bom bom) throws BomFile.Unreadable {
        for (Locale locale : READERS) {
            assertEquals(bom, BomFile.ofCsv(BomFile.csv(bom, new Reader(UNITS, locale))), locale.toString());
        }
        assertEquals(bom, BomFile.ofXlsx(BomFile.xlsx(bom)));
    }

    /** One piece is "1", half a metre keeps its half. */
    @Test
    void piecesAreWholeNumbers() {
        Bom.Line piece = new Bom.Line("seat", "s", "S", "reel seat", "", "", 1, "pieces", 100.0, 18.25, 1000);
        Bom.Line thread = new Bom.Line("thread", "t", "T", "thread", "", "", 12.5, "m", null, 0.4, 40);
        String csv = new String(
                BomFile.csv(new Bom("EUR", List.of(piece, thread)), new Reader(UNITS, Locale.UK)),
                StandardCharsets.UTF_8);
        assertTrue(csv.contains(",1,pieces,100,18.25,10.00,EUR"), csv);
        assertTrue(csv.contains(",12.5,m,,0.4,0.40,EUR"), csv);
    }

    @Test
    void aListComesBackAsItWas() throws BomFile.Unreadable {
        thereAndBack(demo());
    }

    @Test
    void anyListComesBackAsItWas() throws BomFile.Unreadable {
        for (long seed = 1; seed <= 40; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            List<Bom.Line> lines = new ArrayList<>();
            for (int i = 0; i < 1 + random.nextInt(6); i++) {
                lines.add(new Bom.Line(
                        word(random),
                        word(random),
                        word(random),
                        word(random),
                        word(random),
                        word(random),
                        random.nextInt(100_000) / 1000.0,
                        word(random),
                        random.nextBoolean() ? null : random.nextInt(1_000_000) / 100.0,
                        random.nextInt(1_000_000) / 1000.0,
                        random.nextInt(1_000_000)));
            }
            thereAndBack(new Bom(List.of("EUR", "JPY", "KWD").get(random.nextInt(3)), lines));
        }
    }

    private static String word(SplittableRandom random) {
        String one = HOSTILE.get(random.nextInt(HOSTILE.size()));
        return random.nextInt(4) == 0 ? "" : "'".repeat(random.nextInt(2)) + one;
    }

    @Test
    void noCellOfACsvStartsAFormula() {
        String csv = new String(BomFile.csv(demo(), new Reader(UNITS, Locale.UK)), StandardCharsets.UTF_8);
        for (String line : csv.split("\r\n", -1)) {
            for (String cell : line.split(",(?=(?:[^\"]*\"[^\"]*\")*[^\"]*$)", -1)) {
                String bare = cell.startsWith("\"") ? cell.substring(1) : cell;
                assertFalse(bare.matches("(?s)[=+@\\t\\-].*") && !bare.matches("-?[0-9.]+"), cell);
            }
        }
        assertTrue(csv.contains("\"'@SUM(A1)\"") || csv.contains("'@SUM(A1)"), csv);
    }

    @Test
    void aWorkbookHoldsNoFormula(@TempDir Path folder) throws IOException {
        Path file = Files.write(folder.resolve("parts.xlsx"), BomFile.xlsx(demo()));
        try (ZipFile zip = new ZipFile(file.toFile())) {
            assertTrue(zip.getEntry("xl/worksheets/sheet1.xml") != null);
            for (ZipEntry entry : Collections.list(zip.entries())) {
                String text = new String(zip.getInputStream(entry).readAllBytes(), StandardCharsets.UTF_8);
                assertFalse(text.contains("<f>") || text.contains("<f ") || text.contains("<hyperlink"), text);
            }
        }
    }

    @Test
    void theListSumsUpToTheRod() {
        Fixtures rod = Fixtures.legal();
        Rod measured = rod.rod();
        Bom bom = Bom.of(rod.catalog(), rod.theBrief(), rod.build());
        assertEquals(
                measured.figures().weightG(),
                bom.lines().stream().mapToDouble(Bom.Line::weightG).sum(),
                0.01);
        assertEquals(
                7,
                bom.lines().stream()
                        .filter(line -> line.station().startsWith("guide-"))
                        .count());
    }

    @Test
    void everyFaultIsTold() {
        String heads = String.join(",", BomRows.HEADS);
        told("", "lacks its first row");
        told(heads, "lacks its first row");
        told(heads + "\r\na,b,c,d,e,f,x,pieces,,1.0,1.00,EUR\r\na,b,c,d,e,f,1,pieces,,-1,1.001,GBP", "Line 2, amount");
        told(heads + "\r\na,b,c,d,e,f,1,pieces,,-1,1.001,EUR", "Line 2, weight_g", "Line 2, price");
        told(heads + "\r\na,b,c,d,e,f,1,pieces,,1,1,EUR\r\na,b", "Line 3: \"2 cells\"");
        told(heads + "\r\na,b,c,d,e,f,1,pieces,,1,1,euro", "ISO 4217");
        assertThrows(BomFile.Unreadable.class, () -> BomFile.ofXlsx("no".getBytes(StandardCharsets.UTF_8)));
    }

    private static void told(String text, String... words) {
        BomFile.Unreadable fault =
                assertThrows(BomFile.Unreadable.class, () -> BomFile.ofCsv(text.getBytes(StandardCharsets.UTF_8)));
        for (String word : words) {
            assertTrue(fault.getMessage().contains(word) && fault.getMessage().contains("Maybe "), fault.getMessage());
        }
    }
}
