package withy.search;

import java.util.List;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.WrapThread;
import withy.objectives.Style;
import withy.rod.BlankShape;
import withy.rod.GripFit;
import withy.rod.GuidePlan;
import withy.rod.LoadBearing;
import withy.rod.Station;

/**
 * Cheap numbers that no build's cost can be below, blank by blank, under one set of prices: each station by itself takes its best part at its
 * best place, whether or not the parts go together. They decide which layouts are worth an exact completion.
 *
 * <p>A milligram at u mm ahead of the reel foot costs c(u) = perMg + perMgMm·u + perMgMm2·(u + arm)², arm from hand to foot; along a stretch of
 * blank the least c is at an end or at the vertex.
 */
final class Floors {
    /** Furthest a seat reaches from the foot centre, mm; wider than any in use. */
    private static final double SEAT_REACH_MM = 120;

    /** Furthest the front of a handle reaches, mm. */
    private static final double FRONT_REACH_MM = 700;

    /** Glue and rounding that a grip may add, mg. */
    private static final long SLACK_MG = 8000;

    private final Task task;
    private final Linear k;
    private final int leastClass;
    private final double armMm;
    private final long rings;
    private final long guideFloor;
    private final long tipFloor;
    private final long threadStyle;

    Floors(Task task, Linear k, int leastClass) {
        this.task = task;
        this.leastClass = leastClass;
        this.k = k;
        this.armMm = task.brief.rodType().spinningReel() ? 0 : 25;
        double back = -task.brief.reachMaxMm() - 50;
        long rearCheck = optional(task.checks, Station.REAR_CHECK, back, 0);
        long foreCheck = optional(task.checks, Station.FORE_CHECK, 0, FRONT_REACH_MM);
        long endCheck = optional(task.checks, Station.WINDING_CHECK, 0, FRONT_REACH_MM);
        long keeper = optional(task.keepers, Station.KEEPER, 0, FRONT_REACH_MM);
        long foreGrip = Math.min(0, grips(task.foreGrips, Station.FORE_GRIP, HandleForm.SPLIT, 0, FRONT_REACH_MM));
        long cap = optional(task.caps, Station.BUTT_CAP, back, 0);
        long missed = Math.min(0, Math.min(task.wishes.keeper(true), task.wishes.keeper(false)) * k.perMilliStep());
        long credits = 3 * task.wishes.mostCredit() * k.perMilliStep();
        this.rings = rearCheck + foreCheck + endCheck + keeper + foreGrip + cap + missed - credits;
        double near = GuidePlan.stripperDistanceMm(task.brief) - 100;
        this.guideFloor = guides(near);
        this.tipFloor = least(task.tipTops, Station.TIP_TOP, near, 6000);
        this.threadStyle = threads();
    }

    /** A floor for everything but the blank itself. */
    long besidesBlank(BlankShape shape, HandleForm form) {
        long handle = handle(shape, form);
        return TrainGraph.none(handle) || TrainGraph.none(guideFloor) || TrainGraph.none(tipFloor)
                ? TrainGraph.NONE
                : handle + train(shape);
    }

    /** A floor for handle, keeper and their rings. */
    long handle(BlankShape shape, HandleForm form) {
        double back = -task.brief.reachMaxMm() - 50;
        boolean split = form == HandleForm.SPLIT;
        long rear = grips(split ? task.rearGrips : task.fullGrips, Station.REAR_GRIP, form, back, 0);
        long butt = split ? grips(task.buttGrips, Station.BUTT_GRIP, form, back, 0) : 0;
        long seat = seats(shape);
        return TrainGraph.none(rear) || TrainGraph.none(butt) || TrainGraph.none(seat)
                ? TrainGraph.NONE
                : rings + rear + butt + seat;
    }

    private long train(BlankShape shape) {
        boolean ruled = task.rules.rules().stream().anyMatch(rule -> rule.code().equals("guide-train"));
        int fewest = ruled
                ? GuidePlan.fewestGuides(task.brief.rodType(), shape.blank().lengthMm())
                : guideFloor >= 0 ? 0 : Station.MOST_GUIDES;
        return fewest * guideFloor + Math.min(0, 3 * guideFloor) + tipFloor + threadStyle;
    }

