package withy.catalog;

import java.util.List;

/** Volumes of solid parts from their geometry, mm³. */
final class PartVolume {
    private PartVolume() {}

    static double ring(double odMm, double idMm, double lengthMm) {
        return Math.PI / 4 * (odMm * odMm - idMm * idMm) * lengthMm;
    }

    static double grip(Grip grip) {
        double half = grip.lengthMm() / 2;
        return frustum(grip.rearOdMm(), grip.midOdMm(), half)
                + frustum(grip.midOdMm(), grip.frontOdMm(), half)
                - ring(grip.boreMm(), 0, grip.lengthMm());
    }

    /** A tube of constant wall; solid where the wall meets in the middle. */
    static double tube(List<Blank.OdStation> stations, double wallMm) {
        double sum = 0;
        for (int i = 1; i < stations.size(); i++) {
            Blank.OdStation a = stations.get(i - 1);
            Blank.OdStation b = stations.get(i);
            double length = b.xMm() - a.xMm();
            sum += frustum(a.odMm(), b.odMm(), length)
                    - frustum(Math.max(0, a.odMm() - 2 * wallMm), Math.max(0, b.odMm() - 2 * wallMm), length);
        }
        return sum;
    }

    private static double frustum(double d1, double d2, double length) {
        return Math.PI / 12 * length * (d1 * d1 + d1 * d2 + d2 * d2);
    }
}
