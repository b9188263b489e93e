package withy.app;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * What a builder pins over the bench for one build. Places are mm from the blank's butt.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue it was made from
 * @param build the build as measured
 * @param outline what the picture to scale needs
 * @param handle handle and ends, from the butt
 * @param tipRingMm centre of the tip-top's ring, or null without a tip-top
 * @param guides stripper first
 * @param widestGap the gap between guides that outgrows the next one most, where that is more than usual, as a guide keeps clear of a joint; else null
 * @param bins where each part lies, by id; a part without a bin is left out
 * @param mixes what is mixed of two parts
 * @param lureMinG lightest lure the blank is rated for
 * @param lureMaxG heaviest
 * @param bareToleranceMm ± of the balance point without reel
 * @param balanceToleranceMm ± of the balance point with reel
 * @param made the job it is built for, or null
 * @param cautions what to mind at the bench
 */
public record BenchSheet(
        int schema,
        String catalogHash,
        BuildSheet build,
        MachineSheet.Outline outline,
        List<HandleLine> handle,
        @Nullable Double tipRingMm,
        List<GuideLine> guides,
        @Nullable WideGap widestGap,
        Map<String, String> bins,
        List<Mix> mixes,
        double lureMinG,
        double lureMaxG,
        double bareToleranceMm,
        double balanceToleranceMm,
        @Nullable Made made,
        List<String> cautions) {
    public BenchSheet {
        handle = List.copyOf(handle);
        guides = List.copyOf(guides);
        bins = Collections.unmodifiableMap(new TreeMap<>(bins));
        mixes = List.copyOf(mixes);
        cautions = List.copyOf(cautions);
    }

    /**
     * A gap between guides that outgrows the usual.
     *
     * @param guide the guide behind it
     * @param times its length in that of the next one toward the tip
     */
    public record WideGap(int guide, double times) {}

    /**
     * One part of handle or ends.
     *
     * @param bin where it lies, or empty
     * @param fromMm its rear end
     * @param toMm its front end
     * @param soldMm its length as sold where it is cut shorter, or null
     * @param fit how it is fitted, null where nothing is to be done
     */
    public record HandleLine(
            String station,
            String part,
            String name,
            String bin,
            double fromMm,
            double toMm,
            @Nullable Double soldMm,
            @Nullable Fit fit) {}

    /**
     * How a part is fitted.
     *
     * @param how ream, stretch, tape, glue, arbors, foam, none: by the trade table of gaps
     * @param blankMm the blank at its thickest there
     * @param rearMm bore to ream to at the rear, or the arbors' inner diameter
     * @param frontMm bore to ream to at the front, or the arbors' outer diameter
     * @param gapMm gap between part and blank on each side; of checks and the tip-top, of the diameters
     * @param pieces rings of arbor or tape
     */
    public record Fit(String how, double blankMm, double rearMm, double frontMm, double gapMm, int pieces) {}

    /**
     * One guide.
     *
     * @param number 1 is the stripper
     * @param sizeMm nominal ring size
     * @param xMm ring centre
     * @param fromTipMm behind the centre of the tip-top's ring, or null without a tip-top
     * @param fromFerruleMm ahead of the nearer ferrule end (negative: behind it), or null on one piece
     * @param wrapMm covered on each foot
     * @param turns turns on each foot
     * @param underTurns turns of the underwrap on each foot; 0 without one
     */
    public record GuideLine(
            int number,
            String part,
            String name,
            String bin,
            double sizeMm,
            int feet,
            double xMm,
            @Nullable Double fromTipMm,
            @Nullable Double fromFerruleMm,
            double wrapMm,
            double turns,
            double underTurns) {}

    /**
     * What is mixed of two parts.
     *
     * @param what finish or adhesive
     * @param times mixes of equal size
     * @param resinMl of each mix
     * @param hardenerMl of each mix
     * @param potLifeMin working time, minutes
     * @param waitHours hours before the next coat; of adhesive until it carries load
     */
    public record Mix(
            String what,
            String name,
            String bin,
            int times,
            double resinParts,
            double hardenerParts,
            double resinMl,
            double hardenerMl,
            double potLifeMin,
            double waitHours) {}

    /**
     * The job a rod is built for, with what the scale said so far.
     *
     * @param job its number
     * @param name its name
     * @param wantedBy day it is wanted, or null
     * @param bags pieces promised to it, by part
     * @param waiting a sentence for each part that is still on order
     * @param bagsWeightG what the rod should weigh by the readings of these very pieces, or null where none was weighed
     * @param weightG the finished rod without reel on the scale, or null
     * @param balanceMm its balance point with reel, mm ahead of the reel foot, or null
     */
    public record Made(
            long job,
            String name,
            @Nullable String wantedBy,
            Map<String, List<Bag>> bags,
            List<String> waiting,
            @Nullable Double bagsWeightG,
            @Nullable Double weightG,
            @Nullable Double balanceMm) {
        public Made {
            bags = Collections.unmodifiableMap(new TreeMap<>(bags));
            waiting = List.copyOf(waiting);
        }
    }

    /**
     * One piece in its bag.
     *
     * @param number on the bag
     * @param weightG its last reading, or null
     */
    public record Bag(int number, @Nullable Double weightG) {}
}
