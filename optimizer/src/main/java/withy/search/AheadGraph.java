package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Wish;
import withy.catalog.Check;
import withy.catalog.Decal;
import withy.catalog.Grip;
import withy.catalog.Keeper;
import withy.rod.Face;
import withy.rod.Fitter;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Share;
import withy.rod.Station;
import withy.rules.Seams;

/**
 * What may stand ahead of the seat: fore grip with or without a ring, the check that ends the handle, keeper and inscription. The end of the
 * handle is the same for every way that comes to it at one place with one face, so it is worked out once and kept.
 */
final class AheadGraph {
    private final HandleGraph handle;
    private final Map<HandleGraph.SeatGroup, List<Way>> ways = new IdentityHashMap<>();
    private final Map<Long, List<Option<Check>>> foreChecks = new HashMap<>();
    private final Map<Long, List<Option<Grip>>> foreGrips = new HashMap<>();
    private final Map<Long, List<Option<Check>>> endChecks = new HashMap<>();
    private final Map<End, List<Option<Keeper>>> keepers = new HashMap<>();
    private final Map<End, List<Option<Decal>>> decals = new HashMap<>();

    AheadGraph(HandleGraph handle) {
        this.handle = handle;
    }

    /**
     * A way from the seat to the front end, keeper and inscription not yet chosen.
     *
     * @param foreCheck ring between seat and fore grip, or empty
     * @param foreGrip fore grip, or empty
     * @param endCheck winding check, or empty
     * @param frontMm front end of the handle, mm
     */
    record Way(Option<Check> foreCheck, Option<Grip> foreGrip, Option<Check> endCheck, double frontMm) {
        long cost() {
            return foreCheck.cost + foreGrip.cost + endCheck.cost;
        }
    }

    /** A front end dressed with one thread. */
    private record End(double frontMm, Fitter fitter) {}

    /** Every legal way ahead of a seat. */
    List<Way> ways(HandleGraph.SeatGroup seat) {
        return ways.computeIfAbsent(seat, key -> waysNow(seat.set()));
    }

    private List<Way> waysNow(SeatSet set) {
        List<Way> ways = new ArrayList<>();
        Option<Check> noCheck = new Option<>(null, set.toMm(), 0, Share.NONE, 0, 0);
        Stations stations = handle.stations;
        if (stations.optional(Station.FORE_GRIP) && !mustHaveForeGrip()) {
            noForeGrip(set, noCheck, ways);
        }
        if (mayHaveForeGrip()) {
            if (stations.optional(Station.FORE_CHECK)) {
                foreGrip(set, noCheck, ways);
            }
            for (Option<Check> check : foreChecksAt(set.toMm())) {
                foreGrip(set, check, ways);
            }
        }
        return ways;
    }

    private void noForeGrip(SeatSet set, Option<Check> noCheck, List<Way> ways) {
        long missed = handle.task.wishes.foreGrip(false);
        Option<Grip> noGrip = new Option<>(null, set.toMm(), 0, Share.NONE, 0, missed);
        if (handle.stations.optional(Station.FORE_CHECK)) {
            end(noCheck, noGrip, Seams.frontOf(set), set.seat().frontFinished(), set.toMm(), ways);
        }
        for (Option<Check> option : foreChecksAt(set.toMm())) {
            Check check = Objects.requireNonNull(option.part);
            handle.task.seams.aheadOfSeat(handle.setting, set, check, null, handle.refusal.reset());
            if (!handle.refusal.refused()) {
                Face face = Seams.of(Station.FORE_CHECK, check);
                end(option, noGrip, face, true, set.toMm() + option.lengthMm, ways);
            }
        }
    }

    private void foreGrip(SeatSet set, Option<Check> foreCheck, List<Way> ways) {
        double from = set.toMm() + foreCheck.lengthMm;
        for (Option<Grip> option : foreGripsAt(from)) {
            Grip grip = Objects.requireNonNull(option.part);
            handle.task.seams.aheadOfSeat(handle.setting, set, foreCheck.part, grip, handle.refusal.reset());
            if (!handle.refusal.refused()) {
                Face face = Seams.frontOf(Station.FORE_GRIP, grip);
                end(foreCheck, option, face, grip.frontFinished(), from + option.lengthMm, ways);
            }
        }
    }

    private void end(
            Option<Check> foreCheck,
            Option<Grip> foreGrip,
            Face face,
            boolean finished,
            double frontMm,
            List<Way> ways) {
        for (Option<Check> check : endChecksAt(frontMm)) {
            handle.task.seams.frontEnd(handle.setting, face, finished, check.part, handle.refusal.reset());
            if (!handle.refusal.refused()) {
                ways.add(new Way(foreCheck, foreGrip, check, frontMm + check.lengthMm));
            }
        }
    }

