package withy.catalog.sample;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import withy.catalog.Catalog;
import withy.catalog.CatalogWriter;
import withy.catalog.Part;

/** The sample catalogues: the curated one, and generated ones of any size. */
public final class SampleCatalogs {
    /** Day the samples' stock is counted from. */
    public static final LocalDate AS_OF = LocalDate.of(2026, 10, 1);

    /** Parts in the repository's generated sample. */
    public static final int WIDE_SIZE = 1500;

    /** Its seed. */
    public static final long WIDE_SEED = 20261001L;

    private SampleCatalogs() {}

    /** The curated catalogue. */
    public static Catalog bench() {
        List<Part> parts = new ArrayList<>();
        DesignTable.rows("blank-designs.csv")
                .forEach(row -> parts.add(BlankDesign.of(row).blank(row)));
        DesignTable.rows("seat-designs.csv").forEach(row -> parts.addAll(HandleParts.seats(row)));
        DesignTable.rows("hood-designs.csv").forEach(row -> parts.addAll(HandleParts.hoods(row, hoodG(row))));
        DesignTable.rows("grip-designs.csv").forEach(row -> parts.add(HandleParts.grip(row)));
        DesignTable.rows("cap-designs.csv").forEach(row -> parts.addAll(HandleParts.caps(row)));
        DesignTable.rows("check-designs.csv").forEach(row -> parts.addAll(HandleParts.checks(row)));
        DesignTable.rows("guide-designs.csv").forEach(row -> parts.addAll(GuideParts.guides(row)));
        DesignTable.rows("guide-designs.csv").forEach(row -> parts.addAll(GuideParts.tipTops(row)));
        DesignTable.rows("small-designs.csv").forEach(row -> parts.add(BenchParts.part(row)));
        return new Catalog(SampleRates.rates(), AS_OF, "", parts);
    }

    /** Weight at size 16 of the moving hood that seats of the same family are sold with, g. */
    static double hoodG(DesignTable.Design hood) {
        return DesignTable.rows("seat-designs.csv").stream()
                .filter(seat -> seat.text("family").equals(hood.text("family")))
                .mapToDouble(seat -> seat.number("hood_g"))
                .findFirst()
                .orElseThrow();
    }

    /** The generated sample of the repository. */
    public static Catalog wide() {
        return generated(WIDE_SIZE, WIDE_SEED);
    }

    /**
     * A generated catalogue; equal size and seed give an equal catalogue.
     *
     * @param size number of parts, at least 1,000
     * @param seed any number
     */
    public static Catalog generated(int size, long seed) {
        return WideCatalog.of(size, seed);
    }

    /** Writes a sample: {@code bench FOLDER}, {@code wide FOLDER}, or {@code SIZE SEED FOLDER}. */
    public static void main(String[] args) throws IOException {
        Path folder = Path.of(args[args.length - 1]);
        CatalogWriter.write(
                switch (args[0]) {
                    case "bench" -> bench();
                    case "wide" -> wide();
                    default -> generated(Integer.parseInt(args[0]), Long.parseLong(args[1]));
                },
                folder);
    }
}
