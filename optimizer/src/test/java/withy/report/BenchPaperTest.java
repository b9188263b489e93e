package withy.report;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.app.BenchDesk;
import withy.app.BenchSheet;
import withy.app.BenchSheet.GuideLine;
import withy.app.RefusedBuild;
import withy.explain.Phrases;
import withy.fixture.Fixtures;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Station;
import withy.rules.Judge;
import withy.rules.Rulebook;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The bench sheet as it comes out of the printer. */
class BenchPaperTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);
    private static final Reader UK = new Reader(UNITS, Locale.UK);
    private static final double POINTS_PER_MM = 72 / 25.4;

    private static BenchSheet sheet(Rod rod) {
        return BenchDesk.of(rod.setting().catalog(), rod.brief(), rod.build(), UNITS);
    }

    private static PDDocument pdf(Rod rod, Sheet paper) throws IOException {
        return Loader.loadPDF(Pdf.of(BenchPaper.of(sheet(rod), UK, paper)));
    }

    @Test
    void bothSheetsHaveTheirSizeAndTheirFontsInThem() throws IOException {
        for (Sheet paper : Sheet.all()) {
            try (PDDocument document = pdf(Fixtures.legal().rod(), paper)) {
                assertTrue(
                        document.getNumberOfPages() <= (paper == Sheet.A4 ? 3 : 4),
                        paper + " " + document.getNumberOfPages());
                for (PDPage page : document.getPages()) {
                    assertEquals(
                            paper.widthMm() * POINTS_PER_MM, page.getMediaBox().getWidth(), 0.5);
                    assertEquals(
                            paper.heightMm() * POINTS_PER_MM, page.getMediaBox().getHeight(), 0.5);
                    for (COSName name : page.getResources().getFontNames()) {
                        PDFont font = page.getResources().getFont(name);
                        assertTrue(font.isEmbedded(), font.getName());
                        assertTrue(font.getName().contains("DejaVuSans"), font.getName());
                    }
                }
                String where = System.getProperty("withy.paper");
                if (where != null) {
                    PDFRenderer renderer = new PDFRenderer(document);
                    for (int i = 0; i < document.getNumberOfPages(); i++) {
                        ImageIO.write(
                                renderer.renderImageWithDPI(i, 90),
                                "png",
                                Path.of(where, paper + "-" + i + ".png").toFile());
                    }
                    Files.writeString(Path.of(where, paper + ".txt"), new PDFTextStripper().getText(document));
                }
            }
        }
    }

    /** The blank is taken to the bench first, then handle and guides from the butt up, then what is used by amount. */
    @Test
    void partsStandInTheOrderTheyAreTakenToTheBench() throws IOException {
        Rod rod = Fixtures.legal().rod();
        String text = text(rod);
        String table = text.substring(text.lastIndexOf("\n" + Phrases.of("paper.parts") + "\n"));
        List<Integer> places = new ArrayList<>();
        for (String station :
                List.of("blank", "buttGrip", "rearGrip", "seat", "windingCheck", "tipTop", "thread", "finish")) {
            int at = table.indexOf("\n" + Phrases.of("station." + station) + " ");
            assertTrue(at > 0, station + table);
            places.add(at);
        }
        for (int guide = 1; guide <= 7; guide++) {
            places.add(places.size() - 3, table.indexOf("\n" + Phrases.of("bend.guide", guide) + " "));
        }
        assertEquals(places.stream().sorted().toList(), places, table);
    }

    /** A guide that keeps clear of a joint looks like a slip of the spacing: the sheet says that it is none. */
    @Test
    void aGapThatGrewBesideAJointIsToldAsMeant() throws IOException {
        Rod moved = Fixtures.legal().brief("reel.lipDiameterMm", 48.0).rod();
        double gap = moved.setting().guideMm(2) - moved.setting().guideMm(1);
        double next = moved.setting().guideMm(3) - moved.setting().guideMm(2);
        assertTrue(gap / next > 1.3, gap + " " + next);
        String told = Phrases.of("paper.guides.gap", 1, 2, String.format(Locale.ROOT, "%.2f", gap / next));
        assertTrue(text(moved).replaceAll("\\s+", " ").contains(told), told);
        assertFalse(text(Fixtures.legal().rod()).contains("so that a guide keeps clear"));
    }

    @Test
    void everyDimensionOnPaperIsTheRods() throws IOException {
        Rod rod = Fixtures.legal().rod();
        BenchSheet sheet = sheet(rod);
        String text = text(rod);
        for (BenchSheet.HandleLine line : sheet.handle()) {
            Placed placed = rod.placed().get(Station.parse(line.station()));
            assertEquals(placed.fromMm(), line.fromMm(), 0.01, line.station());
            assertEquals(placed.toMm(), line.toMm(), 0.01, line.station());
            assertTrue(text.contains(UNITS.partLength(line.toMm())), line.station());
        }
        assertEquals(7, sheet.guides().size());
        double tip = 2100 + 6 - 5 / 2.0;
        for (BenchSheet.GuideLine guide : sheet.guides()) {
            double x = rod.setting().guideMm(guide.number());
            assertEquals(x, guide.xMm(), 0.01);
            assertEquals(tip - x, guide.fromTipMm(), 0.01);
            String row = text.lines()
                    .filter(line -> line.startsWith(guide.number() + " " + guide.name() + " "))
                    .findFirst()
                    .orElseThrow();
            List<Double> shown = Pattern.compile("(-?[0-9.]+) mm")
                    .matcher(row)
                    .results()
                    .map(found -> Double.valueOf(found.group(1)))
                    .toList();
            assertEquals(tip - x, shown.get(0), 0.5);
            assertEquals(x, shown.get(2), 0.5);
            assertTrue(
                    rod.setting().shape().joints().stream()
                            .anyMatch(j -> Math.abs(x - shown.get(1) - j.fromMm()) < 0.5
                                    || Math.abs(x - shown.get(1) - j.toMm()) < 0.5),
                    row);
        }
        assertTrue(text.contains(UNITS.mass(rod.figures().weightG())), "expected weight");
    }

    @Test
    void theBenchIsWarnedOfBladesOfWhatTurnsAndOfWhatBurns() throws IOException {
        Rod rod = Fixtures.legal().rod();
        String edges = Phrases.of("caution.edges");
        assertTrue(sheet(rod).cautions().contains(edges));
        assertTrue(sheet(rod).cautions().contains(Phrases.of("caution.epoxy")));
        assertTrue(BenchPaper.of(sheet(rod), UK, Sheet.A4).contains("Blades cut"));
    }

    @Test
    void theRulerIsAHundredMillimetresOnPaper() throws IOException {
        for (Sheet paper : Sheet.all()) {
            try (PDDocument document = pdf(Fixtures.legal().rod(), paper)) {
                List<Rectangle2D> drawn = new Strokes(document.getPage(0)).boxes();
                List<Rectangle2D> ruler = drawn.stream()
                        .filter(box -> box.getHeight() < 0.5 * POINTS_PER_MM)
                        .filter(box -> Math.abs(box.getWidth() - 100 * POINTS_PER_MM) < 0.1 * POINTS_PER_MM)
                        .toList();
                assertEquals(1, ruler.size(), () -> drawn.toString());
                double left = ruler.get(0).getMinX();
                long strokes = drawn.stream()
                        .filter(box -> Math.abs(box.getHeight() - 3 * POINTS_PER_MM) < 0.1 * POINTS_PER_MM)
                        .filter(box -> {
                            double tens = (box.getCenterX() - left) / (10 * POINTS_PER_MM);
                            return Math.abs(tens - Math.rint(tens)) < 0.01 && tens > -0.5 && tens < 10.5;
                        })
                        .count();
                assertEquals(11, strokes);
            }
        }
    }

    @Test
    void theDrawingIsAFifthOfTheRod() throws IOException {
        Rod rod = Fixtures.legal().rod();
        try (PDDocument document = pdf(rod, Sheet.A4)) {
            double each = (rod.figures().finishedLengthMm()) / 4;
            long strips = new Strokes(document.getPage(0))
                    .boxes().stream()
                            .filter(box -> box.getHeight() < 0.5 * POINTS_PER_MM)
                            .filter(box -> Math.abs(box.getWidth() - each / 5 * POINTS_PER_MM) < 0.1 * POINTS_PER_MM)
                            .count();
            assertEquals(4, strips, "rulers under the strips");
        }
    }

    @Test
    void theCountrySetsTheDecimals() throws IOException {
        Rod rod = Fixtures.legal().rod();
        BenchSheet sheet = sheet(rod);
        try (PDDocument document =
                Loader.loadPDF(Pdf.of(BenchPaper.of(sheet, new Reader(UNITS, Locale.GERMANY), Sheet.A4)))) {
            String text = new PDFTextStripper().getText(document).replace('\u00a0', ' ');
            String weight = UNITS.mass(rod.figures().weightG());
            assertTrue(text.contains(weight.replace('.', ',')) && !text.contains(weight), text);
            assertFalse(
                    Pattern.compile("\\d\\.\\d+ (mm|g|ml|m)\\b").matcher(text).find(), text);
        }
    }

    @Test
    void aHostileNameIsPrintedAndDoesNothing() throws IOException {
        String hostile = "</td><script>alert(1)</script><img src=\"file:///etc/hostname\"/>&x;]]>\u0007\ud800 {0}";
        Rod rod = Fixtures.legal()
                .part("guide-5", "facts.model", hostile)
                .part("cap", "facts.bin", hostile)
                .part("blank", "facts.model", hostile)
                .rod();
        String html = BenchPaper.of(sheet(rod), UK, Sheet.A4);
        assertFalse(html.contains("<script") || html.contains("<img"), "markup from a name");
        try (PDDocument document = pdf(rod, Sheet.A4)) {
            String flat = new PDFTextStripper().getText(document).replaceAll("\\s", "");
            assertTrue(flat.contains("<script>alert(1)</script>"), flat);
        }
    }

    @Test
    void nothingIsLoadedFromOutsideTheJar(@TempDir Path folder) throws IOException {
        Path image = folder.resolve("image.png");
        ImageIO.write(new BufferedImage(8, 8, BufferedImage.TYPE_INT_RGB), "png", image.toFile());
        byte[] made = Pdf.of("<html><head></head><body><img src=\"" + image.toUri()
                + "\"/><svg xmlns=\"http://www.w3.org/2000/svg\" xmlns:xlink=\"http://www.w3.org/1999/xlink\""
                + " width=\"9\" height=\"9\"><image width=\"9\" height=\"9\" xlink:href=\"" + image.toUri()
                + "\"/></svg></body></html>");
        try (PDDocument document = Loader.loadPDF(made)) {
            PDResources held = document.getPage(0).getResources();
            for (COSName name : held.getXObjectNames()) {
                assertFalse(held.isImageXObject(name), "an image from outside");
            }
        }
    }

    @Test
    void theMachinesOwnFontsAreNotSearched() {
        Pdf.of("<html><head></head><body>x</body></html>");
        assertEquals(
                "DejaVuSans",
                assertDoesNotThrow(() -> FontMappers.instance()
                        .getFontBoxFont("Helvetica", null)
                        .getFont()
                        .getName()));
    }

    @Test
    void anIllegalBuildGetsNoSheet() {
        Rod rod = Fixtures.legal().part("seat", "boreMm", 9.0).rod();
        RefusedBuild refused = assertThrows(RefusedBuild.class, () -> sheet(rod));
        assertFalse(refused.sentences().isEmpty());
    }

    private static String text(Rod rod) throws IOException {
        try (PDDocument document = pdf(rod, Sheet.A4)) {
            return new PDFTextStripper().getText(document).replace('\u00a0', ' ');
        }
    }

    @Test
    void noWordRunsOffTheSheetWhateverTheUnits() throws IOException {
        Rod rod = Fixtures.legal()
                .part("guide-20", "facts.model", "Long Shank Heavy Stripper 20-H")
                .part("guide-20", "facts.bin", "guide case 3")
                .part("thread", "facts.bin", "thread drawer")
                .rod();
        for (UnitSystem system : UnitSystem.values()) {
            for (Sheet paper : Sheet.all()) {
                QuantityText units = new QuantityText(system);
                BenchSheet sheet = BenchDesk.of(rod.setting().catalog(), rod.brief(), rod.build(), units);
                try (PDDocument document =
                        Loader.loadPDF(Pdf.of(BenchPaper.of(sheet, new Reader(units, Locale.UK), paper)))) {
                    Edges edges = new Edges();
                    String text = edges.getText(document);
                    double right = (paper.widthMm() - Sheet.MARGIN_MM) * POINTS_PER_MM;
                    assertTrue(edges.right <= right + 1, system + " " + paper + ": " + edges.right + " of " + right);
                    assertTrue(
                            text.contains("turns")
                                    && text.replaceAll("\\s+", " ").contains("thread drawer"),
                            text);
                }
            }
        }
    }

    /** How far to the right anything is written. */
    private static final class Edges extends PDFTextStripper {
        private double right;

        @Override
        protected void processTextPosition(TextPosition text) {
            right = Math.max(right, text.getXDirAdj() + text.getWidthDirAdj());
            super.processTextPosition(text);
        }
    }

    /** Counted again from the places printed: the one gap that outgrows the next most, where that is more than usual. */
    @Test
    void theGapThatGrowsMostIsTold() {
        int told = 0;
        int untold = 0;
        for (int foot = 200; foot <= 330; foot += 5) {
            Rod rod = Fixtures.legal()
                    .brief("reachMinMm", 150.0)
                    .brief("reachMaxMm", 400.0)
                    .layout("reelFootMm", foot)
                    .rod();
            if (!Judge.legal(rod, Rulebook.standard())) {
                continue; // grips of these lengths don't go there
            }
            BenchSheet sheet = sheet(rod);
            List<Double> places =
                    new ArrayList<>(sheet.guides().stream().map(GuideLine::xMm).toList());
            places.add(sheet.tipRingMm());
            double most = 0;
            int guide = 0;
            for (int i = 0; i + 2 < places.size(); i++) {
                double times = (places.get(i + 1) - places.get(i)) / (places.get(i + 2) - places.get(i + 1));
                guide = times > most ? i + 1 : guide;
                most = Math.max(most, times);
            }
            String words =
                    BenchPaper.of(sheet, UK, Sheet.A4).replace("\u00a0", " ").replace("&nbsp;", " ");
            BenchSheet.WideGap gap = sheet.widestGap();
            if (most < 1.249) {
                assertEquals(null, gap, "foot " + foot);
                assertFalse(words.contains("grow more than usual"), "foot " + foot);
                untold++;
            } else if (most > 1.256) {
                assertTrue(gap != null && gap.guide() == guide, "foot " + foot + ", " + gap + ", " + most);
                assertEquals(most, gap.times(), 0.006);
                assertTrue(words.contains("next one (guides " + guide + " to " + (guide + 1) + ")"), "foot " + foot);
                told++;
            }
        }
        assertTrue(told > 0 && untold > 0, told + " told, " + untold + " not");
    }
}
