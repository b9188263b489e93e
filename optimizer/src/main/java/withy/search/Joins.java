package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Which checks, or none, join which rear grips to a seat with one rear face: told by the faces alone, so the same on every blank. Faces that are alike are asked
 * of the rules once, when they are first wanted. Sets of checks hold the index on the shelf plus one; 0 stands for none. Not for several threads at once.
 */
final class Joins {
    private final Shelf shelf;
    private final SeatSet set;
    private final Setting setting;
    private final Refusal refusal = new Refusal();
    private final BitSet possible;
    /** By the grip's front face. */
    private final Map<Double, BitSet> joined = new HashMap<>();

    /**
     * @param set any with this rear face
     */
    Joins(Shelf shelf, SeatSet set) {
        this.shelf = shelf;
        this.set = set;
        this.setting = shelf.ground.anySetting();
        BitSet allowed = new BitSet();
        for (int c = 0; c <= shelf.checks.length; c++) {
            Check check = part(c);
            allowed.set(
                    c,
                    check == null
                            ? shelf.stations.optional(Station.REAR_CHECK)
                            : shelf.stations.allows(Station.REAR_CHECK, check));
        }
        this.possible = joining(allowed, null);
    }

    /** True where no rear grip goes behind the seat. */
    boolean none() {
        for (Cut cut : shelf.rears) {
            if (some(cut)) {
                return false;
            }
        }
        return true;
    }

    /** True where some check, or none, joins a grip to the seat. */
    boolean some(Cut rear) {
        return !rings(rear).isEmpty();
    }

    /** Every check, or none, that joins a grip to the seat. */
    BitSet rings(Cut rear) {
        return joined.computeIfAbsent(rear.grip().frontOdMm(), any -> joining(possible, rear.grip()));
    }

    /** Those of some checks that go on the seat, with a grip or without. */
    private BitSet joining(BitSet checks, @Nullable Grip rear) {
        Map<Double, Boolean> asked = new HashMap<>();
        BitSet joining = new BitSet(shelf.checks.length + 1);
        for (int c = checks.nextSetBit(0); c >= 0; c = checks.nextSetBit(c + 1)) {
            Check check = part(c);
            boolean joins = check == null
                    ? joins(null, rear)
                    : asked.computeIfAbsent(check.outerMm(), any -> joins(check, rear));
            joining.set(c, joins);
        }
        return joining;
    }

    private boolean joins(@Nullable Check check, @Nullable Grip rear) {
        shelf.ground.seams.behindSeat(setting, rear, check, set, refusal.reset());
        return !refusal.refused();
    }

    private @Nullable Check part(int check) {
        return check == 0 ? null : shelf.checks[check - 1];
    }
}
