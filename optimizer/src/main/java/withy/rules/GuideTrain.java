package withy.rules;

import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.RodType;
import withy.catalog.TipTop;
import withy.machine.LineOnLayout;
import withy.rod.GuidePlan;
import withy.rod.LineOffSpool;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * The guides are enough for the rod, evenly spaced, never grow toward the tip, take the line off the spool and step down without a jump, and
 * share one frame finish and ring material, the tip-top included. Where guides stand clear of a joint and a gap outgrows the usual, that is warned of.
 *
 * <p>Enough is the usual count of the rod's type and length or, where the brief says so, as many as keep the line off the blank under the working
 * load and at a tip drop of a third, turning it at its sharpest guide no more (to a tenth) than the usual count does in that drop.
 *
 * <p>Reducers are guides 2 and 3. The tip-top's ring may be up to {@value #TIP_SIZES} sizes larger than the last guide's. Handbook, rule 14; common
 * practice.
 */
final class GuideTrain implements Rule {
    /** Least stripper ring, of the spool's lip. */
    static final double STRIPPER_SHARE = 0.3;

    /** Stripper rings below this are warned of. */
    static final double STRIPPER_SMALL = 0.35;

    /** Least stripper ring size of a casting rod (trade table: 8 to 12; common practice). */
    static final double CASTING_STRIPPER = 8;

    /** Least reducer ring, of the one before. */
    static final double REDUCER_SHARE = 0.4;

    static final int TIP_SIZES = 2;

    /** Sharpest turn of the line in a guide, of that with the usual count: so much is taken for the same. ASSUMED. */
    static final double MOST_TURN = 1.1;

    /**
     * Gap between guides, of the next one toward the tip: more is warned of. Spaces grow by 1.25 at most (trade table; common practice); only where a
     * guide keeps clear of a joint does a gap outgrow that, on every fourth two-piece layout by a little. ASSUMED: half as long again is worth a look.
     */
    static final double MOST_GROWTH = 1.5;

    private static final int LAST_REDUCER = 3;

    @Override
    public String code() {
        return "guide-train";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (!(part instanceof Guide guide)) {
            return;
        }
        if (brief.rodType() == RodType.CASTING) {
            bench.holds("high-frame", !guide.highFrame(), guide.id());
        } else {
            bench.notApplicable("high-frame");
        }
    }

    @Override
    public void onLayout(Setting setting, Bench bench) {
        String blankId = setting.blank().id();
        int fewest = GuidePlan.fewestGuides(
                setting.brief().rodType(), setting.blank().lengthMm());
        bench.holds("spacing", setting.spaced(), blankId);
        bench.warnAbove("growth", setting.steepestGrowth(), MOST_GROWTH, Unit.RATIO, blankId);
        if (setting.brief().guidesByClearance()) {
            bench.notApplicable("count");
            if (!bench.decided()) {
                clearance(setting, fewest, bench);
            }
        } else {
            bench.atLeast("count", setting.guideCount(), fewest, Unit.COUNT, blankId);
            bench.notApplicable("clearance");
            bench.notApplicable("turn");
            bench.notApplicable("spare");
        }
    }

    private static void clearance(Setting setting, int usual, Bench bench) {
        String blankId = setting.blank().id();
        LineOnLayout line = LineOnLayout.of(setting);
        if (!(line instanceof LineOnLayout.Runs runs)) {
            bench.unknown("clearance", 0, Unit.MM, blankId);
            bench.notApplicable("turn");
            bench.notApplicable("spare");
            return;
        }
        bench.atLeast("clearance", runs.leastGapMm(), 0, Unit.MM, blankId);
        if (setting.guideCount() < usual) {
            bench.atMost("turn", LineOnLayout.sharper(setting, usual), MOST_TURN, Unit.RATIO, blankId);
        } else {
            bench.notApplicable("turn");
        }
        bench.warnAbove("spare", setting.guideCount(), asGood(setting, usual), Unit.COUNT, blankId);
    }

