package withy.search;

import java.util.BitSet;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/** Which rear grips (by {@link Cut#index}) each check, or none, joins to one seat: told by the parts alone, so the same on every blank. */
final class Joins {
    private final BitSet[] byCheck;
    private final BitSet some = new BitSet();

    private Joins(int checks) {
        this.byCheck = new BitSet[checks + 1];
    }

    static Joins of(Shelf shelf, SeatSet set) {
        Joins joins = new Joins(shelf.checks.length);
        Setting setting = shelf.ground.anySetting();
        Refusal refusal = new Refusal();
        for (int c = -1; c < shelf.checks.length; c++) {
            Check check = c < 0 ? null : shelf.checks[c];
            joins.byCheck[c + 1] = beside(shelf, setting, set, check, refusal);
            joins.some.or(joins.byCheck[c + 1]);
        }
        return joins;
    }

    private static BitSet beside(Shelf shelf, Setting setting, SeatSet set, @Nullable Check check, Refusal refusal) {
        BitSet may = new BitSet();
        boolean allowed = check == null
                ? shelf.stations.optional(Station.REAR_CHECK)
                : shelf.stations.allows(Station.REAR_CHECK, check);
        shelf.ground.seams.behindSeat(setting, null, check, set, refusal.reset());
        if (allowed && !refusal.refused()) {
            for (Cut cut : shelf.rears) {
                shelf.ground.seams.behindSeat(setting, cut.grip(), check, set, refusal.reset());
                may.set(cut.index(), !refusal.refused());
            }
        }
        return may;
    }

    /** True where no rear grip goes behind the seat. */
    boolean none() {
        return some.isEmpty();
    }

    /** True where some check, or none, joins a grip to the seat. */
    boolean some(Cut rear) {
        return some.get(rear.index());
    }

    /** True where this check of the shelf, or none for -1, joins some grip to the seat. */
    boolean through(int check) {
        return !byCheck[check + 1].isEmpty();
    }

    /** True where this check of the shelf, or none for -1, joins a grip to the seat. */
    boolean through(int check, Cut rear) {
        return byCheck[check + 1].get(rear.index());
    }
}
