package withy.units;

/** Units of mass, each with its exact size in grams. */
public enum MassUnit {
    MILLIGRAM(0.001, "mg"),
    GRAM(1.0, "g"),
    KILOGRAM(1000.0, "kg"),
    /** Exactly 64.79891 mg, as in NIST SP 811 App. B. */
    GRAIN(0.06479891, "gr"),
    /** Avoirdupois ounce, 1/16 lb. */
    OUNCE(28.349523125, "oz"),
    /** Exactly 453.59237 g, as in NIST SP 811 App. B. */
    POUND(453.59237, "lb");

    private final double grams;
    private final String symbol;

    MassUnit(double grams, String symbol) {
        this.grams = grams;
        this.symbol = symbol;
    }

    public double grams() {
        return grams;
    }

    public String symbol() {
        return symbol;
    }
}
