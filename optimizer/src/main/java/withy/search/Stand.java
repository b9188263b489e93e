package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.Consumables;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * A blank with the reel at one place and one handle form: what may stand where behind the seat, under it and ahead of it, whatever guides follow.
 * Options are made when first asked for and kept. Not for several threads at once.
 */
final class Stand {
    /** Prices under which the cheapest handle is kept in mind. */
    private static final int MOST_PRICED = 16;

    final Ground ground;
    final Setting setting;
    final Fitter fitter;
    final Shelf shelf;
    final Stations stations;
    final boolean split;
    final Refusal refusal = new Refusal();
    final Ends.Group ends;
    private final @Nullable List<SeatGroup>[] seats;
    private final Fits<Check> rearChecks;
    private final Fits<Check> foreChecks;
    private final Fits<Check> endChecks;
    private final Fits<Grip> rears;
    private final Fits<Grip> butts;
    private final Fits<Grip> fores;
    private @Nullable List<Option<ButtCap>> caps;
    private final Map<Consumables, Fitter> dresses = new HashMap<>();
    private final Map<Integer, Map<Consumables, TrainGraph>> trains = new HashMap<>();
    private final Map<Asked, Least> undressed = new LinkedHashMap<>(8, 0.75f, true) {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Asked, Least> eldest) {
            return size() > MOST_PRICED;
        }
    };
    private @Nullable Handle priced;

    /**
     * @param setting any layout with this reel position and handle form
     * @param fitter with the adhesive that is used
     * @param ends caps that may be used
     */
    @SuppressWarnings({"unchecked", "rawtypes"})
    Stand(Shelf shelf, Setting setting, Fitter fitter, Ends.Group ends) {
        this.ground = shelf.ground;
        this.shelf = shelf;
        this.setting = setting;
        this.ends = ends;
        this.fitter = fitter;
        this.stations = shelf.stations;
        this.split = shelf.split;
        this.seats = new List[shelf.seats.length];
        this.rearChecks = new Fits<>(
                shelf.checks.length,
                (i, at) -> check(Station.REAR_CHECK, shelf.checks[i], at - shelf.checks[i].widthMm()));
        this.foreChecks = new Fits<>(shelf.checks.length, (i, at) -> check(Station.FORE_CHECK, shelf.checks[i], at));
        this.endChecks = new Fits<>(shelf.checks.length, (i, at) -> check(Station.WINDING_CHECK, shelf.checks[i], at));
        this.rears = new Fits<>(shelf.rears.length, this::rear);
        this.butts = new Fits<>(
                shelf.butts.length, (i, at) -> grip(Station.BUTT_GRIP, shelf.butts[i], 0, shelf.butts[i].lengthMm()));
        this.fores = new Fits<>(
                shelf.fores.length, (i, at) -> grip(Station.FORE_GRIP, shelf.fores[i], at, shelf.fores[i].lengthMm()));
    }

    /** The handle under some prices; one obtained earlier under others is no longer valid. */
    Handle priced(Linear k) {
        Handle known = priced;
        if (known == null || !known.k.equals(k.withoutConstant())) {
            known = new Handle(this, shelf.priced(k));
            priced = known;
        }
        return known;
    }

    /** Cost of the cheapest handle of at least one class but for the thread of its ends, as {@link Handle#leastUndressed}. */
    long leastUndressed(Linear k, int leastClass, long under) {
        if (shelf.seats.length == 1 && !seatFits()) {
            return TrainGraph.NONE;
        }
        Asked asked = new Asked(k.withoutConstant(), leastClass);
        Least known = undressed.get(asked);
        if (known == null || known.cost >= known.under && known.under < under) {
            known = new Least(priced(k).leastUndressed(leastClass, under), under);
            undressed.put(asked, known);
        }
        return known.cost;
    }

    /** False where the one seat there is does not fit, or no rear grip joins it. */
    boolean seatFits() {
        for (SeatGroup group : seat(0)) {
            if (!shelf.joins(group.set()).none()) {
                return true;
            }
        }
        return false;
    }

    private record Asked(Linear k, int leastClass) {}

    /** The train that goes with one count of guides and one thread, made when first asked for. */
    TrainGraph train(int guideCount, Consumables with, Supplier<TrainGraph> made) {
        Map<Consumables, TrainGraph> of = trains.computeIfAbsent(guideCount, count -> new HashMap<>());
        return of.computeIfAbsent(with, one -> made.get());
    }

    /** What was found below a limit. */
    private record Least(long cost, long under) {}

    /** Puts the ends of the handle on with one thread. */
    Fitter dress(Consumables with) {
        return dresses.computeIfAbsent(with, any -> new Fitter(setting, with, ground.tariff));
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
    List<SeatGroup> seat(int i) {
        List<SeatGroup> known = seats[i];
        if (known == null) {
            known = new ArrayList<>();
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
                group(all, known);
            }
            seats[i] = known;
        }
        return known;
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

    /** A check of the shelf with its front face here, or null. */
    @Nullable
    Option<Check> rearCheck(int i, double frontMm) {
        return rearChecks.at(i, frontMm);
    }

    /** A check of the shelf between seat and fore grip, its rear face here, or null. */
    @Nullable
    Option<Check> foreCheck(int i, double rearMm) {
        return foreChecks.at(i, rearMm);
    }

    /** A check of the shelf that ends the handle, its rear face here, or null. */
    @Nullable
    Option<Check> endCheck(int i, double rearMm) {
        return endChecks.at(i, rearMm);
    }

    private @Nullable Option<Check> check(Station station, Check check, double fromMm) {
        if (!stations.allows(station, check)) {
            return null;
        }
        ground.rules.onPart(setting, new Placed(station, check, fromMm, check.widthMm()), refusal.reset());
        return refusal.refused()
                ? null
                : Work.option(ground, setting, station, check, fromMm, check.widthMm(), fitter.check(check, fromMm));
    }

    /** A rear or full grip of the shelf with its front face here, or null. */
    @Nullable
    Option<Grip> rearGrip(int i, double frontMm) {
        return rears.at(i, frontMm);
    }

    private @Nullable Option<Grip> rear(int i, double frontMm) {
        Cut cut = shelf.rears[i];
        double length = cut.fills() ? frontMm : cut.lengthMm();
        return grip(Station.REAR_GRIP, cut, frontMm - length, length);
    }

    /** A butt grip of the shelf, or null. */
    @Nullable
    Option<Grip> buttGrip(int i) {
        return butts.at(i, 0);
    }

    /** A fore grip of the shelf with its rear face here, or null. */
    @Nullable
    Option<Grip> foreGrip(int i, double rearMm) {
        return fores.at(i, rearMm);
    }

    private @Nullable Option<Grip> grip(Station station, Cut cut, double fromMm, double lengthMm) {
        if (lengthMm <= 0 || fromMm < 0) {
            return null;
        }
        Grip grip = cut.grip();
        ground.rules.onPart(setting, new Placed(station, grip, fromMm, lengthMm), refusal.reset());
        return refusal.refused()
                ? null
                : new Option<>(grip, fromMm, lengthMm, fitter.grip(grip, fromMm, lengthMm), cut.style(), cut.missed());
    }

    /** Caps that may close the butt end here, whatever grip stands before it; the empty choice first (closed grips need none). */
    List<Option<ButtCap>> caps() {
        List<Option<ButtCap>> known = caps;
        if (known == null) {
            known = new ArrayList<>();
            List<Grip> last = lastGrips();
            if (stations.optional(Station.BUTT_CAP) && ends.withoutCap() && closes(null, last)) {
                known.add(new Option<>(null, 0, 0, Share.NONE, 0, 0));
            }
            for (ButtCap cap : shelf.capsOn(setting.shape())) {
                if (ends.has(cap) && closes(cap, last)) {
                    double from = -cap.addedMm();
                    known.add(
                            Work.option(ground, setting, Station.BUTT_CAP, cap, from, cap.addedMm(), fitter.cap(cap)));
                }
            }
            caps = known;
        }
        return known;
    }

    /** A grip with a closed end and one with an open end, of those that may stand at the butt. */
    private List<Grip> lastGrips() {
        List<Grip> last = new ArrayList<>();
        for (Cut cut : split ? shelf.butts : shelf.rears) {
            if (last.isEmpty()
                    || last.size() == 1
                            && last.get(0).rearClosed() != cut.grip().rearClosed()) {
                last.add(cut.grip());
            }
        }
        return last;
    }

    private boolean closes(@Nullable ButtCap cap, List<Grip> last) {
        for (Grip grip : last) {
            ground.rules.onButtEnd(setting, cap, grip, refusal.reset());
            if (!refusal.refused()) {
                return true;
            }
        }
        return false;
    }

    static long key(double mm) {
        return Math.round(mm * 1000);
    }
}
