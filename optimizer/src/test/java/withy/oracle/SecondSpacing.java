package withy.oracle;

import withy.brief.Brief;
import withy.catalog.RodType;

/** Guide positions a second time: geometric growth from the tip, found by halving; moved off the ferrules, the others following. */
final class SecondSpacing {
    private static final double[][] LIP_TO_STRIPPER = {
        {40, 415}, {45, 475}, {49.5, 530}, {57, 625}, {67, 775}, {78, 900}
    };

    final double[] x;
    final boolean even;

    SecondSpacing(SecondRod rod, int n) {
        double tip = rod.blank.lengthMm();
        double reach = tip - rod.foot - stripper(rod.brief);
        double[] range = first(rod.brief);
        double low = Math.max(range[0], reach / sum(1.25, n));
        double high = Math.min(range[1], reach / sum(1.05, n));
        boolean fits = n == 1 ? reach >= range[0] && reach <= range[1] : reach > 0 && low <= high;
        x = new double[n];
        if (!fits) {
            for (int i = 0; i < n; i++) {
                x[i] = tip - reach * (n - i) / n;
            }
            even = false;
            return;
        }
        double space = n == 1 ? reach : Math.min(high, Math.max(low, (range[0] + range[1]) / 2));
        double ratio = n == 1 ? 1 : ratio(reach / space, n);
        double place = 0;
        for (int i = n - 1; i >= 0; i--) {
            place += space;
            x[i] = tip - place;
            space *= ratio;
        }
        even = clear(rod);
    }

    static double stripper(Brief brief) {
        if (brief.rodType() == RodType.CASTING) {
            return brief.reel().massG() >= 260 ? 500 : 450;
        }
        double lip = brief.reel().lipDiameterMm();
        double[][] t = LIP_TO_STRIPPER;
        if (lip <= t[0][0]) {
            return t[0][1];
        }
        for (int i = 0; i + 1 < t.length; i++) {
            if (lip <= t[i + 1][0]) {
                return t[i][1] + (lip - t[i][0]) * (t[i + 1][1] - t[i][1]) / (t[i + 1][0] - t[i][0]);
            }
        }
        return t[t.length - 1][1];
    }

    private static double[] first(Brief brief) {
        if (brief.rodType() == RodType.SURF_SPINNING) {
            return new double[] {140, 180};
        }
        if (brief.twoHanded()) {
            return new double[] {110, 130};
        }
        return brief.lure().heaviestG() > 10 ? new double[] {90, 110} : new double[] {75, 100};
    }

    private static double sum(double r, int n) {
        return (Math.pow(r, n) - 1) / (r - 1);
    }

    private static double ratio(double spaces, int n) {
        double low = 1.05;
        double high = 1.25;
        for (int i = 0; i < 200; i++) {
            double middle = (low + high) / 2;
            if (sum(middle, n) < spaces) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** A ring keeps 20 mm and half a foot (15 mm) from both ends of a ferrule, and 30 mm from the next ring. */
    private boolean clear(SecondRod rod) {
        if (rod.joints.isEmpty()) {
            return true;
        }
        double[] moved = x.clone();
        for (int i = 0; i < moved.length; i++) {
            if (touches(rod, moved[i])) {
                double nearest = Double.NaN;
                for (double[] joint : rod.joints) {
                    for (double place : new double[] {joint[0] - 35, joint[1] + 35}) {
                        boolean nearer = !(Math.abs(place - x[i]) >= Math.abs(nearest - x[i]));
                        nearest = nearer && !touches(rod, place) ? place : nearest;
                    }
                }
                moved[i] = nearest;
            }
            if (Double.isNaN(moved[i]) || i > 0 && (moved[i] - moved[i - 1] < 30)) {
                return false;
            }
        }
        double[] followed = new double[x.length];
        boolean good = true;
        for (int i = 0; i < x.length; i++) {
            followed[i] = x[i] + follow(moved, i);
            good &= !touches(rod, followed[i]) && (i == 0 || followed[i] - followed[i - 1] >= 30);
        }
        System.arraycopy(good ? followed : moved, 0, x, 0, x.length);
        return true;
    }

    /** By how much ring i goes with the moved ones: weighed by how many rings away the next ones are that stay or were moved; the tip-top stays. */
    private double follow(double[] moved, int i) {
        int rear = i;
        while (rear > 0 && moved[rear] == x[rear]) {
            rear--;
        }
        int front = i;
        while (front < x.length && moved[front] == x[front]) {
            front++;
        }
        double rearShift = moved[rear] - x[rear];
        double frontShift = front == x.length ? 0 : moved[front] - x[front];
        if (rear == front) {
            return rearShift;
        }
        return (rearShift * (front - i) + frontShift * (i - rear)) / (front - rear);
    }

    private static boolean touches(SecondRod rod, double place) {
        return rod.joints.stream().anyMatch(j -> place > j[0] - 35 && place < j[1] + 35);
    }
}
