package withy.oracle;

import withy.brief.Brief;
import withy.catalog.RodType;

/** Guide positions a second time: geometric growth from the tip, found by halving; moved off the ferrules, the others following as evenly as can be. */
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
        boolean still = true;
        for (int i = 0; i < x.length; i++) {
            still &= moved[i] == x[i];
        }
        double[] followed = still ? moved : followed(x, moved, rod.blank.lengthMm());
        boolean good = true;
        for (int i = 0; i < x.length; i++) {
            good &= !touches(rod, followed[i]) && (i == 0 || followed[i] - followed[i - 1] >= 30);
        }
        System.arraycopy(good ? followed : moved, 0, x, 0, x.length);
        return true;
    }

    /**
     * Where the free rings stand so that the ratios of neighbouring gaps change least, in the sum of squares of their logarithms: Newton's method on the places
     * themselves, with slopes by differences.
     */
    private static double[] followed(double[] x, double[] moved, double tip) {
        int n = x.length;
        int[] free = java.util.stream.IntStream.range(1, n)
                .filter(i -> moved[i] == x[i])
                .toArray();
        double[] at = moved.clone();
        for (int step = 0; step < 40; step++) {
            double[] slope = slopes(x, at, tip);
            double[][] rows = new double[free.length][free.length + 1];
            for (int c = 0; c < free.length; c++) {
                double small = 1e-4;
                double[] other = at.clone();
                other[free[c]] += small;
                double[] more = slopes(x, other, tip);
                other[free[c]] -= 2 * small;
                double[] less = slopes(x, other, tip);
                for (int r = 0; r < free.length; r++) {
                    rows[r][c] = (more[free[r]] - less[free[r]]) / (2 * small);
                }
            }
            for (int r = 0; r < free.length; r++) {
                rows[r][free.length] = -slope[free[r]];
            }
            double[] by = eliminated(rows);
            double[] next = at.clone();
            double share = 1;
            do {
                for (int r = 0; r < free.length; r++) {
                    next[free[r]] = at[free[r]] + share * by[r];
                }
                share /= 2;
            } while (share > 1e-6 && !(changed(x, next, tip) <= changed(x, at, tip)));
            at = next;
        }
        return at;
    }

    /** Sum of squares by which the logarithms of the ratios change; not a number where two rings change places. */
    private static double changed(double[] x, double[] at, double tip) {
        double sum = 0;
        for (int i = 0; i + 1 < x.length; i++) {
            double change = growth(at, i, tip) - growth(x, i, tip);
            sum += change * change;
        }
        return sum;
    }

    /** Logarithm of the gap ahead of ring i over the one ahead of the next. */
    private static double growth(double[] at, int i, double tip) {
        return Math.log(gap(at, i, tip)) - Math.log(gap(at, i + 1, tip));
    }

    private static double gap(double[] at, int i, double tip) {
        return (i + 1 == at.length ? tip : at[i + 1]) - at[i];
    }

    /** Slope of that sum with the place of each ring. */
    private static double[] slopes(double[] x, double[] at, double tip) {
        double[] slopes = new double[x.length];
        for (int i = 0; i + 1 < x.length; i++) {
            double twice = 2 * (growth(at, i, tip) - growth(x, i, tip));
            double near = 1 / gap(at, i, tip);
            double far = 1 / gap(at, i + 1, tip);
            slopes[i] -= twice * near;
            slopes[i + 1] += twice * (near + far);
            if (i + 2 < x.length) {
                slopes[i + 2] -= twice * far;
            }
        }
        return slopes;
    }

    /** Gauss's elimination, the largest first. */
    private static double[] eliminated(double[][] rows) {
        int n = rows.length;
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int r = c; r < n; r++) {
                best = Math.abs(rows[r][c]) > Math.abs(rows[best][c]) ? r : best;
            }
            double[] swap = rows[c];
            rows[c] = rows[best];
            rows[best] = swap;
            for (int r = 0; r < n; r++) {
                double times = r == c ? 0 : rows[r][c] / rows[c][c];
                for (int k = c; k <= n; k++) {
                    rows[r][k] -= times * rows[c][k];
                }
            }
        }
        double[] solved = new double[n];
        for (int r = 0; r < n; r++) {
            solved[r] = rows[r][n] / rows[r][r];
        }
        return solved;
    }

    private static boolean touches(SecondRod rod, double place) {
        return rod.joints.stream().anyMatch(j -> place > j[0] - 35 && place < j[1] + 35);
    }
}
