package withy.search;

import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.DoubleStream;
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
    /** Rings by their faces. */
    private final Alike rings;
    /** Fore grips by the rear face and the recess there. */
    private final Alike grips;

    private final Map<Front, byte[]> known = new HashMap<>();
    private final Map<Hooded, Boolean> none = new HashMap<>();
    private final Map<String, BitSet> between = new HashMap<>();
    private double @Nullable [] ended;
    private double @Nullable [] ends;

    ForeJoins(Shelf shelf) {
        this.shelf = shelf;
        this.rings = Alike.of(shelf.checks.length, c -> shelf.checks[c].outerMm());
        this.grips = Alike.of(shelf.fores.length, f -> GripFace.of(shelf.fores[f].grip()));
    }

    /** Ids of seat and hood, empty for none. */
    private record Hooded(String seat, String hood) {
        static Hooded of(SeatSet set) {
            Hood hood = set.hood();
            return new Hooded(set.seat().id(), hood == null ? "" : hood.id());
        }
    }

    /** What of a fore grip decides whether it goes on ahead of a seat. */
    private record GripFace(double rearOdMm, String recess) {
        static GripFace of(Grip grip) {
            return new GripFace(grip.rearOdMm(), grip.recessFamily());
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof GripFace that
                    && Double.compare(rearOdMm, that.rearOdMm) == 0
                    && recess.equals(that.recess);
        }

        @Override
        public int hashCode() {
            return 31 * Double.hashCode(rearOdMm) + recess.hashCode();
        }
    }

    /** All of a fore grip that what stands beside it depends upon. */
    private record Trait(GripFace rear, double lengthMm, double frontOdMm, boolean finished, BitSet beside) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Trait that
                    && Double.compare(lengthMm, that.lengthMm) == 0
                    && Double.compare(frontOdMm, that.frontOdMm) == 0
                    && finished == that.finished
                    && rear.equals(that.rear)
                    && beside.equals(that.beside);
        }

        @Override
        public int hashCode() {
            return 31
                            * (31
                                            * (31 * (31 * rear.hashCode() + Double.hashCode(lengthMm))
                                                    + Double.hashCode(frontOdMm))
                                    + ((finished) ? 1 : 0))
                    + beside.hashCode();
        }
    }

    /** All of a fore grip of the shelf that what stands beside it depends upon, by {@code equals}. */
    Object trait(int fore) {
        Cut cut = shelf.fores[fore];
        Grip grip = cut.grip();
        BitSet beside = shelf.neighbours.rears(fore);
        return new Trait(GripFace.of(grip), cut.lengthMm(), grip.frontOdMm(), grip.frontFinished(), beside);
    }

    /** What of a seat decides which fore grip goes on ahead of it, with the class of the ring between. */
    private record Front(double odMm, String recess, int ring) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Front that
                    && Double.compare(odMm, that.odMm) == 0
                    && ring == that.ring
                    && recess.equals(that.recess);
        }

        @Override
        public int hashCode() {
            return 31 * (31 * Double.hashCode(odMm) + recess.hashCode()) + ring;
        }
    }

    /** True where a fore grip stands ahead of a seat with a ring of the shelf, or none, between. */
    boolean goes(SeatSet set, int ring, int fore) {
        int between = ring == NO_RING ? NO_RING : rings.classOf()[ring];
        Front front = new Front(set.frontFaceMm(), set.seat().recessFamily(), between);
        byte[] of = known.computeIfAbsent(front, any -> new byte[grips.count()]);
        int grip = grips.classOf()[fore];
        if (of[grip] == 0) {
            Check check = ring == NO_RING ? null : shelf.checks[ring];
            shelf.ground.seams.aheadOfSeat(
                    shelf.ground.anySetting(), set, check, shelf.fores[fore].grip(), refusal.reset());
            of[grip] = (byte) (refusal.refused() ? -1 : 1);
        }
        return of[grip] > 0;
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

    /**
     * What lies between a seat, with whatever hood, and a fore grip of the shelf that may stand ahead of it: places of rings on the shelf, and the number of rings
     * for none. Each ring is asked about, so for a shelf of few fore grips.
     */
    BitSet between(ReelSeat seat) {
        return between.computeIfAbsent(seat.id(), any -> {
            BitSet all = new BitSet();
            if (shelf.stations.optional(Station.HOOD)) {
                between(new SeatSet(seat, null, null, 0), all);
            }
            shelf.hoodsFor(seat).forEach(hood -> between(new SeatSet(seat, hood, null, 0), all));
            return all;
        });
    }

    private void between(SeatSet set, BitSet to) {
        if (!none(set)) {
            to.set(shelf.checks.length, to.get(shelf.checks.length) || bare(set));
            Boolean[] asked = new Boolean[rings.count()];
            for (int ring : shelf.checksFor(Station.FORE_CHECK)) {
                int like = rings.classOf()[ring];
                if (asked[like] == null) {
                    asked[like] = some(set, ring);
                }
                to.set(ring, to.get(ring) || asked[like]);
            }
        }
    }

    private boolean bare(SeatSet set) {
        return shelf.stations.optional(Station.FORE_CHECK) && some(set, NO_RING);
    }

    /** True where none stands ahead of any seat of the shelf. */
    boolean none() {
        return Arrays.stream(shelf.seats).allMatch(this::none);
    }

    private boolean some(SeatSet set) {
        if (bare(set)) {
            return true;
        }
        BitSet asked = new BitSet();
        for (int ring = 0; ring < shelf.checks.length; ring++) {
            int like = rings.classOf()[ring];
            if (!asked.get(like) && shelf.stations.allows(Station.FORE_CHECK, shelf.checks[ring])) {
                asked.set(like);
                if (some(set, ring)) {
                    return true;
                }
            }
        }
        return false;
    }

    private boolean some(SeatSet set, int ring) {
        for (int fore = 0; fore < shelf.fores.length; fore++) {
            boolean asked = fore > 0 && shelf.fores[fore].grip() == shelf.fores[fore - 1].grip();
            if (!asked && goes(set, ring, fore) && backed(set, fore)) {
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

    /** How far ahead of a seat ring and fore grip, or either, or nothing, may bring such a check, mm, each once. */
    double[] endsMm() {
        double[] known = ends;
        if (known == null) {
            DoubleStream bare = shelf.mustHaveForeGrip() ? DoubleStream.empty() : DoubleStream.of(0);
            DoubleStream grips = shelf.mayHaveForeGrip() ? Arrays.stream(endedMm()) : DoubleStream.empty();
            double[] widths = shelf.checkPlaces.widthsMm(Station.FORE_CHECK);
            known = DoubleStream.concat(bare, grips)
                    .flatMap(length -> Arrays.stream(widths).map(width -> width + length))
                    .distinct()
                    .toArray();
            ends = known;
        }
        return known;
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
