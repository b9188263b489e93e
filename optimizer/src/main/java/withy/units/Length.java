package withy.units;

/** A length, kept in millimetres. */
public record Length(double mm) implements Comparable<Length> {
    public Length {
        if (!Double.isFinite(mm)) {
            throw new IllegalArgumentException("A length must be a finite number of mm, not " + mm);
        }
    }

    public static Length of(double value, LengthUnit unit) {
        return new Length(value * unit.mm());
    }

    public double in(LengthUnit unit) {
        return mm / unit.mm();
    }

    @Override
    public int compareTo(Length other) {
        return Double.compare(mm, other.mm);
    }
}
