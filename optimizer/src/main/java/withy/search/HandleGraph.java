package withy.search;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.HandleForm;
import withy.catalog.Arbor;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Hood;
import withy.catalog.ReelSeat;
import withy.rod.Build.Choice;
import withy.rod.Fitter;
import withy.rod.Layout;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * What may stand where behind the seat and under it, on one layout: seats with hood and arbors, checks, grips at every cut, caps. Options are
 * made when first asked for and kept, since seats share positions.
 */
final class HandleGraph {
    final Task task;
    final Setting setting;
    final Fitter fitter;
    final Stations stations;
    final boolean split;
    final Refusal refusal = new Refusal();
    private final Ends.Group ends;
    private final int leastClass;
    private final Map<Long, List<Option<Check>>> rearChecks = new HashMap<>();
    private final Cuts rears;
    private final Cuts butts;
    private final Cuts fores;
    private @Nullable List<Option<ButtCap>> caps;

    HandleGraph(Task task, Setting setting, Fitter fitter, Stations stations, int leastClass, Ends.Group ends) {
        this.task = task;
        this.setting = setting;
        this.ends = ends;
        this.fitter = fitter;
        this.stations = stations;
        this.leastClass = leastClass;
        this.split = setting.layout().form() == HandleForm.SPLIT;
        this.rears = cutsOf(Station.REAR_GRIP, split ? task.rearGrips : task.fullGrips);
        this.fores = cutsOf(Station.FORE_GRIP, task.foreGrips);
        this.butts = cutsOf(Station.BUTT_GRIP, split ? task.buttGrips : List.of());
    }

    /**
     * A seat with hood and arbors.
     *
     * @param set the parts
     * @param option what they add together
     */
    record SeatOption(SeatSet set, Option<ReelSeat> option) {}

    /**
     * One seat with every hood and arbor that leaves its faces as they are: what stands behind and ahead of it is the same for all.
     *
     * @param set any of them
     * @param options all of them
     */
    record SeatGroup(SeatSet set, List<SeatOption> options) {}

    /** Every seat with every hood and arbor that goes with it here. */
    List<SeatGroup> seats() {
        List<SeatGroup> groups = new ArrayList<>();
        for (ReelSeat seat : task.seats) {
            if (seat.facts().durabilityClass() < leastClass || !stations.allows(Station.SEAT, seat)) {
                continue;
            }
            double from = setting.footMm() - seat.footCentreMm();
            task.rules.onPart(setting, new Placed(Station.SEAT, seat, from, seat.lengthMm()), refusal.reset());
            if (!refusal.refused()) {
                List<SeatOption> all = new ArrayList<>();
                for (Hood hood : hoodsFor(seat)) {
                    arbors(seat, hood, from, all);
                }
                if (stations.optional(Station.HOOD)) {
                    arbors(seat, null, from, all);
                }
                group(all, groups);
            }
        }
        return groups;
    }

