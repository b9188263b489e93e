package withy.benchmarks;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Volume that points dominate up to a reference point, everything minimised: slice by the last objective, the volume of each slice by the same
 * rule with one objective less. Exact; fit for some hundred points. Points on or beyond the reference's border add nothing.
 */
final class Hypervolume {
    private Hypervolume() {}

    static double of(List<double[]> points, double[] reference) {
        List<double[]> inside = new ArrayList<>();
        for (double[] point : points) {
            if (point.length != reference.length) {
                throw new IllegalArgumentException("a point of " + point.length + " objectives against a reference of "
                        + reference.length + ".\nMaybe one is missing.");
            }
            boolean within = true;
            for (int i = 0; i < point.length; i++) {
                within &= point[i] < reference[i];
            }
            if (within) {
                inside.add(point);
            }
        }
        return volume(inside, reference, reference.length);
    }

    private static double volume(List<double[]> points, double[] reference, int objectives) {
        if (points.isEmpty()) {
            return 0;
        }
        if (objectives == 1) {
            return reference[0]
                    - points.stream().mapToDouble(point -> point[0]).min().orElse(reference[0]);
        }
        int last = objectives - 1;
        List<double[]> rising = new ArrayList<>(points);
        rising.sort(Comparator.comparingDouble(point -> point[last]));
        double sum = 0;
        List<double[]> below = new ArrayList<>();
        for (int i = 0; i < rising.size(); i++) {
            below.add(rising.get(i));
            double upTo = i + 1 < rising.size() ? rising.get(i + 1)[last] : reference[last];
            double depth = upTo - rising.get(i)[last];
            if (depth > 0) {
                sum += depth * volume(below, reference, last);
            }
        }
        return sum;
    }
}
