package withy.units;

/** Units of length, each with its exact size in millimetres. */
public enum LengthUnit {
    MILLIMETRE(1.0, "mm"),
    CENTIMETRE(10.0, "cm"),
    METRE(1000.0, "m"),
    /** Exactly 25.4 mm: the international inch of 1959, as in NIST SP 811 App. B. */
    INCH(25.4, "in"),
    /** 12 in. */
    FOOT(304.8, "ft"),
    /** 1/64 in, the unit of tip-top tubes. */
    SIXTY_FOURTH(25.4 / 64.0, "/64 in");

    private final double mm;
    private final String symbol;

    LengthUnit(double mm, String symbol) {
        this.mm = mm;
        this.symbol = symbol;
    }

    public double mm() {
        return mm;
    }

    public String symbol() {
        return symbol;
    }
}