    private List<Option<Check>> foreChecksAt(double fromMm) {
        return foreChecks.computeIfAbsent(HandleGraph.key(fromMm), k -> checks(Station.FORE_CHECK, fromMm));
    }

    private List<Option<Check>> endChecksAt(double fromMm) {
        return endChecks.computeIfAbsent(HandleGraph.key(fromMm), k -> {
            List<Option<Check>> all = new ArrayList<>();
            if (handle.stations.optional(Station.WINDING_CHECK)) {
                all.add(new Option<>(null, fromMm, 0, Share.NONE, 0, 0));
            }
            all.addAll(checks(Station.WINDING_CHECK, fromMm));
            return all;
        });
    }

    private List<Option<Check>> checks(Station station, double fromMm) {
        List<Option<Check>> fitting = new ArrayList<>();
        for (Check check : handle.task.checks) {
            handle.addCheck(station, check, fromMm, fitting);
        }
        return fitting;
    }

    private List<Option<Grip>> foreGripsAt(double fromMm) {
        return foreGrips.computeIfAbsent(HandleGraph.key(fromMm), k -> {
            List<Option<Grip>> fitting = new ArrayList<>();
            for (Grip grip : handle.task.foreGrips) {
                if (handle.stations.allows(Station.FORE_GRIP, grip)) {
                    for (double cut : handle.cuts(Station.FORE_GRIP, grip)) {
                        handle.addGrip(Station.FORE_GRIP, grip, fromMm, cut, fitting);
                    }
                }
            }
            return fitting;
        });
    }

    /** Keepers ahead of a front end; the empty choice first where it is allowed. */
    List<Option<Keeper>> keepersAheadOf(double frontMm, Fitter fitter) {
        return keepers.computeIfAbsent(new End(frontMm, fitter), k -> {
            List<Option<Keeper>> all = new ArrayList<>();
            Wish<Boolean> wish =
                    handle.task.handleRule ? handle.task.brief.handle().keeper() : null;
            boolean must = wish != null && wish.hard() && wish.value();
            boolean mustNot = wish != null && wish.hard() && !wish.value();
            if (handle.stations.optional(Station.KEEPER) && !must) {
                all.add(new Option<>(null, frontMm, 0, Share.NONE, 0, handle.task.wishes.keeper(false)));
            }
            for (Keeper keeper : handle.task.keepers) {
                if (!mustNot && handle.stations.allows(Station.KEEPER, keeper)) {
                    addKeeper(keeper, frontMm, fitter, all);
                }
            }
            return all;
        });
    }

    private void addKeeper(Keeper keeper, double frontMm, Fitter fitter, List<Option<Keeper>> to) {
        double x = frontMm + Fitter.KEEPER_AHEAD_MM;
        Placed placed = new Placed(Station.KEEPER, keeper, x, 0);
        handle.task.rules.onPart(handle.setting, placed, handle.refusal.reset());
        if (!handle.refusal.refused()) {
            Share share = fitter.keeper(keeper, frontMm);
            int n = handle.setting.guideCount();
            long missed = handle.task.wishes.keeper(true) + handle.task.wishes.part(Station.KEEPER, keeper, n);
            to.add(new Option<>(keeper, x, 0, share, 0, missed));
        }
    }

    /** Inscriptions: one where the brief asks for an inscription, else none. */
    List<Option<Decal>> decalsAheadOf(double frontMm, Fitter fitter) {
        return decals.computeIfAbsent(new End(frontMm, fitter), k -> {
            List<Option<Decal>> all = new ArrayList<>();
            boolean asked = !handle.task.brief.look().inscription().isEmpty() && !handle.task.decals.isEmpty();
            Stations stations = handle.stations;
            if (stations.optional(Station.DECAL) && (!asked || stations.empty().contains(Station.DECAL))) {
                all.add(new Option<>(null, frontMm, 0, Share.NONE, 0, 0));
                return all;
            }
            for (Decal decal : handle.task.decals) {
                if (stations.allows(Station.DECAL, decal)) {
                    double from = frontMm + Fitter.DECAL_AHEAD_MM;
                    Share share = fitter.decal(decal, frontMm);
                    all.add(Work.option(
                            handle.task, handle.setting, Station.DECAL, decal, from, decal.widthMm(), share));
                }
            }
            return all;
        });
    }

    private boolean mustHaveForeGrip() {
        Wish<Boolean> wish = foreGripWish();
        return wish != null && wish.hard() && wish.value();
    }

    private boolean mayHaveForeGrip() {
        Wish<Boolean> wish = foreGripWish();
        return wish == null || !wish.hard() || wish.value();
    }

    private @Nullable Wish<Boolean> foreGripWish() {
        return handle.task.handleRule ? handle.task.brief.handle().foreGrip() : null;
    }
}
