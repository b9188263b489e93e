package withy.catalog.sample;

import java.util.List;
import withy.catalog.Blank.OdStation;
import withy.catalog.Material;

/**
 * Volumes and masses of simple bodies of revolution; lengths mm, densities g/mm³, masses g.
 *
 * <p>Density values: handbooks as listed in catalog-samples/bench/PROVENANCE.md.
 */
final class Shapes {
    private Shapes() {}

    /** Density of solid material, g/mm³. */
    static double density(Material material) {
        return switch (material) {
            case CARBON -> 1.60e-3;
            case GLASS -> 1.90e-3;
            case COMPOSITE -> 1.72e-3;
            case CORK -> 0.24e-3;
            case RUBBER_CORK -> 0.60e-3;
            case EVA -> 0.18e-3;
            case WOOD -> 0.62e-3;
            case PLASTIC -> 1.14e-3;
            case CARBON_FILLED -> 1.30e-3;
            case ALUMINIUM -> 2.70e-3;
            case NICKEL_SILVER -> 8.70e-3;
            case STAINLESS -> 8.00e-3;
            case TITANIUM -> 4.43e-3;
            case BRASS -> 8.50e-3;
            case RUBBER -> 1.10e-3;
            case FOAM -> 0.12e-3;
            case GRAPHITE_FOAM -> 0.16e-3;
            case NYLON -> 1.14e-3;
            case POLYESTER -> 1.38e-3;
            case SILK -> 1.25e-3;
            case METALLIC -> 1.80e-3;
            case EPOXY -> 1.115e-3;
            case URETHANE -> 1.08e-3;
            case TAPE, PAPER -> 0.90e-3;
        };
    }

    /** Volume of a ring or tube of constant diameters, mm³. */
    static double annulus(double odMm, double idMm, double lengthMm) {
        return Math.PI / 4 * (odMm * odMm - idMm * idMm) * lengthMm;
    }

    /** Volume of a frustum, mm³. */
    static double frustum(double d1Mm, double d2Mm, double lengthMm) {
        return Math.PI / 12 * lengthMm * (d1Mm * d1Mm + d1Mm * d2Mm + d2Mm * d2Mm);
    }

    /** Volume of a bored grip whose outside runs straight from rear to middle to front, mm³. */
    static double grip(double rearMm, double midMm, double frontMm, double boreMm, double lengthMm) {
        return frustum(rearMm, midMm, lengthMm / 2)
                + frustum(midMm, frontMm, lengthMm / 2)
                - annulus(boreMm, 0, lengthMm);
    }

    /** Mass of a tube of constant wall along diameter stations, g; solid where the wall meets in the middle. */
    static double tubeMass(List<OdStation> stations, double wallMm, double densityGMm3) {
        return tubeMoment(stations, wallMm, densityGMm3, 0);
    }

    /** Integral of mass times x to the given power along the tube, by Simpson's rule on ten slices a piece. */
    static double tubeMoment(List<OdStation> stations, double wallMm, double densityGMm3, int power) {
        double sum = 0;
        for (int i = 1; i < stations.size(); i++) {
            OdStation a = stations.get(i - 1);
            OdStation b = stations.get(i);
            int slices = 10;
            double h = (b.xMm() - a.xMm()) / slices;
            for (int k = 0; k <= slices && h > 0; k++) {
                double x = a.xMm() + k * h;
                double od = a.odMm() + (b.odMm() - a.odMm()) * k / slices;
                double bore = Math.max(0, od - 2 * wallMm);
                double area = Math.PI / 4 * (od * od - bore * bore);
                double weight = k == 0 || k == slices ? 1 : k % 2 == 1 ? 4 : 2;
                sum += weight * h / 3 * area * StrictMath.pow(x, power);
            }
        }
        return sum * densityGMm3;
    }

    /** Rounded half up to a multiple of a step, free of binary dust. */
    static double to(double value, double step) {
        double count = Math.floor(value / step + 0.5);
        return java.math.BigDecimal.valueOf(count)
                .multiply(java.math.BigDecimal.valueOf(step))
                .doubleValue();
    }
}
