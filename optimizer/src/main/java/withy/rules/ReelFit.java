package withy.rules;

import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Hood;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.catalog.RodType;
import withy.catalog.SeatEnd;
import withy.rod.SeatSet;
import withy.rod.Setting;

/**
 * The seat is of the rod's kind and takes the customer's reel: foot length with {@value #FOOT_PLAY_MM} mm of play inside its range, foot
 * thickness and width inside its hoods, the moving hood at the end wished, and another hood only of the seat's own family and size.
 */
final class ReelFit implements Rule {
    /** Play a reel foot needs, mm (handbook, rule 8; common practice). */
    static final double FOOT_PLAY_MM = 1.5;

    private final boolean anyReel;

    ReelFit() {
        this(false);
    }

    /**
     * @param anyReel true where no reel's foot is looked at
     */
    ReelFit(boolean anyReel) {
        this.anyReel = anyReel;
    }

    @Override
    public String code() {
        return "reel-fit";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (!(part instanceof ReelSeat seat)) {
            return;
        }
        bench.holds("seat-kind", seat.casting() == (brief.rodType() == RodType.CASTING), seat.id());
        if (!anyReel) {
            foot(brief.reel(), seat, bench);
        }
        Brief.Wish<SeatEnd> wish = brief.handle().movingHood();
        if (wish == null || !wish.hard()) {
            bench.notApplicable("hood-end");
        } else {
            bench.holds("hood-end", seat.movingHood() == wish.value(), seat.id());
        }
    }

    private static void foot(Brief.Reel reel, ReelSeat seat, Bench bench) {
        double foot = reel.footLengthMm() + FOOT_PLAY_MM;
        bench.atLeast("foot-shortest", foot, seat.footLengthMinMm(), Unit.MM, seat.id());
        bench.atMost("foot-longest", foot, seat.footLengthMaxMm(), Unit.MM, seat.id());
        bench.atMost("foot-thickness", reel.footThicknessMm(), seat.footThicknessMaxMm(), Unit.MM, seat.id());
        bench.atMost("foot-width", reel.footWidthMm(), seat.footWidthMaxMm(), Unit.MM, seat.id());
    }

    @Override
    public void onSeat(Setting setting, SeatSet set, Bench bench) {
        ReelSeat seat = set.seat();
        Hood hood = set.hood();
        if (hood == null) {
            bench.notApplicable("hood-family");
            bench.notApplicable("hood-size");
        } else {
            bench.holds("hood-family", hood.family().equals(seat.hoodFamily()), hood.id(), seat.id());
            bench.holds("hood-size", hood.size() == seat.size(), hood.id(), seat.id());
        }
    }
}
