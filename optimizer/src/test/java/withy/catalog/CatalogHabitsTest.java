package withy.catalog;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import withy.catalog.sample.SampleCatalogs;

/** What spreadsheets do to a file leaves what is read alone: the hash of the content stays. */
class CatalogHabitsTest {
    private static final String BOM = "\ufeff";

    @TempDir
    Path folder;

    private String hash = "";

    @BeforeEach
    void fill() throws IOException {
        CatalogWriter.write(SampleCatalogs.bench(), folder);
        hash = read().hash();
    }

    @Test
    void writingWhatWasReadGivesTheSameFiles() throws IOException {
        Catalog read = read();
        Path again = folder.resolve("again");
        CatalogWriter.write(read, again);
        for (PartKind kind : PartKind.values()) {
            assertEquals(-1, Files.mismatch(folder.resolve(kind.fileName()), again.resolve(kind.fileName())));
        }
        assertEquals(read.byId(), SampleCatalogs.bench().byId());
    }

    @Test
    void byteOrderMarkAndCrLf() throws IOException {
        eachFile((kind, rows) -> BOM + csv(rows, ',', LineDelimiter.CRLF), StandardCharsets.UTF_8);
    }

    @Test
    void semicolonsDecimalCommasAndDottedDates() throws IOException {
        eachFile((kind, rows) -> csv(withDecimalCommas(kind, rows), ';', LineDelimiter.CRLF), StandardCharsets.UTF_8);
    }

    @Test
    void commasBetweenCellsAndInQuotedDecimals() throws IOException {
        eachFile((kind, rows) -> csv(withDecimalCommas(kind, rows), ',', LineDelimiter.LF), StandardCharsets.UTF_8);
    }

    @Test
    void unicodeTextWithTabs() throws IOException {
        eachFile((kind, rows) -> BOM + csv(rows, '\t', LineDelimiter.CRLF), StandardCharsets.UTF_16LE);
        eachFile((kind, rows) -> BOM + csv(rows, '\t', LineDelimiter.CRLF), StandardCharsets.UTF_16BE);
    }

    @Test
    void theSeparatorLineOfSpreadsheets() throws IOException {
        eachFile((kind, rows) -> "sep=;\r\n" + csv(rows, ';', LineDelimiter.CRLF), StandardCharsets.UTF_8);
    }

    @Test
    void westernEncoding() throws IOException {
        replace("blanks.csv", "Ghyll 165-2", "Größe 165-2");
        String western = read().hash();
        assertNotEquals(hash, western);
        String text = Files.readString(folder.resolve("blanks.csv"));
        Files.write(folder.resolve("blanks.csv"), text.getBytes(Charset.forName("windows-1252")));
        assertEquals(western, read().hash());
    }

    @Test
    void reorderedAndForeignColumnsShuffledAndEmptyRowsTrailingBlanksShoutedNames() throws IOException {
        eachFile(
                (kind, rows) -> {
                    Random random = new Random(5 + kind.ordinal());
                    List<Integer> order = new ArrayList<>();
                    for (int i = 0; i <= rows.get(0).size(); i++) {
                        order.add(i);
                    }
                    Collections.shuffle(order, random);
                    List<List<String>> body = new ArrayList<>(rows.subList(1, rows.size()));
                    Collections.shuffle(body, random);
                    List<List<String>> all = new ArrayList<>();
                    all.add(rows.get(0).stream().map(CatalogHabitsTest::shouted).toList());
                    body.forEach(row -> {
                        all.add(row.stream().map(cell -> " " + cell + "  ").toList());
                        all.add(Collections.nCopies(row.size(), " "));
                    });
                    List<List<String>> moved = new ArrayList<>();
                    for (List<String> row : all) {
                        List<String> wider = new ArrayList<>(row);
                        wider.add(moved.isEmpty() ? "My own notes" : "");
                        moved.add(order.stream().map(wider::get).toList());
                    }
                    return csv(moved, ',', LineDelimiter.LF) + "\n\n,,,\n";
                },
                StandardCharsets.UTF_8);
    }

    @Test
    void changedContentChangesTheHash() throws IOException {
        replace("hoods.csv", "9.50", "9.60");
        assertNotEquals(hash, read().hash());
        CatalogWriter.write(SampleCatalogs.bench(), folder);
        replace("rates.json", "\"taxPercent\": 20", "\"taxPercent\": 21");
        assertNotEquals(hash, read().hash());
    }

    @Test
    void otherUnitsInTheColumnName() throws IOException {
        replace("tip-tops.csv", "tube_mm", "tube_64ths");
        firstRowOnly("tip-tops.csv");
        replace("tip-tops.csv", ",1.5875,", ",4,");
        TipTop top = read().all(PartKind.TIP_TOP, TipTop.class).get(0);
        // 4/64 in = 1.5875 mm, exact by the inch of 25.4 mm.
        assertEquals(1.5875, top.tubeMm());
        replace("hoods.csv", "face_od_mm", "Face OD (in)");
        firstRowOnly("hoods.csv");
        replace("hoods.csv", "20.5", "0.8125");
        Catalog read = read();
        assertEquals(20.6375, read.all(PartKind.HOOD, Hood.class).get(0).faceOdMm());
        replace("blanks.csv", "line_max_kg", "line_max_lb");
        // 1 lb = 0.45359237 kg exactly (NIST SP 811, App. B); kept to a millionth.
        assertEquals(0.997903, read().all(PartKind.BLANK, Blank.class).get(0).lineMaxKg());
    }

