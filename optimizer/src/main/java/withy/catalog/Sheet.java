package withy.catalog;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * The file of one part kind: its columns, and how a row becomes a part.
 *
 * @param kind the kind
 * @param type its record
 * @param columns every column in the order they are written, the facts of all kinds first; made from those beyond {@link FactColumns}
 * @param reader builds the part from a sound row
 */
record Sheet<P extends Part>(PartKind kind, Class<P> type, List<Column<P>> columns, Function<Row, P> reader) {
    Sheet {
        columns = withFacts(kind, columns);
    }

    /** The columns beyond those of all kinds. */
    List<Column<P>> own() {
        return columns.subList(FactColumns.of(kind).size(), columns.size());
    }

    private static <P extends Part> List<Column<P>> withFacts(PartKind kind, List<Column<P>> own) {
        List<Column<P>> all = new ArrayList<>();
        for (Column<PartFacts> column : FactColumns.of(kind)) {
            all.add(new Column<>(
                    column.name(),
                    column.sort(),
                    column.needed(),
                    column.min(),
                    column.max(),
                    column.words(),
                    column.about(),
                    part -> column.value().apply(part.facts())));
        }
        all.addAll(own);
        return List.copyOf(all);
    }

    /** The sheet of a kind. */
    static Sheet<?> of(PartKind kind) {
        return switch (kind) {
            case BLANK -> BlankSheet.BLANKS;
            case REEL_SEAT -> HandleSheets.SEATS;
            case HOOD -> HandleSheets.HOODS;
            case ARBOR -> HandleSheets.ARBORS;
            case GRIP -> HandleSheets.GRIPS;
            case BUTT_CAP -> HandleSheets.CAPS;
            case CHECK -> HandleSheets.CHECKS;
            case GUIDE -> GuideSheets.GUIDES;
            case TIP_TOP -> GuideSheets.TIP_TOPS;
            case KEEPER -> GuideSheets.KEEPERS;
            case THREAD -> ConsumableSheets.THREADS;
            case FINISH -> ConsumableSheets.FINISHES;
            case ADHESIVE -> ConsumableSheets.ADHESIVES;
            case DECAL -> ConsumableSheets.DECALS;
        };
    }
}