    private long seats(BlankShape shape) {
        long least = TrainGraph.NONE;
        double c = least(-SEAT_REACH_MM, SEAT_REACH_MM);
        double thin = shape.profile().at(task.brief.reachMaxMm() + SEAT_REACH_MM);
        for (ReelSeat seat : task.seats) {
            if (seat.boreMm() >= thin && seat.facts().durabilityClass() >= leastClass) {
                long style = task.style.part(shape.blank(), HandleForm.SPLIT, Station.SEAT, seat, 1)
                        + Style.mostGripAndSeat();
                double mass =
                        c >= 0 ? Math.max(0, seat.massMg() - seat.movingHoodG() * 1000) : seat.massMg() + SLACK_MG;
                least = Math.min(least, (long) (c * mass) + work(seat) - k.perStyleCenti() * style);
            }
        }
        return least;
    }

    private long grips(List<Grip> grips, Station station, HandleForm form, double fromMm, double toMm) {
        long least = TrainGraph.NONE;
        double c = least(fromMm, toMm);
        for (Grip grip : grips) {
            long style = task.style.part(anyBlank(), form, station, grip, 1);
            double mass = c >= 0 ? lightest(grip) : grip.massMg() + SLACK_MG;
            least = Math.min(least, (long) (c * mass) + work(grip) - k.perStyleCenti() * style);
        }
        return least;
    }

    /** Cut to its shortest and reamed to its widest. */
    private double lightest(Grip grip) {
        double share = Math.min(1, grip.shortestMm() / grip.lengthMm());
        if (GripFit.stretches(grip) && grip.boreMm() >= grip.reamMaxMm()) {
            return grip.massMg() * share;
        }
        double outer = Math.min(grip.frontOdMm(), Math.min(grip.midOdMm(), grip.rearOdMm()));
        double wide = Math.max(grip.boreMm(), grip.reamMaxMm());
        double left = Math.max(0, (outer * outer - wide * wide) / (outer * outer - grip.boreMm() * grip.boreMm()));
        return Math.max(0, grip.massMg() * share * left - 1);
    }

    private long guides(double nearMm) {
        double c = least(nearMm, 6000);
        long least = TrainGraph.NONE;
        for (Part part : task.candidates.of(PartKind.GUIDE)) {
            if (part.facts().durabilityClass() < leastClass) {
                continue;
            }
            Guide guide = (Guide) part;
            long style = task.style.part(anyBlank(), HandleForm.SPLIT, Station.guide(1), guide, 4);
            double mass = c >= 0 ? guide.massMg() : guide.massMg() + SLACK_MG;
            least = Math.min(least, (long) (c * mass) + work(guide) - k.perStyleCenti() * style);
        }
        return least;
    }

    private long threads() {
        long most = 0;
        for (WrapThread thread : task.threads) {
            most = Math.max(most, task.style.part(anyBlank(), HandleForm.SPLIT, Station.THREAD, thread, 1));
        }
        return -k.perStyleCenti() * (most + 600);
    }

    private <P extends Part> long optional(List<P> parts, Station station, double fromMm, double toMm) {
        return Math.min(0, least(parts, station, fromMm, toMm));
    }

    private <P extends Part> long least(List<P> parts, Station station, double fromMm, double toMm) {
        double c = least(fromMm, toMm);
        long least = TrainGraph.NONE;
        for (P part : parts) {
            if (LoadBearing.is(part) && part.facts().durabilityClass() < leastClass) {
                continue;
            }
            long style = task.style.part(anyBlank(), HandleForm.SPLIT, station, part, 1);
            double mass = c >= 0 ? part.massMg() : part.massMg() + SLACK_MG;
            long missed = k.perMilliStep() * Math.min(0, task.wishes.part(station, part, 1));
            least = Math.min(least, (long) (c * mass) + work(part) - k.perStyleCenti() * style + missed);
        }
        return least;
    }

    private long work(Part part) {
        return k.perMilli() * (task.tariff.partMilli(part, 1) + task.tariff.workMilli(part));
    }

    private Blank anyBlank() {
        return task.blanks.get(0);
    }

    /** Least cost of a milligram between two places, told from the foot. */
    private double least(double fromMm, double toMm) {
        double least = Math.min(cost(fromMm), cost(toMm));
        if (k.perMgMm2() > 0) {
            double vertex = -armMm - k.perMgMm() / (2.0 * k.perMgMm2());
            if (vertex > fromMm && vertex < toMm) {
                least = Math.min(least, cost(vertex));
            }
        }
        return least;
    }

    private double cost(double u) {
        return k.perMg() + k.perMgMm() * u + k.perMgMm2() * (u + armMm) * (u + armMm);
    }
}
