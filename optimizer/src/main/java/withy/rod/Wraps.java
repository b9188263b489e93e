package withy.rod;

import java.util.ArrayList;
import java.util.List;
import withy.mechanics.ThreadWrap;

/**
 * Thread and finish of every wrap. Lengths are common practice (trade table); the wrapped diameter is the blank's there.
 */
public final class Wraps {
    /** Wrap beyond the foot, mm (trade table: foot + 3–5). */
    public static final double BEYOND_FOOT_MM = 4;

    /** Underwrap beyond the foot, mm. ASSUMED. */
    public static final double UNDERWRAP_BEYOND_MM = 8;

    /** Wrap at the female end of a ferrule, mm (trade table 20–35). */
    public static final double FERRULE_FEMALE_MM = 25;

    /** Wrap at the male side of a ferrule, mm (trade table 10–15). */
    public static final double FERRULE_MALE_MM = 12;

    /** Dressing wrap behind the tip-top's tube, mm. ASSUMED. */
    public static final double TIP_TOP_MM = 6;

    /** Finish beyond a wrap at each end, mm. ASSUMED. */
    private static final double BEYOND_WRAP_MM = 1;

    private static final double UL_PER_MM3 = 1;

    private final Setting setting;
    private final Consumables with;
    private final double filmMm;

    Wraps(Setting setting, Consumables with) {
        this.setting = setting;
        this.with = with;
        this.filmMm = setting.catalog().rates().finishFilmMm();
    }

    /**
     * One wrap.
     *
     * @param xMm its middle, mm
     * @param lengthMm covered length, mm
     * @param threadG thread, g
     * @param threadMm thread used, mm
     * @param finishUl finish on it, µl
     */
    public record Wrap(double xMm, double lengthMm, double threadG, double threadMm, double finishUl) {}

    /** Over one foot of a guide or keeper whose ring sits at x; with an underwrap, two layers. */
    public Wrap foot(double xMm, double footLengthMm, boolean underwrap) {
        double od = setting.odAt(xMm);
        Wrap over = wrap(xMm, footLengthMm + BEYOND_FOOT_MM, od);
        if (!underwrap) {
            return over;
        }
        double under = footLengthMm + UNDERWRAP_BEYOND_MM;
        ThreadWrap thread = new ThreadWrap(under, od, with.thread().diameterMm());
        return new Wrap(
                xMm,
                over.lengthMm(),
                over.threadG() + thread.threadMassG(with.thread().tex()),
                over.threadMm() + thread.threadLengthMm(),
                over.finishUl() + thread.resinVolumeMm3(0) * UL_PER_MM3);
    }

    /**
     * Where a wrap lies.
     *
     * @param xMm its middle, mm
     * @param lengthMm covered length, mm
     */
    public record Place(double xMm, double lengthMm) {}

    /** The wraps at a blank's joints, two of each: at its tip-side end and over its butt-side half. */
    public static List<Place> atJoints(BlankShape shape) {
        List<Place> places = new ArrayList<>();
        for (BlankShape.Joint joint : shape.joints()) {
            places.add(new Place(joint.toMm() + FERRULE_MALE_MM / 2, FERRULE_MALE_MM));
            places.add(new Place(joint.fromMm() + FERRULE_FEMALE_MM / 2, FERRULE_FEMALE_MM));
        }
        return places;
    }

    /** At a place. */
    public Wrap at(Place place) {
        return wrap(place.xMm, place.lengthMm);
    }

    /** Behind the tip-top's tube, which ends at x. */
    public Wrap tipTop(double tubeEndMm) {
        return wrap(tubeEndMm - TIP_TOP_MM / 2, TIP_TOP_MM);
    }

    /** Finish over bare blank (an inscription), µl. */
    public double coatUl(double xMm, double lengthMm) {
        return coatUlOn(setting.odAt(xMm), lengthMm);
    }

    private double coatUlOn(double od, double lengthMm) {
        return coatUlOn(od, lengthMm, filmMm);
    }

    private static double coatUlOn(double od, double lengthMm, double filmMm) {
        double over = od + 2 * filmMm;
        return Math.PI / 4 * (over * over - od * od) * lengthMm * UL_PER_MM3;
    }

    private Wrap wrap(double xMm, double lengthMm) {
        return wrap(xMm, lengthMm, setting.odAt(xMm));
    }

    private Wrap wrap(double xMm, double lengthMm, double od) {
        return on(od, new Place(xMm, lengthMm), with, filmMm);
    }

    /**
     * Of any thread and finish on any blank.
     *
     * @param odMm diameter under it, mm
     * @param filmMm finish over the thread, mm
     */
    public static Wrap on(double odMm, Place place, Consumables with, double filmMm) {
        ThreadWrap thread = new ThreadWrap(place.lengthMm, odMm, with.thread().diameterMm());
        double ends = coatUlOn(odMm, 2 * BEYOND_WRAP_MM, filmMm);
        return new Wrap(
                place.xMm,
                place.lengthMm,
                thread.threadMassG(with.thread().tex()),
                thread.threadLengthMm(),
                thread.resinVolumeMm3(filmMm) * UL_PER_MM3 + ends);
    }
}
