package withy.app;

import java.util.Comparator;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.rod.Station;

/**
 * One build measured, priced, judged and compared: an entry of {@code builds}.
 *
 * @param rank 1 is the best for the brief's priorities; 0 for a build of the builder's own
 * @param name a few words to call it by
 * @param layout master choice
 * @param parts every filled station from butt to tip, then what has no place
 * @param materials what is used by amount
 * @param labour work by operation
 * @param weight how the weight comes about
 * @param price how the price comes about; all lines add up to the last
 * @param figures what a builder reads of the rod
 * @param verdicts what each rule says
 * @param tradeOffs against each other build, all six objectives
 * @param summaries against each other build, one line
 * @param warnings what is legal but should be looked at
 * @param proof how far off it may be, or null for a build of the builder's own
 */
public record BuildSheet(
        int rank,
        String name,
        LayoutLine layout,
        List<PartLine> parts,
        List<MaterialLine> materials,
        List<LabourLine> labour,
        WeightLines weight,
        PriceLines price,
        FigureLines figures,
        List<VerdictLine> verdicts,
        List<TradeOffLine> tradeOffs,
        List<Summary> summaries,
        List<String> warnings,
        @Nullable ProofLine proof) {

    private static final Set<String> BY_AMOUNT =
            Set.of(Station.THREAD.key(), Station.FINISH.key(), Station.ADHESIVE.key());

    public BuildSheet {
        parts = List.copyOf(parts);
        materials = List.copyOf(materials);
        labour = List.copyOf(labour);
        verdicts = List.copyOf(verdicts);
        tradeOffs = List.copyOf(tradeOffs);
        summaries = List.copyOf(summaries);
        warnings = List.copyOf(warnings);
    }

    /** Parts in the order they are taken to the bench: the blank, what goes on it from the butt up, then thread, finish and adhesive. */
    public List<PartLine> atBench() {
        return atBench(parts);
    }

    static List<PartLine> atBench(List<PartLine> parts) {
        return parts.stream()
                .sorted(Comparator.comparingInt(part -> turnAtBench(part.station())))
                .toList();
    }

    private static int turnAtBench(String station) {
        if (station.equals(Station.BLANK.key())) {
            return 0;
        }
        return BY_AMOUNT.contains(station) ? 2 : 1;
    }

    /** The same compared with others, called by a name that tells it from them. */
    BuildSheet compared(String called, List<TradeOffLine> lines, List<Summary> gists) {
        return new BuildSheet(
                rank, called, layout, parts, materials, labour, weight, price, figures, verdicts, lines, gists,
                warnings, proof);
    }

    /**
     * The master choice.
     *
     * @param reelFootMm reel foot centre from the blank's butt end, mm
     * @param handle split or full
     * @param guideCount guides without the tip-top
     */
    public record LayoutLine(int reelFootMm, String handle, int guideCount) {}

    /**
     * One station's part.
     *
     * @param station where
     * @param part catalogue id
     * @param kind word for its kind
     * @param name maker and model
     * @param xMm its rear end from the blank's butt (guides, keeper: the ring), mm; null for what has no place
     * @param lengthMm its length along the blank as fitted, mm; null likewise
     * @param count pieces; 0 for what is used by amount and listed under {@code materials}
     * @param unitWeightG one piece as fitted, g
     * @param weightG count × unit, g
     * @param weighed true where a scale reading stands behind the weight
     * @param priceMinor what the shop pays for the pieces, minor units; 0 where the customer brings it
     */
    public record PartLine(
            String station,
            String part,
            String kind,
            String name,
            @Nullable Double xMm,
            @Nullable Double lengthMm,
            int count,
            double unitWeightG,
            double weightG,
            boolean weighed,
            long priceMinor) {}

    /**
     * What is used by amount.
     *
     * @param what thread, finish, adhesive, arbors or tape
     * @param part catalogue id, or null where the shop's sundries hold it
     * @param name maker and model, or a word
     * @param amount used up (finish and adhesive: mixed), in {@code unit}
     * @param unit m, ml, pieces or g
     * @param weightG what stays on the rod, g
     * @param priceMinor what it costs, minor units
     * @param ofWhich the weight by where it lies; adds up to {@code weightG}
     */
    public record MaterialLine(
            String what,
            @Nullable String part,
            String name,
            double amount,
            String unit,
            double weightG,
            long priceMinor,
            List<Place> ofWhich) {
        public MaterialLine {
            ofWhich = List.copyOf(ofWhich);
        }
    }

    /**
     * A share of a material.
     *
     * @param where guides, ferrules, tip-top, keeper, inscription, handle
     * @param weightG g
     */
    public record Place(String where, double weightG) {}

    /**
     * Work.
     *
     * @param operation what is done
     * @param times how often
     * @param minutes in all
     * @param priceMinor in all, minor units
     */
    public record LabourLine(String operation, int times, double minutes, long priceMinor) {}

    /**
     * How the weight comes about.
     *
     * @param partsG Σ of the parts, g
     * @param materialsG Σ of the materials, g
     * @param totalG finished rod without reel, g
     */
    public record WeightLines(double partsG, double materialsG, double totalG) {}

    /**
     * How the price comes about, minor units.
     *
     * @param partsMinor Σ of the parts' prices
     * @param materialsMinor Σ of the materials' prices
     * @param sundriesMinor sandpaper, tape, cups, brushes
     * @param labourMinutes Σ of the labour lines, minutes
     * @param labourMinor Σ of the labour lines
     * @param marginMinor margin on all before
     * @param taxMinor tax on all before
     * @param totalMinor what the customer pays
     */
    public record PriceLines(
            long partsMinor,
            long materialsMinor,
            long sundriesMinor,
            double labourMinutes,
            long labourMinor,
            long marginMinor,
            long taxMinor,
            long totalMinor) {}

    /** Figures; meaning and unit as in {@link withy.rod.Figures}, and the objectives without a unit of their own. */
    public record FigureLines(
            double weightG,
            double weightToleranceG,
            double tipHeavyNmm,
            double balanceFromReelFootMm,
            double swingWeightKgM2,
            double balanceOutsideZoneNmm,
            double counterweightG,
            double finishedLengthMm,
            double packedLengthMm,
            double reelToButtMm,
            long priceMinor,
            String currency,
            double style,
            int durabilityMargin,
            double score) {
        /** Least moment by which a balance misses its zone that is told, N·mm: less can't be seen in the figures beside it. */
        private static final double LEAST_TOLD_NMM = 0.5;

        /** True where the balance misses the zone by so much that it can be told. */
        public boolean outside() {
            return outside(balanceOutsideZoneNmm);
        }

        /** True where weight at the butt is told that would bring the balance into the zone. */
        public boolean cured() {
            return outside() && counterweightG > 0;
        }

        static boolean outside(double nmm) {
            return nmm >= LEAST_TOLD_NMM;
        }
    }

    /**
     * What a rule says.
     *
     * @param rule the rule's code
     * @param check which of its comparisons
     * @param outcome pass, notApplicable, warning, fail or unknown
     * @param measured measured value, or null where the check has no number
     * @param limit what it is compared with, or null likewise
     * @param unit unit of both
     * @param parts ids concerned
     * @param sentence the same in words
     */
    public record VerdictLine(
            String rule,
            String check,
            String outcome,
            @Nullable Double measured,
            @Nullable Double limit,
            String unit,
            List<String> parts,
            String sentence) {
        public VerdictLine {
            parts = List.copyOf(parts);
        }
    }

    /**
     * One objective against another build.
     *
     * @param against rank of the other
     * @param objective which
     * @param difference this build less the other, in {@code unit}
     * @param unit its unit
     * @param noticeable false where it is under a step or inside the weighing tolerance
     * @param sentence the same in words
     */
    public record TradeOffLine(
            int against, String objective, double difference, String unit, boolean noticeable, String sentence) {}

    /**
     * One line against another build.
     *
     * @param against rank of the other
     * @param sentence what is gained, then what is given up
     */
    public record Summary(int against, String sentence) {}

    /**
     * How good it may be called, in steps of the score.
     *
     * @param bestPossible no legal build scores less
     * @param gap how far the build may be above it
     * @param proven true where there is no gap
     */
    public record ProofLine(double bestPossible, double gap, boolean proven) {}
}
