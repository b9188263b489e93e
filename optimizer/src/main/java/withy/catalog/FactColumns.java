package withy.catalog;

import static withy.catalog.Column.mass;
import static withy.catalog.Column.text;
import static withy.catalog.Column.whole;
import static withy.catalog.Column.word;

import java.util.List;

/** Columns that the files of all kinds share. */
final class FactColumns {
    private FactColumns() {}

    static List<Column<PartFacts>> of(PartKind kind) {
        return List.of(
                new Column<>(
                        "id",
                        Column.Sort.ID,
                        true,
                        0,
                        0,
                        List.of(),
                        "unique across all files; never reused",
                        PartFacts::id),
                text("maker", "maker's name", PartFacts::maker),
                text("model", "maker's name for the part", PartFacts::model),
                new Column<>(
                        "price",
                        Column.Sort.MONEY,
                        true,
                        0,
                        10_000,
                        List.of(),
                        "what the shop pays for one piece, spool or pack, in the catalogue's currency, without tax",
                        PartFacts::priceMinor),
                Column.<PartFacts>text("currency", "ISO 4217 code; must be the catalogue's own", facts -> null)
                        .optional(),
                new Column<PartFacts>(
                        "price_date",
                        Column.Sort.DATE,
                        false,
                        0,
                        0,
                        List.of(),
                        "day the price was read",
                        PartFacts::priceDate),
                Column.<PartFacts>whole("pack_qty", 1, 1000, "pieces ordered together; 1 if empty", PartFacts::packQty)
                        .optional(),
                Column.<PartFacts>whole("stock", 0, 100_000, "free pieces on the shelf; 0 if empty", PartFacts::stock)
                        .optional(),
                Column.<PartFacts>whole(
                                "lead_days",
                                0,
                                730,
                                "days until an ordered piece arrives; empty = cannot be ordered",
                                PartFacts::leadDays)
                        .optional(),
                Column.<PartFacts>text("supplier", "who it is ordered from", PartFacts::supplier)
                        .optional(),
                Column.<PartFacts>text("bin", "where it lies", PartFacts::bin).optional(),
                mass(
                        "weight_g",
                        WeightRange.of(kind).least(),
                        WeightRange.of(kind).most(),
                        weightOf(kind),
                        PartFacts::weightG),
                Column.<PartFacts>mass(
                                "weight_tol_g",
                                0,
                                200,
                                "stated tolerance (±) of the weight; the shop's percentage for the kind if empty",
                                PartFacts::weightTolG)
                        .optional(),
                Column.<PartFacts>mass(
                                "measured_g",
                                WeightRange.of(kind).least(),
                                WeightRange.of(kind).most(),
                                "mean of the shop's own scale readings",
                                PartFacts::measuredG)
                        .optional(),
                word("material", Material.class, "what it is mainly made of", PartFacts::material),
                new Column<PartFacts>(
                        "colour_lab",
                        Column.Sort.COLOUR,
                        false,
                        -160,
                        160,
                        List.of(),
                        "visible colour (D65); empty where the part does not show",
                        PartFacts::colour),
                Column.<PartFacts, Gloss>word("gloss", Gloss.class, "surface", PartFacts::gloss)
                        .optional(),
                Column.<PartFacts>text("set_code", "colour-and-finish set it belongs to", PartFacts::setCode)
                        .optional(),
                whole("durability_class", 1, 5, "1 finesse to 5 heavy", PartFacts::durabilityClass),
                whole("corrosion_class", 1, 4, "1 fresh water only to 4 salt every day", PartFacts::corrosionClass));
    }

    private static String weightOf(PartKind kind) {
        return switch (kind) {
            case THREAD -> "weight of one spool's thread";
            case FINISH, ADHESIVE -> "weight of one pack's contents";
            default -> "catalogue weight of one piece";
        };
    }
}
