package withy.catalog;

import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The bare tapered tube.
 *
 * @param rodTypes what the maker sells it for
 * @param lengthMm assembled length, mm
 * @param sectionLengthsMm length of each section from butt to tip, mm; their sum less the overlaps is the length
 * @param ferruleKind how they join
 * @param ferruleOverlapMm length of each joint, mm; 0 for one piece
 * @param ferruleExtraG mass of one joint beyond the plain tube, g (a lump in the middle of the overlap)
 * @param stations outer diameters along the assembled blank from butt (x = 0) to tip (x = length), at least 4; a put-over ferrule is a step: two
 *     stations of equal x
 * @param wallMm wall thickness if known, mm
 * @param balanceMm measured balance point from the butt, mm, or null
 * @param action where it bends
 * @param power the maker's own word, never used to choose
 * @param lureMinG rated lightest lure, g
 * @param lureMaxG rated heaviest lure, g
 * @param ownLureMinG the builder's own rating, g, used instead where present
 * @param ownLureMaxG the builder's own rating, g, used instead where present
 * @param lineMinKg rated line strength, kg
 * @param lineMaxKg rated line strength, kg
 * @param gaugeMin rated braid gauge number, or null
 * @param gaugeMax rated braid gauge number, or null
 * @param liftKg the maker's lift rating (dead load), kg, or null
 * @param ownLiftKg the builder's own lift rating, kg, or null
 * @param thirdTestG weight that drops the tip by a third of the length, g, or null
 */
public record Blank(
        PartFacts facts,
        Set<RodType> rodTypes,
        double lengthMm,
        List<Double> sectionLengthsMm,
        FerruleKind ferruleKind,
        double ferruleOverlapMm,
        double ferruleExtraG,
        List<OdStation> stations,
        @Nullable Double wallMm,
        @Nullable Double balanceMm,
        Action action,
        String power,
        double lureMinG,
        double lureMaxG,
        @Nullable Double ownLureMinG,
        @Nullable Double ownLureMaxG,
        double lineMinKg,
        double lineMaxKg,
        @Nullable Double gaugeMin,
        @Nullable Double gaugeMax,
        @Nullable Double liftKg,
        @Nullable Double ownLiftKg,
        @Nullable Double thirdTestG)
        implements Part {

    public Blank {
        rodTypes = java.util.Collections.unmodifiableSet(new java.util.TreeSet<>(rodTypes));
        sectionLengthsMm = List.copyOf(sectionLengthsMm);
        stations = List.copyOf(stations);
    }

    /**
     * One measured outer diameter.
     *
     * @param xMm from the butt, mm
     * @param odMm outer diameter, mm
     */
    public record OdStation(double xMm, double odMm) {}

    @Override
    public PartKind kind() {
        return PartKind.BLANK;
    }

    /** Number of sections. */
    public int sections() {
        return sectionLengthsMm.size();
    }

    /** Outer diameter at the very tip, mm. */
    public double tipOdMm() {
        return stations.get(stations.size() - 1).odMm();
    }

    /** Outer diameter at the butt, mm. */
    public double buttOdMm() {
        return stations.get(0).odMm();
    }
}
