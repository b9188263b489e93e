package withy.app;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.PartLine;
import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.rod.Build;
import withy.rod.Rod;

/**
 * The parts and materials of one build as a list for a spreadsheet. It holds what the shop pays: it is not for the customer.
 *
 * @param currency ISO 4217 code of the prices
 * @param lines the blank, butt to tip, then what is used by amount
 */
public record Bom(String currency, List<Line> lines) {
    public Bom {
        lines = List.copyOf(lines);
    }

    /**
     * One line.
     *
     * @param station where, or what it is used as
     * @param part catalogue id; empty where the shop's sundries hold it
     * @param name maker and model
     * @param kind word for its kind
     * @param bin where it lies, or empty
     * @param supplier who it is ordered from, or empty
     * @param amount how much, in {@code unit}
     * @param unit pieces, m, ml or g
     * @param lengthMm length along the blank as fitted, or null
     * @param weightG what it weighs on the rod
     * @param priceMinor what the shop pays, minor units
     */
    public record Line(
            String station,
            String part,
            String name,
            String kind,
            String bin,
            String supplier,
            double amount,
            String unit,
            @Nullable Double lengthMm,
            double weightG,
            long priceMinor) {}

    /** Of a build. */
    public static Bom of(Catalog catalog, Brief brief, Build choice) {
        Rod rod = Rod.measure(catalog, brief, choice);
        Costing costing = new Costing(catalog.rates());
        List<Line> lines = new ArrayList<>();
        for (PartLine part : BuildSheet.atBench(Sheets.parts(rod, costing))) {
            if (part.count() > 0) {
                lines.add(line(
                        catalog,
                        part.station(),
                        part.part(),
                        part.name(),
                        part.kind(),
                        part.count(),
                        "pieces",
                        part.lengthMm(),
                        part.weightG(),
                        part.priceMinor()));
            }
        }
        for (MaterialLine material : Materials.of(rod, costing)) {
            lines.add(line(
                    catalog,
                    material.what(),
                    material.part() == null ? "" : material.part(),
                    material.name(),
                    material.what(),
                    material.amount(),
                    material.unit(),
                    null,
                    material.weightG(),
                    material.priceMinor()));
        }
        return new Bom(catalog.rates().currency(), lines);
    }

    private static Line line(
            Catalog catalog,
            String station,
            String id,
            String name,
            String kind,
            double amount,
            String unit,
            @Nullable Double lengthMm,
            double weightG,
            long priceMinor) {
        Part part = catalog.find(id);
        return new Line(
                station,
                id,
                name,
                kind,
                part == null ? "" : part.facts().bin(),
                part == null ? "" : part.facts().supplier(),
                Sheets.rounded(amount, 3),
                unit,
                lengthMm,
                Sheets.rounded(weightG, 3),
                priceMinor);
    }
}
