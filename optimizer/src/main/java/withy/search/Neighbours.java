package withy.search;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.catalog.ReelSeat;
import withy.rod.Face;
import withy.rod.Station;
import withy.rules.Refusal;
import withy.rules.Seams;

/**
 * Which grips of a shelf go beside which, and what seat and rear grip are worth side by side: told by the parts alone, looked up by their places on the
 * shelf. Sets that are told alike are one object. Not for several threads at once.
 */
final class Neighbours {
    private final Shelf shelf;
    private final Ground ground;
    private final @Nullable BitSet[] butts;
    private final @Nullable BitSet[] rears;
    private final Map<ButtFace, BitSet> caps = new HashMap<>();
    private final Refusal refusal = new Refusal();
    private final Map<Object, Pairs> pairs = new HashMap<>();
    private @Nullable List<BitSet> buttSets;
    private @Nullable List<BitSet> capSets;

    Neighbours(Shelf shelf) {
        this.shelf = shelf;
        this.ground = shelf.ground;
        this.butts = new BitSet[(shelf.split ? ground.rearGrips : ground.fullGrips).size()];
        this.rears = new BitSet[shelf.fores.length];
    }

    /**
     * What a seat is worth beside rear grips, hundredths of a style point.
     *
     * @param each by the grip's index ({@link Cut#index})
     * @param most beside any rear grip of the shelf
     */
    record Pairs(long[] each, long most) {}

    /** Butt grips that go with a rear grip of a split handle, by their indexes. */
    BitSet butts(Cut rear) {
        BitSet known = butts[rear.index()];
        if (known == null) {
            known = ground.gripMatch.buttsBeside(ground.anySetting(), rear.grip());
            butts[rear.index()] = known;
        }
        return known;
    }

    /** What of a grip at the butt end a cap meets. */
    private record ButtFace(double odMm, boolean closed) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof ButtFace that && Double.compare(odMm, that.odMm) == 0 && closed == that.closed;
        }

        @Override
        public int hashCode() {
            return 31 * Double.hashCode(odMm) + ((closed) ? 1 : 0);
        }
    }

    /** Caps that go beside a grip at the butt end, as indexes into those that are open ({@link Ground#caps}); behind the last stands no cap. */
    BitSet caps(Grip grip) {
        ButtFace face = new ButtFace(grip.rearOdMm(), grip.rearClosed());
        BitSet known = caps.get(face);
        if (known == null) {
            known = capsNow(grip);
            caps.put(face, known);
        }
        return known;
    }

    private BitSet capsNow(Grip grip) {
        BitSet may = new BitSet();
        Face rear = Seams.rearOf(shelf.split ? Station.BUTT_GRIP : Station.REAR_GRIP, grip);
        for (int c = 0; c < ground.caps.size() && !(ground.handleRule && grip.rearClosed()); c++) {
            Face cap = Seams.of(ground.caps.get(c));
            ground.rules.onNeighbours(ground.anySetting(), cap, rear, refusal.reset());
            may.set(c, !refusal.refused());
        }
        boolean bare = grip.rearClosed() || !ground.handleRule;
        may.set(ground.caps.size(), shelf.stations.optional(Station.BUTT_CAP) && bare);
        return may;
    }

    /** The sets that {@link #caps} gives for the grips of the shelf that may stand at the butt end, each once. */
    List<BitSet> capSets() {
        List<BitSet> known = capSets;
        if (known == null) {
            Set<BitSet> sets = new LinkedHashSet<>();
            for (Cut last : shelf.split ? shelf.butts : shelf.rears) {
                sets.add(caps(last.grip()));
            }
            known = List.copyOf(sets);
            capSets = known;
        }
        return known;
    }

    /** The sets that {@link #butts} gives for the rear grips of the shelf, each once. */
    List<BitSet> buttSets() {
        List<BitSet> known = buttSets;
        if (known == null) {
            Map<BitSet, Boolean> seen = new IdentityHashMap<>();
            known = new ArrayList<>();
            for (Cut rear : shelf.rears) {
                if (seen.put(butts(rear), true) == null) {
                    known.add(butts(rear));
                }
            }
            buttSets = known;
        }
        return known;
    }

    /** Rear grips that go beside a fore grip of the shelf, by their indexes. */
    BitSet rears(int fore) {
        BitSet known = rears[fore];
        if (known == null) {
            known = rears(shelf.fores[fore].grip());
            rears[fore] = known;
        }
        return known;
    }

    /** The same beside a fore grip, or beside none. */
    BitSet rears(@Nullable Grip fore) {
        return ground.gripMatch.rearsBeside(ground.anySetting(), fore, shelf.split);
    }

    /** What a seat is worth beside each rear grip. */
    Pairs pairs(ReelSeat seat) {
        return pairs.computeIfAbsent(ground.style.standing(seat), any -> {
            long[] each = new long[butts.length];
            Arrays.fill(each, -1);
            long most = 0;
            for (Cut rear : shelf.rears) {
                if (each[rear.index()] < 0) {
                    each[rear.index()] = ground.style.gripAndSeat(rear.grip(), seat);
                    most = Math.max(most, each[rear.index()]);
                }
            }
            return new Pairs(each, most);
        });
    }
}
