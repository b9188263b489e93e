package withy.search;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import withy.brief.Brief.HandleForm;
import withy.brief.Brief.Wish;
import withy.catalog.Adhesive;
import withy.catalog.Arbor;
import withy.catalog.Blank;
import withy.catalog.ButtCap;
import withy.catalog.Check;
import withy.catalog.Grip;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.ReelSeat;
import withy.catalog.WrapThread;
import withy.mechanics.ArborRings;
import withy.rod.BlankShape;
import withy.rod.GuidePlan;
import withy.rod.Layout;
import withy.rod.LoadBearing;
import withy.rod.Placed;
import withy.rod.SeatGap;
import withy.rod.Setting;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Cheap numbers that no build's cost can be below, blank by blank, under one set of prices: each station by itself takes its best part at its
 * best place, whether or not the parts go together. They decide which layouts are worth an exact completion.
 *
 * <p>What a milligram costs depends on where it lies ({@link Linear#leastPerMg}).
 */
final class Floors {
    /** Furthest a seat reaches from the foot centre, mm; wider than any in use. */
    private static final double SEAT_REACH_MM = 120;

    /** Furthest the front of a handle reaches, mm. */
    private static final double FRONT_REACH_MM = 700;

    /** Longest butt cap, mm. */
    private static final double LONGEST_CAP_MM = 60;

    /** Glue and rounding that a grip may add, mg. */
    private static final long SLACK_MG = 30_000;

    private final Task task;
    private final Linear k;
    private final int leastClass;
    private final double armMm;
    private final Map<String, List<ButtCap>> fitting = new HashMap<>();
    private final boolean boreRuled;
    private final boolean closedGrips;
    private final double longestButtMm;
    private final double lightestArborGMm3;
    private final long arborWork;
    private final double glueGCm3;
    private final double deepestSeatMm;
    private final double widestCheckMm;
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
        long keeper = keeperNeeded()
                ? least(task.keepers, Station.KEEPER, 0, FRONT_REACH_MM)
                : optional(task.keepers, Station.KEEPER, 0, FRONT_REACH_MM);
        long foreGrip = optional(task.foreGrips, Station.FORE_GRIP, 0, FRONT_REACH_MM);
        long missed = Math.min(0, Math.min(task.wishes.keeper(true), task.wishes.keeper(false)) * k.perMilliStep());
        long credits = 3 * task.wishes.mostCredit() * k.perMilliStep();
        this.rings = rearCheck + foreCheck + endCheck + keeper + foreGrip + missed - credits;
        this.boreRuled =
                task.rules.rules().stream().anyMatch(rule -> rule.code().equals("seat-on-blank"));
        this.closedGrips =
                Stream.of(task.buttGrips, task.fullGrips).flatMap(List::stream).anyMatch(Grip::rearClosed);
        this.longestButtMm =
                task.buttGrips.stream().mapToDouble(Grip::lengthMm).max().orElse(0);
        this.lightestArborGMm3 =
                task.arbors.stream().mapToDouble(Arbor::densityGMm3).min().orElse(0);
        this.arborWork = task.arbors.stream().mapToLong(this::work).min().orElse(0);
        this.glueGCm3 =
                task.adhesives.stream().mapToDouble(Adhesive::densityGMl).min().orElse(0);
        this.deepestSeatMm =
                task.seats.stream().mapToDouble(ReelSeat::footCentreMm).max().orElse(0);
        this.widestCheckMm =
                task.checks.stream().mapToDouble(Check::widthMm).max().orElse(0);
        double near = GuidePlan.stripperDistanceMm(task.brief) - 100;
        this.guideFloor = guides(near);
        this.tipFloor = least(task.tipTops, Station.TIP_TOP, near, 6000);
        this.threadStyle = threads();
    }

    /**
     * A floor for everything but the blank itself.
     *
     * @param footMm reel foot position
     */
    long besidesBlank(BlankShape shape, HandleForm form, double footMm) {
        long handle = handle(shape, form, footMm);
        return TrainGraph.none(handle) || TrainGraph.none(guideFloor) || TrainGraph.none(tipFloor)
                ? TrainGraph.NONE
                : handle + train(shape);
    }

    /** A floor for handle, keeper and their rings. */
    long handle(BlankShape shape, HandleForm form, double footMm) {
        boolean split = form == HandleForm.SPLIT;
        long rear = split
                ? grips(task.rearGrips, Station.REAR_GRIP, form, shape, 0, -task.brief.reachMaxMm() - 50, 0)
                : grips(
                        task.fullGrips,
                        Station.REAR_GRIP,
                        form,
                        shape,
                        footMm - deepestSeatMm - widestCheckMm,
                        -footMm,
                        0);
        long butt =
                split ? grips(task.buttGrips, Station.BUTT_GRIP, form, shape, 0, -footMm, longestButtMm - footMm) : 0;
        long seat = seats(shape, form, footMm);
        return TrainGraph.none(rear) || TrainGraph.none(butt) || TrainGraph.none(seat)
                ? TrainGraph.NONE
                : rings + rear + butt + seat + cap(shape, footMm);
    }

    private long cap(BlankShape shape, double footMm) {
        long least = TrainGraph.NONE;
        double c = least(-footMm - LONGEST_CAP_MM, -footMm + LONGEST_CAP_MM);
        for (ButtCap cap : fitting.computeIfAbsent(shape.blank().id(), id -> capsOn(shape))) {
            long style = task.style.part(shape.blank(), HandleForm.SPLIT, Station.BUTT_CAP, cap, 1);
            double mass = c >= 0 ? cap.massMg() : cap.massMg() + SLACK_MG;
            least = Math.min(least, (long) (c * mass) + work(cap) - k.perStyleCenti() * style);
        }
        return closedGrips ? Math.min(0, least) : TrainGraph.none(least) ? 0 : least;
    }

    private List<ButtCap> capsOn(BlankShape shape) {
        Setting any = Setting.of(
                task.catalog, task.brief, shape, new Layout(shape.blank().id(), 100, HandleForm.SPLIT, 5));
        Refusal refusal = new Refusal();
        List<ButtCap> caps = new ArrayList<>();
        for (ButtCap cap : task.caps) {
            Placed placed = new Placed(Station.BUTT_CAP, cap, -cap.addedMm(), cap.addedMm());
            task.rules.onPart(any, placed, refusal.reset());
            if (!refusal.refused()) {
                caps.add(cap);
            }
        }
        return caps;
    }

    private long train(BlankShape shape) {
        boolean ruled = task.rules.rules().stream().anyMatch(rule -> rule.code().equals("guide-train"));
        int fewest = ruled
                ? GuidePlan.fewestGuides(task.brief.rodType(), shape.blank().lengthMm())
                : guideFloor >= 0 ? 0 : Station.MOST_GUIDES;
        return fewest * guideFloor + Math.min(0, 3 * guideFloor) + tipFloor + threadStyle;
    }

    private long seats(BlankShape shape, HandleForm form, double footMm) {
        long least = TrainGraph.NONE;
        double c = least(-SEAT_REACH_MM, SEAT_REACH_MM);
        for (ReelSeat seat : task.seats) {
            double thick = shape.profile().at(footMm - seat.footCentreMm());
            double thin = shape.profile().at(footMm - seat.footCentreMm() + seat.lengthMm());
            if ((seat.boreMm() >= thin || !boreRuled) && seat.facts().durabilityClass() >= leastClass) {
                long style = task.style.part(shape.blank(), form, Station.SEAT, seat, 1)
                        + task.gripMatch.bestPair(task.style, seat, form == HandleForm.SPLIT);
                double mass = seat.massMg() + SLACK_MG;
                long arbor = 0;
                if (c >= 0) {
                    mass = Math.max(0, seat.massMg() - seat.movingHoodG() * 1000 * (task.hoods.isEmpty() ? 0 : 1));
                    if ((seat.boreMm() - thick) / 2 >= ArborRings.TAPE_UP_TO_MM + 0.01) {
                        mass += arborMg(seat, thick);
                        arbor = arborWork;
                    }
                }
                least = Math.min(least, (long) (c * mass) + work(seat) + arbor - k.perStyleCenti() * style);
            }
        }
        return least;
    }

    /** Least mass of the arbors a gap needs. */
    private double arborMg(ReelSeat seat, double thickMm) {
        double outer = seat.boreMm() - SeatGap.UNDER_BORE_MM;
        double inner = thickMm + SeatGap.OVER_BLANK_MM;
        int rings = ArborRings.count(seat.lengthMm(), task.brief.durabilityClass());
        double volume = Math.PI / 4 * (outer * outer - inner * inner) * rings * SeatGap.RING_MM;
        return Math.max(0, volume * lightestArborGMm3 * 1000 - 1);
    }

    /** Cheapest grip of at least a length behind the seat. */
    private long grips(
            List<Grip> grips,
            Station station,
            HandleForm form,
            BlankShape shape,
            double leastMm,
            double fromMm,
            double toMm) {
        long least = TrainGraph.NONE;
        double c = least(fromMm, Math.max(fromMm, toMm));
        double thin = shape.profile().at(task.brief.reachMaxMm());
        double thick = shape.blank().buttOdMm();
        for (Grip grip : grips) {
            if (grip.lengthMm() < leastMm - 1) {
                continue;
            }
            long style = task.style.part(shape.blank(), form, station, grip, 1);
            double mass = c >= 0
                    ? Cuts.lightestMg(grip, thick, Math.max(grip.shortestMm(), leastMm - 1))
                            + gluedMg(grip, thin, leastMm)
                    : grip.massMg() + SLACK_MG;
            least = Math.min(least, (long) (c * mass) + work(grip) - k.perStyleCenti() * style);
        }
        return least;
    }

    /** Glue under the shortest cut. */
    private double gluedMg(Grip grip, double thinMm, double leastMm) {
        double length = Math.min(grip.lengthMm(), Math.max(grip.shortestMm(), leastMm - 1));
        double film = task.catalog.rates().adhesiveFilmMm();
        return ArborRings.adhesiveMassG(thinMm, length, film, glueGCm3) * 1000 - 1;
    }

    private long guides(double nearMm) {
        double c = least(nearMm, 6000);
        long least = TrainGraph.NONE;
        for (Part part : task.candidates.of(PartKind.GUIDE)) {
            if (part.facts().durabilityClass() < leastClass) {
                continue;
            }
            Guide guide = (Guide) part;
            long style = task.style.part(anyBlank(), HandleForm.SPLIT, Station.guide(1), guide, 3);
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

    /** Where the handle's own rule is dropped, or stations are given, a keeper may be left out all the same. */
    private boolean keeperNeeded() {
        Wish<Boolean> wish = task.brief.handle().keeper();
        return task.handleRule && wish != null && wish.hard() && wish.value() && !task.keepers.isEmpty();
    }

    private long work(Part part) {
        return k.perMilli() * (task.tariff.partMilli(part, 1) + task.tariff.workMilli(part));
    }

    private Blank anyBlank() {
        return task.blanks.get(0);
    }

    private double least(double fromMm, double toMm) {
        return k.leastPerMg(fromMm, toMm, armMm);
    }
}
