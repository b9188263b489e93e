package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Locale;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import withy.app.BenchDesk;
import withy.app.BenchSheet;
import withy.app.BuildSheet.PartLine;
import withy.fixture.Fixtures;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Labels as they come out of the printer. */
class LabelPaperTest {
    private static final Reader UK = new Reader(new QuantityText(UnitSystem.METRIC), Locale.UK);

    private static BenchSheet sheet(Fixtures shop) {
        return BenchDesk.of(shop.catalog(), shop.theBrief(), shop.build(), UK.units());
    }

    private static String text(BenchSheet sheet, Sheet paper, int pages) throws IOException {
        try (PDDocument document = Loader.loadPDF(Pdf.of(LabelPaper.of(sheet, UK, paper)))) {
            assertEquals(pages, document.getNumberOfPages());
            return new PDFTextStripper().getText(document).replaceAll("[\\s\u00a0]", "");
        }
    }

    @Test
    void everyPieceHasALabelWithItsOwnPlace() throws IOException {
        BenchSheet sheet = sheet(Fixtures.legal());
        for (Sheet paper : Sheet.all()) {
            String text = text(sheet, paper, 1);
            String html = LabelPaper.of(sheet, UK, paper);
            for (PartLine part : sheet.build().parts()) {
                if (part.count() > 0) {
                    assertTrue(text.contains(part.part()), part.part());
                }
            }
            for (BenchSheet.GuideLine guide : sheet.guides()) {
                assertTrue(text.contains("Guide" + guide.number()), text);
                String place = UK.length(guide.xMm()).replace("\u00a0", "");
                assertTrue(text.contains(place) && html.contains(UK.length(guide.xMm()) + " from the butt."), place);
            }
            assertTrue(text.contains("overheadpowerlines"), text);
        }
    }

    @Test
    void aLongAndHostileNameGrowsItsLabelAndDoesNothing() throws IOException {
        String hostile = "<script>alert(1)</script> with a name far too long for any label of this size, twice over "
                + "and once more, so that no line of it may be lost";
        BenchSheet sheet = sheet(Fixtures.legal().part("seat", "facts.model", hostile));
        assertFalse(LabelPaper.of(sheet, UK, Sheet.A4).contains("<script"));
        assertTrue(text(sheet, Sheet.A4, 1).contains(hostile.replace(" ", "")));
    }

    @Test
    void theBinStaysInOneLine() {
        BenchSheet sheet = sheet(Fixtures.legal().part("seat", "facts.bin", "drawer 5 left"));
        String html = LabelPaper.of(sheet, UK, Sheet.A4);
        assertTrue(html.contains("[drawer\u00a05\u00a0left]"), html);
    }
}
