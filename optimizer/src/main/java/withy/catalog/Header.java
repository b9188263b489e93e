package withy.catalog;

import java.math.BigDecimal;
import java.math.RoundingMode;
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
     * @param written its name as the list has it
     * @param unit unit it is written in, or empty
     * @param factor size of that unit in the column's own
     */
    record Place(int index, String written, String unit, BigDecimal factor) {
        private static final int PLACES = 4;

        /** A value of the column's own unit in the list's. */
        String typed(double own) {
            return typed(own, RoundingMode.HALF_UP);
        }

        String typed(double own, RoundingMode rounding) {
            return factor.compareTo(BigDecimal.ONE) == 0
                    ? Numbers.plain(own)
                    : Numbers.plain(new BigDecimal(Numbers.plain(own))
                            .divide(factor, PLACES, rounding)
                            .doubleValue());
        }
    }

    /** A column's name as the list has it; its own where the list lacks it. */
    String written(String column) {
        Place place = places.get(column);
        return place == null ? column : place.written();
    }

    /** A value of a column's own unit in the unit the list has it in. */
    String typed(String column, double own) {
        Place place = places.get(column);
        return place == null ? Numbers.plain(own) : place.typed(own);
    }

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
                Place place = place(column, written, name, i);
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

    private static @Nullable Place place(Column<?> column, String written, String name, int index) {
        String shown = written.replace("\ufeff", "").strip();
        Map<String, BigDecimal> units = CellUnit.unitsOf(column);
        if (units.isEmpty()) {
            return name.equals(column.name()) ? new Place(index, shown, "", BigDecimal.ONE) : null;
        }
        for (Map.Entry<String, BigDecimal> unit : units.entrySet()) {
            if (name.equals(column.stem() + "_" + unit.getKey())) {
                return new Place(index, shown, unit.getKey(), unit.getValue());
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
