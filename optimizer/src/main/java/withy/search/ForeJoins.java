package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.Face;
import withy.rod.SeatSet;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Seams;

/**
 * Which fore grips of a shelf stand ahead of which seat, right at it or with a ring between, and which of them what ends the handle goes on: told by the
 * parts alone, so the same on every blank. Each is asked of the rules when it is first wanted. Not for several threads at once.
 */
final class ForeJoins {
    /** In the place of a ring: none. */
    static final int NO_RING = -1;

    private final Shelf shelf;
    private final Refusal refusal = new Refusal();
    private final Map<Front, byte[]> known = new HashMap<>();
    private final Map<Hooded, Boolean> none = new HashMap<>();
    private final BitSet[] followers;
    private double @Nullable [] ended;

    ForeJoins(Shelf shelf) {
        this.shelf = shelf;
        this.followers = new BitSet[shelf.checks.length];
    }

    /** Ids of seat and hood, empty for none. */
    private record Hooded(String seat, String hood) {
        static Hooded of(SeatSet set) {
            Hood hood = set.hood();
            return new Hooded(set.seat().id(), hood == null ? "" : hood.id());
        }
    }

    private record Front(Hooded seat, int ring) {}

    /** True where a fore grip stands ahead of a seat with a ring of the shelf, or none, between. */
    boolean goes(SeatSet set, int ring, int fore) {
        if (ring != NO_RING && !shelf.neighbours.follows(ring, fore)) {
            return false;
        }
        byte[] of = known.computeIfAbsent(new Front(Hooded.of(set), ring), any -> new byte[shelf.fores.length]);
        if (of[fore] == 0) {
            Check check = ring == NO_RING ? null : shelf.checks[ring];
            Grip grip = shelf.fores[fore].grip();
            shelf.ground.seams.aheadOfSeat(shelf.ground.anySetting(), set, check, grip, refusal.reset());
            byte said = (byte) (refusal.refused() ? -1 : 1);
            for (int f = 0; f < of.length; f++) {
                of[f] = shelf.fores[f].grip().equals(grip) ? said : of[f];
            }
        }
        return of[fore] > 0;
    }

    /** True where no fore grip of the shelf stands ahead of a seat with a rear grip behind it, whatever rings are between. */
    boolean none(SeatSet set) {
        return none.computeIfAbsent(Hooded.of(set), any -> !some(set));
    }

    /** The same of a seat with every hood it may have. */
    boolean none(ReelSeat seat) {
        boolean none = !shelf.stations.optional(Station.HOOD) || none(new SeatSet(seat, null, null, 0));
        for (Hood hood : shelf.hoodsFor(seat)) {
            none = none && none(new SeatSet(seat, hood, null, 0));
        }
        return none;
    }

    /** True where none stands ahead of any seat of the shelf. */
    boolean none() {
        return Arrays.stream(shelf.seats).allMatch(this::none);
    }

    private boolean some(SeatSet set) {
        if (shelf.stations.optional(Station.FORE_CHECK)) {
            for (int fore = 0; fore < shelf.fores.length; fore++) {
                if (goes(set, NO_RING, fore) && backed(set, fore)) {
                    return true;
                }
            }
        }
        for (int ring = 0; ring < shelf.checks.length; ring++) {
            if (shelf.stations.allows(Station.FORE_CHECK, shelf.checks[ring]) && some(set, ring)) {
                return true;
            }
        }
        return false;
    }

    private boolean some(SeatSet set, int ring) {
        BitSet after = followers[ring];
        if (after == null) {
            after = new BitSet();
            for (int fore = 0; fore < shelf.fores.length; fore++) {
                after.set(fore, shelf.neighbours.follows(ring, fore));
            }
            followers[ring] = after;
        }
        for (int fore = after.nextSetBit(0); fore >= 0; fore = after.nextSetBit(fore + 1)) {
            if (goes(set, ring, fore) && backed(set, fore)) {
                return true;
            }
        }
        return false;
    }

    /** True where some rear grip goes beside a fore grip and joins its seat. */
    private boolean backed(SeatSet set, int fore) {
        BitSet beside = shelf.neighbours.rears(fore);
        Joins joins = shelf.joins(set);
        return Arrays.stream(shelf.rears).anyMatch(rear -> beside.get(rear.index()) && joins.some(rear));
    }

    /** Lengths of the fore grips that a check which must end the handle may end, mm, each once. */
    double[] endedMm() {
        double[] lengths = ended;
        if (lengths == null) {
            lengths = Arrays.stream(shelf.fores)
                    .filter(this::mayEnd)
                    .mapToDouble(Cut::lengthMm)
                    .distinct()
                    .toArray();
            ended = lengths;
        }
        return lengths;
    }

    private boolean mayEnd(Cut fore) {
        Face front = Seams.frontOf(Station.FORE_GRIP, fore.grip());
        for (Check check : shelf.checks) {
            if (shelf.stations.allows(Station.WINDING_CHECK, check)) {
                shelf.ground.seams.frontEnd(
                        shelf.ground.anySetting(), front, fore.grip().frontFinished(), check, refusal.reset());
                if (!refusal.refused()) {
                    return true;
                }
            }
        }
        return false;
    }
}
