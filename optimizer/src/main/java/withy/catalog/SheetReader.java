package withy.catalog;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads one catalogue file into parts. */
final class SheetReader {
    /**
     * A part and the line it stands on.
     *
     * @param part the part
     * @param line line of its file
     */
    record Placed(Part part, int line) {}

    private final Rates rates;
    private final FaultList faults;
    private final FaultList warnings;

    SheetReader(Rates rates, FaultList faults, FaultList warnings) {
        this.rates = rates;
        this.faults = faults;
        this.warnings = warnings;
    }

    /**
     * What was read.
     *
     * @param parts parts that are sound
     * @param header the file's columns
     */
    record Read(List<Placed> parts, Header header) {
        static final Read NOTHING = new Read(List.of(), new Header(Map.of()));
    }

    <P extends Part> Read read(Sheet<P> sheet, String text) {
        Table table;
        try {
            table = Table.of(sheet.kind().fileName(), text);
        } catch (Table.Unreadable broken) {
            faults.add(broken.fault());
            return Read.NOTHING;
        }
        Header header = Header.of(table, sheet, faults, warnings);
        if (header.places().isEmpty()) {
            return Read.NOTHING;
        }
        faults.columnsAs(header::written);
        warnings.columnsAs(header::written);
        CellReader cells =
                new CellReader(header, faults, markOf(table, sheet, header), MoneyDigits.of(rates.currency()));
        List<Column<P>> columns = sheet.columns();
        Double percent = rates.houseToleranceG().get(sheet.kind());
        double housePercent = percent == null ? 0 : percent;
        List<Placed> parts = new ArrayList<>();
        for (Table.Line line : table.rows()) {
            Map<String, Object> values = values(columns, header, cells, line);
            if (values != null) {
                P part = sheet.reader().apply(new Row(values, housePercent));
                int before = faults.size();
                PartSense.check(part, line.number(), faults, header);
                if (faults.size() == before) {
                    parts.add(new Placed(part, line.number()));
                }
            }
        }
        return new Read(parts, header);
    }

    private <P extends Part> @Nullable Map<String, Object> values(
            List<Column<P>> columns, Header header, CellReader cells, Table.Line line) {
        Map<String, Object> values = new LinkedHashMap<>();
        boolean sound = true;
        for (Column<P> column : columns) {
            Header.Place place = header.places().get(column.name());
            String text = place == null ? "" : line.cell(place.index());
            if (place == null) {
                sound &= !column.needed();
            } else if (text.isEmpty()) {
                if (column.needed()) {
                    faults.add(
                            line.number(),
                            column.name(),
                            "",
                            "is empty",
                            column.allowed(place),
                            "the row is not finished");
                    sound = false;
                }
            } else {
                Object value = cells.read(column, place, line.number(), text);
                if (value == null) {
                    sound = false;
                } else {
                    values.put(column.name(), value);
                }
            }
        }
        String currency = (String) values.get("currency");
        if (currency != null && !currency.equalsIgnoreCase(rates.currency())) {
            faults.add(
                    line.number(),
                    "currency",
                    currency,
                    "is not the catalogue's currency",
                    rates.currency() + ", as in rates.json",
                    "convert the price first");
            sound = false;
        }
        return sound ? values : null;
    }

    private static Numbers.Mark markOf(Table table, Sheet<?> sheet, Header header) {
        int commas = 0;
        int points = 0;
        for (Column<?> column : sheet.columns()) {
            Header.Place place = header.places().get(column.name());
            if (place == null || !numeric(column.sort())) {
                continue;
            }
            for (Table.Line line : table.rows()) {
                for (String item : line.cell(place.index()).split("[|:]", -1)) {
                    int evidence = Numbers.evidence(item);
                    commas += evidence > 0 ? 1 : 0;
                    points += evidence < 0 ? 1 : 0;
                }
            }
        }
        if (commas > 0 && points > 0) {
            return Numbers.Mark.UNKNOWN;
        }
        if (commas == 0 && points == 0) {
            // Spreadsheets separate cells by semicolons where the comma is taken by the decimals.
            return table.separator() == ';' ? Numbers.Mark.COMMA : Numbers.Mark.UNKNOWN;
        }
        return commas > 0 ? Numbers.Mark.COMMA : Numbers.Mark.POINT;
    }

    private static boolean numeric(Column.Sort sort) {
        return switch (sort) {
            case WHOLE, NUMBER, BARE, LENGTH, MASS, STRENGTH, LENGTHS, STATIONS, MONEY, COLOUR -> true;
            case ID, TEXT, WORD, WORDS, FLAG, DATE -> false;
        };
    }
}
