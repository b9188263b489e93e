package withy.app;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What {@code bendtest} answers; its fields in this order are the published JSON.
 *
 * @param schema format of the answer
 * @param catalogHash hash of the catalogue the blank is from
 * @param blank catalogue id of the blank
 * @param name maker and model
 * @param heldMm where it was held, level, from its butt
 * @param dropFrom where drops count from: straight-line or own-droop; traced points count from where it is held: trace
 * @param readings weights and drops as measured and as the fitted blank has them; empty for a trace
 * @param points traced points scaled to the blank, each with its distance from the fitted one; empty for readings
 * @param rmsMm root mean square of all residuals
 * @param exponent p of EI = c·d^p
 * @param exponentFitted false where it was taken, not fitted: fewer than three readings
 * @param scaleNmm c of EI = c·d^p, d in mm, EI in N·mm²
 * @param droopMm how far the blank's own weight drops its tip
 * @param thirdTestG weight that drops the tip by a third of the length, held level at the butt end, counted from the straight line
 * @param actionAngleDeg how far the tip points below level then
 * @param catalogThirdTestG the catalogue's weight for the same, or null
 * @param along outer diameter and stiffness by places
 */
public record BendTestAnswer(
        int schema,
        String catalogHash,
        String blank,
        String name,
        double heldMm,
        String dropFrom,
        List<Reading> readings,
        List<Traced> points,
        double rmsMm,
        double exponent,
        boolean exponentFitted,
        double scaleNmm,
        double droopMm,
        double thirdTestG,
        double actionAngleDeg,
        @Nullable Double catalogThirdTestG,
        List<MachineSheet.StiffnessAt> along) {
    public BendTestAnswer {
        readings = List.copyOf(readings);
        points = List.copyOf(points);
        along = List.copyOf(along);
    }

    /**
     * One weight.
     *
     * @param loadG hung on the tip, g
     * @param dropMm measured
     * @param fittedMm the fitted blank's
     * @param residualMm fitted less measured
     */
    public record Reading(double loadG, double dropMm, double fittedMm, double residualMm) {}

    /**
     * One traced point.
     *
     * @param aheadMm ahead of where it is held
     * @param downMm below it
     * @param residualMm distance from the fitted blank's place
     */
    public record Traced(double aheadMm, double downMm, double residualMm) {}
}
