package withy.search;

import java.util.List;
import withy.brief.Brief.HandleForm;
import withy.catalog.Blank;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.catalog.WrapThread;
import withy.rod.BlankShape;
import withy.rod.GuidePlan;
import withy.rod.LoadBearing;
import withy.rod.Setting;
import withy.rod.Station;

/**
 * Cheap numbers that no guide train with its thread can cost less than, under one set of prices: each station by itself takes its best part at its
 * best place, whether or not the parts go together. For prices under which {@link TrainFloors} does not hold, and before it is worked out.
 */
final class Floors {
    /** Furthest tip, mm; further than any. */
    private static final double FURTHEST_MM = 6000;

    /** Glue, thread and rounding that a part may add, mg. */
    private static final long SLACK_MG = 30_000;

    private final Ground ground;
    private final Linear k;
    private final int leastClass;
    private final double armMm;
    private final long guideFloor;
    private final long tipFloor;
    private final long threadStyle;
    private final long credit;

    Floors(Ground ground, Linear k, int leastClass) {
        this.ground = ground;
        this.leastClass = leastClass;
        this.k = k;
        this.armMm = Setting.armMm(ground.brief);
        double near = nearest(ground);
        this.guideFloor = guides(near);
        this.tipFloor = least(ground.tipTops, Station.TIP_TOP, near, FURTHEST_MM);
        this.threadStyle = threads();
        this.credit = k.perMilliStep() * credits();
    }

    /** Nothing of a train stands nearer the reel foot, mm; where guides need not be spaced evenly they may stand behind a tip that is nearer than the stripper. */
    private static double nearest(Ground ground) {
        double stripper = GuidePlan.stripperDistanceMm(ground.brief) - 100;
        double tip = ground.blanks.stream().mapToDouble(Blank::lengthMm).min().orElse(0) - ground.lastFoot();
        return ground.ruled("guide-train") ? stripper : Math.min(stripper, tip);
    }

    /** A floor for guides, tip-top and thread on a blank. */
    long train(BlankShape shape) {
        if (TrainGraph.none(guideFloor) || TrainGraph.none(tipFloor)) {
            return TrainGraph.NONE;
        }
        boolean ruled = ground.ruled("guide-train");
        int fewest = ruled
                ? GuidePlan.fewestGuides(ground.brief, shape.blank().lengthMm())
                : guideFloor >= 0 ? 0 : Station.MOST_GUIDES;
        return fewest * guideFloor + Math.min(0, 3 * guideFloor) + tipFloor + threadStyle + credit;
    }

    private long guides(double nearMm) {
        double c = least(nearMm, FURTHEST_MM);
        long least = TrainGraph.NONE;
        for (Part part : ground.candidates.of(PartKind.GUIDE)) {
            if (part.facts().durabilityClass() < leastClass) {
                continue;
            }
            Guide guide = (Guide) part;
            long style = ground.style.part(anyBlank(), HandleForm.SPLIT, Station.guide(1), guide, 3);
            double mass = c >= 0 ? guide.massMg() : guide.massMg() + SLACK_MG;
            least = Math.min(least, (long) (c * mass) + work(guide) - k.perStyleCenti() * style);
        }
        return least;
    }

    /** Most that a wished guide, whatever its numbers, and a wished thread are credited, as a number not above nought. */
    private long credits() {
        long guide = 0;
        for (Part part : ground.candidates.of(PartKind.GUIDE)) {
            guide = Math.min(guide, ground.wishes.part(Station.guide(1), part, 1));
        }
        long thread = 0;
        for (WrapThread one : ground.threads) {
            thread = Math.min(thread, ground.wishes.part(Station.THREAD, one, 1));
        }
        return guide + thread;
    }

    private long threads() {
        long most = 0;
        for (WrapThread thread : ground.threads) {
            most = Math.max(most, ground.style.part(anyBlank(), HandleForm.SPLIT, Station.THREAD, thread, 1));
        }
        return -k.perStyleCenti() * (most + 600);
    }

    private <P extends Part> long least(List<P> parts, Station station, double fromMm, double toMm) {
        double c = least(fromMm, toMm);
        long least = TrainGraph.NONE;
        for (P part : parts) {
            if (LoadBearing.is(part) && part.facts().durabilityClass() < leastClass) {
                continue;
            }
            long style = ground.style.part(anyBlank(), HandleForm.SPLIT, station, part, 1);
            double mass = c >= 0 ? part.massMg() : part.massMg() + SLACK_MG;
            long missed = k.perMilliStep() * Math.min(0, ground.wishes.part(station, part, 1));
            least = Math.min(least, (long) (c * mass) + work(part) - k.perStyleCenti() * style + missed);
        }
        return least;
    }

    private long work(Part part) {
        return k.perMilli() * (ground.tariff.partMilli(part, 1) + ground.tariff.workMilli(part));
    }

    private Blank anyBlank() {
        return ground.blanks.get(0);
    }

    private double least(double fromMm, double toMm) {
        return k.leastPerMg(fromMm, toMm, armMm);
    }
}
