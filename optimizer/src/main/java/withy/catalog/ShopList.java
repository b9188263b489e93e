package withy.catalog;

import java.io.IOException;
import java.io.InputStream;
import java.math.BigDecimal;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.jspecify.annotations.Nullable;

/**
 * A count or a price list as a builder or a supplier keeps it: CSV or the first sheet of an XLSX workbook, with a column {@code id} and one of
 * {@code counted} and {@code price}, or both. Other columns are left aside.
 */
public final class ShopList {
    private static final int MOST_PIECES = 10_000;
    private static final BigDecimal MOST_PRICE = new BigDecimal("10000");
    private static final List<String> ID = List.of("id", "part");
    private static final List<String> COUNTED = List.of("counted", "stock", "count");
    private static final List<String> PRICE = List.of("price");

    private final Catalog catalog;
    private final FaultList faults;
    private final Map<String, Integer> firstLine = new TreeMap<>();

    private ShopList(Catalog catalog, FaultList faults) {
        this.catalog = catalog;
        this.faults = faults;
    }

    /**
     * One row.
     *
     * @param line line of the file
     * @param part catalogue id
     * @param counted pieces counted on the shelf, or null
     * @param priceMinor price, minor units, or null
     */
    public record Entry(
            int line,
            String part,
            @Nullable Integer counted,
            @Nullable Long priceMinor) {}

    /**
     * What came of reading.
     *
     * @param entries the sound rows
     * @param faults everything wrong
     */
    public record Reading(List<Entry> entries, List<Fault> faults) {
        public Reading {
            entries = List.copyOf(entries);
            faults = List.copyOf(faults);
        }
    }

    /**
     * Reads a file against the catalogue's ids and currency.
     *
     * @throws IOException where it can't be read at all
     */
    public static Reading read(Path file, Catalog catalog) throws IOException {
        Path last = file.getFileName();
        String name = last == null ? file.toString() : last.toString();
        FaultList faults = new FaultList(name);
        if (Files.size(file) > Limits.FILE_BYTES) {
            faults.add(
                    0,
                    "",
                    Files.size(file) + " bytes",
                    "is too large",
                    "at most " + Limits.FILE_BYTES + " bytes",
                    "it is another file");
            return new Reading(List.of(), faults.list());
        }
        try {
            boolean workbook = name.toLowerCase(Locale.ROOT).endsWith(".xlsx");
            Table table = workbook ? workbook(name, file) : Table.of(name, TextFile.decode(Files.readAllBytes(file)));
            Numbers.Mark mark = workbook
                    ? Numbers.Mark.POINT
                    : table.separator() == ';' ? Numbers.Mark.COMMA : Numbers.Mark.UNKNOWN;
            return new Reading(new ShopList(catalog, faults).entries(table, mark), faults.list());
        } catch (Table.Unreadable broken) {
            faults.add(broken.fault());
            return new Reading(List.of(), faults.list());
        }
    }

    private List<Entry> entries(Table table, Numbers.Mark mark) {
        int id = index(table, ID);
        int counted = index(table, COUNTED);
        int price = index(table, PRICE);
        if (id < 0 || counted < 0 && price < 0) {
            faults.add(
                    table.headerLine(),
                    id < 0 ? "id" : "counted",
                    String.join(", ", table.header()),
                    "lacks a column",
                    "a column id, and one of counted and price, or both",
                    "the row of column names is missing");
            return List.of();
        }
        Map<String, Integer> places = Map.of("id", id, "counted", counted, "price", price);
        faults.columnsAs(column -> {
            int place = places.getOrDefault(column, -1);
            return place < 0 ? column : table.header().get(place);
        });
        List<Entry> entries = new ArrayList<>();
        for (Table.Line line : table.rows()) {
            Entry entry = entry(line, id, counted, price, mark);
            if (entry != null) {
                entries.add(entry);
            }
        }
        return entries;
    }

    private @Nullable Entry entry(Table.Line line, int id, int counted, int price, Numbers.Mark mark) {
        int before = faults.size();
        String part = line.cell(id);
        Integer first = firstLine.putIfAbsent(part, line.number());
        if (catalog.find(part) == null) {
            String near = NearWord.to(part, catalog.byId().keySet());
            fault(
                    line,
                    "id",
                    part,
                    "is no part of the lists",
                    "an id of the catalogue",
                    near.isEmpty() ? "it is new: add it to its list first" : "\"" + near + "\" was meant");
        } else if (first != null) {
            fault(line, "id", part, "stands on line " + first + " already", "each part once", "add the two counts up");
        }
        String told = counted < 0 ? "" : line.cell(counted);
        String money = price < 0 ? "" : line.cell(price);
        Integer pieces = told.isEmpty() ? null : pieces(line, told, mark);
        Long minor = money.isEmpty() ? null : minor(line, money, mark);
        boolean says = pieces != null || minor != null;
        return faults.size() == before && says ? new Entry(line.number(), part, pieces, minor) : null;
    }

