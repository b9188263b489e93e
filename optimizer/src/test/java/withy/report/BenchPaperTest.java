package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import withy.app.BenchDesk;
import withy.app.BenchSheet;
import withy.fixture.Fixtures;
import withy.rod.Rod;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The bench sheet as it comes out of the printer. */
class BenchPaperTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);
    private static final double POINTS_PER_MM = 72 / 25.4;

    private static BenchSheet sheet(Rod rod) {
        return BenchDesk.of(rod.setting().catalog(), rod.brief(), rod.build(), UNITS);
    }

    private static PDDocument pdf(Rod rod, Sheet paper) throws IOException {
        return Loader.loadPDF(Pdf.of(BenchPaper.of(sheet(rod), UNITS, paper)));
    }

    @Test
    void bothSheetsHaveTheirSizeAndTheirFontsInThem() throws IOException {
        for (Sheet paper : Sheet.all()) {
            try (PDDocument document = pdf(Fixtures.legal().rod(), paper)) {
                assertTrue(document.getNumberOfPages() >= 1 && document.getNumberOfPages() <= 4);
                for (PDPage page : document.getPages()) {
                    assertEquals(paper.widthMm() * POINTS_PER_MM, page.getMediaBox().getWidth(), 0.5);
                    assertEquals(paper.heightMm() * POINTS_PER_MM, page.getMediaBox().getHeight(), 0.5);
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
                        javax.imageio.ImageIO.write(
                                renderer.renderImageWithDPI(i, 90), "png", Path.of(where, paper + "-" + i + ".png").toFile());
                    }
                    Files.writeString(Path.of(where, paper + ".txt"), new PDFTextStripper().getText(document));
                }
            }
        }
    }
}
