package withy.search;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
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
import withy.rod.Share;
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

    /**
     * A seat with hood and arbors.
     *
     * @param set the parts
     * @param option what they add together
     */
    record SeatOption(SeatSet set, Option<ReelSeat> option) {
        /** Class of the weaker of seat and hood. */
        int durabilityClass() {
            int seat = set.seat().facts().durabilityClass();
            Hood hood = set.hood();
            return hood == null ? seat : Math.min(seat, hood.facts().durabilityClass());
        }
    }

    /**
     * One seat with every hood and arbor that leaves its faces as they are: what stands behind and ahead of it is the same for all.
     *
     * @param set any of them
     * @param options all of them
     */
    record SeatGroup(SeatSet set, List<SeatOption> options) {}

    /** A seat of the shelf with every hood and arbor that goes with it here; none where it does not fit. */
    List<SeatGroup> at(int i) {
        List<SeatGroup> groups = known[i];
        if (groups == null) {
            groups = new ArrayList<>();
            ReelSeat seat = shelf.seats[i];
            double from = setting.footMm() - seat.footCentreMm();
            if (beside.mayStand(seat, from) && fits(seat, from)) {
                List<SeatOption> all = new ArrayList<>();
                Map<Arbor, Share> cut = new IdentityHashMap<>();
                for (Hood hood : shelf.hoodsFor(seat)) {
                    arbors(seat, hood, from, cut, all);
                }
                if (stations.optional(Station.HOOD)) {
                    arbors(seat, null, from, cut, all);
                }
                group(all, groups);
            }
            known[i] = groups;
        }
        return groups;
    }

    private boolean fits(ReelSeat seat, double from) {
        ground.rules.onPart(setting, new Placed(Station.SEAT, seat, from, seat.lengthMm()), refusal.reset());
        return !refusal.refused();
    }

    private static void group(List<SeatOption> options, List<SeatGroup> to) {
        for (SeatOption option : options) {
            SeatGroup same = null;
            for (int i = 0; i < to.size(); i++) {
                SeatSet set = to.get(i).set();
                if (set.rearFaceMm() == option.set.rearFaceMm() && set.frontFaceMm() == option.set.frontFaceMm()) {
                    same = to.get(i);
                }
            }
            if (same == null) {
                same = new SeatGroup(option.set, new ArrayList<>());
                to.add(same);
            }
            same.options.add(option);
        }
    }

    private void arbors(ReelSeat seat, @Nullable Hood hood, double from, Map<Arbor, Share> cut, List<SeatOption> to) {
        SeatSet bare = new SeatSet(seat, hood, null, from);
        if (goes(bare)) {
            if (stations.optional(Station.SEAT_ARBORS)) {
                add(bare, held(bare), Share.NONE, to);
            }
        } else if (ROOM.contains(refusal.check())) {
            return;
        }
        Held held = null;
        for (Arbor arbor : shelf.arbors) {
            SeatSet set = new SeatSet(seat, hood, arbor, from);
            if (goes(set)) {
                held = held == null ? held(set) : held;
                add(set, held, cut.computeIfAbsent(arbor, any -> fitter.arbors(set)), to);
            }
        }
    }

    private boolean goes(SeatSet set) {
        ground.rules.onSeat(setting, set, refusal.reset());
        return !refusal.refused();
    }

    /** Seat and hood, the same whichever arbors hold them. */
    private record Held(Share share, long style, long missed) {}

    private Held held(SeatSet set) {
        long style = style(Station.SEAT, set.seat());
        long missed = ground.wishes.seat(set.seat()) + missed(Station.SEAT, set.seat());
        Hood hood = set.hood();
        if (hood != null) {
            style += style(Station.HOOD, hood);
            missed += missed(Station.HOOD, hood);
        }
        return new Held(fitter.seat(set).plus(fitter.hood(set)), style, missed);
    }

    private void add(SeatSet set, Held held, Share arbors, List<SeatOption> to) {
        long style = held.style;
        long missed = held.missed;
        Arbor arbor = set.arbor();
        if (arbor != null) {
            style += style(Station.SEAT_ARBORS, arbor);
            missed += missed(Station.SEAT_ARBORS, arbor);
        }
        Share share = held.share.plus(arbors);
        to.add(new SeatOption(
                set, new Option<>(set.seat(), set.fromMm(), set.seat().lengthMm(), share, style, missed)));
    }

    private long style(Station station, Part part) {
        return ground.style.part(setting.blank(), setting.layout().form(), station, part, setting.guideCount());
    }

    private long missed(Station station, Part part) {
        return ground.wishes.part(station, part, setting.guideCount());
    }
}
