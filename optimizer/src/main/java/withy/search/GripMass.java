package withy.search;

import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.mechanics.ArborRings;
import withy.mechanics.Frustum;
import withy.mechanics.MassSum;
import withy.rod.Fitter;
import withy.rod.GripFit;

/**
 * Least mass of one grip on a blank, or on any, wherever the reel stands: as sold, with the widest bore the blank can ask for, and glue for its thinnest place.
 * In mg about the rear end, with the range that end lies in, told from the reel foot.
 */
final class GripMass {
    /** Rounding of a fitted grip's mass and glue, mg. */
    private static final double ROUNDING_MG = 2;

    /** Longest that rings of tape under a grip are together, mm. */
    private static final double MOST_TAPE_MM = ArborRings.MOST * Fitter.TAPE_RING_MM;

    private final Ground ground;
    private final Cut cut;
    private final Reach reach;
    private final double lengthMm;
    private final double thickMm;
    private final double thinMm;
    /** Of a grip of fixed length. */
    private final @Nullable MassSum least;
    /** Of one that fills what there is, slice by slice, mg. */
    private final double @Nullable [] slicesMg;

    private @Nullable MassSum most;

    /**
     * Where a grip may stand.
     *
     * @param fromMm its rear end at least, told from the reel foot
     * @param toMm its rear end at most
     * @param tightestMm its rear end where the blank under it is thickest, mm from the butt
     * @param loosestMm its rear end where it is thinnest, mm from the butt
     * @param behindMm how far behind the reel foot a grip that fills ends at most
     * @param shallowMm how far at least
     */
    record Reach(double fromMm, double toMm, double tightestMm, double loosestMm, double behindMm, double shallowMm) {}

    GripMass(Ground ground, Cut cut, Underlying on, Reach reach) {
        this.ground = ground;
        this.cut = cut;
        this.reach = reach;
        if (cut.fills()) {
            double shortest = Math.max(0, Math.max(cut.grip().shortestMm(), ground.firstFoot() - reach.behindMm));
            this.lengthMm = ground.firstFoot();
            this.thickMm = on.thickest(0, ground.lastFoot());
            this.thinMm = on.thinnest(ground.lastFoot());
            this.least = null;
            double[] slices = cut.slicesG(shortest, cut.widestBoreMm(thickMm, ground.reamRuled));
            double glueMg =
                    1000 * glue(ground.thinnestGlueGMl, thinMm, shortest).massG() / slices.length;
            for (int s = 0; s < slices.length; s++) {
                slices[s] = slices[s] * 1000 + glueMg;
            }
            this.slicesMg = slices;
        } else {
            double front = reach.loosestMm + cut.lengthMm();
            this.lengthMm = cut.lengthMm();
            this.thickMm = on.thickest(reach.tightestMm, front);
            this.thinMm = on.thinnest(front);
            this.least = cut.least(cut.widestBoreMm(thickMm, ground.reamRuled))
                    .plus(glue(ground.thinnestGlueGMl, thinMm, cut.lengthMm()));
            this.slicesMg = null;
        }
    }

    private MassSum glue(double densityGMl, double odMm, double lengthMm) {
        double film = ground.catalog.rates().adhesiveFilmMm();
        return MassSum.point(ArborRings.adhesiveMassG(odMm, lengthMm, film, densityGMl), lengthMm / 2);
    }

    /** Masses no fitted grip exceeds anywhere, told from its rear end, g: as sold, with glue for the thickest place and tape for the thinnest. */
    private MassSum most() {
        MassSum known = most;
        if (known == null) {
            Grip grip = cut.grip();
            double length = cut.fills() ? grip.lengthMm() : cut.lengthMm();
            double tapeG = Frustum.tube(MOST_TAPE_MM, grip.boreMm(), Math.min(grip.boreMm(), thinMm))
                    .massG(ground.catalog.rates().tapeDensityGMm3() * 1000);
            known = new GripFit(grip.boreMm(), grip.boreMm(), 0, 0)
                    .mass(grip, 0, length)
                    .plus(glue(ground.thickestGlueGMl, thickMm, length))
                    .plus(MassSum.point(tapeG, length / 2));
            most = known;
        }
        return known;
    }

    /** A number it costs no less than wherever the reel stands. */
    long floor(Linear k, double armMm) {
        return (long) Math.floor(mass(reach.fromMm, reach.toMm, k, armMm)) + besides(k);
    }