    @Test
    void aLengthInInchesMayBeRoundedBesideItsStations() throws IOException {
        firstRowOnly("blanks.csv");
        replace("blanks.csv", "length_mm,section_lengths_mm", "length_in,section_lengths_mm");
        // 65 in = 1651 mm, the stations end at 1650 mm: one blank measured twice.
        replace("blanks.csv", ",1650,", ",65,");
        Blank blank = read().all(PartKind.BLANK, Blank.class).get(0);
        assertEquals(1651, blank.lengthMm());
        assertEquals(1651, blank.stations().get(blank.stations().size() - 1).xMm());
        replace("blanks.csv", ",65,", ",65 1/4,");
        assertEquals(
                List.of("section_lengths_mm", "stations_mm"),
                CatalogReader.read(folder, SampleCatalogs.AS_OF).faults().stream()
                        .map(Fault::column)
                        .toList());
    }

    @Test
    void fractionsAsRulesAndLuresAreMarked() throws IOException {
        replace("blanks.csv", "lure_min_g,lure_max_g", "lure_min_oz,lure_max_g");
        firstRowOnly("blanks.csv");
        replace("blanks.csv", ",0.8,4,", ",1/16,4,");
        // 1 oz = 28.349523125 g exactly (NIST SP 811, App. B).
        assertEquals(1.771845, read().all(PartKind.BLANK, Blank.class).get(0).lureMinG());
        assertEquals(new BigDecimal("7.5"), Numbers.parse("7 1/2", Numbers.Mark.UNKNOWN));
        assertEquals(new BigDecimal("7.5"), Numbers.parse("7-1/2", Numbers.Mark.COMMA));
        assertEquals(new BigDecimal("7.5"), Numbers.parse("7½", Numbers.Mark.POINT));
        assertEquals(null, Numbers.parse("7 3/2", Numbers.Mark.POINT));
        assertEquals(null, Numbers.parse("1/0", Numbers.Mark.POINT));
    }

    @Test
    void textThatLooksLikeAFormulaIsGuardedAndComesBack() throws IOException {
        replace("hoods.csv", "Tideway Alu Hood 16", "'=2+3");
        Catalog read = read();
        assertEquals("=2+3", read.all(PartKind.HOOD).get(0).facts().model());
        CatalogWriter.write(read, folder);
        assertEquals("'=2+3", rows(folder.resolve("hoods.csv")).get(1).get(2));
        assertEquals(read.hash(), read().hash());
    }

    private void firstRowOnly(String file) throws IOException {
        List<List<String>> rows = rows(folder.resolve(file));
        Files.writeString(folder.resolve(file), csv(rows.subList(0, 2), ',', LineDelimiter.LF));
    }

    private interface Habit {
        String text(PartKind kind, List<List<String>> rows) throws IOException;
    }

    private void eachFile(Habit habit, Charset charset) throws IOException {
        CatalogWriter.write(SampleCatalogs.bench(), folder.resolve("plain"));
        for (PartKind kind : PartKind.values()) {
            Path file = folder.resolve(kind.fileName());
            String text = habit.text(kind, rows(folder.resolve("plain").resolve(kind.fileName())));
            Files.write(file, text.getBytes(charset));
        }
        assertEquals(hash, read().hash());
    }

    private Catalog read() throws IOException {
        CatalogReading reading = CatalogReader.read(folder, SampleCatalogs.AS_OF);
        if (reading.catalog() == null) {
            throw new AssertionError(CatalogFaultsTest.told(reading));
        }
        return reading.catalog();
    }

    private static String shouted(String name) {
        return " " + name.toUpperCase(Locale.ROOT).replace('_', ' ') + " ";
    }

    private static List<List<String>> withDecimalCommas(PartKind kind, List<List<String>> rows) {
        Set<String> numeric = new TreeSet<>();
        for (Column<?> column : Sheet.of(kind).columns()) {
            switch (column.sort()) {
                case NUMBER, BARE, LENGTH, MASS, STRENGTH, LENGTHS, STATIONS, MONEY, COLOUR, WHOLE ->
                    numeric.add(column.name());
                default -> {}
            }
        }
        List<List<String>> changed = new ArrayList<>();
        changed.add(rows.get(0));
        for (List<String> row : rows.subList(1, rows.size())) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < row.size(); i++) {
                String name = rows.get(0).get(i);
                String cell = numeric.contains(name) ? row.get(i).replace('.', ',') : row.get(i);
                cells.add(name.equals("price_date") ? cell.replaceAll("(\\d+)-(\\d+)-(\\d+)", "$3.$2.$1") : cell);
            }
            changed.add(cells);
        }
        return changed;
    }

    private static List<List<String>> rows(Path file) throws IOException {
        List<List<String>> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(Files.readString(file))) {
            reader.forEach(row -> rows.add(row.getFields()));
        }
        return rows;
    }

    private static String csv(List<List<String>> rows, char separator, LineDelimiter end) throws IOException {
        StringWriter text = new StringWriter();
        try (CsvWriter writer =
                CsvWriter.builder().fieldSeparator(separator).lineDelimiter(end).build(text)) {
            rows.forEach(writer::writeRecord);
        }
        return text.toString();
    }

    private void replace(String file, String old, String now) throws IOException {
        String text = Files.readString(folder.resolve(file));
        if (!text.contains(old)) {
            throw new AssertionError(file + " does not hold " + old);
        }
        Files.writeString(folder.resolve(file), text.replace(old, now));
    }
}
