package withy.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import withy.catalog.sample.SampleCatalogs;

/** Every fault message, and the bounds on what is read. */
class CatalogFaultsTest {
    @TempDir
    Path folder;

    @BeforeEach
    void fill() throws IOException {
        CatalogWriter.write(SampleCatalogs.bench(), folder);
    }

    @ParameterizedTest
    @ValueSource(strings = {"broken", "broken/hard-to-believe"})
    void theBrokenSampleShowsItsMessages(String name) throws IOException {
        Path sample = SamplesTest.SAMPLES.resolve(name);
        CatalogReading reading = CatalogReader.read(sample, SampleCatalogs.AS_OF);
        assertEquals(Files.readString(sample.resolve("expected.txt")), told(reading));
        for (Fault fault : all(reading)) {
            assertTrue(fault.message().contains("\nMaybe "), fault.message());
        }
    }

    static String told(CatalogReading reading) {
        StringBuilder text = new StringBuilder("Faults\n");
        reading.faults().forEach(fault -> text.append(fault.message()).append('\n'));
        text.append("Warnings\n");
        reading.warnings().forEach(fault -> text.append(fault.message()).append('\n'));
        return text.toString();
    }

    private static List<Fault> all(CatalogReading reading) {
        List<Fault> all = new ArrayList<>(reading.faults());
        all.addAll(reading.warnings());
        return all;
    }

    /** Who keeps a list in ounces looks for his own column and weighs in ounces; 1 oz = 28.349523125 g. */
    @Test
    void faultsSpeakOfTheColumnAndTheUnitThatTheListHas() throws IOException {
        replace("blanks.csv", ",lure_min_g,lure_max_g,", ",Lure min oz,Lure max (oz),");
        List<String> lines = Files.readAllLines(folder.resolve("blanks.csv"));
        String row = lines.get(1);
        Files.writeString(
                folder.resolve("blanks.csv"), lines.get(0) + "\n" + row.replace(",UL,0.8,4,", ",UL,1/2,1/4,"));
        assertEquals(
                "blanks.csv line 2, Lure min oz: \"0.5\" is more than Lure max (oz) 0.25. Allowed: at most 0.25.\n"
                        + "Maybe the two changed places.",
                only().message());
        Files.writeString(
                folder.resolve("blanks.csv"), lines.get(0) + "\n" + row.replace(",UL,0.8,4,", ",UL,900,1/4,"));
        assertEquals(
                "blanks.csv line 2, Lure min oz: \"900\" is out of range. Allowed: 0.0036 to 35.2739 oz.\n"
                        + "Maybe the decimal mark slipped: 9 oz.",
                only().message());
        Files.writeString(folder.resolve("blanks.csv"), lines.get(0) + "\n" + row.replace(",UL,0.8,4,", ",UL,,1/4,"));
        assertEquals("Lure min oz", only().column());
    }

    @Test
    void aNewerSchemaNamesTheVersionThatReadsIt() throws IOException {
        replace("rates.json", "\"schema\": 1", "\"schema\": 2");
        assertEquals(
                "rates.json, schema: \"2\" is newer than this program, which reads schema 1. Allowed: 1.\n"
                        + "Maybe install the version of Withy that reads schema 2.",
                only().message());
    }

    @Test
    void jsonThatIsNoneNamesTheLine() throws IOException {
        replace("rates.json", "\"currency\": \"EUR\",", "\"currency\": \"EUR\"");
        Fault fault = only();
        assertEquals(4, fault.line());
        assertTrue(fault.message().startsWith("rates.json line 4: is not JSON: "), fault.message());
    }

    @Test
    void aFieldTwiceIsRefused() throws IOException {
        replace("rates.json", "\"taxPercent\": 20,", "\"taxPercent\": 20, \"taxPercent\": 7,");
        assertTrue(only().message().contains("taxPercent"), only().message());
    }

    @Test
    void theHouseFinishMustBeInTheCatalogue() throws IOException {
        replace("rates.json", "clearlough-wrap-coat-high", "clearlough-wrap-coat-hihg");
        assertEquals(
                "rates.json, houseFinish: \"clearlough-wrap-coat-hihg\" is no part of finishes.csv. Allowed: the id of a finish.\n"
                        + "Maybe \"clearlough-wrap-coat-high\" was meant.",
                only().message());
    }

