package withy.catalog.sample;

import java.time.LocalDate;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.catalog.Gloss;
import withy.catalog.Lab;
import withy.catalog.Material;
import withy.catalog.PartFacts;

/** Gathers the facts of a sample part. */
final class Draft {
    /** Prices of the sample were "read" on this day; invented. */
    private static final LocalDate PRICED = LocalDate.of(2026, 9, 1);

    private final String maker;
    private final String model;
    private final String id;
    private final Material material;
    private double weightG;
    private double tolerancePercent = 5;
    private double priceEur;
    private int stock = 2;
    private @Nullable Integer leadDays = 7;
    private String supplier = "Harbour Lane Trade";
    private String bin = "";
    private @Nullable Double measuredG;
    private @Nullable Lab colour;
    private @Nullable Gloss gloss;
    private String setCode = "";
    private int durability = 3;
    private int corrosion = 3;

    private Draft(String id, String maker, String model, Material material) {
        this.id = id;
        this.maker = maker;
        this.model = model;
        this.material = material;
    }

    static Draft of(String maker, String model, Material material) {
        return new Draft(slug(maker + " " + model), maker, model, material);
    }

    static String slug(String text) {
        return text.toLowerCase(Locale.ROOT)
                .replace("½", "h")
                .replace(".", "p")
                .replaceAll("[^a-z0-9]+", "-")
                .replaceAll("^-+|-+$", "");
    }

    Draft weight(double grams, double step, double percent) {
        weightG = Math.max(step, Shapes.to(grams, step));
        tolerancePercent = percent;
        return this;
    }

    Draft price(double eur) {
        priceEur = eur;
        return this;
    }

    Draft stock(int pieces, @Nullable Integer days) {
        stock = pieces;
        leadDays = days;
        return this;
    }

    /**
     * Stock and scale readings as a generated design says: "order" = none on the shelf, "last" = no more to be had; {@code weighed} = reading over
     * catalogue weight. Curated designs say neither.
     */
    Draft supplied(DesignTable.Design row, int pieces, int days) {
        String weighed = row.textOr("weighed", "");
        if (!weighed.isEmpty()) {
            measuredG = Math.max(0.01, Shapes.to(weightG * Double.parseDouble(weighed), 0.01));
        }
        return switch (row.textOr("supply", "")) {
            case "order" -> stock(0, days + 7);
            case "last" -> stock(pieces, null);
            default -> stock(pieces, days);
        };
    }

    Draft supplier(String name) {
        supplier = name;
        return this;
    }

    Draft bin(String place) {
        bin = place;
        return this;
    }

    Draft look(@Nullable Lab lab, @Nullable Gloss surface, String set) {
        colour = lab;
        gloss = surface;
        setCode = set;
        return this;
    }

    Draft classes(int durabilityClass, int corrosionClass) {
        durability = durabilityClass;
        corrosion = corrosionClass;
        return this;
    }

    PartFacts facts() {
        return new PartFacts(
                id,
                maker,
                model,
                Math.round(priceEur * 100),
                PRICED,
                1,
                stock,
                leadDays,
                supplier,
                bin,
                weightG,
                Shapes.to(Math.max(0.001, weightG * tolerancePercent / 100), 0.001),
                measuredG,
                material,
                colour,
                gloss,
                setCode,
                durability,
                corrosion);
    }
}
