package withy.explain;

import java.util.Locale;
import java.util.function.LongPredicate;

/** Looks for the step at which something turns, and tells steps of a tenth. */
final class Turning {
    private Turning() {}

    /** The least step at which a condition that stays true once it is holds; -1 where it does not up to the most. */
    static long first(long most, LongPredicate condition) {
        if (most < 1 || !condition.test(most)) {
            return -1;
        }
        long no = 0;
        long yes = most;
        while (yes - no > 1) {
            long middle = (yes + no) >>> 1;
            if (condition.test(middle)) {
                yes = middle;
            } else {
                no = middle;
            }
        }
        return yes;
    }

    /** A step at which a condition holds while it does not one step before, looked for from a guess on in growing steps; -1 where none is found. */
    static long firstFrom(long guess, long most, LongPredicate condition) {
        long no = guess - 1;
        long yes = guess;
        if (condition.test(yes)) {
            if (no == 0 || !condition.test(no)) {
                return yes;
            }
            yes = no;
            no = 0;
        } else {
            no = yes;
            long stride = Math.max(1, guess);
            yes = Math.min(most, guess + stride);
            while (!condition.test(yes)) {
                if (yes == most) {
                    return -1;
                }
                no = yes;
                stride *= 4;
                yes = Math.min(most, yes + stride);
            }
        }
        while (yes - no > 1) {
            long middle = (yes + no) >>> 1;
            if (condition.test(middle)) {
                yes = middle;
            } else {
                no = middle;
            }
        }
        return yes;
    }

    /** On the grid of tenths. */
    static double tenth(double value) {
        return Math.round(value * 10) / 10.0;
    }

    /** Without needless decimals. */
    static String number(double value) {
        double tenth = tenth(value);
        return tenth == Math.rint(tenth) ? Long.toString(Math.round(tenth)) : String.format(Locale.ROOT, "%.1f", tenth);
    }
}