    private static void group(List<SeatOption> options, List<SeatGroup> to) {
        int first = to.size();
        for (SeatOption option : options) {
            SeatGroup same = null;
            for (int i = first; i < to.size(); i++) {
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

    private List<Hood> hoodsFor(ReelSeat seat) {
        List<Hood> fitting = new ArrayList<>();
        for (Hood hood : task.hoods) {
            if (hood.size() == seat.size()
                    && hood.family().equals(seat.hoodFamily())
                    && hood.facts().durabilityClass() >= leastClass
                    && stations.allows(Station.HOOD, hood)) {
                fitting.add(hood);
            }
        }
        return fitting;
    }

    private void arbors(ReelSeat seat, @Nullable Hood hood, double from, List<SeatOption> to) {
        if (stations.optional(Station.SEAT_ARBORS)) {
            add(new SeatSet(seat, hood, null, from), to);
        }
        for (Arbor arbor : task.arbors) {
            if (stations.allows(Station.SEAT_ARBORS, arbor)) {
                add(new SeatSet(seat, hood, arbor, from), to);
            }
        }
    }

    private void add(SeatSet set, List<SeatOption> to) {
        task.rules.onSeat(setting, set, refusal.reset());
        if (refusal.refused()) {
            return;
        }
        Share share = fitter.seat(set).plus(fitter.hood(set)).plus(fitter.arbors(set));
        int n = setting.guideCount();
        HandleForm form = setting.layout().form();
        long style = task.style.part(setting.blank(), form, Station.SEAT, set.seat(), n);
        long missed = task.wishes.seat(set.seat()) + task.wishes.part(Station.SEAT, set.seat(), n);
        if (set.hood() != null) {
            style += task.style.part(setting.blank(), form, Station.HOOD, set.hood(), n);
            missed += task.wishes.part(Station.HOOD, set.hood(), n);
        }
        if (set.arbor() != null) {
            style += task.style.part(setting.blank(), form, Station.SEAT_ARBORS, set.arbor(), n);
            missed += task.wishes.part(Station.SEAT_ARBORS, set.arbor(), n);
        }
        to.add(new SeatOption(
                set, new Option<>(set.seat(), set.fromMm(), set.seat().lengthMm(), share, style, missed)));
    }

    /** Checks that fit with their front face at x; the empty choice first where it is allowed. */
    List<Option<Check>> rearChecksEndingAt(double frontMm) {
        return rearChecks.computeIfAbsent(key(frontMm), k -> {
            List<Option<Check>> fitting = new ArrayList<>();
            if (stations.optional(Station.REAR_CHECK)) {
                fitting.add(new Option<>(null, frontMm, 0, Share.NONE, 0, 0));
            }
            for (Check check : task.checks) {
                addCheck(Station.REAR_CHECK, check, frontMm - check.widthMm(), fitting);
            }
            return fitting;
        });
    }

    /** A number no check at a station costs less than, between two places told from the reel foot. */
    long checkFloor(Linear k, Station station, double fromMm, double toMm) {
        double c = k.leastPerMg(fromMm, toMm, setting.footMm() - setting.handMm());
        long least = 0;
        for (Check check : task.checks) {
            long style =
                    task.style.part(setting.blank(), setting.layout().form(), station, check, setting.guideCount());
            long missed = task.wishes.part(station, check, setting.guideCount());
            double mg = c >= 0 ? check.massMg() : check.massMg() + 2000;
            least = Math.min(
                    least,
                    (long) (c * mg)
                            + k.perMilli() * (task.tariff.partMilli(check, 1) + task.tariff.workMilli(check))
                            - k.perStyleCenti() * style
                            + k.perMilliStep() * missed);
        }
        return least;
    }

    void addCheck(Station station, Check check, double fromMm, List<Option<Check>> to) {
        if (!stations.allows(station, check)) {
            return;
        }
        task.rules.onPart(setting, new Placed(station, check, fromMm, check.widthMm()), refusal.reset());
        if (!refusal.refused()) {
            to.add(Work.option(task, setting, station, check, fromMm, check.widthMm(), fitter.check(check, fromMm)));
        }
    }

    /** Least length of a full grip here: from the butt to the deepest seat behind the widest check. */
    double leastFullMm() {
        double deepest =
                task.seats.stream().mapToDouble(ReelSeat::footCentreMm).max().orElse(0);
        double widest = task.checks.stream().mapToDouble(Check::widthMm).max().orElse(0);
        return Math.max(0, setting.footMm() - deepest - widest - 1);
    }

    /** Rear grips of this handle form at every cut. */
    Cuts rears() {
        return rears;
    }

    /** Butt grips at every cut; none for a full handle. */
    Cuts butts() {
        return butts;
    }

    /** Fore grips at every cut. */
    Cuts fores() {
        return fores;
    }

    private Cuts cutsOf(Station station, List<Grip> grips) {
        List<Grip> allowed = new ArrayList<>();
        for (Grip grip : grips) {
            if (stations.allows(station, grip) && edgeFinished(station, grip)) {
                allowed.add(grip);
            }
        }
        return new Cuts(this, station, allowed);
    }

    void addGrip(Station station, Grip grip, double fromMm, double lengthMm, List<Option<Grip>> to) {
        if (lengthMm <= 0 || fromMm < 0) {
            return;
        }
        task.rules.onPart(setting, new Placed(station, grip, fromMm, lengthMm), refusal.reset());
        if (!refusal.refused()) {
            Share share = fitter.grip(grip, fromMm, lengthMm);
            long extra = station.equals(Station.FORE_GRIP) ? task.wishes.foreGrip(true) : 0;
            to.add(Work.option(task, setting, station, grip, fromMm, lengthMm, share, extra));
        }
    }

    /** A split handle's grips show an edge to the bare blank between them. */
    private boolean edgeFinished(Station station, Grip grip) {
        if (!split || station.equals(Station.FORE_GRIP)) {
            return true;
        }
        if (station.equals(Station.BUTT_GRIP)) {
            task.seams.buttGripEdge(setting, grip, refusal.reset());
        } else {
            task.seams.rearGripEdge(setting, grip, refusal.reset());
        }
        return !refusal.refused();
    }

    /** Caps for the butt end; the empty choice first (closed grips need none). */
    List<Option<ButtCap>> caps() {
        List<Option<ButtCap>> known = caps;
        if (known == null) {
            known = new ArrayList<>();
            if (stations.optional(Station.BUTT_CAP) && ends.withoutCap()) {
                known.add(new Option<>(null, 0, 0, Share.NONE, 0, 0));
            }
            for (ButtCap cap : task.caps) {
                if (stations.allows(Station.BUTT_CAP, cap) && ends.has(cap)) {
                    double from = -cap.addedMm();
                    task.rules.onPart(setting, new Placed(Station.BUTT_CAP, cap, from, cap.addedMm()), refusal.reset());
                    if (!refusal.refused()) {
                        known.add(Work.option(
                                task, setting, Station.BUTT_CAP, cap, from, cap.addedMm(), fitter.cap(cap)));
                    }
                }
            }
            caps = known;
        }
        return known;
    }

    /** Lengths a grip may have: as sold, and every 5 mm down to its shortest. */
    double[] cuts(Station station, Grip grip) {
        Choice given = stations.givenAt(station);
        if (given != null && given.cutMm() > 0) {
            return new double[] {given.cutMm()};
        }
        return cutsOf(grip).stream().mapToDouble(Double::doubleValue).toArray();
    }

    /** Lengths of a grip nothing is given for. */
    static List<Double> cutsOf(Grip grip) {
        List<Double> lengths = new ArrayList<>();
        lengths.add(grip.lengthMm());
        double first = Math.floor((grip.lengthMm() - 0.005) / Layout.GRID_MM) * Layout.GRID_MM;
        for (double cut = first; cut >= grip.shortestMm() - 0.005; cut -= Layout.GRID_MM) {
            lengths.add(cut);
        }
        return lengths;
    }

    static long key(double mm) {
        return Math.round(mm * 1000);
    }

    static double place(long key) {
        return key / 1000.0;
    }

    static <T> Comparator<Option<? extends T>> byCost() {
        return Comparator.comparingLong(option -> option.cost);
    }
}
