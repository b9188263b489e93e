package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.Layout;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Where a shelf has one seat only: whether, on a blank, some ring or none joins it to some rear grip, all three of which go on there. Told before anything is
 * put on the blank. Not for several threads at once.
 */
final class OneSeat {
    private final Shelf shelf;
    private final Refusal refusal = new Refusal();
    private @Nullable List<Joins> ways;
    /** For each rear grip all that joins it to the seat, whatever hood goes with it: checks by index on the shelf plus one; 0 stands for none. */
    private final @Nullable BitSet[] rings;

    OneSeat(Shelf shelf) {
        this.shelf = shelf;
        this.rings = new BitSet[shelf.rears.length];
    }

    /** False where the shelf has one seat and, wherever the reel stands on a blank, nothing joins it to a rear grip that goes on there. */
    boolean mayJoin(BlankShape shape) {
        if (shelf.seats.length != 1) {
            return true;
        }
        BitSet asked = new BitSet();
        BitSet going = new BitSet();
        for (int rear = 0; rear < shelf.rears.length; rear++) {
            BitSet joining = rings(rear);
            for (int ring = joining.nextSetBit(0); ring >= 0; ring = joining.nextSetBit(ring + 1)) {
                if (ring > 0 && !asked.get(ring)) {
                    asked.set(ring);
                    going.set(ring, shelf.checkPlaces.goes(Station.REAR_CHECK, ring - 1, shape));
                }
                if ((ring == 0 || going.get(ring)) && goes(rear, ring, shape)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean goes(int rear, int ring, BlankShape shape) {
        Cut cut = shelf.rears[rear];
        if (!cut.fills()) {
            return shelf.rearMasses(shape).possible(rear);
        }
        double ahead = shelf.seats[0].footCentreMm() + (ring == 0 ? 0 : shelf.checks[ring - 1].widthMm());
        Setting any = full(shape);
        for (int foot : shelf.ground.feet) {
            Placed placed = new Placed(Station.REAR_GRIP, cut.grip(), 0, foot - ahead);
            shelf.ground.rules.onPart(any, placed, refusal.reset());
            if (foot > ahead && !refusal.refused()) {
                return true;
            }
        }
        return false;
    }

    /** Some layout with a full handle, for rules that hold wherever the reel stands. */
    private Setting full(BlankShape shape) {
        Ground ground = shelf.ground;
        Layout layout = new Layout(shape.blank().id(), ground.firstFoot(), HandleForm.FULL, 5);
        return ground.setting(shape, layout);
    }

    private BitSet rings(int rear) {
        BitSet known = rings[rear];
        if (known == null) {
            known = new BitSet();
            for (Joins joins : ways()) {
                known.or(joins.rings(shelf.rears[rear]));
            }
            rings[rear] = known;
        }
        return known;
    }

    /** One for each hood that may go with the seat, and one without. */
    private List<Joins> ways() {
        List<Joins> known = ways;
        if (known == null) {
            ReelSeat seat = shelf.seats[0];
            known = new ArrayList<>(List.of(shelf.joins(new SeatSet(seat, null, null, 0))));
            for (Hood hood : shelf.hoodsFor(seat)) {
                known.add(shelf.joins(new SeatSet(seat, hood, null, 0)));
            }
            ways = known;
        }
        return known;
    }
}
