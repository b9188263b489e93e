package withy.rules;

import org.jspecify.annotations.Nullable;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.rod.Face;
import withy.rod.Placed;
import withy.rod.SeatSet;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * Where parts of a handle meet, and which hooks belong to each meeting. The judge walks a rod over these; the search asks the same of its edges.
 *
 * <pre>
 *   cap | butt grip |  bare  | rear grip | check | seat | check | fore grip | check   bare
 *       ^butt       ^split   ^           ^behindSeat    ^aheadOfSeat        ^frontEnd
 * </pre>
 */
public record Seams(Rulebook rules) {
    /** Least bare blank between the grips of a split handle, mm (handbook, rule 13). */
    public static final double BARE_MM = 30;

    /** Rear face of a grip. */
    public static Face rearOf(Station station, Grip grip) {
        return new Face(station, grip.id(), grip.rearOdMm(), false);
    }

    /** Front face of a grip. */
    public static Face frontOf(Station station, Grip grip) {
        return new Face(station, grip.id(), grip.frontOdMm(), false);
    }

    /** A check has one outer diameter on both faces. */
    public static Face of(Station station, Check check) {
        return new Face(station, check.id(), check.outerMm(), true);
    }

    /** Front face of a butt cap. */
    public static Face of(ButtCap cap) {
        return new Face(Station.BUTT_CAP, cap.id(), cap.outerMm(), false);
    }

    /** Face of the seat toward the butt. */
    public static Face rearOf(SeatSet set) {
        return new Face(Station.SEAT, set.seat().id(), set.rearFaceMm(), false);
    }

    /** Face of the seat toward the tip. */
    public static Face frontOf(SeatSet set) {
        return new Face(Station.SEAT, set.seat().id(), set.frontFaceMm(), false);
    }

    /** What closes the butt, and cap against first grip. */
    public void butt(Setting setting, @Nullable ButtCap cap, Station station, @Nullable Grip first, Bench bench) {
        rules.onButtEnd(setting, cap, first, bench);
        if (cap != null && first != null && !bench.decided()) {
            rules.onNeighbours(setting, of(cap), rearOf(station, first), bench);
        }
    }

    /** The bare blank of a split handle between its two grips. */
    public void split(Setting setting, Placed buttGrip, Placed rearGrip, Bench bench) {
        rules.onGap(setting, buttGrip, rearGrip, bench);
        if (bench.decided()) {
            return;
        }
        if (buttGrip.part() instanceof Grip butt && rearGrip.part() instanceof Grip rear) {
            rules.onGrips(setting, butt, rear, bench);
        }
    }

    /** Front edge of a butt grip against bare blank. */
    public void buttGripEdge(Setting setting, Grip butt, Bench bench) {
        rules.onExposedEdge(setting, frontOf(Station.BUTT_GRIP, butt), butt.frontFinished(), bench);
    }

    /** Rear edge of the rear grip of a split handle against bare blank. */
    public void rearGripEdge(Setting setting, Grip rear, Bench bench) {
        rules.onExposedEdge(setting, rearOf(Station.REAR_GRIP, rear), rear.rearFinished(), bench);
    }

    /** Rear grip, check if there is one, and seat. */
    public void behindSeat(
            Setting setting, @Nullable Grip rearGrip, @Nullable Check rearCheck, SeatSet seat, Bench bench) {
        Face face = rearOf(seat);
        if (rearCheck != null) {
            Face ring = of(Station.REAR_CHECK, rearCheck);
            rules.onNeighbours(setting, ring, face, bench);
            face = ring;
        }
        if (rearGrip != null && !bench.decided()) {
            rules.onNeighbours(setting, frontOf(Station.REAR_GRIP, rearGrip), face, bench);
        }
    }

    /** Seat, check if there is one, and fore grip if there is one. */
    public void aheadOfSeat(
            Setting setting, SeatSet seat, @Nullable Check foreCheck, @Nullable Grip foreGrip, Bench bench) {
        Face face = frontOf(seat);
        if (foreCheck != null) {
            Face ring = of(Station.FORE_CHECK, foreCheck);
            rules.onNeighbours(setting, face, ring, bench);
            face = ring;
        }
        if (foreGrip != null && !bench.decided()) {
            rules.onNeighbours(setting, face, rearOf(Station.FORE_GRIP, foreGrip), bench);
            if (!bench.decided()) {
                rules.onForeGrip(setting, seat, foreGrip, foreCheck != null, bench);
            }
        }
    }

    /**
     * Front end of the handle.
     *
     * @param last front face of the foremost of seat, fore check and fore grip
     * @param finished true where that edge is shaped, or is a ring's
     */
    public void frontEnd(Setting setting, Face last, boolean finished, @Nullable Check windingCheck, Bench bench) {
        if (windingCheck != null) {
            rules.onNeighbours(setting, last, of(Station.WINDING_CHECK, windingCheck), bench);
        }
        if (!bench.decided()) {
            rules.onExposedEdge(setting, last, finished || windingCheck != null, bench);
        }
    }

    /** Front end as above, of the parts themselves. */
    public void frontEnd(
            Setting setting,
            @Nullable SeatSet seat,
            @Nullable Check foreCheck,
            @Nullable Grip foreGrip,
            @Nullable Check windingCheck,
            Bench bench) {
        if (foreGrip != null) {
            Face face = frontOf(Station.FORE_GRIP, foreGrip);
            frontEnd(setting, face, foreGrip.frontFinished(), windingCheck, bench);
        } else if (foreCheck != null) {
            frontEnd(setting, of(Station.FORE_CHECK, foreCheck), true, windingCheck, bench);
        } else if (seat != null) {
            frontEnd(setting, frontOf(seat), seat.seat().frontFinished(), windingCheck, bench);
        }
    }
}
