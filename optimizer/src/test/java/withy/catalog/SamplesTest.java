package withy.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.sample.SampleCatalogs;

/** The sample catalogues as they lie in the repository. */
class SamplesTest {
    static final Path SAMPLES = Path.of(System.getProperty("withy.home", ".."), "catalog-samples");

    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"bench", "wide"})
    void readsWithoutFaultsOrWarnings(String name) throws IOException {
        CatalogReading reading = CatalogReader.read(SAMPLES.resolve(name), SampleCatalogs.AS_OF);
        assertEquals(List.of(), reading.faults());
        assertEquals(List.of(), reading.warnings());
        assertTrue(reading.catalog() != null && reading.catalog().hash().matches("[0-9a-f]{64}"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"bench", "wide"})
    void isMadeAgainByteForByte(String name) throws IOException {
        CatalogWriter.write(name.equals("bench") ? SampleCatalogs.bench() : SampleCatalogs.wide(), folder);
        assertEquals(
                -1,
                Files.mismatch(
                        folder.resolve("rates.json"), SAMPLES.resolve(name).resolve("rates.json")));
        for (PartKind kind : PartKind.values()) {
            Path kept = SAMPLES.resolve(name).resolve(kind.fileName());
            assertEquals(-1, Files.mismatch(folder.resolve(kind.fileName()), kept), kept.toString());
        }
    }

    @Test
    void generatedCataloguesHaveTheSizeAskedAndFollowTheSeed() throws IOException {
        Catalog five = SampleCatalogs.generated(5000, 7);
        assertEquals(5000, five.size());
        String hash = ContentHash.of(five.rates(), five.byId().values());
        Catalog again = SampleCatalogs.generated(5000, 7);
        Catalog other = SampleCatalogs.generated(5000, 8);
        assertEquals(hash, ContentHash.of(again.rates(), again.byId().values()));
        assertNotEquals(hash, ContentHash.of(other.rates(), other.byId().values()));
        CatalogWriter.write(five, folder);
        CatalogReading reading = CatalogReader.read(folder, SampleCatalogs.AS_OF);
        assertEquals(List.of(), reading.faults());
        assertEquals(List.of(), reading.warnings());
        assertTrue(reading.catalog() != null && reading.catalog().hash().equals(hash));
    }

    @Test
    void wideKeepsTenCandidateBlanksForEachKindOfCommission() throws IOException {
        List<Blank> wide = SampleCatalogs.wide().all(PartKind.BLANK, Blank.class);
        List<Blank> bench = SampleCatalogs.bench().all(PartKind.BLANK, Blank.class);
        offered(wide, bench, "brook", blank -> spinning(blank, 1650, 1900, 3, 5));
        offered(wide, bench, "kayak", blank -> spinning(blank, 1980, 2130, 16, 27));
        offered(wide, bench, "estuary", blank -> spinning(blank, 2150, 2450, 12, 18));
        offered(wide, bench, "travel", blank -> blank.sections() == 4 && spinning(blank, 2600, 2800, 18, 29));
        offered(wide, bench, "beach", blank -> of(blank, RodType.SURF_SPINNING, 3500, 3700, 110, 150));
        offered(wide, bench, "child", blank -> spinning(blank, 1500, 1620, 6, 10));
        offered(wide, bench, "harbour jig", blank -> of(blank, RodType.CASTING, 1930, 2060, 80, 115));
        offered(wide, bench, "breakwater", blank -> of(blank, RodType.CASTING, 2080, 2330, 40, 70));
    }

    private static void offered(List<Blank> wide, List<Blank> bench, String kind, Predicate<Blank> fits) {
        assertTrue(wide.stream().filter(fits).count() >= 10, kind + " in wide");
        assertTrue(bench.stream().filter(fits).count() >= 3, kind + " in bench");
    }

    private static boolean spinning(Blank blank, double from, double to, double usualG, double heaviestG) {
        return of(blank, RodType.SPINNING, from, to, usualG, heaviestG);
    }

    private static boolean of(Blank blank, RodType type, double from, double to, double usualG, double heaviestG) {
        return blank.rodTypes().contains(type)
                && blank.lengthMm() >= from
                && blank.lengthMm() <= to
                && blank.lureMinG() <= usualG
                && blank.lureMaxG() >= heaviestG;
    }

    @Test
    void theColumnsPageSaysWhatTheReaderReads() throws IOException {
        assertEquals(ColumnGuide.text(), Files.readString(SAMPLES.resolve("COLUMNS.md")));
    }

    @Test
    void theColumnsPageTellsEveryFieldOfTheRates() throws IOException {
        JsonNode rates = new ObjectMapper()
                .readTree(SAMPLES.resolve("bench").resolve("rates.json").toFile());
        List<String> told = ColumnGuide.text()
                .lines()
                .dropWhile(line -> !line.equals("## rates.json"))
                .takeWhile(line -> !line.equals("## Every file"))
                .filter(line -> line.startsWith("| `"))
                .map(line -> line.substring(3, line.indexOf('`', 3)))
                .toList();
        List<String> fields = new ArrayList<>();
        rates.fieldNames().forEachRemaining(fields::add);
        assertEquals(fields, told);
    }

    @Test
    void aLeastGaugeIsNoTimeInMinutes() {
        assertTrue(ColumnGuide.text().contains("| `gauge_min` |  | 0.05 to 30 |"));
    }
}
