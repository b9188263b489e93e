package withy.catalog.sample;

import java.util.List;
import withy.catalog.Blank.OdStation;
import withy.catalog.Material;
import withy.catalog.MaterialDensity;

/**
 * Volumes and masses of simple bodies of revolution; lengths mm, densities g/mm³, masses g.
 */
final class Shapes {
    private Shapes() {}

    /** Usual density of solid material, g/mm³. */
    static double density(Material material) {
        return MaterialDensity.of(material).usualGMm3();
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
