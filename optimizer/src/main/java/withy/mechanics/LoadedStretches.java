package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The free length of a held rod cut into smooth stretches, from tip to clamp.
 *
 * <p>Stretches end at every break of stiffness, own weight and load, and at every ring. Forces are turned into a frame that lies along a
 * reference direction and divided by the sum of all loads, lengths by the free length.
 */
final class LoadedStretches {
    /** Places nearer to each other than this, mm, count as one. */
    private static final double ONE_PLACE_MM = 1e-6;

    /** Parts of a stretch for a sum that only guides a search. */
    private static final int PARTS = 4;

    private final BendCase held;
    private final double cosReference;
    private final double sinReference;
    private final double tipMm;
    private final double lengthMm;
    private final double forceN;
    private final List<Stretch> all = new ArrayList<>();

    /**
     * One smooth stretch.
     *
     * @param u0 its end toward the tip
     * @param u1 its end toward the clamp
     * @param stiffness EI on it
     * @param weight own weight on it, N/mm, or null
     * @param forward all fixed point forces outboard of it
     * @param up likewise
     * @param couple couple that joins at u0
     */
    record Stretch(
            double u0,
            double u1,
            StiffnessProfile.Stretch stiffness,
            @Nullable TaperedWeight weight,
            double forward,
            double up,
            double couple) {}

    /** Weight per length a·g·d^n on one stretch, N/mm. */
    record TaperedWeight(double fromMm, double diameter, double slope, double scale, double exponent) {
        double at(double sMm) {
            double d = diameter + slope * (sMm - fromMm);
            return scale * (exponent == 1.0 ? d : Math.pow(d, exponent));
        }
    }

    /** A rod without a line. */
    LoadedStretches(BendCase held, double referenceRad) {
        this(held, referenceRad, 0.0, List.of());
    }

    /** A rod with a line of a tension, N, and rings at places, mm. */
    LoadedStretches(BendCase held, double referenceRad, double tensionN, List<Double> ringsMm) {
        this.held = held;
        this.cosReference = Math.cos(referenceRad);
        this.sinReference = Math.sin(referenceRad);
        this.tipMm = held.stiffness().tipMm();
        this.lengthMm = held.lengthMm();
        double force = tensionN;
        List<PointLoad> loads = held.loadsAhead();
        for (PointLoad load : loads) {
            force += load.size() + Math.abs(load.coupleNmm()) / lengthMm;
        }
        TubeMass own = held.own();
        if (own != null) {
            force += own.massG() * MassSum.NMM_PER_GMM;
        }
        this.forceN = force;
        if (force > 0.0) {
            cut(loads, ringsMm);
        }
    }

    List<Stretch> all() {
        return all;
    }

    /** Sum of all loads, tension among them, N; 0 leaves the rod straight. */
    double forceN() {
        return forceN;
    }

    double tipMm() {
        return tipMm;
    }

    double lengthMm() {
        return lengthMm;
    }

    double cosReference() {
        return cosReference;
    }

    double sinReference() {
        return sinReference;
    }

    private void cut(List<PointLoad> loads, List<Double> ringsMm) {
        NavigableSet<Double> places = new TreeSet<>(ringsMm);
        places.add(held.clampMm());
        add(places, tipMm);
        for (double place : held.stiffness().breaksMm()) {
            add(places, place);
        }
        TubeMass own = held.own();
        if (own != null) {
            for (int i = 0; i < own.profile().stations(); i++) {
                add(places, Math.min(own.profile().stationMm(i), tipMm));
            }
        }
        for (PointLoad load : loads) {
            add(places, load.sMm());
        }
        double[] down = places.tailSet(held.clampMm(), true).descendingSet().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        double forward = 0.0;
        double up = 0.0;
        for (int i = 1; i < down.length; i++) {
            double couple = 0.0;
            for (PointLoad load : loads) {
                if (Math.abs(load.sMm() - down[i - 1]) <= ONE_PLACE_MM) {
                    forward += (load.forwardN() * cosReference + load.upN() * sinReference) / forceN;
                    up += (load.upN() * cosReference - load.forwardN() * sinReference) / forceN;
                    couple += load.coupleNmm() / (forceN * lengthMm);
                }
            }
            all.add(new Stretch(
                    (tipMm - down[i - 1]) / lengthMm,
                    (tipMm - down[i]) / lengthMm,
                    held.stiffness().stretch(down[i], down[i - 1]),
                    weight(own, down[i], down[i - 1]),
                    forward,
                    up,
                    couple));
        }
    }

    private static void add(NavigableSet<Double> places, double place) {
        if (places.subSet(place - ONE_PLACE_MM, true, place + ONE_PLACE_MM, true)
                .isEmpty()) {
            places.add(place);
        }
    }

    /** Own weight between two places without a step between, or null where there is none. */
    private static @Nullable TaperedWeight weight(@Nullable TubeMass own, double from, double to) {
        if (own == null || from >= own.profile().endMm() || to <= own.profile().startMm()) {
            return null;
        }
        double d0 = own.profile().at(from);
        double slope = (own.profile().before(to) - d0) / (to - from);
        return new TaperedWeight(from, d0, slope, own.scale() * MassSum.NMM_PER_GMM, own.exponent());
    }

    /** Σ of √(outboard force/EI)·length, by midpoints: how many times e-fold a small angle grows toward the clamp. */
    double growth() {
        double weightN = 0.0;
        double growth = 0.0;
        for (Stretch stretch : all) {
            double span = lengthMm * (stretch.u1() - stretch.u0()) / PARTS;
            TaperedWeight weight = stretch.weight();
            for (int part = 0; part < PARTS; part++) {
                double middleMm = tipMm - lengthMm * stretch.u0() - span * (part + 0.5);
                double half = weight == null ? 0.0 : weight.at(middleMm) * span / 2.0;
                weightN += half;
                double force = Math.hypot(
                        stretch.forward() * forceN - sinReference * weightN,
                        stretch.up() * forceN - cosReference * weightN);
                weightN += half;
                growth += span * Math.sqrt(force / stretch.stiffness().atNmm2(middleMm));
            }
        }
        return growth;
    }

    /** How many times as stiff the clamp is as the tip. */
    double stiffer() {
        Stretch tip = all.get(0);
        Stretch clamp = all.get(all.size() - 1);
        return clamp.stiffness().atNmm2(tipMm - lengthMm * clamp.u1())
                / tip.stiffness().atNmm2(tipMm - lengthMm * tip.u0());
    }

    /** Σ over the stretches of lever²/EI·length: how far a newton at the tip drops it while the drop is small, mm. */
    double dropMmPerN() {
        double sum = 0.0;
        for (Stretch stretch : all) {
            double middle = (stretch.u0() + stretch.u1()) / 2.0;
            sum += (stretch.u1() - stretch.u0())
                    * (softness(stretch, stretch.u0())
                            + 4.0 * softness(stretch, middle)
                            + softness(stretch, stretch.u1()))
                    / 6.0;
        }
        return sum * lengthMm * lengthMm * lengthMm;
    }

    private double softness(Stretch stretch, double u) {
        return u * u / stretch.stiffness().atNmm2(tipMm - lengthMm * u);
    }
}
