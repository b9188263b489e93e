package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Which checks, or none, join which rear grips to one seat: told by the parts alone, so the same on every blank. Each pair is asked of the rules once,
 * when it is first wanted. Sets of checks hold the index on the shelf plus one; 0 stands for none. Not for several threads at once.
 */
final class Joins {
    private final Shelf shelf;
    private final SeatSet set;
    private final Setting setting;
    private final Refusal refusal = new Refusal();
    private final BitSet possible = new BitSet();
    private final Map<Integer, Pairs> byGrip = new HashMap<>();

    Joins(Shelf shelf, SeatSet set) {
        this.shelf = shelf;
        this.set = set;
        this.setting = shelf.ground.anySetting();
        for (int c = 0; c <= shelf.checks.length; c++) {
            Check check = part(c);
            boolean allowed = check == null
                    ? shelf.stations.optional(Station.REAR_CHECK)
                    : shelf.stations.allows(Station.REAR_CHECK, check);
            shelf.ground.seams.behindSeat(setting, null, check, set, refusal.reset());
            possible.set(c, allowed && !refusal.refused());
        }
    }

    /** What is known of one grip: the checks asked about, and those of them that join it. */
    private record Pairs(BitSet asked, BitSet joined) {}

    /** True where no rear grip goes behind the seat. */
    boolean none() {
        for (Cut cut : shelf.rears) {
            if (some(cut)) {
                return false;
            }
        }
        return true;
    }

    /** Every check, or none, that joins a grip to the seat. */
    BitSet rings(Cut rear) {
        return through(possible, rear);
    }

    /** True where some check, or none, joins a grip to the seat. */
    boolean some(Cut rear) {
        return !rings(rear).isEmpty();
    }

    /** Those that join a grip to the seat, of these and of such as were asked about earlier. */
    BitSet through(BitSet checks, Cut rear) {
        Pairs of = byGrip.computeIfAbsent(
                rear.index(),
                any -> new Pairs(new BitSet(shelf.checks.length + 1), new BitSet(shelf.checks.length + 1)));
        for (int c = checks.nextSetBit(0); c >= 0; c = checks.nextSetBit(c + 1)) {
            if (!of.asked.get(c)) {
                of.asked.set(c);
                if (asked(c, rear)) {
                    of.joined.set(c);
                }
            }
        }
        return of.joined;
    }

    private boolean asked(int check, Cut rear) {
        if (!possible.get(check)) {
            return false;
        }
        shelf.ground.seams.behindSeat(setting, rear.grip(), part(check), set, refusal.reset());
        return !refusal.refused();
    }

    private @Nullable Check part(int check) {
        return check == 0 ? null : shelf.checks[check - 1];
    }
}
