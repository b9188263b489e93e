package withy.app;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import withy.app.BuildSheet.FigureLines;
import withy.app.BuildSheet.LabourLine;
import withy.app.BuildSheet.MaterialLine;
import withy.app.BuildSheet.PartLine;
import withy.app.BuildSheet.PriceLines;
import withy.app.BuildSheet.ProofLine;
import withy.app.BuildSheet.VerdictLine;
import withy.app.BuildSheet.WeightLines;
import withy.brief.Brief.HandleForm;
import withy.catalog.Part;
import withy.explain.Phrases;
import withy.objectives.ObjectiveVector;
import withy.objectives.Scoring;
import withy.rod.Build;
import withy.rod.Figures;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Share;
import withy.rod.Station;
import withy.units.QuantityText;

/** Writes a measured rod down as a {@link BuildSheet}. */
final class Sheets {
    private static final double MG_PER_G = 1000;

    private Sheets() {}

    static BuildSheet of(
            int rank,
            Rod rod,
            ObjectiveVector objectives,
            long score,
            List<VerdictLine> verdicts,
            @Nullable ProofLine proof,
            QuantityText units) {
        Costing costing = new Costing(rod.setting().catalog().rates());
        List<PartLine> parts = parts(rod, costing);
        List<MaterialLine> materials = Materials.of(rod, costing);
        long sundries = costing.line(rod.setting().catalog().rates().sundriesMinor() * withy.rod.Tariff.MILLI);
        List<LabourLine> labour = costing.labour(rod);
        PriceLines price = new PriceLines(
                parts.stream().mapToLong(PartLine::priceMinor).sum(),
                materials.stream().mapToLong(MaterialLine::priceMinor).sum(),
                sundries,
                labour.stream().mapToDouble(LabourLine::minutes).sum(),
                labour.stream().mapToLong(LabourLine::priceMinor).sum(),
                costing.margin(),
                costing.tax(),
                rod.figures().priceMinor());
        return new BuildSheet(
                rank,
                name(rod),
                BuildFile.layout(rod.build()),
                parts,
                materials,
                labour,
                weight(rod),
                price,
                figures(rod, objectives, score),
                verdicts,
                List.of(),
                List.of(),
                Plausibility.of(rod, verdicts, units),
                proof);
    }

    /** Arbors are cut to fit and count as material. */
    private static WeightLines weight(Rod rod) {
        Share arbors = rod.shares().getOrDefault(Station.SEAT_ARBORS, Share.NONE);
        long parts = rod.total().partMg() - arbors.partMg();
        long all = rod.total().massMg();
        return new WeightLines(parts / MG_PER_G, (all - parts) / MG_PER_G, all / MG_PER_G);
    }

    static List<PartLine> parts(Rod rod, Costing costing) {
        Map<Station, String> all = new TreeMap<>();
        rod.build().choices().forEach((station, choice) -> all.put(station, choice.partId()));
        all.put(Station.BLANK, rod.build().layout().blankId());
        List<PartLine> lines = new ArrayList<>();
        for (Station station : all.keySet()) {
            Part part = rod.partAt(station);
            if (part != null) {
                lines.add(line(rod, station, part, costing));
            }
        }
        return lines;
    }

    private static PartLine line(Rod rod, Station station, Part part, Costing costing) {
        Placed placed = rod.placed().get(station);
        Share share = rod.shares().get(station);
        if (placed == null || share == null || station.equals(Station.SEAT_ARBORS)) {
            return line(station, part, placed, 0, 0, 0);
        }
        return line(station, part, placed, 1, share.partMg() / MG_PER_G, costing.line(share.partCostMilli()));
    }

    private static PartLine line(
            Station station, Part part, @Nullable Placed placed, int count, double weightG, long priceMinor) {
        return new PartLine(
                station.key(),
                part.id(),
                part.kind().word(),
                part.facts().name(),
                placed == null ? null : rounded(placed.fromMm(), 2),
                placed == null ? null : rounded(placed.lengthMm(), 2),
                count,
                weightG,
                weightG,
                part.facts().weighed(),
                priceMinor);
    }

    private static FigureLines figures(Rod rod, ObjectiveVector objectives, long score) {
        Figures f = rod.figures();
        return new FigureLines(
                f.weightG(),
                rounded(f.weightToleranceG(), 3),
                rounded(f.tipHeavyNmm(), 3),
                rounded(f.balanceFromReelFootMm(), 2),
                rounded(f.swingWeightKgM2(), 8),
                rounded(f.balanceOutsideZoneNmm(), 3),
                rounded(f.counterweightG(), 3),
                rounded(f.finishedLengthMm(), 2),
                rounded(f.packedLengthMm(), 2),
                rounded(f.reelToButtMm(), 2),
                f.priceMinor(),
                rod.setting().catalog().rates().currency(),
                objectives.styleCenti() / 100.0,
                (int) objectives.durabilityClasses(),
                rounded(Scoring.steps(score), 6));
    }

    /** Blank, handle and grip in a few words. */
    static String name(Rod rod) {
        Build build = rod.build();
        Part grip = rod.partAt(Station.REAR_GRIP);
        String form = Phrases.of("build.handle." + (build.layout().form() == HandleForm.SPLIT ? "split" : "full"));
        String material = grip == null
                ? ""
                : " "
                        + Phrases.of("material."
                                + grip.facts()
                                        .material()
                                        .name()
                                        .toLowerCase(Locale.ROOT)
                                        .replace('_', '-'));
        return rod.setting().blank().facts().name() + ", " + form + material;
    }

    /** A figure to four decimals, or null where it is not known. */
    static @Nullable Double number(double value) {
        return Double.isNaN(value) ? null : rounded(value, 4);
    }

    static double rounded(double value, int decimals) {
        double scale = Math.pow(10, decimals);
        double rounded = Math.round(value * scale) / scale;
        return rounded == 0 ? 0 : rounded;
    }
}
