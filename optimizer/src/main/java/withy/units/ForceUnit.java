package withy.units;

/**
 * Units of force and line strength, each with its exact size in newtons. A strength "10 lb" or "4.5 kg" means the weight of
 * that mass at standard gravity.
 */
public enum ForceUnit {
    NEWTON(1.0, "N"),
    GRAM_FORCE(Force.STANDARD_GRAVITY_M_S2 / 1000.0, "g"),
    KILOGRAM_FORCE(Force.STANDARD_GRAVITY_M_S2, "kg"),
    OUNCE_FORCE(0.028349523125 * Force.STANDARD_GRAVITY_M_S2, "oz"),
    POUND_FORCE(0.45359237 * Force.STANDARD_GRAVITY_M_S2, "lb");

    private final double newtons;
    private final String symbol;

    ForceUnit(double newtons, String symbol) {
        this.newtons = newtons;
        this.symbol = symbol;
    }

    public double newtons() {
        return newtons;
    }

    public String symbol() {
        return symbol;
    }
}
