package withy.brief;

import withy.units.ForceUnit;
import withy.units.LengthUnit;
import withy.units.MassUnit;
import withy.units.Quantities;

/**
 * A quantity a brief holds: as a number in a field whose name ends in the unit, or as typed text in the field without it. Values are rounded to
 * a fine grid, so that one wish told in two systems of units is one value.
 */
enum Quantity {
    /** To 0.0001 mm. */
    LENGTH("Mm", "mm", 10_000) {
        @Override
        double parse(String text) {
            return Quantities.length(text, LengthUnit.MILLIMETRE).mm();
        }
    },
    /** To 1 mg. */
    MASS("G", "g", 1_000) {
        @Override
        double parse(String text) {
            return Quantities.mass(text, MassUnit.GRAM).grams();
        }
    },
    /** Fish; to 1 g. */
    HEAVY_MASS("Kg", "kg", 1_000) {
        @Override
        double parse(String text) {
            return Quantities.mass(text, MassUnit.KILOGRAM).in(MassUnit.KILOGRAM);
        }
    },
    /** Line strength and drag; to 0.1 g. */
    STRENGTH("Kg", "kg", 10_000) {
        @Override
        double parse(String text) {
            return Quantities.force(text, ForceUnit.KILOGRAM_FORCE).in(ForceUnit.KILOGRAM_FORCE);
        }
    };

    private final String suffix;
    private final String symbol;
    private final double grid;

    Quantity(String suffix, String symbol, double grid) {
        this.suffix = suffix;
        this.symbol = symbol;
        this.grid = grid;
    }

    /** End of a field name that holds a number of it. */
    String suffix() {
        return suffix;
    }

    /** Unit of the number. */
    String symbol() {
        return symbol;
    }

    /** Value in its unit of a text a builder typed; a {@link withy.units.UnitsFault} where it is none. */
    abstract double parse(String text);

    /** On the grid of this quantity. */
    double round(double value) {
        return Math.round(value * grid) / grid;
    }
}