    @Test
    void ratesBegunFromNothingAreToldOnceEachAndNeverAdvisedToBeNought() throws IOException {
        Files.writeString(folder.resolve("rates.json"), "{}");
        List<Fault> faults = CatalogReader.read(folder, SampleCatalogs.AS_OF).faults();
        assertEquals(19, faults.size(), faults.toString());
        assertTrue(faults.stream().noneMatch(fault -> fault.message().contains("write 0")), faults.toString());
        Files.delete(folder.resolve("rates.json"));
        assertEquals(
                "rates.json: is missing. Allowed: a file of this name in the catalogue folder.\n"
                        + "Maybe begin with that of a sample catalogue and change its figures.",
                only().message());
    }

    @Test
    void aMissingNeededFileIsAFaultAndAnOptionalOneAWarning() throws IOException {
        Files.delete(folder.resolve("keepers.csv"));
        CatalogReading reading = CatalogReader.read(folder, SampleCatalogs.AS_OF);
        assertNotNull(reading.catalog());
        assertEquals(
                "keepers.csv: is missing, so none are offered. Allowed: a file of this name in the catalogue folder.\n"
                        + "Maybe it was saved under another name or elsewhere.",
                reading.warnings().get(0).message());
        Files.move(folder.resolve("blanks.csv"), folder.resolve("blank.csv"));
        assertEquals(
                "blanks.csv: is missing. Allowed: a file of this name in the catalogue folder.\n"
                        + "Maybe \"blank.csv\" was meant.",
                only().message());
    }

    @Test
    void aFolderThatIsNone() throws IOException {
        CatalogReading reading = CatalogReader.read(folder.resolve("nowhere"), SampleCatalogs.AS_OF);
        assertNull(reading.catalog());
        assertTrue(reading.faults().get(0).message().contains("nowhere: is not a folder"));
    }

    @Test
    void cellsColumnsAndFaultsAreBounded() throws IOException {
        replace("decals.csv", "Name Strip", "N".repeat(Limits.CELL + 1));
        assertTrue(only().message().contains("can't be cut into cells"), only().message());
        StringBuilder many = new StringBuilder("id\n");
        for (int i = 0; i < 3; i++) {
            many.append("x".repeat(10)).append(",".repeat(Limits.COLUMNS + 5)).append('\n');
        }
        Files.writeString(folder.resolve("decals.csv"), many);
        assertTrue(only().message().contains("can't be cut into cells"), only().message());
        List<String> lines = new ArrayList<>(Files.readAllLines(SamplesTest.SAMPLES.resolve("bench/decals.csv")));
        for (int i = 0; i < Limits.FAULTS + 50; i++) {
            lines.add("NOT AN ID" + lines.get(1));
        }
        Files.write(folder.resolve("decals.csv"), lines);
        List<Fault> faults = CatalogReader.read(folder, SampleCatalogs.AS_OF).faults();
        assertEquals(Limits.FAULTS + 1, faults.size());
        assertTrue(faults.stream().anyMatch(fault -> fault.problem().equals("has 50 more faults")));
    }

    @Test
    void aFileTooLargeIsNotRead() throws IOException {
        try (var file =
                new java.io.RandomAccessFile(folder.resolve("decals.csv").toFile(), "rw")) {
            file.setLength(Limits.FILE_BYTES + 1);
        }
        assertTrue(CatalogReader.read(folder, SampleCatalogs.AS_OF).faults().stream()
                .anyMatch(fault -> fault.message().contains("is too large")));
    }

    private Fault only() throws IOException {
        CatalogReading reading = CatalogReader.read(folder, SampleCatalogs.AS_OF);
        assertNull(reading.catalog());
        assertEquals(1, reading.faults().size(), () -> told(reading));
        return reading.faults().get(0);
    }

    private void replace(String file, String old, String now) throws IOException {
        String text = Files.readString(folder.resolve(file));
        assertTrue(text.contains(old), file + " holds " + old);
        Files.writeString(folder.resolve(file), text.replace(old, now));
    }
}
