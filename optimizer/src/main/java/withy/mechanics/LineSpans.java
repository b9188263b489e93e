package withy.mechanics;

import java.util.ArrayList;
import java.util.List;
import java.util.NavigableSet;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * The free length of a rod with rings, cut at the rings into spans and these into smooth stretches, from tip to clamp; span i runs from
 * ring i (counted from the tip) to the next one, the last to the clamp. Lengths over the free length, forces over their sum, turned
 * into a frame that lies along the pull.
 */
final class LineSpans {
    private static final double ONE_PLACE_MM = 1e-6;

    private final LineCase line;
    private final double cos;
    private final double sin;
    private final double tipMm;
    private final double lengthMm;
    private final double forceN;
    private final List<List<Piece>> spans = new ArrayList<>();

    /**
     * A smooth stretch.
     *
     * @param u0 its end toward the tip
     * @param u1 its end toward the clamp
     * @param stiffness EI on it
     * @param weight own weight on it, N/mm, or null
     * @param forward all fixed point forces outboard of it
     * @param up likewise
     * @param couple couple that joins at u0
     */
    record Piece(
            double u0,
            double u1,
            StiffnessProfile.Stretch stiffness,
            LoadedStretches.@Nullable TaperedWeight weight,
            double forward,
            double up,
            double couple) {}

    LineSpans(LineCase line) {
        this.line = line;
        this.cos = Math.cos(line.pullRad());
        this.sin = Math.sin(line.pullRad());
        BendCase held = line.held();
        this.tipMm = held.stiffness().tipMm();
        this.lengthMm = held.lengthMm();
        double force = line.tensionN();
        for (PointLoad load : held.loadsAhead()) {
            force += load.size() + Math.abs(load.coupleNmm()) / lengthMm;
        }
        TubeMass own = held.own();
        this.forceN = own == null ? force : force + own.massG() * MassSum.NMM_PER_GMM;
        cut();
    }

    List<List<Piece>> all() {
        return spans;
    }

    /** Tension of the line and all loads together, N. */
    double forceN() {
        return forceN;
    }

    double lengthMm() {
        return lengthMm;
    }

    double tipMm() {
        return tipMm;
    }

    private void cut() {
        BendCase held = line.held();
        NavigableSet<Double> places = new TreeSet<>();
        List<LineCase.Ring> rings = line.rings();
        rings.forEach(ring -> places.add(ring.sMm()));
        add(places, held.clampMm());
        for (double place : held.stiffness().breaksMm()) {
            add(places, place);
        }
        TubeMass own = held.own();
        if (own != null) {
            for (double place : own.profile().xMm()) {
                add(places, Math.min(place, tipMm));
            }
        }
        List<PointLoad> loads = held.loadsAhead();
        for (PointLoad load : loads) {
            add(places, load.sMm());
        }
        double forward = 0.0;
        double up = 0.0;
        double[] down = places.tailSet(held.clampMm() - ONE_PLACE_MM, true).descendingSet().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        for (int i = 1; i < down.length; i++) {
            double couple = 0.0;
            for (PointLoad load : loads) {
                if (Math.abs(load.sMm() - down[i - 1]) <= ONE_PLACE_MM) {
                    forward += (load.forwardN() * cos + load.upN() * sin) / forceN;
                    up += (load.upN() * cos - load.forwardN() * sin) / forceN;
                    couple += load.coupleNmm() / (forceN * lengthMm);
                }
            }
            if (isRing(down[i - 1])) {
                spans.add(new ArrayList<>());
            }
            spans.get(spans.size() - 1).add(piece(down[i], down[i - 1], forward, up, couple));
        }
    }

    private boolean isRing(double place) {
        return line.rings().stream().anyMatch(ring -> ring.sMm() == place);
    }

    private static void add(NavigableSet<Double> places, double place) {
        if (places.subSet(place - ONE_PLACE_MM, true, place + ONE_PLACE_MM, true)
                .isEmpty()) {
            places.add(place);
        }
    }

    private Piece piece(double from, double to, double forward, double up, double couple) {
        BendCase held = line.held();
        return new Piece(
                (tipMm - to) / lengthMm,
                (tipMm - from) / lengthMm,
                held.stiffness().stretch(from, to),
                LoadedStretches.weight(held.own(), from, to),
                forward,
                up,
                couple);
    }
}
