package withy.app;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.Catalog;
import withy.catalog.CatalogReader;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.shop.Shop;
import withy.units.QuantityText;
import withy.units.UnitSystem;

/** Readings far off what was told are asked back before they are booked; those near it, and what is cut or used up, are not. */
class ScaleReadingTest {
    private static final LocalDate DAY = LocalDate.of(2026, 6, 1);
    private static final QuantityText GRAMS = new QuantityText(UnitSystem.METRIC);

    /** Listed at 24.5 g, give or take 0.98 g: four times that is 3.92 g. */
    private static final String SEAT = "marrick-tideway-r-17";

    @TempDir
    Path folder;

    private Workshop workshop;

    @BeforeEach
    void open() throws Exception {
        Path from = Path.of(System.getProperty("withy.home"), "catalog-samples", "bench");
        try (Stream<Path> files = Files.list(from)) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
            }
        }
        Catalog lists = CatalogReader.read(folder, DAY).catalog();
        assertNotNull(lists);
        workshop = new Workshop(folder, lists, DAY);
    }

    private @Nullable String doubt(Part part, double grams) {
        return ScaleReading.doubt(workshop, part, Math.round(grams * 1000), GRAMS);
    }

    private Part part(String id) {
        Part part = workshop.lists().find(id);
        assertNotNull(part, id);
        return part;
    }

    private Part first(PartKind kind) {
        return workshop.lists().all(kind).iterator().next();
    }

    @Test
    void whatIsFourTimesTheToleranceOffIsNearAndWhatIsBeyondIsAskedBackWithBothFigures() {
        Part seat = part(SEAT);
        assertNull(doubt(seat, 24.5 + 3.92));
        assertNull(doubt(seat, 24.5 - 3.92));
        assertEquals(
                "Marrick Tideway R 17 is listed at 24.50 g, give or take 0.98 g. The scale says 28.43 g: that is 3.93 g more.",
                plain(doubt(seat, 28.43)));
        assertEquals(
                "Marrick Tideway R 17 is listed at 24.50 g, give or take 0.98 g. The scale says 7.30 g: that is 17.20 g less.",
                plain(doubt(seat, 7.3)));
    }

    private static @Nullable String plain(@Nullable String told) {
        return told == null ? null : told.replace('\u00a0', ' ');
    }

    @Test
    void theLastDigitOfACoarseScaleIsNotFarHoweverSmallThePart() {
        Part small = workshop.lists().all(PartKind.GUIDE).stream()
                .min(Comparator.comparingDouble(part -> part.facts().weightG()))
                .orElseThrow();
        assertTrue(small.facts().weightTolG() * 4 < 0.1, small.id());
        double listed = small.facts().weightG();
        assertNull(doubt(small, listed + 0.1));
        assertNotNull(doubt(small, listed + 0.11));
        assertNotNull(doubt(small, listed / 6), "a slip of the decimal point is asked back in the smallest part");
    }

    @Test
    void whatIsCutOrUsedUpMayBeLighterButNotHeavier() {
        for (PartKind kind : new PartKind[] {PartKind.GRIP, PartKind.ARBOR, PartKind.THREAD, PartKind.FINISH}) {
            Part part = first(kind);
            double listed = part.facts().weightG();
            assertNull(doubt(part, Math.max(0.001, listed / 3)), part.id());
            assertNotNull(doubt(part, listed * 3 + 1), part.id());
        }
        assertNotNull(doubt(first(PartKind.BLANK), first(PartKind.BLANK).facts().weightG() / 3));
    }

    @Test
    void aListThatIsWrongIsNotAskedBackForEverOnceTwoPiecesSaySo() {
        Part seat = part(SEAT);
        try (Shop shop = workshop.open()) {
            shop.scale().weigh(SEAT, null, 31_000);
        }
        assertNotNull(doubt(seat, 31.2), "one may be a slip");
        try (Shop shop = workshop.open()) {
            shop.scale().weigh(SEAT, null, 31_300);
        }
        assertNull(doubt(seat, 31.2));
        assertNull(doubt(seat, 24.9), "as listed is never odd");
        assertNotNull(doubt(seat, 56.2));
    }

    @Test
    void aReadingOverAnotherOneIsToldWithBoth() {
        assertNull(OnScale.of(workshop, SEAT, null).doubt(part(SEAT), 24_000, GRAMS));
        try (Shop shop = workshop.open()) {
            shop.scale().weigh(SEAT, 1, 24_000);
        }
        assertNull(OnScale.of(workshop, SEAT, null).doubt(part(SEAT), 24_600, GRAMS), "the next is another piece");
        assertEquals(
                "Marrick Tideway R 17, piece 1 was weighed already: 24.00 g. Now it would be 24.60 g.",
                plain(OnScale.of(workshop, SEAT, 1).doubt(part(SEAT), 24_600, GRAMS)));
        assertNull(OnScale.of(workshop, SEAT, 1).doubt(part(SEAT), 24_000, GRAMS), "it says the same");
        assertEquals(1, OnScale.of(workshop, SEAT, 1).readings());
        assertEquals(0, OnScale.of(workshop, SEAT, 2).readings());
        assertEquals(1, OnScale.of(workshop, SEAT, null).readings());
    }
}