    /** Fewest guides, one less at a time, that are as good as these. */
    private static int asGood(Setting setting, int usual) {
        int count = setting.guideCount();
        for (int fewer = count - 1; fewer >= GuidePlan.LEAST_GUIDES; fewer--) {
            Setting with = setting.withGuides(fewer);
            boolean good = with.spaced()
                    && LineOnLayout.of(with) instanceof LineOnLayout.Runs runs
                    && Unit.MM.quantise(runs.leastGapMm()) >= 0
                    && (fewer >= usual
                            || Unit.RATIO.quantise(LineOnLayout.sharper(with, usual))
                                    <= Unit.RATIO.quantise(MOST_TURN));
            if (!good) {
                break;
            }
            count = fewer;
        }
        return count;
    }

    @Override
    public void onPart(Setting setting, Placed placed, Bench bench) {
        if (!(placed.part() instanceof Guide guide)) {
            return;
        }
        if (placed.station().number() == 1) {
            stripper(setting, guide, bench);
        }
    }

    @Override
    public void onGuides(Setting setting, Guide rear, int number, Guide front, Bench bench) {
        bench.atMost("ring-order", front.ringSize(), rear.ringSize(), Unit.RING_SIZE, front.id(), rear.id());
        if (number < LAST_REDUCER) {
            double share = front.ringSize() / rear.ringSize();
            bench.atLeast("reducer", share, REDUCER_SHARE, Unit.RATIO, front.id(), rear.id());
        } else {
            bench.notApplicable("reducer");
        }
        bench.holds("frame-finish", front.frameFinish().equals(rear.frameFinish()), front.id(), rear.id());
        bench.holds("ring-material", front.ringMaterial() == rear.ringMaterial(), front.id(), rear.id());
    }

    @Override
    public void onTip(Setting setting, Guide last, TipTop tip, Bench bench) {
        int sizes = RingSizes.between(last.ringSize(), tip.ringSize());
        bench.atMost("tip-ring", sizes, TIP_SIZES, Unit.COUNT, tip.id(), last.id());
        bench.holds("tip-finish", tip.frameFinish().equals(last.frameFinish()), tip.id(), last.id());
        bench.holds("tip-ring-material", tip.ringMaterial() == last.ringMaterial(), tip.id(), last.id());
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        int filled = 0;
        for (int number = 1; number <= rod.setting().guideCount(); number++) {
            filled += rod.build().partAt(Station.guide(number)) != null ? 1 : 0;
        }
        bench.atLeast("filled", filled, rod.setting().guideCount(), Unit.COUNT, "");
        bench.holds("thread", rod.build().partAt(Station.THREAD) != null, "");
        bench.holds("finish", rod.build().partAt(Station.FINISH) != null, "");
    }

    private static void stripper(Setting setting, Guide guide, Bench bench) {
        Brief brief = setting.brief();
        if (!brief.rodType().spinningReel()) {
            bench.atLeast("casting-stripper", guide.ringSize(), CASTING_STRIPPER, Unit.RING_SIZE, guide.id());
            bench.notApplicable("stripper-ring");
            bench.notApplicable("stripper-small");
            bench.notApplicable("stripper-height");
            return;
        }
        bench.notApplicable("casting-stripper");
        double share = guide.ringIdMm() / brief.reel().lipDiameterMm();
        bench.atLeast("stripper-ring", share, STRIPPER_SHARE, Unit.RATIO, guide.id());
        bench.warnBelow("stripper-small", share, STRIPPER_SMALL, Unit.RATIO, guide.id());
        double height = setting.odAt(setting.guideMm(1)) / 2 + guide.heightMm();
        double off = Math.abs(height - LineOffSpool.heightMm(setting));
        bench.warnAbove("stripper-height", off, LineOffSpool.WITHIN_MM, Unit.MM, guide.id());
    }
}
