package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.function.DoublePredicate;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import withy.catalog.Grip;
import withy.catalog.ReelSeat;
import withy.rod.Station;
import withy.rules.Seams;

/**
 * Whether the parts of the handle that are given may go beside a seat on one stand, whatever hood and arbors hold it: told from where they would lie,
 * before the seat is put on. Not for several threads at once.
 */
final class BesideSeat {
    /** As much as grips may seem to overlap by rounding, mm. */
    private static final double OVERLAP_MM = 0.01;

    private final Stand stand;
    private final Shelf shelf;
    private final Stations stations;
    private final Map<Station, int[]> given = new HashMap<>();
    private final Map<String, Double> buttMm = new HashMap<>();
    private final Map<Long, Boolean> behind = new HashMap<>();
    private final Map<Long, Boolean> ahead = new HashMap<>();

    BesideSeat(Stand stand) {
        this.stand = stand;
        this.shelf = stand.shelf;
        this.stations = stand.stations;
    }

    /** False where one of them goes nowhere beside a seat with its rear end at a place, mm. */
    boolean mayStand(ReelSeat seat, double fromMm) {
        if (shelf.mustHaveForeGrip() && shelf.foreJoins.none(seat)) {
            return false;
        }
        if (stations.given().isEmpty()) {
            return true;
        }
        double toMm = fromMm + seat.lengthMm();
        return behind.computeIfAbsent(Stand.key(fromMm), any -> goesBehind(fromMm))
                && ahead.computeIfAbsent(Stand.key(toMm), any -> goesAhead(toMm))
                && (stations.optional(Station.REAR_GRIP) || reachesBack(seat, fromMm))
                && (stations.optional(Station.FORE_GRIP) || reaches(seat, toMm));
    }

    /** True where one of the rings that may lie between a seat and the rear grip, or none, brings it to where it goes on. */
    private boolean reachesBack(ReelSeat seat, double fromMm) {
        return shelf.joinsOf(seat).stream()
                .anyMatch(joins -> goes(
                        Station.REAR_GRIP,
                        r -> joins.rings(shelf.rears[r]).stream()
                                .anyMatch(ring ->
                                        ringGoes(ring - 1, fromMm) && rearGripGoes(r, fromMm - widthMm(ring - 1)))));
    }

    private boolean ringGoes(int ring, double frontMm) {
        return ring < 0 || stand.rearCheck(ring, frontMm) != null;
    }

    private double widthMm(int ring) {
        return ring < 0 ? 0 : shelf.checks[ring].widthMm();
    }

    /** True where one of the rings that may lie between a seat and the fore grip, or none, brings it to where it goes on. */
    private boolean reaches(ReelSeat seat, double toMm) {
        int none = shelf.checks.length;
        return shelf.foreJoins.between(seat).stream().anyMatch(ring -> {
            boolean goes = ring == none || stand.foreCheck(ring, toMm) != null;
            double xMm = ring == none ? toMm : toMm + shelf.checks[ring].widthMm();
            return goes && goes(Station.FORE_GRIP, f -> foreGripGoes(f, xMm));
        });
    }

    private boolean goesBehind(double fromMm) {
        return goes(Station.REAR_CHECK, c -> stand.rearCheck(c, fromMm) != null)
                && (stations.optional(Station.REAR_GRIP)
                        || beyond(
                                Station.REAR_CHECK,
                                width -> goes(Station.REAR_GRIP, r -> rearGripGoes(r, fromMm - width))));
    }

    private boolean rearGripGoes(int rear, double frontMm) {
        Cut cut = shelf.rears[rear];
        boolean room =
                !stand.split || !stand.ground.handleRule || frontMm - cut.lengthMm() >= behindMm(cut) - OVERLAP_MM;
        return room && stand.rearGrip(rear, frontMm) != null;
    }

    /** What a rear grip of a split handle leaves at least behind it: the shortest butt grip that goes on the blank and with it, cap and all, and bare blank. */
    private double behindMm(Cut rear) {
        return buttMm.computeIfAbsent(rear.grip().id(), any -> {
            BitSet beside = stand.ground.gripMatch.buttsBeside(stand.setting, rear.grip());
            for (int b : shelf.room.shortestButtsFirst()) {
                Cut butt = shelf.butts[b];
                if (beside.get(butt.index()) && stand.buttGrip(b) != null && closes(butt.grip())) {
                    return butt.lengthMm() + Seams.BARE_MM;
                }
            }
            return Double.MAX_VALUE;
        });
    }

    /** True where some cap goes behind a butt grip, or it needs none. */
    private boolean closes(Grip butt) {
        return stand.caps().stream().anyMatch(cap -> {
            stand.ground.seams.butt(stand.setting, cap.part, Station.BUTT_GRIP, butt, stand.refusal.reset());
            return !stand.refusal.refused();
        });
    }

    private boolean goesAhead(double toMm) {
        return stand.mayReach(toMm)
                && goes(Station.FORE_CHECK, c -> stand.foreCheck(c, toMm) != null)
                && (stations.optional(Station.FORE_GRIP)
                        || beyond(
                                Station.FORE_CHECK,
                                width -> goes(Station.FORE_GRIP, f -> foreGripGoes(f, toMm + width))))
                && (stations.optional(Station.WINDING_CHECK) || goes(Station.WINDING_CHECK, c -> ends(c, toMm)));
    }

    /** True where a check that ends the handle goes on ahead of a seat, by how far ring and fore grip may bring it. */
    private boolean ends(int check, double toMm) {
        Stretch on = shelf.checkPlaces.stretch(Station.WINDING_CHECK, check, stand.setting.shape());
        for (double endMm : shelf.foreJoins.endsMm()) {
            double atMm = toMm + endMm;
            if (on.has(atMm) && stand.mayReach(atMm) && stand.endCheck(check, atMm) != null) {
                return true;
            }
        }
        return false;
    }

    private boolean foreGripGoes(int fore, double xMm) {
        return stand.mayReach(xMm + shelf.fores[fore].lengthMm())
                && shelf.given.foreGrip(fore, stand.setting).has(xMm)
                && stand.foreGrip(fore, xMm) != null;
    }

    /** True where what is given at a station goes on, or nothing is given there. */
    private boolean goes(Station station, IntPredicate at) {
        return stations.optional(station)
                || Arrays.stream(given.computeIfAbsent(station, this::givenAt)).anyMatch(at);
    }

    private int[] givenAt(Station station) {
        if (station.equals(Station.REAR_GRIP)) {
            return IntStream.range(0, shelf.rears.length).toArray();
        }
        return station.equals(Station.FORE_GRIP)
                ? IntStream.range(0, shelf.fores.length).toArray()
                : shelf.checksFor(station);
    }

    /** True where it holds with some ring of a station between, or without one, by how wide that is, mm. */
    private boolean beyond(Station ring, DoublePredicate holds) {
        return Arrays.stream(shelf.checkPlaces.widthsMm(ring)).anyMatch(holds);
    }
}
