package withy.rules;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Decal;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Keeper;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.catalog.RodType;
import withy.rod.Layout;
import withy.rod.PalmTable;
import withy.rod.Placed;
import withy.rod.Rod;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * The handle is whole, in the customer's reach, suits the palm, has every grip where it belongs and no two parts in one place, and is of one grip
 * material unless mixed is asked.
 *
 * <pre>
 *   |cap|butt grip|   bare, >= 30   |rear grip|check|==seat==|check|fore grip|check|  keeper   stripper
 *       x = 0                                          foot
 *   |<---------------- reach ------------------------->|
 * </pre>
 */
final class HandleParts implements Rule {
    private final boolean anyHand;

    HandleParts() {
        this(false);
    }

    /**
     * @param anyHand true where a barrel is good enough that suits some palm, whoever's it is
     */
    HandleParts(boolean anyHand) {
        this.anyHand = anyHand;
    }

    @Override
    public String code() {
        return "handle";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (part instanceof Blank blank) {
            wish("action-wish", brief.handle().action(), blank.action(), blank.id(), bench);
        } else if (part instanceof ReelSeat seat) {
            seat(brief, seat, bench);
        }
    }

    @Override
    public void onLayout(Setting setting, Bench bench) {
        wish("form-wish", setting.brief().handle().form(), setting.layout().form(), "", bench);
    }

    @Override
    public void onPart(Setting setting, Placed placed, Bench bench) {
        if (!(placed.part() instanceof Grip grip)) {
            return;
        }
        HandleForm form = setting.layout().form();
        bench.holds("grip-place", grip.place() == place(placed.station(), form), grip.id());
        bench.atLeast("grip-shortest", placed.lengthMm(), grip.shortestMm(), Unit.MM, grip.id());
        bench.atMost("grip-longest", placed.lengthMm(), grip.lengthMm(), Unit.MM, grip.id());
        long length = Unit.MM.quantise(placed.lengthMm());
        if (form == HandleForm.FULL && placed.station().equals(Station.REAR_GRIP)
                || length == Unit.MM.quantise(grip.lengthMm())) {
            bench.notApplicable("cut-grid");
        } else {
            bench.holds("cut-grid", length % Unit.MM.quantise(Layout.GRID_MM) == 0, grip.id());
        }
    }

    @Override
    public void onSeat(Setting setting, SeatSet set, Bench bench) {
        bench.atLeast("seat-behind-butt", set.fromMm(), 0, Unit.MM, set.seat().id());
    }

    private void seat(Brief brief, ReelSeat seat, Bench bench) {
        if (brief.rodType() == RodType.SURF_SPINNING) {
            bench.notApplicable("barrel-thin");
            bench.notApplicable("barrel-thick");
        } else {
            double barrel = seat.barrelOdMm();
            double thinnest = anyHand ? PalmTable.THINNEST_OF_ALL_MM : PalmTable.thinnestMm(brief.palmMm());
            double thickest = anyHand ? PalmTable.THICKEST_OF_ALL_MM : PalmTable.thickestMm(brief.palmMm());
            bench.atLeast("barrel-thin", barrel, thinnest, Unit.MM, seat.id());
            bench.atMost("barrel-thick", barrel, thickest, Unit.MM, seat.id());
        }
        if (brief.rodType() == RodType.CASTING) {
            wish("trigger-wish", brief.handle().trigger(), seat.trigger(), seat.id(), bench);
        } else {
            bench.notApplicable("trigger-wish");
        }
    }

    @Override
    public void onButtEnd(Setting setting, @Nullable ButtCap cap, @Nullable Grip first, Bench bench) {
        boolean closed = first != null && first.rearClosed();
        String capId = cap == null ? "" : cap.id();
        bench.holds("butt-closed", closed || cap != null, first == null ? "" : first.id());
        bench.holds("butt-once", !closed || cap == null, capId, first == null ? "" : first.id());
        double reach = setting.footMm() + (cap == null ? 0 : cap.addedMm());
        bench.atLeast("reach-shortest", reach, setting.brief().reachMinMm(), Unit.MM, capId);
        bench.atMost("reach-longest", reach, setting.brief().reachMaxMm(), Unit.MM, capId);
    }

    @Override
    public void onGrips(Setting setting, Grip rear, Grip front, Bench bench) {
        if (setting.brief().handle().mixedGrips()) {
            bench.notApplicable("one-material");
        } else {
            boolean same = rear.facts().material() == front.facts().material();
            bench.holds("one-material", same, rear.id(), front.id());
        }
    }

