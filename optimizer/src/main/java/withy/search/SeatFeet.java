package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * With the reel foot at which places some seat of a shelf may go on a blank, with the arbors that are given where some are: told by blank, seat and arbor alone.
 * The further from the butt the thinner the blank, so that each goes on in one stretch, whose ends are found by halves. Not for several threads at once.
 */
final class SeatFeet {
    /** What rules say of a seat that may be otherwise where the blank is thicker: nearer the butt. */
    private static final Set<String> TOO_THIN = Set.of("gap", "arbor-bore");

    /** The same where it is thinner, or there is more room behind: further from the butt. */
    private static final Set<String> TOO_THICK = Set.of("bore", "arbor-needless", "arbor-wall", "seat-behind-butt");

    /** What they say of it that is the same everywhere. */
    private static final String NEVER = "arbor-outer";

    private final Shelf shelf;
    private final Refusal refusal = new Refusal();
    private final Map<String, BitSet[]> known = new HashMap<>();

    SeatFeet(Shelf shelf) {
        this.shelf = shelf;
    }

    private enum Said {
        TOO_THICK,
        MAY_GO,
        TOO_THIN,
        NEVER
    }

    /** False where no seat goes on wherever the reel stands. */
    boolean some(BlankShape shape) {
        for (BitSet feet : on(shape)) {
            if (!feet.isEmpty()) {
                return true;
            }
        }
        return false;
    }

    /** Which seats may go on with the reel foot where it is in a layout, by their numbers on the shelf. */
    BitSet at(Setting setting) {
        BitSet seats = new BitSet();
        int foot = Collections.binarySearch(shelf.ground.feet, setting.footMm());
        BitSet[] feet = on(setting.shape());
        for (int s = 0; s < feet.length; s++) {
            seats.set(s, foot < 0 || feet[s].get(foot));
        }
        return seats;
    }

    /** Of each seat the numbers of the ground's places. */
    private BitSet[] on(BlankShape shape) {
        return known.computeIfAbsent(
                shape.blank().id(),
                any -> Arrays.stream(shelf.seats).map(seat -> feet(shape, seat)).toArray(BitSet[]::new));
    }

    private BitSet feet(BlankShape shape, ReelSeat seat) {
        BitSet feet = new BitSet();
        if (CheckPlaces.stepsBeyond(shape, shelf.ground.lastFoot() + seat.lengthMm())) {
            feet.set(0, shelf.ground.feet.size());
        } else if (shelf.stations.given().containsKey(Station.SEAT_ARBORS)) {
            for (Arbor arbor : shelf.arbors) {
                add(feet, shape, seat, arbor);
            }
        } else {
            add(feet, shape, seat, null);
        }
        return feet;
    }

    private void add(BitSet feet, BlankShape shape, ReelSeat seat, @Nullable Arbor arbor) {
        List<Integer> all = shelf.ground.feet;
        Setting any = shelf.ground.anySetting(shape);
        int from = 0;
        int to = all.size();
        while (from < to) { // the first that is not too thick
            int middle = (from + to) / 2;
            boolean thick = said(any, seat, arbor, all.get(middle)) == Said.TOO_THICK;
            from = thick ? middle + 1 : from;
            to = thick ? to : middle;
        }
        int first = from;
        to = all.size();
        while (from < to) { // the first beyond it that is too thin
            int middle = (from + to) / 2;
            boolean may = said(any, seat, arbor, all.get(middle)) == Said.MAY_GO;
            from = may ? middle + 1 : from;
            to = may ? to : middle;
        }
        feet.set(first, from);
    }

    private Said said(Setting any, ReelSeat seat, @Nullable Arbor arbor, int footMm) {
        SeatSet set = new SeatSet(seat, null, arbor, footMm - seat.footCentreMm());
        shelf.ground.rules.onSeat(any, set, refusal.reset());
        if (!refusal.refused()) {
            return Said.MAY_GO;
        }
        String check = refusal.check();
        if (TOO_THICK.contains(check)) {
            return Said.TOO_THICK;
        }
        return TOO_THIN.contains(check) ? Said.TOO_THIN : check.equals(NEVER) ? Said.NEVER : Said.MAY_GO;
    }
}
