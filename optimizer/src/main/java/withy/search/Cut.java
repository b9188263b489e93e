package withy.search;

import java.util.ArrayList;
import java.util.List;
import withy.catalog.Grip;
import withy.rod.GripFit;
import withy.rod.Layout;

/**
 * A grip at one of the lengths it may be cut to, with what can be said of it before it stands anywhere.
 *
 * @param grip the grip
 * @param lengthMm its length; NaN where it fills what there is between butt and seat
 * @param index its place among the rear or butt grips of {@link GripMatch}; -1 for fore grips
 * @param milli cost, thousandths of a minor unit
 * @param style style points, hundredths
 * @param missed missed wishes, thousandths of a step
 */
record Cut(Grip grip, double lengthMm, int index, long milli, long style, long missed) {
    /** Slices a grip of open length is looked at in. */
    static final int SLICES = 8;

    /** Lengths a grip may be cut to: as sold, and every 5 mm down to its shortest. */
    static List<Double> lengthsOf(Grip grip) {
        List<Double> lengths = new ArrayList<>();
        lengths.add(grip.lengthMm());
        double first = Math.floor((grip.lengthMm() - 0.005) / Layout.GRID_MM) * Layout.GRID_MM;
        for (double cut = first; cut >= grip.shortestMm() - 0.005; cut -= Layout.GRID_MM) {
            lengths.add(cut);
        }
        return lengths;
    }

    boolean fills() {
        return Double.isNaN(lengthMm);
    }

    /** Widest bore it could be reamed to on a blank, mm. */
    double widestBoreMm(double thickMm, boolean reamLimited) {
        double reamed = GripFit.stretches(grip) ? GripFit.STRETCH_REAM * thickMm : thickMm + GripFit.REAM_OVER_MM;
        return Math.max(grip.boreMm(), reamLimited ? Math.min(reamed, grip.reamMaxMm()) : reamed);
    }

    /** Mass bored out of a grip of its length by a bore this wide, g. */
    double boredG(double boreMm) {
        return Math.PI / 4 * boreMm * boreMm * lengthMm / 1000 * GripFit.densityGCm3(grip);
    }

    /** Least grams of each slice of a grip at least this long, from rear to front. */
    double[] slicesG(double leastMm, double boreMm) {
        double[] slices = new double[SLICES];
        double perArea = Math.PI / 4 * leastMm / SLICES / 1000 * GripFit.densityGCm3(grip);
        for (int i = 0; i < SLICES; i++) {
            double od = Math.min(odAt((double) i / SLICES), odAt((i + 1.0) / SLICES));
            slices[i] = Math.max(0, od * od - boreMm * boreMm) * perArea;
        }
        return slices;
    }

    /** Most grams of each slice of a grip at most this long, bored as it is sold, from rear to front. */
    double[] mostSlicesG(double mostMm) {
        double[] slices = new double[SLICES];
        double perArea = Math.PI / 4 * mostMm / SLICES / 1000 * GripFit.densityGCm3(grip);
        for (int i = 0; i < SLICES; i++) {
            double od = Math.max(odAt((double) i / SLICES), odAt((i + 1.0) / SLICES));
            slices[i] = Math.max(0, od * od - grip.boreMm() * grip.boreMm()) * perArea;
        }
        return slices;
    }

    private double odAt(double share) {
        return share <= 0.5
                ? grip.rearOdMm() + (grip.midOdMm() - grip.rearOdMm()) * share * 2
                : grip.midOdMm() + (grip.frontOdMm() - grip.midOdMm()) * (share * 2 - 1);
    }
}
