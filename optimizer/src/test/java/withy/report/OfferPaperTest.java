package withy.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import withy.app.OfferDesk;
import withy.app.OfferFile;
import withy.app.OfferSheet;
import withy.app.OfferSheet.Choice;
import withy.catalog.Part;
import withy.fixture.Fixtures;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rod.Station;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** The offer as the customer holds it. */
class OfferPaperTest {
    private static final QuantityText UNITS = new QuantityText(UnitSystem.METRIC);
    private static final LocalDate DAY = LocalDate.of(2026, 3, 2);
    private static final String SUPPLIER = "Osier Wholesale";
    private static final String BIN = "drawer-77";

    /** Three legal builds; the second has a heavy grip that must be ordered, the third a dear check. */
    private static Fixtures shop() {
        Fixtures shop = Fixtures.legal().copy("rear-grip", "heavy-grip").copy("check", "dear-check");
        for (Part part : List.copyOf(shop.catalog().byId().values())) {
            shop.part(part.id(), "facts.supplier", SUPPLIER).part(part.id(), "facts.bin", BIN);
        }
        return shop.part("heavy-grip", "facts.weightG", 30.0)
                .part("heavy-grip", "facts.stock", 0)
                .part("heavy-grip", "facts.leadDays", 9)
                .part("dear-check", "facts.priceMinor", 4000L);
    }

    private static OfferSheet offer(Fixtures shop, String customer, int deposit) {
        Build first = shop.build();
        List<Build> builds = List.of(
                first,
                first.with(Station.REAR_GRIP, Build.Choice.of("heavy-grip")),
                first.with(Station.WINDING_CHECK, Build.Choice.of("dear-check")));
        return OfferDesk.of(
                shop.catalog(), shop.theBrief(), builds, new OfferSheet.Terms(customer, DAY, 14, deposit, 10), UNITS);
    }

    private static PDDocument pdf(OfferSheet offer, Locale locale, Sheet paper) throws IOException {
        return Loader.loadPDF(Pdf.of(OfferPaper.of(offer, new Reader(UNITS, locale), paper)));
    }

    private static String text(OfferSheet offer, Locale locale) throws IOException {
        try (PDDocument document = pdf(offer, locale, Sheet.A4)) {
            return new PDFTextStripper().getText(document).replace('\u00a0', ' ');
        }
    }

    @Test
    void threeBuildsStandOnOneSheetOfEitherSize() throws IOException {
        for (Sheet paper : Sheet.all()) {
            try (PDDocument document = pdf(offer(shop(), "Ruth Alder", 40), Locale.UK, paper)) {
                for (COSName name : document.getPage(0).getResources().getFontNames()) {
                    assertTrue(document.getPage(0).getResources().getFont(name).isEmbedded(), name.getName());
                }
                String where = System.getProperty("withy.paper");
                if (where != null) {
                    Path image = Path.of(where, "offer-" + paper + ".png");
                    ImageIO.write(new PDFRenderer(document).renderImageWithDPI(0, 90), "png", image.toFile());
                }
                assertEquals(1, document.getNumberOfPages(), paper.name());
            }
        }
    }

    @Test
    void pricesDepositAndDatesAreThoseOfTheBuilds() throws IOException {
        Fixtures shop = shop();
        OfferSheet offer = offer(shop, "Ruth Alder", 40);
        String text = text(offer, Locale.UK);
        Rod rod = shop.rod();
        assertEquals(rod.figures().priceMinor(), offer.builds().get(0).priceMinor());
        double taxed = 1 + shop.catalog().rates().taxPercent() / 100;
        for (Choice choice : offer.builds()) {
            assertEquals(choice.priceMinor() - choice.priceMinor() / taxed, choice.taxMinor(), 1.0);
            assertEquals(Math.ceil(choice.priceMinor() * 0.40), choice.depositMinor(), 0.001);
            for (long amount : List.of(choice.priceMinor(), choice.taxMinor(), choice.depositMinor())) {
                String shown = String.format(Locale.ROOT, "%.2f", amount / 100.0);
                assertTrue(text.contains("€" + shown), shown + " in " + text);
            }
        }
        assertEquals(DAY.plusDays(10).toString(), offer.builds().get(0).ready());
        assertEquals(DAY.plusDays(19).toString(), offer.builds().get(1).ready());
        assertEquals("Tarn rear-grip", offer.builds().get(1).waitFor());
        assertTrue(text.contains("12 Mar 2026") && text.contains("21 Mar 2026"), text);
        assertTrue(text.contains("holds until 16 Mar 2026"), text);
        double heavier = offer.builds().get(1).weightG() - offer.builds().get(0).weightG();
        assertTrue(heavier > 3, "a step of weight");
        assertTrue(text.contains("Against number 1 it is"), text);
        assertTrue(text.contains(UNITS.mass(heavier) + " heavier"), text);
        assertTrue(text.contains("dearer"), text);
    }

