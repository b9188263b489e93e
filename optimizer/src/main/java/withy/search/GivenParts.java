package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.ReelSeat;
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

    /** The same where it is too tight. */
    private static final Set<String> TIGHT = Set.of("ream", "wall");

    /** The same where it is too loose. */
    private static final Set<String> LOOSE = Set.of("loose");

    private final Shelf shelf;
    private final Map<String, @Nullable Stretch[]> fores = new HashMap<>();
    private final SeatFeet seatFeet;
    private @Nullable BitSet foreRings;
    private @Nullable BitSet rearRings;

    GivenParts(Shelf shelf) {
        this.shelf = shelf;
        this.seatFeet = new SeatFeet(shelf);
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

    /** False where there is no room for a handle with the reel foot at one place, or a check or fore grip that is given goes nowhere then. */
    boolean mayStand(Setting setting) {
        int foot = setting.footMm();
        if (!shelf.room.at(foot)) {
            return false;
        }
        for (Station station : shelf.stations.given().keySet()) {
            if (Stations.CHECKS.contains(station) && !goes(station, setting.shape(), foot, foot)
                    || station.equals(Station.FORE_GRIP) && !foreGripGoes(setting)) {
                return false;
            }
        }
        return true;
    }

    /** Of a fore grip: not loose where it lies nearest the butt, and not too tight where it lies furthest from it. */
    private boolean foreGripGoes(Setting setting) {
        double nearest = setting.footMm() + shelf.shortestFrontMm;
        double furthest = setting.footMm() + shelf.longestFrontMm + shelf.widestCheckMm;
        for (int f = 0; f < shelf.fores.length; f++) {
            Cut cut = shelf.fores[f];
            if (CheckPlaces.stepsBeyond(setting.shape(), furthest + cut.lengthMm())
                    || foreGrip(f, setting).meets(nearest, furthest)) {
                return true;
            }
        }
        return false;
    }

    /** From where to where a fore grip may lie on a blank. */
    Stretch foreGrip(int fore, Setting setting) {
        @Nullable Stretch[] of = fores.computeIfAbsent(setting.blank().id(), any -> new Stretch[shelf.fores.length]);
        Stretch known = of[fore];
        if (known == null) {
            Cut cut = shelf.fores[fore];
            known = Stretch.of(setting.shape(), cut.lengthMm(), xMm -> said(setting, cut, xMm), TIGHT, LOOSE);
            of[fore] = known;
        }
        return known;
    }

    private String said(Setting setting, Cut cut, double atMm) {
        Refusal refusal = new Refusal();
        Placed placed = new Placed(Station.FORE_GRIP, cut.grip(), atMm, cut.lengthMm());
        shelf.ground.rules.onPart(setting, placed, refusal);
        return refusal.refused() ? refusal.check() : "";
    }

    /** The seats that may go on with the reel foot where it is in a layout, by their numbers. */
    BitSet seats(Setting setting) {
        return seatFeet.at(setting);
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
            return seatFeet.some(shape);
        }
        return !Stations.CHECKS.contains(station)
                || goes(station, shape, shelf.ground.firstFoot(), shelf.ground.lastFoot());
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
        Setting full = ground.setting(shape, layout);
        for (Cut cut : shelf.rears) {
            ground.rules.onPart(full, new Placed(Station.REAR_GRIP, cut.grip(), 0, longest), refusal.reset());
            if (!refusal.refused() || !BORE.contains(refusal.check())) {
                return true;
            }
        }
        return false;
    }
}
