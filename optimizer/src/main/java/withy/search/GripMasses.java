package withy.search;

import java.util.Objects;
import java.util.function.ToLongFunction;
import org.jspecify.annotations.Nullable;
import withy.catalog.Grip;
import withy.mechanics.ArborRings;
import withy.mechanics.Frustum;
import withy.mechanics.MassSum;
import withy.mechanics.TaperProfile;
import withy.rod.BlankShape;
import withy.rod.Fitter;
import withy.rod.GripFit;
import withy.rod.Placed;
import withy.rod.Station;
import withy.rules.Refusal;

/**
 * Least masses of the grips of one station on one blank, or on any, wherever the reel stands: as sold, with the widest bore the blank can ask for, and glue for
 * its thinnest place. In mg about the rear end, with the range that end lies in, told from the reel foot.
 */
final class GripMasses {
    /** Rounding of a fitted grip's mass and glue, mg. */
    private static final double ROUNDING_MG = 2;

    /** Longest that rings of tape under a grip are together, mm. */
    private static final double MOST_TAPE_MM = ArborRings.MOST * Fitter.TAPE_RING_MM;

    private final Cut[] cuts;
    private final MassSum[] least;
    private final @Nullable MassSum[] most;
    private final double[] thickMm;
    private final double[] thinMm;
    private final double[] fromMm;
    private final double[] toMm;
    private final double[] lengthMm;
    private final double[][] slicesMg;
    private final double[] tightestMm;
    private final double[] loosestMm;
    private final Station station;
    private final Ground ground;
    private final @Nullable BlankShape shape;
    private final Refusal refusal = new Refusal();
    private final byte[] known;
    private final double behindMm;
    private final double shallowMm;

    private GripMasses(Shelf shelf, Cut[] cuts, Station station, @Nullable BlankShape shape) {
        this.station = station;
        this.ground = shelf.ground;
        this.shape = shape;
        this.cuts = cuts;
        this.behindMm = shelf.deepestMm + shelf.widestCheckMm;
        this.shallowMm = shelf.shallowestMm;
        this.least = new MassSum[cuts.length];
        this.most = new MassSum[cuts.length];
        this.thickMm = new double[cuts.length];
        this.thinMm = new double[cuts.length];
        this.fromMm = new double[cuts.length];
        this.toMm = new double[cuts.length];
        this.lengthMm = new double[cuts.length];
        this.slicesMg = new double[cuts.length][];
        this.tightestMm = new double[cuts.length];
        this.loosestMm = new double[cuts.length];
        this.known = new byte[cuts.length];
    }

    /**
     * Of the rear or full grips of a shelf.
     *
     * @param on what they stand on
     * @param shape the blank, or null where each is taken to fit
     */
    static GripMasses rears(Shelf shelf, Underlying on, @Nullable BlankShape shape) {
        GripMasses masses = new GripMasses(shelf, shelf.rears, Station.REAR_GRIP, shape);
        Ground ground = shelf.ground;
        double behind = masses.behindMm;
        for (int i = 0; i < shelf.rears.length; i++) {
            Cut cut = shelf.rears[i];
            if (cut.fills()) {
                masses.filling(i, ground, on);
            } else {
                masses.fixed(i, ground, on, -behind - cut.lengthMm(), -shelf.shallowestMm - cut.lengthMm(), false);
            }
        }
        return masses;
    }

    /** Of the butt grips. */
    static GripMasses butts(Shelf shelf, Underlying on, @Nullable BlankShape shape) {
        GripMasses masses = new GripMasses(shelf, shelf.butts, Station.BUTT_GRIP, shape);
        for (int i = 0; i < shelf.butts.length; i++) {
            masses.fixed(i, shelf.ground, on, -shelf.ground.lastFoot(), -shelf.ground.firstFoot(), true);
        }
        return masses;
    }

    /** Of the fore grips. */
    static GripMasses fores(Shelf shelf, Underlying on, @Nullable BlankShape shape) {
        GripMasses masses = new GripMasses(shelf, shelf.fores, Station.FORE_GRIP, shape);
        for (int i = 0; i < shelf.fores.length; i++) {
            double furthest = shelf.longestFrontMm + shelf.widestCheckMm;
            masses.fixed(i, shelf.ground, on, shelf.shortestFrontMm, furthest, false);
        }
        return masses;
    }

