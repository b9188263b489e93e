package withy.catalog;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Which cell of a row belongs to which column, and in which unit it is written.
 *
 * @param places by column name
 */
record Header(Map<String, Place> places) {
    /**
     * Where a column stands.
     *
     * @param index cell index
     * @param unit unit it is written in, or empty
     * @param factor size of that unit in the column's own
     */
    record Place(int index, String unit, BigDecimal factor) {}

    static Header of(Table table, Sheet<?> sheet, FaultList faults, FaultList warnings) {
        Map<String, Place> places = new LinkedHashMap<>();
        List<String> unknown = new ArrayList<>();
        for (int i = 0; i < table.header().size(); i++) {
            String written = table.header().get(i);
            String name = normal(written);
            if (name.isEmpty()) {
                continue;
            }
            boolean known = false;
            for (Column<?> column : sheet.columns()) {
                Place place = place(column, name, i);
                if (place != null) {
                    known = true;
                    if (places.putIfAbsent(column.name(), place) != null) {
                        faults.add(
                                table.headerLine(),
                                written,
                                "",
                                "stands twice (" + column.name() + ")",
                                "one column of each",
                                "delete one of the two");
                    }
                }
            }
            if (!known) {
                unknown.add(name);
            }
        }
        tellMissing(table, sheet, places, unknown, faults, warnings);
        return new Header(places);
    }

    private static void tellMissing(
            Table table,
            Sheet<?> sheet,
            Map<String, Place> places,
            List<String> unknown,
            FaultList faults,
            FaultList warnings) {
        List<String> open = new ArrayList<>();
        for (Column<?> column : sheet.columns()) {
            if (places.containsKey(column.name())) {
                continue;
            }
            open.add(column.name());
            if (column.needed()) {
                String near = NearWord.to(column.name(), unknown);
                faults.add(
                        table.headerLine(),
                        column.name(),
                        "",
                        "is missing from the row of column names",
                        column.allowed(),
                        near.isEmpty() ? "add the column: " + column.about() : "\"" + near + "\" was meant for it");
            }
        }
        for (String name : unknown) {
            String near = NearWord.to(name, open);
            if (!near.isEmpty()) {
                warnings.add(
                        table.headerLine(),
                        name,
                        "",
                        "is not a known column and was left out",
                        "",
                        "\"" + near + "\" was meant");
            }
        }
    }

    private static @Nullable Place place(Column<?> column, String name, int index) {
        Map<String, BigDecimal> units = CellUnit.unitsOf(column);
        if (units.isEmpty()) {
            return name.equals(column.name()) ? new Place(index, "", BigDecimal.ONE) : null;
        }
        for (Map.Entry<String, BigDecimal> unit : units.entrySet()) {
            if (name.equals(column.stem() + "_" + unit.getKey())) {
                return new Place(index, unit.getKey(), unit.getValue());
            }
        }
        return null;
    }

    private static String normal(String written) {
        return written.replace("\ufeff", "")
                .strip()
                .toLowerCase(Locale.ROOT)
                .replaceAll("[\\s\\-]+", "_")
                .replaceAll("_*\\(([^)]*)\\)$", "_$1");
    }
}
