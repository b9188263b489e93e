package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Guide trains for one blank, reel and line, compared.
 *
 * @param offReelDeg angle of the line off the reel against the blank, up to the stripper, on the unbent rod; null without a tip-top
 * @param trains the rod's own first, then spaced for the bend, fewest guides first
 * @param wants what each place of the train of as many guides, spaced for the bend, asks of its guide
 * @param fewerIsAsGood whether one guide fewer, spaced for the bend, clears the blank at both loads and turns the line no more at its worst
 *     guide than the rod's own train; null where there is none to compare
 */
public record TrainSheet(
        @Nullable Double offReelDeg,
        List<Train> trains,
        List<Want> wants,
        @Nullable Boolean fewerIsAsGood) {
    public TrainSheet {
        trains = List.copyOf(trains);
        wants = List.copyOf(wants);
    }

    /**
     * One train on the rod.
     *
     * @param spacing own or bend
     * @param count guides without the tip-top
     * @param fromTipMm rings from the tip-top's ring, stripper first, mm
     * @param guidesG guides with thread and finish, g
     * @param weightG the whole rod, g
     * @param swingWeightKgM2 the whole rod, kg·m²
     * @param hertz lowest frequency, Hz, or null
     * @param workingGapMm least distance of line and blank at the working load, mm, or null; below 0 they touch
     * @param staticGapMm the same in the static test
     * @param workingTurnDeg most the line turns by in one guide at the working load, or null
     * @param staticTurnDeg the same in the static test
     * @param doubt why a figure is missing, or null
     */
    public record Train(
            String spacing,
            int count,
            List<Double> fromTipMm,
            double guidesG,
            double weightG,
            double swingWeightKgM2,
            @Nullable Double hertz,
            @Nullable Double workingGapMm,
            @Nullable Double staticGapMm,
            @Nullable Double workingTurnDeg,
            @Nullable Double staticTurnDeg,
            @Nullable String doubt) {
        public Train {
            fromTipMm = List.copyOf(fromTipMm);
        }
    }

    /**
     * What a place asks of its guide.
     *
     * @param number 1 is the stripper
     * @param fromTipMm from the tip-top's ring, mm
     * @param fromFootMm from the reel foot, mm
     * @param heightMm blank's surface to ring centre, mm; null where any height does
     * @param ringIdMinMm clear inner diameter, mm; null for a runner
     * @param ringIdMaxMm likewise
     */
    public record Want(
            int number,
            double fromTipMm,
            double fromFootMm,
            @Nullable Double heightMm,
            @Nullable Double ringIdMinMm,
            @Nullable Double ringIdMaxMm) {}
}