    private void fixed(int i, Ground ground, Underlying on, double from, double to, boolean atButt) {
        Cut cut = cuts[i];
        double rear = atButt ? 0 : Math.max(0, ground.firstFoot() + from);
        double front = Math.max(rear, (atButt ? 0 : ground.lastFoot() + to) + cut.lengthMm());
        double thick = on.thickest(rear, front);
        thickMm[i] = thick;
        thinMm[i] = on.thinnest(front);
        least[i] = cut.least(cut.widestBoreMm(thick, ground.reamRuled))
                .plus(glue(ground.thinnestGlueGMl, thinMm[i], cut.lengthMm()));
        tightestMm[i] = rear;
        loosestMm[i] = Math.max(rear, front - cut.lengthMm());
        fromMm[i] = from;
        toMm[i] = to;
        lengthMm[i] = cut.lengthMm();
    }

    /** A full grip fills what lies between butt and seat: longer where the reel stands further up. */
    private void filling(int i, Ground ground, Underlying on) {
        Cut cut = cuts[i];
        double least = Math.max(cut.grip().shortestMm(), ground.firstFoot() - behindMm);
        thickMm[i] = on.thickest(0, ground.lastFoot());
        thinMm[i] = on.thinnest(ground.lastFoot());
        fromMm[i] = -ground.lastFoot();
        toMm[i] = -ground.firstFoot();
        lengthMm[i] = ground.firstFoot();
        slicesMg[i] = cut.slicesG(Math.max(0, least), cut.widestBoreMm(thickMm[i], ground.reamRuled));
        double glueMg = 1000
                * glue(ground.thinnestGlueGMl, thinMm[i], Math.max(0, least)).massG();
        for (int s = 0; s < slicesMg[i].length; s++) {
            slicesMg[i][s] = slicesMg[i][s] * 1000 + glueMg / slicesMg[i].length;
        }
    }

    private MassSum glue(double densityGMl, double odMm, double lengthMm) {
        double film = ground.catalog.rates().adhesiveFilmMm();
        return MassSum.point(ArborRings.adhesiveMassG(odMm, lengthMm, film, densityGMl), lengthMm / 2);
    }

    /** Masses no fitted grip exceeds anywhere, told from its rear end, g: as sold, with glue for the thickest place and tape for the thinnest. */
    private MassSum most(int i) {
        MassSum known = most[i];
        if (known == null) {
            Grip grip = cuts[i].grip();
            double length = cuts[i].fills() ? grip.lengthMm() : cuts[i].lengthMm();
            double tapeG = Frustum.tube(MOST_TAPE_MM, grip.boreMm(), Math.min(grip.boreMm(), thinMm[i]))
                    .massG(ground.catalog.rates().tapeDensityGMm3() * 1000);
            known = new GripFit(grip.boreMm(), grip.boreMm(), 0, 0)
                    .mass(grip, 0, length)
                    .plus(glue(ground.thickestGlueGMl, thickMm[i], length))
                    .plus(MassSum.point(tapeG, length / 2));
            most[i] = known;
        }
        return known;
    }

    /**
     * False where a grip of fixed length goes nowhere on the blank: too tight even at the thinnest place it could stand at, or too loose at the
     * thickest.
     */
    boolean possible(int i) {
        if (known[i] == 0) {
            boolean may =
                    shape == null || cuts[i].fills() || fits(i, loosestMm[i], false) && fits(i, tightestMm[i], true);
            known[i] = (byte) (may ? 1 : -1);
        }
        return known[i] > 0;
    }

    private boolean fits(int i, double rear, boolean thickest) {
        Placed placed = new Placed(station, cuts[i].grip(), rear, cuts[i].lengthMm());
        ground.rules.onPart(ground.anySetting(Objects.requireNonNull(shape)), placed, refusal.reset());
        return !refusal.refused() || thickest != refusal.check().equals("loose");
    }

