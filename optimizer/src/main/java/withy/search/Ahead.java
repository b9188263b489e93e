package withy.search;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.rod.Face;
import withy.rod.SeatSet;
import withy.rod.Share;
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
    private final Ranked endRanks;
    private final long keeperFloor;
    private final long endFloor;
    private final Map<Long, EndChecks> endChecks = new HashMap<>();
    private final Map<Long, Boolean> someEnd = new HashMap<>();

    Ahead(Stand stand, BlankPrices prices) {
        this.stand = stand;
        this.k = prices.list.k;
        this.foreRanks = prices.fores();
        this.foreCheckRanks = prices.foreChecks();
        this.endRanks = prices.endChecks();
        this.keeperFloor = prices.list.keeperFloor;
        this.endFloor = Math.min(0, endRanks.least()) + keeperFloor;
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
    }

    /** Every legal way ahead of a seat that may cost less than is asked. */
    void ways(SeatSet set, Asked asked, Visitor visitor) {
        Option<Check> noCheck = new Option<>(null, set.toMm(), 0, Share.NONE, 0, 0);
        Stations stations = stand.stations;
        if (!stand.shelf.mustHaveForeGrip()) {
            noForeGrip(set, noCheck, asked, visitor);
        }
        if (stand.shelf.mayHaveForeGrip() && !stand.shelf.foreJoins.none(set)) {
            if (stations.optional(Station.FORE_CHECK)) {
                foreGrip(set, noCheck, ForeJoins.NO_RING, asked, visitor);
            }
            for (int c = 0; foreCheckRanks.has(c); c++) {
                if (foreCheckRanks.floor(c) + foreRanks.least() + endFloor >= asked.under()) {
                    break;
                }
                Option<Check> check = foreCheck(c, set.toMm());
                if (check != null && joins(set, check)) {
                    foreGrip(set, check, foreCheckRanks.at(c), asked, visitor);
                }
            }
        }
    }

    /** True where a ring goes on the front face of a seat. */
    private boolean joins(SeatSet set, Option<Check> check) {
        stand.ground.seams.aheadOfSeat(stand.setting, set, check.part, null, stand.refusal.reset());
        return !stand.refusal.refused();
    }

    private @Nullable Option<Check> foreCheck(int rank, double fromMm) {
        Option<Check> check = stand.foreCheck(foreCheckRanks.at(rank), fromMm);
        if (check != null) {
            check.price(k);
        }
        return check;
    }

    private void noForeGrip(SeatSet set, Option<Check> noCheck, Asked asked, Visitor visitor) {
        long missed = stand.ground.wishes.foreGrip(false);
        Option<Grip> noGrip = new Option<>(null, set.toMm(), 0, Share.NONE, 0, missed);
        noGrip.price(k);
        long behind = asked.behind(
                stand.shelf.neighbours.rears(null), Math.min(0, foreCheckRanks.least()) + noGrip.cost + endFloor);
        if (TrainGraph.none(behind)) {
            return;
        }
        if (stand.stations.optional(Station.FORE_CHECK)) {
            Face face = Seams.frontOf(set);
            end(noCheck, noGrip, face, set.seat().frontFinished(), set.toMm(), behind, asked, visitor);
        }
        for (int c = 0; foreCheckRanks.has(c); c++) {
            if (foreCheckRanks.floor(c) + noGrip.cost + endFloor >= asked.under()) {
                break;
            }
            Option<Check> option = foreCheck(c, set.toMm());
            if (option != null) {
                Check check = Objects.requireNonNull(option.part);
                if (joins(set, option)) {
                    Face face = Seams.of(Station.FORE_CHECK, check);
                    end(option, noGrip, face, true, set.toMm() + option.lengthMm, behind, asked, visitor);
                }
            }
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
        for (int i = 0; foreRanks.has(i); i++) {
            if (foreCheck.cost + foreRanks.floor(i) + endFloor >= asked.under()) {
                break;
            }
            double front = from + stand.shelf.fores[foreRanks.at(i)].lengthMm();
            boolean joins =
                    stand.mayReach(front) && mayEnd(front) && stand.shelf.foreJoins.goes(set, ring, foreRanks.at(i));
            Option<Grip> option = joins ? stand.foreGrip(foreRanks.at(i), from) : null;
            if (option != null) {
                Grip grip = Objects.requireNonNull(option.part);
                option.price(k);
                long least = foreCheck.cost + option.cost + endFloor;
                long behind = least < asked.under()
                        ? asked.behind(stand.shelf.neighbours.rears(foreRanks.at(i)), least)
                        : TrainGraph.NONE;
                if (!TrainGraph.none(behind)) {
                    Face face = Seams.frontOf(Station.FORE_GRIP, grip);
                    end(foreCheck, option, face, grip.frontFinished(), from + option.lengthMm, behind, asked, visitor);
                }
            }
        }
    }

    /** False where a check that is given goes on at the front end of no fore grip that it may end, whatever its length. */
    private boolean someEnd(double fromMm) {
        if (stand.stations.optional(Station.WINDING_CHECK)) {
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
        return stand.stations.optional(Station.WINDING_CHECK)
                || !endChecks(frontMm, TrainGraph.NONE).isEmpty();
    }

    private void end(
            Option<Check> foreCheck,
            Option<Grip> foreGrip,
            Face face,
            boolean finished,
            double frontMm,
            long behind,
            Asked asked,
            Visitor visitor) {
        long before = foreCheck.cost + foreGrip.cost;
        if (stand.stations.optional(Station.WINDING_CHECK)) {
            Option<Check> none = new Option<>(null, frontMm, 0, Share.NONE, 0, 0);
            end(new Way(foreCheck, foreGrip, none, frontMm), face, finished, behind, asked, visitor);
        }
        for (Option<Check> check : endChecks(frontMm, asked.under(behind) - before)) {
            if (before + check.cost + keeperFloor >= asked.under(behind)) {
                break;
            }
            end(new Way(foreCheck, foreGrip, check, frontMm + check.lengthMm), face, finished, behind, asked, visitor);
        }
    }

    /** Checks that go on at a place and may cost less than a limit with what stands ahead, priced, the cheapest first. */
    private List<Option<Check>> endChecks(double frontMm, long under) {
        long key = Stand.key(frontMm);
        EndChecks known = endChecks.get(key);
        if (known == null || known.under < under) {
            List<Option<Check>> list = new ArrayList<>();
            for (int c = 0; endRanks.has(c) && endRanks.floor(c) + keeperFloor < under; c++) {
                Option<Check> check = stand.endCheck(endRanks.at(c), frontMm);
                if (check != null) {
                    check.price(k);
                    list.add(check);
                }
            }
            list.sort(Comparator.comparingLong(check -> check.cost));
            known = new EndChecks(list, under);
            endChecks.put(key, known);
        }
        return known.list;
    }

    /** What was found below a limit. */
    private record EndChecks(List<Option<Check>> list, long under) {}

    private void end(Way way, Face face, boolean finished, long behind, Asked asked, Visitor visitor) {
        long cost = way.cost();
        if (cost + keeperFloor >= asked.under(behind) || !stand.mayReach(way.frontMm)) {
            return;
        }
        stand.ground.seams.frontEnd(stand.setting, face, finished, way.endCheck.part, stand.refusal.reset());
        if (!stand.refusal.refused()) {
            long ends = asked.ends(way.frontMm);
            if (!TrainGraph.none(ends) && cost + ends < asked.under(behind)) {
                visitor.way(way, ends, behind);
            }
        }
    }
}
