package withy.report;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ExcelReaderException;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.jspecify.annotations.Nullable;
import withy.app.Bom;

/**
 * A list of parts as CSV or as a workbook, and back again. A text that a spreadsheet would take for a formula gets an apostrophe before it in
 * CSV, which reading takes off; in a workbook a text is a text.
 */
public final class BomFile {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    /** What spreadsheets take for the start of a formula; with apostrophes before it, so that taking one off is never wrong. */
    private static final Pattern FORMULA =
            Pattern.compile("'*[=+\\-@\\t\\r\\n\uFF1D\uFF0B\uFF0D\uFF20].*", Pattern.DOTALL);

    private static final Pattern GUARDED =
            Pattern.compile("'+[=+\\-@\\t\\r\\n\uFF1D\uFF0B\uFF0D\uFF20].*", Pattern.DOTALL);

    private BomFile() {}

    /** A file that is no such list; with every fault of it. */
    public static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        private final List<String> faults;

        Unreadable(List<String> faults) {
            super(String.join("\n", faults));
            this.faults = List.copyOf(faults);
        }

        /** Each with what is allowed, and a line with a guess. */
        public List<String> faults() {
            return faults;
        }
    }

    /** As CSV; where decimals have a comma, cells are parted by semicolons, as spreadsheets there expect. */
    public static byte[] csv(Bom bom, Reader reader) {
        boolean comma = reader.decimalComma();
        StringWriter text = new StringWriter();
        text.write(BYTE_ORDER_MARK);
        try (CsvWriter csv = CsvWriter.builder()
                .fieldSeparator(comma ? ';' : ',')
                .lineDelimiter(LineDelimiter.CRLF)
                .build(text)) {
            csv.writeRecord(BomRows.HEADS);
            for (Bom.Line line : bom.lines()) {
                csv.writeRecord(BomRows.cells(line, bom.currency()).stream()
                        .map(cell -> cell instanceof Number number
                                ? BomRows.plain(number, comma)
                                : guarded(cell == null ? "" : cell.toString()))
                        .toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return text.toString().getBytes(StandardCharsets.UTF_8);
    }

    /** As a workbook with one sheet. */
    public static byte[] xlsx(Bom bom) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(out, "Withy", null)) {
            Worksheet sheet = book.newWorksheet("Parts");
            for (int column = 0; column < BomRows.HEADS.size(); column++) {
                sheet.value(0, column, BomRows.HEADS.get(column));
                sheet.style(0, column).bold().set();
                sheet.width(column, BomRows.WIDTHS.get(column));
            }
            sheet.freezePane(0, 1);
            int row = 1;
            for (Bom.Line line : bom.lines()) {
                int column = 0;
                for (Object cell : BomRows.cells(line, bom.currency())) {
                    if (cell instanceof Number number) {
                        sheet.value(row, column, number);
                    } else if (cell != null) {
                        sheet.value(row, column, cell.toString());
                    }
                    column++;
                }
                row++;
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    /** Back from CSV. */
    public static Bom ofCsv(byte[] bytes) throws Unreadable {
        String text = new String(bytes, StandardCharsets.UTF_8);
        String plain = text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
        boolean comma = plain.startsWith(BomRows.HEADS.get(0) + ";");
        List<List<String>> rows = new ArrayList<>();
        try (CsvReader<CsvRecord> csv = CsvReader.builder()
                .fieldSeparator(comma ? ';' : ',')
                .allowExtraFields(true)
                .allowMissingFields(true)
                .ofCsvRecord(plain)) {
            for (CsvRecord one : csv) {
                rows.add(one.getFields().stream().map(BomFile::bare).toList());
            }
        } catch (CsvParseException | IOException e) {
            throw new Unreadable(List.of("The list can't be read as CSV.", "Maybe a quotation mark is missing."));
        }
        return BomRows.bom(rows, comma);
    }

    /** Back from a workbook's first sheet. */
    public static Bom ofXlsx(byte[] bytes) throws Unreadable {
        List<List<String>> rows = new ArrayList<>();
        try (ReadableWorkbook book = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            for (Row row : book.getFirstSheet().read()) {
                List<String> cells = new ArrayList<>();
                for (int column = 0; column < BomRows.HEADS.size(); column++) {
                    cells.add(column < row.getCellCount() ? text(row.getCell(column)) : "");
                }
                rows.add(cells);
            }
        } catch (ExcelReaderException | IllegalArgumentException | IOException e) {
            throw new Unreadable(
                    List.of("The list can't be read as a workbook.", "Maybe it was saved in another format."));
        }
        return BomRows.bom(rows, false);
    }

    private static String text(@Nullable Cell cell) {
        if (cell == null) {
            return "";
        }
        if (cell.getType() == CellType.NUMBER) {
            return cell.asNumber().toPlainString();
        }
        String raw = cell.getType() == CellType.STRING ? cell.asString() : cell.getRawValue();
        return raw == null ? "" : raw;
    }

    private static String guarded(String words) {
        return FORMULA.matcher(words).matches() ? "'" + words : words;
    }

    private static String bare(String cell) {
        return GUARDED.matcher(cell).matches() ? cell.substring(1) : cell;
    }
}
