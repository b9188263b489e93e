package withy.rules;

/** Units of compared values and the grid they are compared on. */
public enum Unit {
    MM("mm", 100),
    G("g", 1000),
    KG("kg", 1000),
    MINOR("minor", 1),
    COUNT("", 1),
    CLASS("class", 1),
    RATIO("×", 1000),
    GAUGE("gauge", 100),
    RING_SIZE("ring size", 10);

    private final String symbol;
    private final int perUnit;

    Unit(String symbol, int perUnit) {
        this.symbol = symbol;
        this.perUnit = perUnit;
    }

    /** Symbol told beside the number. */
    public String symbol() {
        return symbol;
    }

    /** Value on the integer grid, rounded half up (mm to 0.01, g to 1 mg, money to minor units). */
    public long quantise(double value) {
        return Math.round(value * perUnit);
    }
}