    /** The same of a grip of fixed length with its rear end between two places told from the reel foot. */
    long floor(double fromMm, double toMm, Linear k, double armMm) {
        return (long) Math.floor(mass(fromMm, toMm, k, armMm)) + besides(k);
    }

    /** The same of a grip that fills what there is. */
    long floor(Stretch on, Linear k, double armMm) {
        return (long) Math.floor(filled(on, k, armMm)) + besides(k);
    }

    private long besides(Linear k) {
        return k.perMilli() * cut.milli() - k.perStyleCenti() * cut.style() + k.perMilliStep() * cut.missed();
    }

    /** What a full grip fills: from the butt on to a seat, at least and at most so long, over a blank so thick and so thin. */
    record Stretch(int footMm, double shortestMm, double longestMm, double thickMm, double thinMm) {}

    private double filled(Stretch on, Linear k, double arm) {
        double front = on.longestMm - on.footMm;
        if (k.leastPerMg(-on.footMm, front, arm) < 0) {
            return mass(reach.fromMm, reach.toMm, k, arm);
        }
        double length = Math.max(cut.grip().shortestMm(), on.shortestMm);
        double[] slices = cut.slicesG(length, cut.widestBoreMm(on.thickMm, ground.reamRuled));
        double glueMg = 1000 * glue(ground.thinnestGlueGMl, on.thinMm, length).massG() / slices.length;
        double sum = 0;
        for (int s = 0; s < slices.length; s++) {
            double from = (double) s / slices.length * length - on.footMm;
            double to = (s + 1.0) / slices.length * Math.max(length, on.longestMm) - on.footMm;
            sum += (1000 * slices[s] + glueMg) * k.leastPerMg(from, to, arm);
        }
        double dearest = Math.max(k.perMgAt(-on.footMm, arm), k.perMgAt(front, arm));
        return sum - ROUNDING_MG * dearest - Math.abs(k.perMgMm()) - Math.abs(k.perMgMm2());
    }

    private double mass(double from, double to, Linear k, double arm) {
        double front = to + lengthMm;
        double c = k.leastPerMg(from, front, arm);
        double dearest = Math.max(k.perMgAt(from, arm), k.perMgAt(front, arm));
        double rounding = ROUNDING_MG * Math.max(Math.abs(c), dearest) + Math.abs(k.perMgMm()) + Math.abs(k.perMgMm2());
        MassSum fixed = least;
        if (c >= 0) {
            return (fixed == null ? sliced(k, arm) : whole(fixed, from, to, k, arm)) - rounding;
        }
        boolean welcomeAllAlong = fixed != null && dearest <= 0;
        return (welcomeAllAlong ? whole(most(), from, to, k, arm) : c * 1000 * most().massG()) - rounding;
    }

    /** Least over the places the rear end of such masses may lie at: at one of the ends, or at the vertex between. */
    private static double whole(MassSum g, double from, double to, Linear k, double arm) {
        double cheapest = Math.min(at(g, from, k, arm), at(g, to, k, arm));
        double curve = k.perMgMm2() * g.massG();
        if (curve > 0) {
            double vertex =
                    -(k.perMgMm() * g.massG() + 2 * k.perMgMm2() * (arm * g.massG() + g.firstGmm())) / (2 * curve);
            if (vertex > from && vertex < to) {
                cheapest = Math.min(cheapest, at(g, vertex, k, arm));
            }
        }
        return cheapest;
    }

    private static double at(MassSum g, double rear, Linear k, double arm) {
        double lever = rear + arm;
        return 1000
                * (k.perMg() * g.massG()
                        + k.perMgMm() * (rear * g.massG() + g.firstGmm())
                        + k.perMgMm2() * (lever * lever * g.massG() + 2 * lever * g.firstGmm() + g.secondGmm2()));
    }

    /** Slice by slice at the cheapest place each may lie: it slides with the reel and with the grip's length. */
    private double sliced(Linear k, double arm) {
        double sum = 0;
        double[] slices = slicesMg == null ? new double[0] : slicesMg;
        for (int s = 0; s < slices.length; s++) {
            double rear = (double) s / slices.length;
            double front = (s + 1.0) / slices.length;
            double from = reach.fromMm * (1 - rear) - reach.behindMm * rear;
            double to = reach.toMm * (1 - front) - reach.shallowMm * front;
            sum += slices[s] * k.leastPerMg(from, Math.max(from, to), arm);
        }
        return sum;
    }
}
