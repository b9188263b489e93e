package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The free length of a held rod cut into smooth stretches, from tip to clamp.
 *
 * <p>Stretches end at every break of stiffness, own weight and load. Forces are turned into a frame that lies along a reference
 * direction and divided by the sum of all loads, lengths by the free length.
 */
final class LoadedStretches {
    /** Places nearer to each other than this, mm, count as one. */
    private static final double ONE_PLACE_MM = 1e-6;

    private final BendCase held;
    private final double cosReference;
    private final double sinReference;
    private final double lengthMm;
    private final double forceN;
    private final List<Stretch> all = new ArrayList<>();

    /** One smooth stretch, from u0 (nearer the tip) to u1, with the loads that join at u0. */
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

    LoadedStretches(BendCase held, double referenceRad) {
        this.held = held;
        this.cosReference = Math.cos(referenceRad);
        this.sinReference = Math.sin(referenceRad);
        this.lengthMm = held.lengthMm();
        double force = 0.0;
        for (PointLoad load : held.loadsAhead()) {
            force += load.size() + Math.abs(load.coupleNmm()) / lengthMm;
        }
        TubeMass own = held.own();
        if (own != null) {
            force += own.massG() * MassSum.NMM_PER_GMM;
        }
        this.forceN = force;
        if (force > 0.0) {
            cut();
        }
    }

    List<Stretch> all() {
        return all;
    }

    /** Sum of all loads, N; 0 leaves the rod straight. */
    double forceN() {
        return forceN;
    }

    double cosReference() {
        return cosReference;
    }

    double sinReference() {
        return sinReference;
    }

    private void cut() {
        double tip = held.stiffness().tipMm();
        NavigableSet<Double> places = new TreeSet<>();
        places.add(held.clampMm());
        places.add(tip);
        for (double place : held.stiffness().breaksMm()) {
            add(places, place);
        }
        TubeMass own = held.own();
        if (own != null) {
            for (double place : own.profile().xMm()) {
                add(places, Math.min(place, tip));
            }
        }
        for (PointLoad load : held.loadsAhead()) {
            add(places, load.sMm());
        }
        double[] down = places.tailSet(held.clampMm(), true).descendingSet().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        for (int i = 1; i < down.length; i++) {
            all.add(stretch(down[i], down[i - 1], tip));
        }
    }

    private static void add(NavigableSet<Double> places, double place) {
        if (places.subSet(place - ONE_PLACE_MM, true, place + ONE_PLACE_MM, true)
                .isEmpty()) {
            places.add(place);
        }
    }

    private Stretch stretch(double from, double to, double tip) {
        double forward = 0.0;
        double up = 0.0;
        double couple = 0.0;
        for (PointLoad load : held.loadsAhead()) {
            if (Math.abs(load.sMm() - to) <= ONE_PLACE_MM) {
                forward += (load.forwardN() * cosReference + load.upN() * sinReference) / forceN;
                up += (load.upN() * cosReference - load.forwardN() * sinReference) / forceN;
                couple += load.coupleNmm() / (forceN * lengthMm);
            }
        }
        return new Stretch(
                (tip - to) / lengthMm,
                (tip - from) / lengthMm,
                held.stiffness().stretch(from, to),
                weight(held.own(), from, to),
                forward,
                up,
                couple);
    }

    /** Own weight between two places without a step between, or null where there is none. */
    static @Nullable TaperedWeight weight(@Nullable TubeMass own, double from, double to) {
        if (own == null || from >= own.profile().endMm() || to <= own.profile().startMm()) {
            return null;
        }
        double d0 = own.profile().at(from);
        double slope = (own.profile().before(to) - d0) / (to - from);
        return new TaperedWeight(from, d0, slope, own.scale() * MassSum.NMM_PER_GMM, own.exponent());
    }

    /** Σ over the stretches of √(outboard force/EI)·length: how many times e-fold a small angle grows toward the clamp. */
    double growth() {
        double forward = 0.0;
        double up = 0.0;
        double weightN = 0.0;
        double growth = 0.0;
        double tip = held.stiffness().tipMm();
        for (Stretch stretch : all) {
            forward += stretch.forward();
            up += stretch.up();
            double middleMm = tip - lengthMm * (stretch.u0() + stretch.u1()) / 2.0;
            double span = lengthMm * (stretch.u1() - stretch.u0());
            TaperedWeight weight = stretch.weight();
            double half = weight == null ? 0.0 : weight.at(middleMm) * span / 2.0;
            weightN += half;
            double force = Math.hypot(forward * forceN - sinReference * weightN, up * forceN - cosReference * weightN);
            weightN += half;
            double ends = Math.min(
                    stretch.stiffness().atNmm2(tip - lengthMm * stretch.u0()),
                    stretch.stiffness().atNmm2(tip - lengthMm * stretch.u1()));
            double middle = stretch.stiffness().atNmm2(middleMm);
            growth += span * (Math.sqrt(force / ends) + 2.0 * Math.sqrt(force / middle)) / 3.0;
        }
        return growth;
    }
}
