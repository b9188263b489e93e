package withy.catalog;

import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Writes a catalogue folder: comma, decimal point, line feed, UTF-8 without BOM, columns in their documented order. */
public final class CatalogWriter {
    /** Signs a spreadsheet would take for the start of a formula; text that starts with one is written behind an apostrophe. */
    static final String FORMULA = "=+-@\t\r";

    private CatalogWriter() {}

    /** Writes rates.json and all fourteen files; an empty kind gets its row of column names. */
    public static void write(Catalog catalog, Path folder) throws IOException {
        Files.createDirectories(folder);
        Files.writeString(folder.resolve(RatesFile.NAME), RatesFile.text(catalog.rates()), StandardCharsets.UTF_8);
        int digits = MoneyDigits.of(catalog.rates().currency());
        for (PartKind kind : PartKind.values()) {
            Files.writeString(
                    folder.resolve(kind.fileName()), csv(Sheet.of(kind), catalog, digits), StandardCharsets.UTF_8);
        }
    }

    private static <P extends Part> String csv(Sheet<P> sheet, Catalog catalog, int digits) {
        return csv(sheet, catalog.all(sheet.kind(), sheet.type()), digits);
    }

    static <P extends Part> String csv(Sheet<P> sheet, List<P> parts, int digits) {
        List<Column<P>> columns = sheet.columns().stream()
                .filter(column -> !column.name().equals("currency"))
                .toList();
        StringWriter text = new StringWriter();
        try (CsvWriter writer =
                CsvWriter.builder().lineDelimiter(LineDelimiter.LF).build(text)) {
            writer.writeRecord(columns.stream().map(Column::name).toList());
            for (P part : parts) {
                List<String> cells = new ArrayList<>();
                for (Column<P> column : columns) {
                    String cell = cell(column.value().apply(part), column.sort(), digits);
                    boolean formula = column.sort() == Column.Sort.TEXT
                            && !cell.isEmpty()
                            && FORMULA.indexOf(cell.charAt(0)) >= 0;
                    cells.add(formula ? "'" + cell : cell);
                }
                writer.writeRecord(cells);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString();
    }

    /** Canonical text of a value: the same for equal values whatever file they were read from. */
    static String cell(@Nullable Object value, Column.Sort sort, int moneyDigits) {
        if (value == null) {
            return "";
        }
        if (value instanceof List<?> list) {
            List<String> items = new ArrayList<>();
            for (Object item : list) {
                items.add(cell(item, sort, moneyDigits));
            }
            return String.join("|", items);
        }
        if (value instanceof Double number) {
            return Numbers.plain(number);
        }
        if (value instanceof Long minor && sort == Column.Sort.MONEY) {
            return BigDecimal.valueOf(minor, moneyDigits).toPlainString();
        }
        if (value instanceof Boolean flag) {
            return flag ? "yes" : "no";
        }
        if (value instanceof Enum<?> constant) {
            return Column.wordOf(constant);
        }
        if (value instanceof Blank.OdStation station) {
            return Numbers.plain(station.xMm()) + ":" + Numbers.plain(station.odMm());
        }
        if (value instanceof Lab lab) {
            return Numbers.plain(lab.l()) + "|" + Numbers.plain(lab.a()) + "|" + Numbers.plain(lab.b());
        }
        if (value instanceof LocalDate || value instanceof Integer || value instanceof String) {
            return value.toString();
        }
        throw new IllegalArgumentException("no cell text for " + value.getClass());
    }
}
