package withy.catalog;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.CsvRecordHandler;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * One CSV file cut into cells; separator detected, empty rows dropped, blanks around cells stripped.
 *
 * @param header cells of the first row that is not empty
 * @param headerLine its line
 * @param rows the rows below it
 * @param separator comma, semicolon or tab
 */
record Table(List<String> header, int headerLine, List<Line> rows, char separator) {
    Table {
        header = List.copyOf(header);
        rows = List.copyOf(rows);
    }

    /**
     * One row.
     *
     * @param number line of the file it starts on, from 1
     * @param cells its cells
     */
    record Line(int number, List<String> cells) {
        Line {
            cells = List.copyOf(cells);
        }

        String cell(int index) {
            return index < cells.size() ? cells.get(index) : "";
        }
    }

    /** A file that can't be cut into cells. */
    static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;
        private final transient Fault fault;

        Unreadable(Fault fault) {
            super(fault.message());
            this.fault = fault;
        }

        Fault fault() {
            return fault;
        }
    }

    static Table of(String file, String text) throws Unreadable {
        String body = text;
        int skipped = 0;
        char separator = 0;
        String first = firstLine(body);
        if (first.strip().toLowerCase(Locale.ROOT).matches("\"?sep=[^\"]\"?")) {
            separator = first.strip().replace("\"", "").charAt(4);
            body = body.substring(Math.min(body.length(), first.length() + 1));
            skipped = 1;
        }
        if (separator == 0) {
            separator = separatorOf(firstFilledLine(body));
        }
        List<Line> lines = cut(file, body, separator, skipped);
        if (lines.isEmpty()) {
            throw new Unreadable(new Fault(
                    file, 0, "", "", "is empty", "a first row of column names", "it was saved under another name"));
        }
        Line head = lines.get(0);
        return new Table(head.cells(), head.number(), lines.subList(1, lines.size()), separator);
    }

    private static List<Line> cut(String file, String text, char separator, int skipped) throws Unreadable {
        List<Line> lines = new ArrayList<>();
        CsvRecordHandler handler = CsvRecordHandler.builder()
                .maxFields(Limits.COLUMNS)
                .maxFieldSize(Limits.CELL)
                .maxRecordSize(Limits.COLUMNS * Limits.CELL)
                .build();
        int at = skipped + 1;
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(true)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .allowExtraCharsAfterClosingQuote(false)
                .trimWhitespacesAroundQuotes(true)
                .allowUnclosedQuote(false)
                .build(handler, text)) {
            for (CsvRecord row : reader) {
                at = (int) row.getStartingLineNumber() + skipped;
                List<String> cells =
                        row.getFields().stream().map(Table::stripped).toList();
                if (cells.stream().allMatch(String::isEmpty)) {
                    continue;
                }
                if (lines.size() > Limits.ROWS) {
                    throw new Unreadable(new Fault(
                            file, at, "", "", "has too many rows", "at most " + Limits.ROWS, "split the catalogue"));
                }
                lines.add(new Line(at, cells));
            }
        } catch (CsvParseException broken) {
            throw new Unreadable(brokenAt(file, at, broken));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return lines;
    }

    private static Fault brokenAt(String file, int at, CsvParseException broken) {
        return new Fault(
                file,
                at,
                "",
                "",
                "can't be cut into cells near here",
                "at most " + Limits.COLUMNS + " cells a row, " + Limits.CELL + " characters a cell, every quote closed",
                "a quotation mark is missing or doubled in this row or the next");
    }

    private static String stripped(String cell) {
        return cell.replace('\u00a0', ' ').strip();
    }

    private static String firstLine(String text) {
        int end = text.indexOf('\n');
        return end < 0 ? text : text.substring(0, end);
    }

    private static String firstFilledLine(String text) {
        return text.lines()
                .filter(line -> !line.replaceAll("[;,\\t\"]", "").isBlank())
                .findFirst()
                .orElse("");
    }

    /** The separator that stands most often outside quotes in the row of column names. */
    private static char separatorOf(String header) {
        int[] counts = new int[3];
        boolean quoted = false;
        for (int i = 0; i < header.length(); i++) {
            char c = header.charAt(i);
            if (c == '"') {
                quoted = !quoted;
            } else if (!quoted && ",;\t".indexOf(c) >= 0) {
                counts[",;\t".indexOf(c)]++;
            }
        }
        int best = 0;
        for (int i = 1; i < 3; i++) {
            if (counts[i] > counts[best]) {
                best = i;
            }
        }
        return ",;\t".charAt(best);
    }
}
