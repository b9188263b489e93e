package withy.catalog;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The columns of a catalogue folder as a page to read, made from the same sheets the reader uses. */
public final class ColumnGuide {
    private ColumnGuide() {}

    /** The page, in Markdown. */
    public static String text() {
        StringBuilder page = new StringBuilder();
        page.append("""
                # Columns of a catalogue folder

                A catalogue is a folder with `rates.json` and one CSV file a part kind. The first row names the columns, in any order; columns that
                are not listed here are left alone. Comma, semicolon or tab between cells; decimal point or comma; UTF-8, UTF-16 with a byte order
                mark or Windows-1252; a column may be written in another unit by changing the end of its name (`length_in`, `weight_oz`,
                `line_max_lb`, `tube_64ths`). Lists use `|` between values. *Needed* columns must have a value in each row.

                """);
        page.append("Units: lengths ").append(units("length_mm"));
        page.append("; masses ").append(units("weight_g"));
        page.append("; line and lift ratings ").append(units("lift_kg")).append(".\n\n");
        page.append(RatesGuide.text());
        page.append("## Every file\n\nLimits of `weight_g` and `measured_g` differ by kind.\n\n");
        rows(page, FactColumns.of(PartKind.BLANK));
        for (PartKind kind : PartKind.values()) {
            page.append("\n## ").append(kind.fileName()).append("\n\n");
            WeightRange weight = WeightRange.of(kind);
            page.append("One row for each ").append(kind.word()).append("; weight ");
            page.append(Numbers.plain(weight.least())).append(" to ").append(Numbers.plain(weight.most()));
            page.append(" g.\n\n");
            rows(page, Sheet.of(kind).own());
        }
        return page.toString();
    }

    private static void rows(StringBuilder page, List<? extends Column<?>> columns) {
        page.append("| column | needed | allowed | what |\n|--|--|--|--|\n");
        for (Column<?> column : columns) {
            page.append("| `").append(column.name()).append("` | ").append(column.needed() ? "yes" : "");
            page.append(" | ").append(column.allowed().replace("|", "\\|"));
            page.append(" | ").append(column.about().replace("|", "\\|")).append(" |\n");
        }
    }

    private static String units(String name) {
        List<Column<?>> all = new ArrayList<>(FactColumns.of(PartKind.BLANK));
        all.addAll(BlankSheet.BLANKS.own());
        for (Column<?> column : all) {
            if (column.name().equals(name)) {
                Map<String, BigDecimal> units = CellUnit.unitsOf(column);
                return "`" + String.join("`, `", units.keySet()) + "`";
            }
        }
        throw new IllegalArgumentException("no column " + name);
    }
}
