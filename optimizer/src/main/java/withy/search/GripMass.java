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

    /** What a grip may be longer than it is sold by rounding, mm. */
    private static final double PLAY_MM = 0.01;

    /** Longest that rings of tape under a grip are together, mm. */
    private static final double MOST_TAPE_MM = ArborRings.MOST * Fitter.TAPE_RING_MM;

    private final GripPlaces places;
    private final int place;
    private final double thickMm;
    private final double thinMm;
    /** Of a grip of fixed length its least mass, g, and the two moments about its rear end, g·mm and g·mm². */
    private final double leastG;

    private final double leastGmm;
    private final double leastGmm2;
    /** Of one that fills what there is, slice by slice, mg. */
    private final double @Nullable [] slicesMg;

    private @Nullable MassSum most;
    private double @Nullable [] mostSlicesG;
    private double mostSlicesMm;

    /**
     * @param place which of the grips
     * @param on what it stands on
     */
    GripMass(GripPlaces places, int place, Underlying on) {
        this.places = places;
        this.place = place;
        Ground ground = places.ground;
        Cut cut = cut();
        if (cut.fills()) {
            double shortest = Math.max(0, Math.max(cut.grip().shortestMm(), ground.firstFoot() - places.behindMm));
            this.thickMm = on.thickest(0, ground.lastFoot());
            this.thinMm = on.thinnest(ground.lastFoot());
            this.leastG = 0;
            this.leastGmm = 0;
            this.leastGmm2 = 0;
            double[] slices = cut.slicesG(shortest, cut.widestBoreMm(thickMm, ground.reamRuled));
            double glueMg = 1000 * glueG(ground.thinnestGlueGMl, thinMm, shortest) / slices.length;
            for (int s = 0; s < slices.length; s++) {
                slices[s] = slices[s] * 1000 + glueMg;
            }
            this.slicesMg = slices;
        } else {
            double length = cut.lengthMm();
            GripPlaces.Reach reach = places.reach(place);
            double front = reach.loosestMm() + length;
            this.thickMm = on.thickest(reach.tightestMm(), front);
            this.thinMm = on.thinnest(front);
            MassSum sold = places.sold(place);
            // bored out and glued evenly along its length
            double boredG = cut.boredG(cut.widestBoreMm(thickMm, ground.reamRuled));
            double glueG = glueG(ground.thinnestGlueGMl, thinMm, length);
            this.leastG = sold.massG() - boredG + glueG;
            this.leastGmm = sold.firstGmm() + (glueG - boredG) * length / 2;
            this.leastGmm2 = sold.secondGmm2() + glueG * length * length / 4 - boredG * length * length / 3;
            this.slicesMg = null;
        }
    }

    private Cut cut() {
        return places.cuts[place];
    }

    private double lengthMm() {
        return slicesMg == null ? cut().lengthMm() : places.ground.firstFoot();
    }

    private double glueG(double densityGMl, double odMm, double lengthMm) {
        double film = places.ground.catalog.rates().adhesiveFilmMm();
        return ArborRings.adhesiveMassG(odMm, lengthMm, film, densityGMl);
    }

    /** Masses no fitted grip of fixed length exceeds but for glue and tape, told from its rear end, g: as sold. */
    private MassSum most() {
        MassSum known = most;
        if (known == null) {
            Grip grip = cut().grip();
            known = new GripFit(grip.boreMm(), grip.boreMm(), 0, 0).mass(grip, 0, cut().lengthMm());
            most = known;
        }
        return known;
    }

    /** A number it costs no less than wherever the reel stands. */
    long floor(Linear k, double armMm) {
        GripPlaces.Reach reach = places.reach(place);
        return (long) Math.floor(mass(reach.fromMm(), reach.toMm(), k, armMm)) + besides(k);
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
        Cut cut = cut();
        return k.perMilli() * cut.milli() - k.perStyleCenti() * cut.style() + k.perMilliStep() * cut.missed();
    }

    /** What a full grip fills: from the butt on to a seat, at least and at most so long, over a blank so thick and so thin. */
    record Stretch(int footMm, double shortestMm, double longestMm, double thickMm, double thinMm) {}

    private double filled(Stretch on, Linear k, double arm) {
        double front = on.longestMm - on.footMm;
        Ground ground = places.ground;
        Cut cut = cut();
        double length = Math.max(cut.grip().shortestMm(), on.shortestMm);
        double[] slices = cut.slicesG(length, cut.widestBoreMm(on.thickMm, ground.reamRuled));
        double glueMg = 1000 * glueG(ground.thinnestGlueGMl, on.thinMm, length) / slices.length;
        double longest = Math.max(length, on.longestMm);
        double sum = 0;
        for (int s = 0; s < slices.length; s++) {
            double from = (double) s / slices.length * length - on.footMm;
            double to = (s + 1.0) / slices.length * longest - on.footMm;
            double c = k.leastPerMg(from, to, arm);
            sum += c >= 0 ? c * (1000 * slices[s] + glueMg) : c * 1000 * mostSlicesG(longest)[s];
        }
        double least = k.leastPerMg(-on.footMm, front, arm);
        double dearest = Math.max(k.perMgAt(-on.footMm, arm), k.perMgAt(front, arm));
        sum += Math.min(0, least) * mostAddedMg(longest);
        return sum - ROUNDING_MG * Math.max(Math.abs(least), dearest) - Math.abs(k.perMgMm()) - Math.abs(k.perMgMm2());
    }

    /** The most of each slice of a grip that fills what there is, up to so much, from rear to front, g; by the handle's own rule none is longer than it is sold. */
    private double[] mostSlicesG(double longestMm) {
        Cut cut = cut();
        double length = places.ground.handleRule ? Math.min(cut.grip().lengthMm() + PLAY_MM, longestMm) : longestMm;
        if (mostSlicesG == null || length != mostSlicesMm) {
            mostSlicesG = cut.mostSlicesG(length);
            mostSlicesMm = length;
        }
        return mostSlicesG;
    }

    private double mass(double from, double to, Linear k, double arm) {
        double front = to + lengthMm();
        double c = k.leastPerMg(from, front, arm);
        double dearest = Math.max(k.perMgAt(from, arm), k.perMgAt(front, arm));
        double rounding = ROUNDING_MG * Math.max(Math.abs(c), dearest) + Math.abs(k.perMgMm()) + Math.abs(k.perMgMm2());
        boolean fixed = slicesMg == null;
        if (c >= 0) {
            return (fixed ? least(from, to, k, arm) : sliced(k, arm)) - rounding;
        }
        return (fixed ? welcome(from, to, k, arm, c) : sliced(k, arm) + c * mostAddedMg(longestMm())) - rounding;
    }

    /**
     * Of a grip of fixed length where weight is welcome at some place: as sold, less what may be bored out where weight is a burden, with most glue and tape where it is most welcome.
     *
     * @param c cost of a milligram where it is least
     */
    private double welcome(double from, double to, Linear k, double arm, double c) {
        Cut cut = cut();
        MassSum g = most();
        double widest = cut.widestBoreMm(thickMm, places.ground.reamRuled);
        double sliceMg = 1000 * (cut.boredG(widest) - cut.boredG(cut.grip().boreMm())) / Cut.SLICES;
        double bored = 0;
        for (int s = 0; s < Cut.SLICES; s++) {
            double rear = k.perMgAt(from + s * cut.lengthMm() / Cut.SLICES, arm);
            double front = k.perMgAt(to + (s + 1) * cut.lengthMm() / Cut.SLICES, arm);
            bored += sliceMg * Math.max(0, Math.max(rear, front));
        }
        return whole(g.massG(), g.firstGmm(), g.secondGmm2(), from, to, k, arm)
                - bored
                + c * mostAddedMg(cut.lengthMm());
    }

    /** Most glue and tape that is under so much of a grip anywhere, mg. */
    private double mostAddedMg(double lengthMm) {
        Ground ground = places.ground;
        double bore = cut().grip().boreMm();
        double tapeG = Frustum.tube(MOST_TAPE_MM, bore, Math.min(bore, thinMm))
                .massG(ground.catalog.rates().tapeDensityGMm3() * 1000);
        return 1000 * (tapeG + glueG(ground.thickestGlueGMl, thickMm, lengthMm));
    }

    private double least(double from, double to, Linear k, double arm) {
        return whole(leastG, leastGmm, leastGmm2, from, to, k, arm);
    }

    /** Least over the places the rear end of such masses may lie at: at one of the ends, or at the vertex between. */
    private static double whole(double g, double gmm, double gmm2, double from, double to, Linear k, double arm) {
        double cheapest = Math.min(at(g, gmm, gmm2, from, k, arm), at(g, gmm, gmm2, to, k, arm));
        double curve = k.perMgMm2() * g;
        if (curve > 0) {
            double vertex = -(k.perMgMm() * g + 2 * k.perMgMm2() * (arm * g + gmm)) / (2 * curve);
            if (vertex > from && vertex < to) {
                cheapest = Math.min(cheapest, at(g, gmm, gmm2, vertex, k, arm));
            }
        }
        return cheapest;
    }

    private static double at(double g, double gmm, double gmm2, double rear, Linear k, double arm) {
        double lever = rear + arm;
        return 1000
                * (k.perMg() * g
                        + k.perMgMm() * (rear * g + gmm)
                        + k.perMgMm2() * (lever * lever * g + 2 * lever * gmm + gmm2));
    }

    /** Longest that a grip that fills what there is may be, wherever the reel stands, mm. */
    private double longestMm() {
        return Math.max(0, places.ground.lastFoot() - places.shallowMm);
    }

    /** Slice by slice at the cheapest place each may lie: it slides with the reel and with the grip's length. */
    private double sliced(Linear k, double arm) {
        double sum = 0;
        GripPlaces.Reach reach = places.reach(place);
        double[] slices = slicesMg == null ? new double[0] : slicesMg;
        for (int s = 0; s < slices.length; s++) {
            double rear = (double) s / slices.length;
            double front = (s + 1.0) / slices.length;
            double from = reach.fromMm() * (1 - rear) - places.behindMm * rear;
            double to = reach.toMm() * (1 - front) - places.shallowMm * front;
            double c = k.leastPerMg(from, Math.max(from, to), arm);
            sum += c >= 0 ? c * slices[s] : c * 1000 * mostSlicesG(longestMm())[s];
        }
        return sum;
    }
}