    /** All that may fit, by their floors under these prices wherever the reel stands, with what follows each. */
    Ranked ranked(Linear k, double armMm, ToLongFunction<Cut> onward) {
        long[] floors = new long[cuts.length];
        for (int i = 0; i < floors.length; i++) {
            long on = onward.applyAsLong(cuts[i]);
            floors[i] = TrainGraph.none(on) ? on : (long) Math.floor(mass(i, k, armMm)) + besides(i, k) + on;
        }
        return new Ranked(floors, this::possible);
    }

    /** The same with the rear end at one place told from the reel foot. */
    Ranked rankedAt(double rearMm, Linear k, double armMm, ToLongFunction<Cut> onward) {
        long[] floors = new long[cuts.length];
        for (int i = 0; i < floors.length; i++) {
            long on = onward.applyAsLong(cuts[i]);
            floors[i] = TrainGraph.none(on) ? on : near(i, rearMm, rearMm, k, armMm) + on;
        }
        return new Ranked(floors, this::possible);
    }

    /** Full grips that fill what lies between the butt and a seat whose reel foot stands at one place, mm from the butt. */
    Ranked filledAt(int footMm, Linear k, double armMm, ToLongFunction<Cut> onward) {
        double shortest = Math.max(0, footMm - behindMm);
        double longest = Math.max(shortest, footMm - shallowMm);
        TaperProfile profile = Objects.requireNonNull(shape).profile();
        double thick = profile.largestBetween(0, longest);
        double thin = profile.at(longest);
        long[] floors = new long[cuts.length];
        for (int i = 0; i < floors.length; i++) {
            long on = onward.applyAsLong(cuts[i]);
            floors[i] = TrainGraph.none(on)
                    ? on
                    : (long) Math.floor(filled(i, new Stretch(footMm, shortest, longest, thick, thin), k, armMm))
                            + besides(i, k)
                            + on;
        }
        return new Ranked(floors, this::possible);
    }

    /** What a full grip fills: from the butt on, at least and at most so long, over a blank so thick and so thin. */
    private record Stretch(int footMm, double shortestMm, double longestMm, double thickMm, double thinMm) {}

    private double filled(int i, Stretch on, Linear k, double arm) {
        double front = on.longestMm - on.footMm;
        if (k.leastPerMg(-on.footMm, front, arm) < 0) {
            return mass(i, k, arm);
        }
        Cut cut = cuts[i];
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

    /** Floor of a grip of fixed length with its rear end between two places told from the reel foot. */
    long near(int i, double fromMm, double toMm, Linear k, double armMm) {
        return (long) Math.floor(mass(i, fromMm, toMm, k, armMm)) + besides(i, k);
    }

    private long besides(int i, Linear k) {
        return k.perMilli() * cuts[i].milli()
                - k.perStyleCenti() * cuts[i].style()
                + k.perMilliStep() * cuts[i].missed();
    }

    private double mass(int i, Linear k, double arm) {
        return mass(i, fromMm[i], toMm[i], k, arm);
    }

    private double mass(int i, double from, double to, Linear k, double arm) {
        double front = to + lengthMm[i];
        double c = k.leastPerMg(from, front, arm);
        double dearest = Math.max(k.perMgAt(from, arm), k.perMgAt(front, arm));
        double rounding = ROUNDING_MG * Math.max(Math.abs(c), dearest) + Math.abs(k.perMgMm()) + Math.abs(k.perMgMm2());
        if (c >= 0) {
            return (slicesMg[i] == null ? whole(least[i], from, to, k, arm) : sliced(i, k, arm)) - rounding;
        }
        boolean welcomeAllAlong = slicesMg[i] == null && dearest <= 0;
        return (welcomeAllAlong ? whole(most(i), from, to, k, arm) : c * 1000 * most(i).massG()) - rounding;
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
    private double sliced(int i, Linear k, double arm) {
        double sum = 0;
        double[] slices = slicesMg[i];
        for (int s = 0; s < slices.length; s++) {
            double rear = (double) s / slices.length;
            double front = (s + 1.0) / slices.length;
            double least = fromMm[i] * (1 - rear) - behindMm * rear;
            double most = toMm[i] * (1 - front) - shallowMm * front;
            sum += slices[s] * k.leastPerMg(least, Math.max(least, most), arm);
        }
        return sum;
    }
}
