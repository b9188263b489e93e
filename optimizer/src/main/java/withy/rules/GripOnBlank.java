package withy.rules;

import withy.catalog.Grip;
import withy.rod.GripFit;
import withy.rod.Placed;
import withy.rod.Setting;

/**
 * A grip is reamed to the blank no wider than it allows and keeps a wall of {@value #RIGID_WALL_MM} mm (foams {@value #FOAM_WALL_MM} mm) at its
 * thinnest place; a bore that is looser than glue fills may be packed with tape rings up to {@value #TAPE_GAP_MM} mm.
 *
 * <pre>
 *   thin wall  __________   bores: rear = blank + 0.2, front = blank + 0.2
 *             /__________\  foam: 0.85–1.0 of the blank, stretched over it
 *   ==========blank========
 * </pre>
 */
final class GripOnBlank implements Rule {
    /** Least wall of cork, wood, carbon, mm (handbook, rule 10). */
    static final double RIGID_WALL_MM = 4;

    /** Least wall of EVA and other foams, mm (handbook, rule 10). */
    static final double FOAM_WALL_MM = 3;

    /** Widest radial gap tape rings fill under a grip, mm (trade table: 0.2–0.75). */
    static final double TAPE_GAP_MM = 0.75;

    @Override
    public String code() {
        return "grip-on-blank";
    }

    @Override
    public void onPart(Setting setting, Placed placed, Bench bench) {
        if (!(placed.part() instanceof Grip grip)) {
            return;
        }
        if (placed.lengthMm() <= 0) {
            bench.notApplicable("ream");
            bench.notApplicable("wall");
            bench.notApplicable("loose");
            return;
        }
        GripFit fit = GripFit.of(grip, setting.profile(), placed.fromMm(), placed.lengthMm());
        bench.atMost("ream", Math.max(fit.boreRearMm(), fit.boreFrontMm()), grip.reamMaxMm(), Unit.MM, grip.id());
        double least = GripFit.stretches(grip) ? FOAM_WALL_MM : RIGID_WALL_MM;
        bench.atLeast("wall", wallMm(grip, fit), least, Unit.MM, grip.id());
        bench.atMost("loose", fit.tapeGapMm(), TAPE_GAP_MM, Unit.MM, grip.id());
    }

    private static double wallMm(Grip grip, GripFit fit) {
        double rear = grip.rearOdMm() - fit.boreRearMm();
        double front = grip.frontOdMm() - fit.boreFrontMm();
        double middle = grip.midOdMm() - (fit.boreRearMm() + fit.boreFrontMm()) / 2;
        return Math.min(middle, Math.min(rear, front)) / 2;
    }
}
