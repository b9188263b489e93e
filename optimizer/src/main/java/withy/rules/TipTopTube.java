package withy.rules;

import withy.catalog.TipTop;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * The tip-top's tube goes over the uncut tip with at most {@value #LOOSEST_MM} mm to spare.
 *
 * <p>{@value #SNUG_MM}–{@value #THICK_GLUE_MM} mm is best; above, thick glue, over {@value #THREAD_LAYER_MM} mm a layer of thread (warned, and said
 * on the bench sheet). Handbook, rule 12; common practice.
 */
final class TipTopTube implements Rule {
    static final double LOOSEST_MM = 0.40;
    static final double SNUG_MM = 0.02;
    static final double THICK_GLUE_MM = 0.15;
    static final double THREAD_LAYER_MM = 0.25;

    /** Least that counts as more than nothing: one step of the grid limits are compared on, mm. */
    static final double TIGHTEST_MM = 0.01;

    @Override
    public String code() {
        return "tip-top";
    }

    @Override
    public void onPart(Setting setting, Placed placed, Bench bench) {
        if (!(placed.part() instanceof TipTop tipTop)) {
            return;
        }
        double play = tipTop.tubeMm() - setting.blank().tipOdMm();
        String blankId = setting.blank().id();
        bench.atLeast("tube-tight", play, TIGHTEST_MM, Unit.MM, tipTop.id(), blankId);
        bench.atMost("tube-loose", play, LOOSEST_MM, Unit.MM, tipTop.id(), blankId);
        bench.warnBelow("snug", play, SNUG_MM, Unit.MM, tipTop.id());
        if (Unit.MM.quantise(play) > Unit.MM.quantise(THREAD_LAYER_MM)) {
            bench.notApplicable("thick-glue");
        } else {
            bench.warnAbove("thick-glue", play, THICK_GLUE_MM, Unit.MM, tipTop.id());
        }
        bench.warnAbove("thread-layer", play, THREAD_LAYER_MM, Unit.MM, tipTop.id());
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        bench.holds("present", rod.build().partAt(Station.TIP_TOP) != null, "");
    }
}
