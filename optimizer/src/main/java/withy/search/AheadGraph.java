package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
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
    /** Furthest the front of a handle reaches ahead of the reel foot, mm. */
    private static final double FRONT_REACH_MM = 1500;

    /** Thread and finish of a keeper or an inscription, mg; generous. */
    private static final double WRAPS_MG = 2000;

    private final HandleGraph handle;
    private Linear k = new Linear(0, 0, 0, 0, 0, 0, 0, 0);
    private long[] foreFloor = new long[0];
    private int[] foreOrder = new int[0];
    private long endFloor;
    private final Map<Long, List<Option<Check>>> foreChecks = new HashMap<>();
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

    /** Takes ways with the cheapest keeper and inscription ahead of each. */
    interface Visitor {
        void way(Way way, long ends);
    }

    /** What is asked of the ways of one seat, under one set of prices. */
    interface Asked {
        /** Cost of the cheapest keeper and inscription ahead of a front end. */
        long ends(double frontMm);

        /** Ways that cost this much and more, ends included, are of no interest; may fall as ways come. */
        long under();
    }

    /** Sets the prices. */
    void price(Linear prices) {
        k = prices;
        foreFloor = handle.fores().floors(k, 0, FRONT_REACH_MM);
        foreOrder = Cuts.order(foreFloor);
        endFloor = handle.checkFloor(k, Station.WINDING_CHECK, 0, FRONT_REACH_MM) + keeperFloor();
        endChecks.values().forEach(list -> list.forEach(option -> option.price(k)));
        foreChecks.values().forEach(list -> list.forEach(option -> option.price(k)));
    }

    /** A number no keeper and inscription cost less than. */
    private long keeperFloor() {
        double c = k.leastPerMg(0, FRONT_REACH_MM, handle.setting.footMm() - handle.setting.handMm());
        long least = 0;
        for (Keeper keeper : handle.task.keepers) {
            double mg = c >= 0 ? keeper.massMg() : keeper.massMg() + WRAPS_MG;
            long missed = handle.task.wishes.keeper(true)
                    + handle.task.wishes.part(Station.KEEPER, keeper, handle.setting.guideCount());
            least = Math.min(least, (long) (c * mg) + k.perMilliStep() * missed);
        }
        return least + (c < 0 ? (long) (c * WRAPS_MG) : 0) - decalWorth();
    }

    private long decalWorth() {
        return handle.task.decals.isEmpty() ? 0 : k.perMilliStep() * handle.task.wishes.mostCredit();
    }

    /** Every legal way ahead of a seat that may cost less than is asked. */
    void ways(SeatSet set, Asked asked, Visitor visitor) {
        Option<Check> noCheck = new Option<>(null, set.toMm(), 0, Share.NONE, 0, 0);
        Stations stations = handle.stations;
        if (stations.optional(Station.FORE_GRIP) && !mustHaveForeGrip()) {
            noForeGrip(set, noCheck, asked, visitor);
        }
        if (mayHaveForeGrip()) {
            if (stations.optional(Station.FORE_CHECK)) {
                foreGrip(set, noCheck, asked, visitor);
            }
            for (Option<Check> check : foreChecksAt(set.toMm())) {
                foreGrip(set, check, asked, visitor);
            }
        }
    }

    private void noForeGrip(SeatSet set, Option<Check> noCheck, Asked asked, Visitor visitor) {
        long missed = handle.task.wishes.foreGrip(false);
        Option<Grip> noGrip = new Option<>(null, set.toMm(), 0, Share.NONE, 0, missed);
        noGrip.price(k);
        if (handle.stations.optional(Station.FORE_CHECK)) {
            Face face = Seams.frontOf(set);
            end(noCheck, noGrip, face, set.seat().frontFinished(), set.toMm(), asked, visitor);
        }
        for (Option<Check> option : foreChecksAt(set.toMm())) {
            Check check = Objects.requireNonNull(option.part);
            if (option.cost + noGrip.cost + endFloor < asked.under()) {
                handle.task.seams.aheadOfSeat(handle.setting, set, check, null, handle.refusal.reset());
                if (!handle.refusal.refused()) {
                    Face face = Seams.of(Station.FORE_CHECK, check);
                    end(option, noGrip, face, true, set.toMm() + option.lengthMm, asked, visitor);
                }
            }
        }
    }

    private void foreGrip(SeatSet set, Option<Check> foreCheck, Asked asked, Visitor visitor) {
        double from = set.toMm() + foreCheck.lengthMm;
        for (int i : foreOrder) {
            if (foreCheck.cost + foreFloor[i] + endFloor >= asked.under()) {
                break;
            }
            Option<Grip> option = handle.fores().fitted(i, from);
            if (option != null) {
                Grip grip = Objects.requireNonNull(option.part);
                option.price(k);
                if (foreCheck.cost + option.cost + endFloor < asked.under()) {
                    handle.task.seams.aheadOfSeat(handle.setting, set, foreCheck.part, grip, handle.refusal.reset());
                    if (!handle.refusal.refused()) {
                        Face face = Seams.frontOf(Station.FORE_GRIP, grip);
                        end(foreCheck, option, face, grip.frontFinished(), from + option.lengthMm, asked, visitor);
                    }
                }
            }
        }
    }

    private void end(
            Option<Check> foreCheck,
            Option<Grip> foreGrip,
            Face face,
            boolean finished,
            double frontMm,
            Asked asked,
            Visitor visitor) {
        for (Option<Check> check : endChecksAt(frontMm)) {
            long cost = foreCheck.cost + foreGrip.cost + check.cost;
            if (cost + endFloor >= asked.under()) {
                continue;
            }
            handle.task.seams.frontEnd(handle.setting, face, finished, check.part, handle.refusal.reset());
            if (!handle.refusal.refused()) {
                double front = frontMm + check.lengthMm;
                long ends = asked.ends(front);
                if (!TrainGraph.none(ends) && cost + ends < asked.under()) {
                    visitor.way(new Way(foreCheck, foreGrip, check, front), ends);
                }
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
        fitting.forEach(option -> option.price(k));
        return fitting;
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
