package withy.units;

/** A mass, kept in grams. */
public record Mass(double grams) implements Comparable<Mass> {
    public Mass {
        if (!Double.isFinite(grams)) {
            throw new IllegalArgumentException("A mass must be a finite number of g, not " + grams);
        }
    }

    public static Mass of(double value, MassUnit unit) {
        return new Mass(value * unit.grams());
    }

    public double in(MassUnit unit) {
        return grams / unit.grams();
    }

    @Override
    public int compareTo(Mass other) {
        return Double.compare(grams, other.grams);
    }
}
