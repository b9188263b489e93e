package withy.search;

import java.util.BitSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.ReelSeat;
import withy.rod.BlankShape;
import withy.rod.Layout;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Whether the parts of the handle that are given go on a blank at all, each by itself and wherever the reel stands: told before anything is put on the blank. Not
 * for several threads at once.
 */
final class GivenParts {
    /** What rules say of a grip's bore. */
    private static final Set<String> BORE = Set.of("ream", "wall", "loose");

    /** What rules say of an arbor nearest the butt that holds anywhere. */
    private static final Set<String> ANYWHERE = Set.of("gap", "arbor-outer", "arbor-bore");

    private final Shelf shelf;
    private @Nullable BitSet foreRings;
    private @Nullable BitSet rearRings;

    GivenParts(Shelf shelf) {
        this.shelf = shelf;
    }

    /** False where one of them, or what must stand beside it, goes nowhere on a blank, or there is no room for a handle. */
    boolean mayStand(BlankShape shape) {
        if (shelf.seats.length == 0 || shelf.rears.length == 0 || !shelf.room.somewhere()) {
            return false;
        }
        for (Station station : shelf.stations.given().keySet()) {
            if (!mayStand(station, shape)) {
                return false;
            }
        }
        return true;
    }

    /** False where there is no room for a handle with the reel foot at one place, or a check that is given goes nowhere then. */
    boolean mayStand(Setting setting) {
        int foot = setting.footMm();
        if (!shelf.room.at(foot)) {
            return false;
        }
        for (Station station : shelf.stations.given().keySet()) {
            if (Stations.CHECKS.contains(station) && !goes(station, setting.shape(), foot, foot)) {
                return false;
            }
        }
        return true;
    }

    private boolean mayStand(Station station, BlankShape shape) {
        if (station.equals(Station.REAR_GRIP)) {
            return (shelf.split ? some(shelf.rearMasses(shape), shelf.rears) : fills(shape))
                    && reachesASeatAhead(shape);
        }
        if (station.equals(Station.BUTT_GRIP)) {
            return shelf.split && some(shelf.buttMasses(shape), shelf.butts);
        }
        if (station.equals(Station.FORE_GRIP)) {
            return !shelf.foreJoins.none() && some(shelf.foreMasses(shape), shelf.fores) && reachesASeat(shape);
        }
        if (station.equals(Station.BUTT_CAP)) {
            return !shelf.capsOn(shape).isEmpty();
        }
        if (station.equals(Station.SEAT_ARBORS)) {
            return fillsASeat(shape);
        }
        return !Stations.CHECKS.contains(station)
                || goes(station, shape, shelf.ground.firstFoot(), shelf.ground.lastFoot());
    }

    /** Of an arbor: nearest the butt, where the blank is thickest, its bore is the least too wide and the gap the least; what it must fill is the same everywhere. */
    private boolean fillsASeat(BlankShape shape) {
        Ground ground = shelf.ground;
        Setting any = ground.anySetting(shape);
        Refusal refusal = new Refusal();
        for (ReelSeat seat : shelf.seats) {
            double first = Math.max(0, ground.firstFoot() - seat.footCentreMm());
            if (CheckPlaces.stepsBeyond(shape, ground.lastFoot() + seat.lengthMm())) {
                return true;
            }
            for (Arbor arbor : shelf.arbors) {
                ground.rules.onSeat(any, new SeatSet(seat, null, arbor, first), refusal.reset());
                if (!refusal.refused() || !ANYWHERE.contains(refusal.check())) {
                    return true;
                }
            }
        }
        return false;
    }

    /** Of a fore grip: with one of the rings that some seat may have between them, wherever the reel stands, or with none. */
    private boolean reachesASeat(BlankShape shape) {
        BitSet between = foreRings;
        if (between == null) {
            between = new BitSet();
            for (ReelSeat seat : shelf.seats) {
                between.or(shelf.foreJoins.between(seat));
            }
            foreRings = between;
        }
        return between.get(shelf.checks.length)
                || between.stream().anyMatch(ring -> shelf.checkPlaces.goes(Station.FORE_CHECK, ring, shape));
    }

    /** The same of a rear grip. */
    private boolean reachesASeatAhead(BlankShape shape) {
        BitSet between = rearRings;
        if (between == null) {
            between = new BitSet();
            for (ReelSeat seat : shelf.seats) {
                for (Joins joins : shelf.joinsOf(seat)) {
                    for (Cut rear : shelf.rears) {
                        between.or(joins.rings(rear));
                    }
                }
            }
            rearRings = between;
        }
        return between.get(0)
                || between.stream().anyMatch(ring -> shelf.checkPlaces.goes(Station.REAR_CHECK, ring - 1, shape));
    }

    private static boolean some(GripMasses masses, Cut[] cuts) {
        for (int i = 0; i < cuts.length; i++) {
            if (masses.possible(i)) {
                return true;
            }
        }
        return false;
    }

    private boolean goes(Station station, BlankShape shape, int firstMm, int lastMm) {
        for (int c : shelf.checksFor(station)) {
            if (shelf.checkPlaces.goes(station, c, shape, firstMm, lastMm)) {
                return true;
            }
        }
        return false;
    }

    /** Of a full grip: its bore at the butt is the same wherever it ends, and at its front end the less tight the further from the butt that is. */
    private boolean fills(BlankShape shape) {
        Ground ground = shelf.ground;
        double longest = ground.lastFoot() - shelf.shallowestMm;
        if (CheckPlaces.stepsBeyond(shape, longest)) {
            return true;
        }
        Refusal refusal = new Refusal();
        Layout layout = new Layout(shape.blank().id(), ground.firstFoot(), HandleForm.FULL, 5);
        Setting full = Setting.of(ground.catalog, ground.brief, shape, layout);
        for (Cut cut : shelf.rears) {
            ground.rules.onPart(full, new Placed(Station.REAR_GRIP, cut.grip(), 0, longest), refusal.reset());
            if (!refusal.refused() || !BORE.contains(refusal.check())) {
                return true;
            }
        }
        return false;
    }
}
