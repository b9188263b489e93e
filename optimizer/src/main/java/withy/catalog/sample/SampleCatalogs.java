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

    private SampleCatalogs() {}

    /** The curated catalogue. */
    public static Catalog bench() {
        List<Part> parts = new ArrayList<>();
        DesignTable.rows("blank-designs.csv")
                .forEach(row -> parts.add(BlankDesign.of(row).blank(2)));
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
    private static double hoodG(DesignTable.Design hood) {
        return DesignTable.rows("seat-designs.csv").stream()
                .filter(seat -> seat.text("family").equals(hood.text("family")))
                .mapToDouble(seat -> seat.number("hood_g"))
                .findFirst()
                .orElseThrow();
    }

    /** Writes a sample: {@code bench FOLDER}. */
    public static void main(String[] args) throws IOException {
        CatalogWriter.write(bench(), Path.of(args[1]));
    }
}
