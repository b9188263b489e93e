package withy.app;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.Brief.HandleForm;
import withy.brief.BriefContext;
import withy.brief.BriefReader;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Catalog;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.RodType;
import withy.catalog.TipTop;
import withy.rod.BlankShape;
import withy.rod.GuidePlan;
import withy.rod.Layout;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Rulebook;

/** Whether a part goes on one blank somewhere along the handle (tip-tops: at its tip), by the same rules that judge a rod. */
final class FitsBlank {
    /** The rules of fit, by code. */
    private static final Set<String> FIT = Set.of("seat-on-blank", "grip-on-blank", "ring-fit", "tip-top");

    /** Share of the blank from the butt that a handle may cover. ASSUMED. */
    private static final double HANDLE_SHARE = 0.4;

    private static final double STEP_MM = 5;

    private final Catalog catalog;
    private final Setting setting;
    private final Rulebook rules;
    private final double handleMm;
    private final Refusal refusal = new Refusal();

    FitsBlank(Catalog catalog, Blank blank) {
        this.catalog = catalog;
        RodType type = new TreeSet<>(blank.rodTypes()).first();
        String word = type == RodType.CASTING ? "casting" : type == RodType.SURF_SPINNING ? "surfSpinning" : "spinning";
        Brief plain = BriefReader.read(
                        "{\"rodType\": \"" + word + "\"}", new BriefContext(catalog.rates(), catalog.asOf()))
                .orThrow();
        int guides = GuidePlan.fewestGuides(type, blank.lengthMm());
        Layout layout = new Layout(blank.id(), 250, HandleForm.SPLIT, guides);
        this.setting = Setting.of(catalog, plain, BlankShape.of(blank), layout);
        this.rules = new Rulebook(Rulebook.standard().rules().stream()
                .filter(r -> FIT.contains(r.code()))
                .toList());
        this.handleMm = HANDLE_SHARE * blank.lengthMm();
    }

    boolean takes(Part part) {
        if (part instanceof Blank) {
            return part.id().equals(setting.blank().id());
        }
        if (part instanceof ReelSeat seat) {
            List<Arbor> arbors = catalog.all(PartKind.ARBOR, Arbor.class);
            return seatFits(seat, null) || arbors.stream().anyMatch(arbor -> seatFits(seat, arbor));
        }
        if (part instanceof Arbor arbor) {
            return catalog.all(PartKind.REEL_SEAT, ReelSeat.class).stream().anyMatch(seat -> seatFits(seat, arbor));
        }
        if (part instanceof Grip grip) {
            return somewhere(Station.REAR_GRIP, grip, grip.shortestMm());
        }
        if (part instanceof Check check) {
            return somewhere(Station.WINDING_CHECK, check, check.widthMm());
        }
        if (part instanceof ButtCap cap) {
            return fits(new Placed(Station.BUTT_CAP, cap, -cap.addedMm(), cap.addedMm()));
        }
        if (part instanceof TipTop tipTop) {
            double tip = setting.blank().lengthMm();
            return fits(new Placed(Station.TIP_TOP, tipTop, tip, tipTop.addedMm()));
        }
        return true;
    }

    private boolean somewhere(Station station, Part part, double lengthMm) {
        for (double x = 0; x + lengthMm <= handleMm; x += STEP_MM) {
            if (fits(new Placed(station, part, x, lengthMm))) {
                return true;
            }
        }
        return false;
    }

    private boolean fits(Placed placed) {
        rules.onPart(setting, placed, refusal.reset());
        return !refusal.refused();
    }

    private boolean seatFits(ReelSeat seat, @Nullable Arbor arbor) {
        for (double x = 0; x + seat.lengthMm() <= handleMm; x += STEP_MM) {
            rules.onSeat(setting, new SeatSet(seat, null, arbor, x), refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }
}
