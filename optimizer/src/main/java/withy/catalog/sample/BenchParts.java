package withy.catalog.sample;

import withy.catalog.Adhesive;
import withy.catalog.Arbor;
import withy.catalog.Decal;
import withy.catalog.Finish;
import withy.catalog.Keeper;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.WrapThread;
import withy.catalog.sample.DesignTable.Design;

/** Small parts and consumables from their designs; what the columns a to d mean depends on the kind. */
final class BenchParts {
    /** Share of a thread's round section that is fibre. ASSUMED. */
    private static final double PACKING = 0.9;

    private BenchParts() {}

    static Part part(Design row) {
        return switch (row.text("kind")) {
            case "arbor" -> arbor(row);
            case "keeper" ->
                new Keeper(
                        draft(row)
                                .weight(row.number("weight"), 0.01, 8)
                                .supplied(row, 12, 7)
                                .facts(),
                        row.whole("a"),
                        row.number("b"));
            case "thread" -> thread(row);
            case "finish" ->
                new Finish(
                        draft(row)
                                .weight(row.number("a") * row.number("b"), 1, 2)
                                .supplied(row, 2, 7)
                                .facts(),
                        row.number("a"),
                        row.number("b"),
                        row.number("c"),
                        row.number("d"),
                        30,
                        12,
                        120);
            case "adhesive" ->
                new Adhesive(
                        draft(row)
                                .weight(row.number("a") * row.number("b"), 1, 2)
                                .supplied(row, 2, 7)
                                .facts(),
                        row.number("a"),
                        row.number("b"),
                        row.number("c"),
                        row.number("d"),
                        40,
                        16);
            case "decal" ->
                new Decal(
                        draft(row)
                                .weight(row.number("weight"), 0.01, 20)
                                .supplied(row, 20, 7)
                                .facts(),
                        row.number("a"),
                        row.number("b"));
            default -> throw new IllegalArgumentException("no small part is a " + row.text("kind"));
        };
    }

    private static Part arbor(Design row) {
        double grams = Shapes.annulus(row.number("a"), row.number("b"), row.number("c"))
                * Shapes.density(row.word("material", Material.class));
        return new Arbor(
                draft(row).weight(grams, 0.01, 10).supplied(row, 8, 7).facts(),
                row.number("a"),
                row.number("b"),
                row.number("c"),
                row.number("d"));
    }

    private static Part thread(Design row) {
        double diameter = row.number("b");
        double metres = row.number("c");
        // tex is g/km: section mm² × 10⁶ mm/km × g/mm³.
        double tex = Shapes.to(
                Shapes.annulus(diameter, 0, 1_000_000) * Shapes.density(row.word("material", Material.class)) * PACKING,
                0.1);
        return new WrapThread(
                draft(row)
                        .weight(tex * metres / 1000, 0.01, 4)
                        .supplied(row, 4, 5)
                        .facts(),
                row.text("a"),
                diameter,
                tex,
                metres,
                row.flag("d"));
    }

    private static Draft draft(Design row) {
        return Draft.of(row.text("maker"), row.text("model"), row.word("material", Material.class))
                .price(row.number("price_eur"))
                .bin("shelf 1")
                .look(row.colour(), row.gloss(), row.text("set"))
                .classes(row.whole("durability"), row.whole("corrosion"));
    }
}
