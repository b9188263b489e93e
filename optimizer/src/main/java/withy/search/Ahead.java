package withy.search;

import java.util.BitSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.rod.Face;
import withy.rod.SeatSet;
import withy.rod.Station;
import withy.rules.Seams;

/**
 * What may stand ahead of the seat of one stand under one set of prices: fore grip with or without a ring, the check that ends the handle, keeper and
 * inscription. Each kind is gone through in the order of what it costs at least, and only while it may still matter.
 */
final class Ahead {
    private final Stand stand;
    private final Linear k;
    private final Ranked foreRanks;
    private final Ranked foreCheckRanks;
    private final long keeperFloor;
    private final long endFloor;
    private final boolean mayEndBare;
    private final EndChecks endChecks;
    private final Map<Long, Boolean> someEnd = new HashMap<>();
    private final Map<Long, Fitting<Check>> rings = new HashMap<>();
    private final Map<Long, Fitting<Grip>> grips = new HashMap<>();

    Ahead(Stand stand, BlankPrices prices) {
        this.stand = stand;
        this.k = prices.list.k;
        this.foreRanks = prices.fores();
        this.foreCheckRanks = prices.foreChecks();
        this.keeperFloor = prices.list.keeperFloor;
        this.endChecks = new EndChecks(stand, k, prices.endChecks(), keeperFloor);
        this.mayEndBare = stand.stations.optional(Station.WINDING_CHECK);
        this.endFloor = Math.min(0, prices.endChecks().least()) + keeperFloor;
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

    /** Takes ways with the cheapest keeper and inscription ahead of each, and the cheapest way behind the seat beside its fore grip. */
    interface Visitor {
        void way(Way way, long ends, long behind);
    }

    /** What is asked of the ways of one seat, under one set of prices. */
    interface Asked {
        /** Cost of the cheapest keeper and inscription ahead of a front end. */
        long ends(double frontMm);

        /** Ways that cost this much and more, ends included, are of no interest; may fall as ways come. */
        long under();

        /**
         * Cost of the cheapest way behind the seat; {@link TrainGraph#none} where the two together are of no interest.
         *
         * @param beside rear grips that go beside the fore grip
         * @param ahead a number nothing ahead of the seat costs less than
         */
        long behind(BitSet beside, long ahead);

        /** The same as {@link #under()} for ways with so much behind the seat. */
        long under(long behind);

        /** True where of parts that leave the same beside them the cheapest will do. */
        boolean cheapest();
    }

    /** Every legal way ahead of a seat that may cost less than is asked. */
    void ways(SeatSet set, Asked asked, Visitor visitor) {
        Option<Check> noCheck = new Option<>(null, set.toMm(), 0, Sums.NONE, 0, 0);
        Stations stations = stand.stations;
        if (!stand.shelf.mustHaveForeGrip()) {
            noForeGrip(set, noCheck, asked, visitor);
        }
        if (stand.shelf.mayHaveForeGrip() && !stand.shelf.foreJoins.none(set)) {
            if (stations.optional(Station.FORE_CHECK)) {
                foreGrip(set, noCheck, ForeJoins.NO_RING, asked, visitor);
            }
            Fitting<Check> rings = rings(set.toMm());
            long besides = foreRanks.least() + endFloor;
            Fitting.One<Check> ring = rings.below(0, asked.under() - besides);
            for (int c = 1; ring != null; c++) {
                if (!(ring.beaten() && asked.cheapest()) && joins(set, ring.option())) {
                    foreGrip(set, ring.option(), ring.place(), asked, visitor);
                }
                ring = rings.below(c, asked.under() - besides);
            }
        }
    }

    /** Rings with their rear face at one place. */
    private Fitting<Check> rings(double fromMm) {
        return rings.computeIfAbsent(
                Stand.key(fromMm),
                any -> new Fitting<>(
                        foreCheckRanks,
                        k,
                        i -> stand.foreCheck(i, fromMm),
                        i -> Rings.Trait.of(stand.shelf.checks[i])));
    }

    /** Fore grips with their rear face at one place, where the handle may end before them. */
    private Fitting<Grip> grips(double fromMm) {
        return grips.computeIfAbsent(
                Stand.key(fromMm),
                any -> new Fitting<>(foreRanks, k, i -> foreGrip(i, fromMm), stand.shelf.foreJoins::trait));
    }

    private @Nullable Option<Grip> foreGrip(int fore, double fromMm) {
        double front = fromMm + stand.shelf.fores[fore].lengthMm();
        return stand.mayReach(front) && mayEnd(front) ? stand.foreGrip(fore, fromMm) : null;
    }

    /** True where a ring goes on the front face of a seat. */
    private boolean joins(SeatSet set, Option<Check> check) {
        stand.ground.seams.aheadOfSeat(stand.setting, set, check.part, null, stand.refusal.reset());
        return !stand.refusal.refused();
    }

    private void noForeGrip(SeatSet set, Option<Check> noCheck, Asked asked, Visitor visitor) {
        long missed = stand.ground.wishes.foreGrip(false);
        Option<Grip> noGrip = new Option<>(null, set.toMm(), 0, Sums.NONE, 0, missed);
        noGrip.price(k);
        long behind = asked.behind(
                stand.shelf.neighbours.rears(null), Math.min(0, foreCheckRanks.least()) + noGrip.cost + endFloor);
        if (TrainGraph.none(behind)) {
            return;
        }
        if (stand.stations.optional(Station.FORE_CHECK)) {
            Face face = Seams.frontOf(set);
            end(new Open(noCheck, noGrip, face, set.seat().frontFinished(), set.toMm(), behind), asked, visitor);
        }
        Fitting<Check> rings = rings(set.toMm());
        long besides = noGrip.cost + endFloor;
        Fitting.One<Check> ring = rings.below(0, asked.under() - besides);
        for (int c = 1; ring != null; c++) {
            Option<Check> option = ring.option();
            if (!(ring.beaten() && asked.cheapest()) && joins(set, option)) {
                Face face = Seams.of(Station.FORE_CHECK, Objects.requireNonNull(option.part));
                end(new Open(option, noGrip, face, true, set.toMm() + option.lengthMm, behind), asked, visitor);
            }
            ring = rings.below(c, asked.under() - besides);
        }
    }

    /**
     * With each fore grip.
     *
     * @param ring place of the ring on the shelf, or {@link ForeJoins#NO_RING}
     */
    private void foreGrip(SeatSet set, Option<Check> foreCheck, int ring, Asked asked, Visitor visitor) {
        double from = set.toMm() + foreCheck.lengthMm;
        if (!someEnd(from)) {
            return;
        }
        Fitting<Grip> grips = grips(from);
        long besides = foreCheck.cost + endFloor;
        Fitting.One<Grip> one = grips.below(0, asked.under() - besides);
        for (int i = 1; one != null; i++) {
            boolean worthIt = !(one.beaten() && asked.cheapest());
            if (worthIt && stand.shelf.foreJoins.goes(set, ring, one.place())) {
                foreGrip(foreCheck, one, from, asked, visitor);
            }
            one = grips.below(i, asked.under() - besides);
        }
    }

    private void foreGrip(Option<Check> foreCheck, Fitting.One<Grip> one, double fromMm, Asked asked, Visitor visitor) {
        Option<Grip> option = one.option();
        long least = foreCheck.cost + option.cost + endFloor;
        long behind = least < asked.under()
                ? asked.behind(stand.shelf.neighbours.rears(one.place()), least)
                : TrainGraph.NONE;
        if (!TrainGraph.none(behind)) {
            Grip grip = Objects.requireNonNull(option.part);
            Face face = Seams.frontOf(Station.FORE_GRIP, grip);
            end(
                    new Open(foreCheck, option, face, grip.frontFinished(), fromMm + option.lengthMm, behind),
                    asked,
                    visitor);
        }
    }

    /** False where a check that is given goes on at the front end of no fore grip that it may end, whatever its length. */
    private boolean someEnd(double fromMm) {
        if (mayEndBare) {
            return true;
        }
        return someEnd.computeIfAbsent(Stand.key(fromMm), any -> {
            for (double length : stand.shelf.foreJoins.endedMm()) {
                if (mayEnd(fromMm + length)) {
                    return true;
                }
            }
            return false;
        });
    }

    /** False where a check that is given does not go on at the front end of a fore grip. */
    private boolean mayEnd(double frontMm) {
        return mayEndBare || !endChecks.below(frontMm, TrainGraph.NONE).isEmpty();
    }

    /**
     * What stands ahead of a seat but for the end check.
     *
     * @param face its front face
     * @param finished true where that needs nothing before it
     * @param frontMm where it ends, mm from the butt
     * @param behind cost of the cheapest way behind the seat
     */
    private record Open(
            Option<Check> foreCheck, Option<Grip> foreGrip, Face face, boolean finished, double frontMm, long behind) {
        long cost() {
            return foreCheck.cost + foreGrip.cost;
        }

        Way with(Option<Check> endCheck) {
            return new Way(foreCheck, foreGrip, endCheck, frontMm + endCheck.lengthMm);
        }
    }

    private void end(Open open, Asked asked, Visitor visitor) {
        if (mayEndBare) {
            end(open, new Option<>(null, open.frontMm, 0, Sums.NONE, 0, 0), asked, visitor);
        }
        if (asked.cheapest()) {
            cheapestEnd(open, asked, visitor);
            return;
        }
        for (Option<Check> check : endChecks.below(open.frontMm, asked.under(open.behind) - open.cost())) {
            if (open.cost() + check.cost + keeperFloor >= asked.under(open.behind)) {
                break;
            }
            end(open, check, asked, visitor);
        }
    }

    /** With end checks as far as they are wanted: with each that costs little there is soon none that may cost less. */
    private void cheapestEnd(Open open, Asked asked, Visitor visitor) {
        long besides = open.cost() + keeperFloor;
        Fitting<Check> checks = endChecks.wanted(open.frontMm);
        Fitting.One<Check> one = checks.below(0, asked.under(open.behind) - besides);
        for (int c = 1; one != null; c++) {
            end(open, one.option(), asked, visitor);
            one = checks.below(c, asked.under(open.behind) - besides);
        }
    }

    private void end(Open open, Option<Check> endCheck, Asked asked, Visitor visitor) {
        Way way = open.with(endCheck);
        long behind = open.behind;
        long cost = way.cost();
        if (cost + keeperFloor >= asked.under(behind) || !stand.mayReach(way.frontMm)) {
            return;
        }
        stand.ground.seams.frontEnd(stand.setting, open.face, open.finished, endCheck.part, stand.refusal.reset());
        if (!stand.refusal.refused()) {
            long ends = asked.ends(way.frontMm);
            if (!TrainGraph.none(ends) && cost + ends < asked.under(behind)) {
                visitor.way(way, ends, behind);
            }
        }
    }
}
