package withy.units;

/** A force or line strength, kept in newtons. */
public record Force(double newtons) implements Comparable<Force> {
    /** Standard gravity, m/s², exact by definition (3rd General Conference on Weights and Measures, 1901). */
    public static final double STANDARD_GRAVITY_M_S2 = 9.80665;

    public Force {
        if (!Double.isFinite(newtons)) {
            throw new IllegalArgumentException("A force must be a finite number of N, not " + newtons);
        }
    }

    public static Force of(double value, ForceUnit unit) {
        return new Force(value * unit.newtons());
    }

    public double in(ForceUnit unit) {
        return newtons / unit.newtons();
    }

    @Override
    public int compareTo(Force other) {
        return Double.compare(newtons, other.newtons);
    }
}
