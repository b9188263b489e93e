package withy.mechanics;

import java.util.function.DoubleFunction;
import org.hipparchus.exception.MathRuntimeException;
import org.jspecify.annotations.Nullable;

/**
 * A level rod and one value of it (a weight, a stiffness) at which its tip drops by so much: value and direction of the tip are found together.
 *
 * <p>From a guess that a small bend gives; hands out only a believed shape without a point of inflection that drops by what was asked, and
 * nothing where the steps don't arrive there.
 */
final class DropMet {
    /** How closely the drop is met, the share of the free length. */
    private static final double ENOUGH = 1e-10;

    private static final double DIFFERENCE_LN = 1e-6;
    private static final int MOST_STEPS = 14;

    /** ln of the largest factor the value may leave its guess by. */
    private static final double FARTHEST_LN = 3.0;

    private final DoubleFunction<BendCase> rod;
    private final double startLn;
    private final double dropMm;

    private DropMet(DoubleFunction<BendCase> rod, double startLn, double dropMm) {
        this.rod = rod;
        this.startLn = startLn;
        this.dropMm = dropMm;
    }

    /** The value and the shape. */
    record Found(double value, BendResult.Bent shape) {}

    /** The rod for each value above 0, a guess of the value, and the drop, mm; or null. */
    static @Nullable Found of(DoubleFunction<BendCase> rod, double guess, double dropMm) {
        if (!(guess > 0.0 && Double.isFinite(guess))) {
            return null;
        }
        DropMet met = new DropMet(rod, Math.log(guess), dropMm);
        try {
            return met.found();
        } catch (MathRuntimeException e) {
            return null;
        }
    }

    private @Nullable Found found() {
        OneWay first = oneWay(startLn);
        double guess = first == null ? Double.NaN : first.guessLn();
        if (Double.isNaN(guess)) {
            return null;
        }
        Broyden.Root root = Broyden.root(new double[] {guess, startLn}, this::misses, this::slopes, ENOUGH, MOST_STEPS);
        OneWay last = root.miss() <= ENOUGH ? oneWay(root.at()[1]) : null;
        BendResult.Bent shape = last == null ? null : last.shape(root.at()[0]);
        return shape == null ? null : new Found(Math.exp(root.at()[1]), shape);
    }

    private @Nullable OneWay oneWay(double valueLn) {
        BendCase held = rod.apply(Math.exp(valueLn));
        double turn = BendUnderLoad.turn(held);
        double reference = held.clampAngleRad() - turn;
        LoadedStretches stretches = new LoadedStretches(held, reference);
        return stretches.forceN() > 0.0 && OneWay.is(held)
                ? new OneWay(held, stretches, new TipShooter(held, stretches, reference), turn)
                : null;
    }

    /** Of the clamp's direction, radians, and of the drop, shares of the length; not a number where the value strays. */
    private double[] misses(double[] at) {
        OneWay way = Math.abs(at[1] - startLn) <= FARTHEST_LN ? oneWay(at[1]) : null;
        return way == null ? new double[] {Double.NaN, Double.NaN} : way.misses(at[0], dropMm);
    }

    private double[][] slopes(double[] at, double[] misses) {
        double[] tip = misses(new double[] {at[0] + DIFFERENCE_LN, at[1]});
        double[] value = misses(new double[] {at[0], at[1] + DIFFERENCE_LN});
        double[][] slopes = new double[2][];
        for (int i = 0; i < 2; i++) {
            slopes[i] = new double[] {(tip[i] - misses[i]) / DIFFERENCE_LN, (value[i] - misses[i]) / DIFFERENCE_LN};
        }
        return slopes;
    }
}
