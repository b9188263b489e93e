package withy.search;

import java.util.Set;
import withy.brief.Brief.HandleForm;
import withy.rod.BlankShape;
import withy.rod.Layout;
import withy.rod.Placed;
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

    private final Shelf shelf;

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
            return shelf.split ? some(shelf.rearMasses(shape), shelf.rears) : fills(shape);
        }
        if (station.equals(Station.BUTT_GRIP)) {
            return shelf.split && some(shelf.buttMasses(shape), shelf.butts);
        }
        if (station.equals(Station.FORE_GRIP)) {
            return !shelf.foreJoins.none() && some(shelf.foreMasses(shape), shelf.fores);
        }
        if (station.equals(Station.BUTT_CAP)) {
            return !shelf.capsOn(shape).isEmpty();
        }
        return !Stations.CHECKS.contains(station)
                || goes(station, shape, shelf.ground.firstFoot(), shelf.ground.lastFoot());
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
