package withy.search;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.Hood;
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
    private final Ground ground;
    private final Shelf shelf;
    private final Stations stations;
    private final Setting setting;
    private final Fitter fitter;
    private final Refusal refusal = new Refusal();
    private final @Nullable List<SeatGroup>[] known;

    @SuppressWarnings({"unchecked", "rawtypes"})
    Seats(Shelf shelf, Stations stations, Setting setting, Fitter fitter) {
        this.ground = shelf.ground;
        this.shelf = shelf;
        this.stations = stations;
        this.setting = setting;
        this.fitter = fitter;
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
            if (fits(seat, from)) {
                List<SeatOption> all = new ArrayList<>();
                for (Hood hood : shelf.hoodsFor(seat)) {
                    arbors(seat, hood, from, all);
                }
                if (stations.optional(Station.HOOD)) {
                    arbors(seat, null, from, all);
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

    private void arbors(ReelSeat seat, @Nullable Hood hood, double from, List<SeatOption> to) {
        if (stations.optional(Station.SEAT_ARBORS)) {
            add(new SeatSet(seat, hood, null, from), to);
        }
        for (Arbor arbor : ground.arborsWorthIt) {
            if (stations.allows(Station.SEAT_ARBORS, arbor)) {
                add(new SeatSet(seat, hood, arbor, from), to);
            }
        }
    }

    private void add(SeatSet set, List<SeatOption> to) {
        ground.rules.onSeat(setting, set, refusal.reset());
        if (refusal.refused()) {
            return;
        }
        Share share = fitter.seat(set).plus(fitter.hood(set)).plus(fitter.arbors(set));
        int n = setting.guideCount();
        HandleForm form = setting.layout().form();
        long style = ground.style.part(setting.blank(), form, Station.SEAT, set.seat(), n);
        long missed = ground.wishes.seat(set.seat()) + ground.wishes.part(Station.SEAT, set.seat(), n);
        if (set.hood() != null) {
            style += ground.style.part(setting.blank(), form, Station.HOOD, set.hood(), n);
            missed += ground.wishes.part(Station.HOOD, set.hood(), n);
        }
        if (set.arbor() != null) {
            style += ground.style.part(setting.blank(), form, Station.SEAT_ARBORS, set.arbor(), n);
            missed += ground.wishes.part(Station.SEAT_ARBORS, set.arbor(), n);
        }
        to.add(new SeatOption(
                set, new Option<>(set.seat(), set.fromMm(), set.seat().lengthMm(), share, style, missed)));
    }
}