    private @Nullable Integer pieces(Table.Line line, String text, Numbers.Mark mark) {
        BigDecimal value = Numbers.parse(text, mark);
        if (value == null
                || value.signum() < 0
                || value.compareTo(BigDecimal.valueOf(MOST_PIECES)) > 0
                || value.stripTrailingZeros().scale() > 0) {
            String maybe = value != null && value.signum() < 0 ? "the minus sign is a slip" : "a letter slipped in";
            fault(line, "counted", text, "is no count", "a whole number 0 to " + MOST_PIECES, maybe);
            return null;
        }
        return value.intValueExact();
    }

    private @Nullable Long minor(Table.Line line, String text, Numbers.Mark mark) {
        BigDecimal value = Numbers.parse(text, mark);
        int digits = MoneyDigits.of(catalog.rates().currency());
        String allowed = "an amount 0 to " + MOST_PRICE + " " + catalog.rates().currency() + " of at most " + digits
                + " decimals, without the currency's sign";
        if (value == null || value.signum() < 0 || value.compareTo(MOST_PRICE) > 0) {
            fault(line, "price", text, "is no price", allowed, "a letter or a sign slipped in");
            return null;
        }
        BigDecimal minor = value.movePointRight(digits);
        if (minor.stripTrailingZeros().scale() > 0) {
            fault(line, "price", text, "is finer than the smallest coin", allowed, "it is a price for several");
            return null;
        }
        return minor.longValueExact();
    }

    private void fault(Table.Line line, String column, String value, String problem, String allowed, String maybe) {
        faults.add(line.number(), column, value, problem, allowed, maybe);
    }

    private static int index(Table table, List<String> names) {
        for (String name : names) {
            for (int i = 0; i < table.header().size(); i++) {
                if (table.header().get(i).toLowerCase(Locale.ROOT).equals(name)) {
                    return i;
                }
            }
        }
        return -1;
    }

    private static Table workbook(String name, Path file) throws IOException, Table.Unreadable {
        String problem = WorkbookCheck.problem(file);
        if (problem != null) {
            throw unreadable(name, problem, null);
        }
        List<Table.Line> lines = new ArrayList<>();
        try (InputStream in = Files.newInputStream(file);
                ReadableWorkbook workbook = new ReadableWorkbook(in);
                Stream<Row> rows = workbook.getFirstSheet().openStream()) {
            Iterator<Row> each = rows.iterator();
            while (each.hasNext()) {
                keep(each.next(), lines);
                if (lines.size() > Limits.ROWS) {
                    throw unreadable(name, "has more than " + Limits.ROWS + " rows", null);
                }
            }
        } catch (RuntimeException e) {
            // The library throws whatever it stumbles over; to the user all of it is a workbook that can't be read.
            throw unreadable(name, "can't be read as a workbook", e);
        } catch (IOException e) {
            if (Files.isReadable(file)) {
                throw unreadable(name, "can't be read as a workbook", e);
            }
            throw e;
        }
        if (lines.isEmpty()) {
            throw unreadable(name, "has nothing on its first sheet", null);
        }
        Table.Line head = lines.get(0);
        return new Table(head.cells(), head.number(), lines.subList(1, lines.size()), ',');
    }

    private static void keep(Row row, List<Table.Line> lines) {
        List<String> cells = new ArrayList<>();
        for (int i = 0; i < Math.min(row.getCellCount(), Limits.COLUMNS); i++) {
            cells.add(text(row.getCell(i)));
        }
        if (!cells.stream().allMatch(String::isEmpty)) {
            lines.add(new Table.Line(row.getRowNum(), cells));
        }
    }

    private static Table.Unreadable unreadable(String name, String problem, @Nullable Exception cause) {
        Table.Unreadable broken = new Table.Unreadable(new Fault(
                name,
                0,
                "",
                "",
                problem,
                "an XLSX workbook whose first sheet starts with column names, or a CSV file",
                "it was saved in another format: save it as CSV"));
        if (cause != null) {
            broken.initCause(cause);
        }
        return broken;
    }

    private static String text(@Nullable Cell cell) {
        if (cell == null) {
            return "";
        }
        if (cell.getType() == CellType.NUMBER) {
            BigDecimal number = cell.asNumber().stripTrailingZeros();
            boolean plain = Math.abs((long) number.scale()) <= Limits.CELL && number.precision() <= Limits.CELL;
            return plain ? number.toPlainString() : number.toString();
        }
        String raw = cell.getType() == CellType.STRING ? cell.asString() : cell.getRawValue();
        String text = raw == null ? "" : raw.replace('\u00a0', ' ').strip();
        return text.length() > Limits.CELL ? text.substring(0, Limits.CELL) : text;
    }
}
