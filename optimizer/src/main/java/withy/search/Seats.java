package withy.search;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Arbor;
import withy.catalog.Hood;
import withy.catalog.Part;
import withy.catalog.ReelSeat;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/** The seats of a shelf as they come out on one stand, each worked out when first asked for. */
final class Seats {
    /** What rules say of the room between seat and blank, whatever fills it. */
    private static final Set<String> ROOM = Set.of("bore", "gap");

    private final Ground ground;
    private final Shelf shelf;
    private final Stations stations;
    private final Setting setting;
    private final Fitter fitter;
    private final Refusal refusal = new Refusal();
    private final BesideSeat beside;
    private final @Nullable List<SeatGroup>[] known;

    @SuppressWarnings({"unchecked", "rawtypes"})
    Seats(Stand stand) {
        this.shelf = stand.shelf;
        this.ground = shelf.ground;
        this.stations = stand.stations;
        this.setting = stand.setting;
        this.fitter = stand.fitter;
        this.beside = new BesideSeat(stand);
        this.known = new List[shelf.seats.length];
    }

    /** A seat of the shelf with every hood and arbor that goes with it here; none where it does not fit. */
    List<SeatGroup> at(int i) {
        List<SeatGroup> groups = known[i];
        if (groups == null) {
            ReelSeat seat = shelf.seats[i];
            double from = setting.footMm() - seat.footCentreMm();
            groups = beside.mayStand(seat, from) && fits(seat, from) ? groups(seat, from) : List.of();
            known[i] = groups;
        }
        return groups;
    }

    private boolean fits(ReelSeat seat, double from) {
        ground.rules.onPart(setting, new Placed(Station.SEAT, seat, from, seat.lengthMm()), refusal.reset());
        return !refusal.refused();
    }

    /** Faces of a seat with a hood, mm. */
    private record Faces(double rearMm, double frontMm) {
        @Override
        public boolean equals(@Nullable Object other) {
            return other instanceof Faces that
                    && Double.compare(rearMm, that.rearMm) == 0
                    && Double.compare(frontMm, that.frontMm) == 0;
        }

        @Override
        public int hashCode() {
            return 31 * Double.hashCode(rearMm) + Double.hashCode(frontMm);
        }
    }

    private List<SeatGroup> groups(ReelSeat seat, double from) {
        long style = style(Station.SEAT, seat);
        long missed = ground.wishes.seat(seat) + missed(Station.SEAT, seat);
        Map<Faces, List<SeatGroup.Hooded>> hoods = new LinkedHashMap<>();
        List<SeatGroup.Filling> fillings = null;
        for (SeatSet bare : hooded(seat, from)) {
            List<SeatGroup.Filling> filled = fillings == null ? fillings(bare) : fillings;
            if (filled.isEmpty() && noRoom()) {
                return List.of();
            }
            boolean goes = fillings == null
                    ? !filled.isEmpty()
                    : goes(new SeatSet(seat, bare.hood(), fillings.get(0).arbor(), from));
            if (goes) {
                fillings = filled;
                Faces faces = new Faces(bare.rearFaceMm(), bare.frontFaceMm());
                Arbor arbor = filled.get(filled.size() - 1).arbor();
                hoods.computeIfAbsent(faces, any -> new ArrayList<>()).add(hooded(bare, arbor, style, missed));
            }
        }
        List<SeatGroup> groups = new ArrayList<>();
        for (List<SeatGroup.Hooded> of : hoods.values()) {
            SeatSet any = new SeatSet(
                    seat,
                    of.get(0).hood(),
                    Objects.requireNonNull(fillings).get(0).arbor(),
                    from);
            groups.add(new SeatGroup(any, Behind.Rearward.of(shelf, any), of, fillings));
        }
        return groups;
    }

    /** The seat with each hood, and without one where it may be. */
    private List<SeatSet> hooded(ReelSeat seat, double from) {
        List<SeatSet> all = new ArrayList<>();
        for (Hood hood : shelf.hoodsFor(seat)) {
            all.add(new SeatSet(seat, hood, null, from));
        }
        if (stations.optional(Station.HOOD)) {
            all.add(new SeatSet(seat, null, null, from));
        }
        return all;
    }

    /**
     * What may fill the gap of a seat with its hood, nothing first; no rule asks of both together, so the same with any other that goes on. None where there is no
     * room between seat and blank, which the last refusal then says.
     */
    private List<SeatGroup.Filling> fillings(SeatSet bare) {
        List<SeatGroup.Filling> fillings = new ArrayList<>();
        if (goes(bare)) {
            if (stations.optional(Station.SEAT_ARBORS)) {
                fillings.add(new SeatGroup.Filling(null, Sums.NONE, 0, 0));
            }
        } else if (noRoom()) {
            return fillings;
        }
        for (Arbor arbor : shelf.arbors) {
            SeatSet set = new SeatSet(bare.seat(), bare.hood(), arbor, bare.fromMm());
            if (goes(set)) {
                long style = style(Station.SEAT_ARBORS, arbor);
                fillings.add(new SeatGroup.Filling(
                        arbor, Sums.of(fitter.arbors(set)), style, missed(Station.SEAT_ARBORS, arbor)));
            }
        }
        return fillings;
    }

    /** True where the last refusal says that there is no room between seat and blank. */
    private boolean noRoom() {
        return ROOM.contains(refusal.check());
    }

    private boolean goes(SeatSet set) {
        ground.rules.onSeat(setting, set, refusal.reset());
        return !refusal.refused();
    }

    /**
     * With the hood of a set; how arbors are glued is the same for any.
     *
     * @param seatStyle hundredths of a style point of the seat alone
     * @param seatMissed wishes the seat alone misses
     */
    private SeatGroup.Hooded hooded(SeatSet set, @Nullable Arbor anyArbor, long seatStyle, long seatMissed) {
        ReelSeat seat = set.seat();
        SeatSet filled = new SeatSet(seat, set.hood(), anyArbor, set.fromMm());
        long style = seatStyle;
        long missed = seatMissed;
        int durabilityClass = seat.facts().durabilityClass();
        Hood hood = set.hood();
        if (hood != null) {
            style += style(Station.HOOD, hood);
            missed += missed(Station.HOOD, hood);
            durabilityClass = Math.min(durabilityClass, hood.facts().durabilityClass());
        }
        Sums ofHood = Sums.of(fitter.hood(set));
        return new SeatGroup.Hooded(
                hood,
                Sums.of(fitter.seat(set)).plus(ofHood),
                Sums.of(fitter.seat(filled)).plus(ofHood),
                style,
                missed,
                durabilityClass);
    }

    private long style(Station station, Part part) {
        return ground.style.part(setting.blank(), setting.layout().form(), station, part, setting.guideCount());
    }

    private long missed(Station station, Part part) {
        return ground.wishes.part(station, part, setting.guideCount());
    }
}
