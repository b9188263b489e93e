package withy.rules;

import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.rod.LoadBearing;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;

/**
 * Every part that carries load (blank, reel seat, hood, guides, tip-top) is of the class asked or above, and has what the class demands: a
 * double-foot stripper from class {@value #STRIPPER_CLASS}, double-foot reducers and a doubly locked hood from {@value #REDUCER_CLASS}, double
 * feet throughout and a through-blank seat at {@value #HEAVY_CLASS}.
 *
 * <p>Reducers are guides 2 and 3. Common practice. Three arbors and underwraps need no check: the rod is measured with them.
 */
final class Durability implements Rule {
    static final int STRIPPER_CLASS = 3;
    static final int REDUCER_CLASS = 4;
    static final int HEAVY_CLASS = 5;

    private static final int LAST_REDUCER = 3;

    @Override
    public String code() {
        return "durability";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (LoadBearing.is(part)) {
            bench.atLeast("class", part.facts().durabilityClass(), brief.durabilityClass(), Unit.CLASS, part.id());
        }
        if (part instanceof ReelSeat seat) {
            if (brief.durabilityClass() >= HEAVY_CLASS) {
                bench.holds("through-blank", seat.throughBlank(), seat.id());
            } else {
                bench.notApplicable("through-blank");
            }
        }
    }

    @Override
    public void onPart(Setting setting, Placed placed, Bench bench) {
        if (placed.part() instanceof Guide guide) {
            feet(setting.brief().durabilityClass(), guide, placed.station().number(), bench);
        }
    }

    @Override
    public void onSeat(Setting setting, SeatSet seat, Bench bench) {
        int asked = setting.brief().durabilityClass();
        if (asked >= REDUCER_CLASS) {
            bench.holds("double-lock", seat.doubleLock(), seat.seat().id());
        } else {
            bench.notApplicable("double-lock");
        }
    }

    private static void feet(int asked, Guide guide, int number, Bench bench) {
        boolean two = guide.feet() >= 2;
        if (number == 1) {
            ask("stripper-feet", asked >= STRIPPER_CLASS, two, guide, bench);
        } else if (number <= LAST_REDUCER) {
            ask("reducer-feet", asked >= REDUCER_CLASS, two, guide, bench);
        } else {
            ask("runner-feet", asked >= HEAVY_CLASS, two, guide, bench);
        }
    }

    private static void ask(String check, boolean asked, boolean kept, Guide guide, Bench bench) {
        if (asked) {
            bench.holds(check, kept, guide.id());
        } else {
            bench.notApplicable(check);
        }
    }
}