    /** Who subtracts one printed weight from the other gets the difference that is told, however the two were rounded. */
    @Test
    void weightsDifferByWhatTheyDifferOnTheSheet() throws IOException {
        int roundedApart = 0;
        for (int hundredth = 0; hundredth < 10; hundredth++) {
            Fixtures shop = shop().part("blank", "facts.weightG", 62 + hundredth / 100.0);
            OfferSheet offer = offer(shop.part("heavy-grip", "facts.weightG", 30.05), "", 0);
            double light = offer.builds().get(0).weightG();
            double heavy = offer.builds().get(1).weightG();
            String told = String.format(Locale.ROOT, "%.1f", tenths(heavy) / 10.0 - tenths(light) / 10.0);
            String text = text(offer, Locale.UK);
            assertTrue(text.contains("Against number 2 it is " + told + " g lighter"), told + " in " + text);
            roundedApart += tenths(heavy - light) == tenths(heavy) - tenths(light) ? 0 : 1;
        }
        assertTrue(roundedApart > 0, "both ways of rounding came out alike");
    }

    private static long tenths(double grams) {
        return Math.round(grams * 10);
    }

    @Test
    void saysWhoAndWhatItIsForAsTheBriefDoes() throws Exception {
        Fixtures shop = shop().brief("customer", "Idris Penhale").brief("name", "Grayling in a weir pool");
        String text = text(offer(shop, "", 40), Locale.UK);
        assertTrue(text.contains("Offer for Idris Penhale"), text);
        assertTrue(text.contains("Grayling in a weir pool"), text);
        String older =
                OfferFile.json(offer(shop, "", 40)).replaceFirst("\"name\" *: *\"Grayling in a weir pool\",", "");
        assertEquals("", OfferFile.read(older).name());
        assertEquals("Idris Penhale", OfferFile.read(older).customer());
    }

    @Test
    void anOfferThatComparesWithABuildItDoesNotHaveIsRefused() {
        String changed = OfferFile.json(offer(shop(), "", 40))
                .replaceFirst("(?s)(\"against\" *: *\\[.*?\"rank\" *: *)\\d", "$19");
        assertTrue(changed.matches("(?s).*\"rank\" *: *9.*"), changed);
        assertThrows(OfferFile.Unreadable.class, () -> OfferFile.read(changed));
    }

    @Test
    void nothingOfTheShopsOwnIsOnIt() throws IOException {
        Fixtures shop = shop();
        OfferSheet offer = offer(shop, "Ruth Alder", 40);
        String html = OfferPaper.of(offer, new Reader(UNITS, Locale.UK), Sheet.A4);
        String words = (html + text(offer, Locale.UK)).toLowerCase(Locale.ROOT);
        for (String never : List.of(
                SUPPLIER.toLowerCase(Locale.ROOT),
                BIN,
                "supplier",
                "margin is",
                "cost",
                "in stock",
                "labour",
                "hour")) {
            assertFalse(words.contains(never), never);
        }
        for (Part part : shop.catalog().byId().values()) {
            String price = String.format(Locale.ROOT, "€%.2f", part.facts().priceMinor() / 100.0);
            assertFalse(words.contains(price), part.id() + " at " + price);
        }
        long parts = shop.rod().costMilli() / 1000;
        assertFalse(words.contains(String.format(Locale.ROOT, "%.2f", parts / 100.0)), "what it costs the shop");
    }

    @Test
    void theCountrySetsDecimalsMoneyAndDates() throws IOException {
        OfferSheet offer = offer(shop(), "", 40);
        String german = text(offer, Locale.GERMANY);
        assertTrue(german.contains("16.03.2026"), german);
        String euros = String.format(Locale.ROOT, "%.2f", offer.builds().get(0).priceMinor() / 100.0);
        assertTrue(german.contains(euros.replace('.', ',') + " €"), german);
        String weight = UNITS.mass(offer.builds().get(0).weightG());
        assertTrue(german.contains(weight.replace('.', ',')), german);
        assertFalse(german.contains(weight), german);
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.FRANCE);
            assertEquals(german, text(offer, Locale.GERMANY));
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void aHostileCustomerIsOnlyAName() throws IOException {
        String name = "<b onload=x>\"]]>&amp;</title><script>alert(1)</script>\udc00\uffff";
        OfferSheet offer = offer(shop(), name, 0);
        String html = OfferPaper.of(offer, new Reader(UNITS, Locale.UK), Sheet.A4);
        String data = OfferFile.element(offer);
        assertTrue(html.contains(data) && data.substring(1, data.length() - 9).indexOf('<') < 0, data);
        String shown = html.replace(data, "");
        assertFalse(shown.contains("<script") || shown.contains("<b onload"), "markup from a name");
        String flat = text(offer, Locale.UK).replaceAll("\\s", "");
        assertTrue(flat.contains("<script>alert(1)</script>"), flat);
    }
}
