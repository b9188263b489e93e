package withy.mechanics;

import java.util.Arrays;

/**
 * A quantity along the blank (diameter, wall), linear between stations; two stations at one x are a step.
 *
 * <pre>
 *   value
 *    |\__
 *    |   \___        step of a put-over ferrule: two stations at one x
 *    |       |
 *    |       \____
 *    +---------------- x, mm from the butt
 * </pre>
 *
 * At a step {@link #at} gives the value on the tip's side. Outside the stations the end values hold.
 *
 * @param xMm stations from butt to tip, never falling, at least two, at most two at one place
 * @param value one value a station, mm, not below 0
 */
@SuppressWarnings("ArrayRecordComponent") // copied in and out, compared by content; lists would box every lookup
public record TaperProfile(double[] xMm, double[] value) {
    public TaperProfile {
        xMm = xMm.clone();
        value = value.clone();
        if (xMm.length < 2 || xMm.length != value.length) {
            throw new IllegalArgumentException("A profile needs at least two stations with one value each, not "
                    + xMm.length + " stations and " + value.length + " values.\nMaybe a column was cut off.");
        }
        for (int i = 0; i < xMm.length; i++) {
            Finite.any(xMm[i], "station " + (i + 1) + " in mm");
            Finite.notNegative(value[i], "the value at station " + (i + 1) + " in mm");
            if ((i > 0 && xMm[i] < xMm[i - 1]) || (i > 1 && xMm[i] == xMm[i - 2])) {
                throw new IllegalArgumentException(
                        "Station " + (i + 1) + " at " + xMm[i]
                                + " mm must lie after the one before, or make one step with it.\nMaybe the stations are not sorted.");
            }
        }
        if (xMm[0] == xMm[xMm.length - 1]) {
            throw new IllegalArgumentException(
                    "A profile must have a length above 0 mm.\nMaybe all stations are the same.");
        }
    }

    /** A plain taper from one end to the other. */
    public static TaperProfile straight(double lengthMm, double buttValue, double tipValue) {
        return new TaperProfile(new double[] {0.0, lengthMm}, new double[] {buttValue, tipValue});
    }

    @Override
    public double[] xMm() {
        return xMm.clone();
    }

    @Override
    public double[] value() {
        return value.clone();
    }

    public int stations() {
        return xMm.length;
    }

    public double stationMm(int index) {
        return xMm[index];
    }

    public double valueAtStation(int index) {
        return value[index];
    }

    public double startMm() {
        return xMm[0];
    }

    public double endMm() {
        return xMm[xMm.length - 1];
    }

    public double lengthMm() {
        return endMm() - startMm();
    }

    /** The value at x mm; on a step the tip's side. */
    public double at(double x) {
        int last = xMm.length - 1;
        if (!(x >= xMm[0])) {
            return value[0];
        }
        if (x >= xMm[last]) {
            return value[last];
        }
        int low = 0;
        int high = last;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (xMm[middle] <= x) {
                low = middle;
            } else {
                high = middle;
            }
        }
        double share = (x - xMm[low]) / (xMm[high] - xMm[low]);
        return value[low] + share * (value[high] - value[low]);
    }

    /** The value at x mm; on a step the butt's side. */
    public double before(double x) {
        for (int i = 1; i < xMm.length; i++) {
            if (xMm[i] == x) {
                return value[i];
            }
        }
        return at(x);
    }

    /** The largest value between two places, both included: what a part pushed over them must pass. */
    public double largestBetween(double fromMm, double toMm) {
        double largest = Math.max(at(fromMm), at(toMm));
        for (int i = 0; i < xMm.length; i++) {
            if (xMm[i] >= fromMm && xMm[i] <= toMm) {
                largest = Math.max(largest, value[i]);
            }
        }
        return largest;
    }

    /** The smallest value between two places, both included. */
    public double smallestBetween(double fromMm, double toMm) {
        double smallest = Math.min(at(fromMm), at(toMm));
        for (int i = 0; i < xMm.length; i++) {
            if (xMm[i] >= fromMm && xMm[i] <= toMm) {
                smallest = Math.min(smallest, value[i]);
            }
        }
        return smallest;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof TaperProfile profile
                && Arrays.equals(xMm, profile.xMm)
                && Arrays.equals(value, profile.value);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(xMm) + Arrays.hashCode(value);
    }

    @Override
    public String toString() {
        return "TaperProfile[xMm=" + Arrays.toString(xMm) + ", value=" + Arrays.toString(value) + "]";
    }
}