    @Override
    public void onForeGrip(Setting setting, SeatSet set, Grip foreGrip, boolean ringBetween, Bench bench) {
        if (foreGrip.recessFamily().isEmpty()) {
            bench.notApplicable("recess-family");
            bench.notApplicable("recess-beside");
        } else {
            boolean fits = foreGrip.recessFamily().equals(set.seat().recessFamily());
            bench.holds("recess-family", fits, foreGrip.id(), set.seat().id());
            bench.holds("recess-beside", !ringBetween, foreGrip.id(), set.seat().id());
        }
    }

    @Override
    public void onGap(Setting setting, Placed buttGrip, Placed rearGrip, Bench bench) {
        double bare = rearGrip.fromMm() - buttGrip.toMm();
        bench.atLeast(
                "bare-blank",
                bare,
                Seams.BARE_MM,
                Unit.MM,
                buttGrip.part().id(),
                rearGrip.part().id());
    }

    @Override
    public void onRod(Rod rod, Bench bench) {
        bench.holds("seat-present", rod.seat() != null, "");
        bench.holds("rear-grip-present", has(rod, Station.REAR_GRIP), "");
        boolean split = rod.setting().layout().form() == HandleForm.SPLIT;
        if (split) {
            bench.holds("butt-grip-present", has(rod, Station.BUTT_GRIP), "");
            bench.notApplicable("butt-grip-absent");
        } else {
            bench.notApplicable("butt-grip-present");
            bench.holds("butt-grip-absent", !has(rod, Station.BUTT_GRIP), "");
        }
        bench.holds("adhesive", has(rod, Station.ADHESIVE), "");
        Brief.Handle wishes = rod.brief().handle();
        wish("fore-grip-wish", wishes.foreGrip(), has(rod, Station.FORE_GRIP), at(rod, Station.FORE_GRIP), bench);
        wish("keeper-wish", wishes.keeper(), has(rod, Station.KEEPER), at(rod, Station.KEEPER), bench);
        clearances(rod, bench);
    }

    /** Id of what is there, or empty. */
    private static String at(Rod rod, Station station) {
        Part part = rod.partAt(station);
        return part == null ? "" : part.id();
    }

    /** Nothing of the handle reaches under the stripper or into the first ferrule. */
    private static void clearances(Rod rod, Bench bench) {
        double front = foremostMm(rod);
        Placed stripper = rod.placed().get(Station.guide(1));
        if (stripper != null && stripper.part() instanceof Guide guide) {
            double rear = stripper.fromMm() - guide.footLengthMm();
            bench.atLeast("stripper-clear", rear - front, 0, Unit.MM, guide.id());
        } else {
            bench.notApplicable("stripper-clear");
        }
        if (rod.setting().shape().joints().isEmpty()) {
            bench.notApplicable("ferrule-clear");
        } else {
            double ferrule = rod.setting().shape().joints().get(0).fromMm();
            bench.atLeast(
                    "ferrule-clear",
                    ferrule - front,
                    0,
                    Unit.MM,
                    rod.setting().blank().id());
        }
    }

    /** Front end of the handle, keeper and inscription, mm. */
    private static double foremostMm(Rod rod) {
        double front = rod.handleFrontMm();
        Placed keeper = rod.placed().get(Station.KEEPER);
        if (keeper != null && keeper.part() instanceof Keeper part) {
            front = Math.max(front, keeper.fromMm() + part.footLengthMm());
        }
        Placed decal = rod.placed().get(Station.DECAL);
        if (decal != null && decal.part() instanceof Decal part) {
            front = Math.max(front, decal.fromMm() + part.widthMm());
        }
        return front;
    }

    private static Grip.Place place(Station station, HandleForm form) {
        if (station.equals(Station.BUTT_GRIP)) {
            return Grip.Place.BUTT;
        }
        if (station.equals(Station.FORE_GRIP)) {
            return Grip.Place.FORE;
        }
        return form == HandleForm.FULL ? Grip.Place.FULL : Grip.Place.REAR;
    }

    private static boolean has(Rod rod, Station station) {
        return rod.build().partAt(station) != null;
    }

    private static <T> void wish(String check, @Nullable Wish<T> wish, T actual, String partId, Bench bench) {
        if (wish == null || !wish.hard()) {
            bench.notApplicable(check);
        } else {
            bench.holds(check, wish.value().equals(actual), partId);
        }
    }
}
