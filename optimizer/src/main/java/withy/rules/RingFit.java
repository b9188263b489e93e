package withy.rules;

import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Part;
import withy.rod.Face;
import withy.rod.Placed;
import withy.rod.Setting;

/**
 * Checks and caps fit the blank where they stand, neighbours along the handle meet within {@value #STEP_MM} mm of outer diameter or have a ring
 * between them that takes a step of at most {@value #STEP_AT_RING_MM} mm, and every edge against bare blank is finished.
 *
 * <p>Rigid rings are 0 to {@value #CHECK_PLAY_MM} mm wider than the blank at their thick end, rigid caps 0 to {@value #CAP_PLAY_MM} mm at the butt;
 * soft ones stretch. Handbook, rule 11; common practice.
 */
final class RingFit implements Rule {
    static final double CHECK_PLAY_MM = 0.5;
    static final double CAP_PLAY_MM = 1.5;

    /** Tightest soft check, of the blank. */
    static final double SOFT_CHECK = 0.75;

    /** Tightest soft cap, of the blank. */
    static final double SOFT_CAP = 0.85;

    static final double STEP_MM = 2;
    static final double STEP_AT_RING_MM = 4;

    @Override
    public String code() {
        return "ring-fit";
    }

    @Override
    public void onPart(Setting setting, Placed placed, Bench bench) {
        Part part = placed.part();
        if (part instanceof Check check) {
            check(check, setting.odAt(placed.fromMm()), bench);
        } else if (part instanceof ButtCap cap) {
            cap(cap, setting.odAt(0), bench);
        }
    }

    @Override
    public void onNeighbours(Setting setting, Face rear, Face front, Bench bench) {
        double step = Math.abs(rear.odMm() - front.odMm());
        if (rear.ring() || front.ring()) {
            bench.notApplicable("step");
            bench.atMost("step-at-ring", step, STEP_AT_RING_MM, Unit.MM, rear.partId(), front.partId());
        } else {
            bench.atMost("step", step, STEP_MM, Unit.MM, rear.partId(), front.partId());
            bench.notApplicable("step-at-ring");
        }
    }

    @Override
    public void onExposedEdge(Setting setting, Face edge, boolean finished, Bench bench) {
        bench.holds("edge", finished, edge.partId());
    }

    private static void check(Check check, double blankMm, Bench bench) {
        if (check.soft()) {
            bench.atLeast("soft-check-tight", check.innerMm() / blankMm, SOFT_CHECK, Unit.RATIO, check.id());
            bench.atMost("soft-check-loose", check.innerMm() / blankMm, 1, Unit.RATIO, check.id());
            bench.notApplicable("check-tight");
            bench.notApplicable("check-loose");
        } else {
            bench.atLeast("check-tight", check.innerMm() - blankMm, 0, Unit.MM, check.id());
            bench.atMost("check-loose", check.innerMm() - blankMm, CHECK_PLAY_MM, Unit.MM, check.id());
            bench.notApplicable("soft-check-tight");
            bench.notApplicable("soft-check-loose");
        }
    }

    private static void cap(ButtCap cap, double blankMm, Bench bench) {
        if (cap.soft()) {
            bench.atLeast("soft-cap-tight", cap.innerMm() / blankMm, SOFT_CAP, Unit.RATIO, cap.id());
            bench.atMost("soft-cap-loose", cap.innerMm() / blankMm, 1, Unit.RATIO, cap.id());
            bench.notApplicable("cap-tight");
            bench.notApplicable("cap-loose");
        } else {
            bench.atLeast("cap-tight", cap.innerMm() - blankMm, 0, Unit.MM, cap.id());
            bench.atMost("cap-loose", cap.innerMm() - blankMm, CAP_PLAY_MM, Unit.MM, cap.id());
            bench.notApplicable("soft-cap-tight");
            bench.notApplicable("soft-cap-loose");
        }
    }
}
