package withy.brief;

/** The six things traded against each other; names are the same in briefs, answers and commands. */
public enum Objective {
    WEIGHT("weight", "g"),
    BALANCE("balance", "N·mm"),
    SWING_WEIGHT("swingWeight", "kg·m²"),
    PRICE("price", "minor"),
    STYLE("style", "points"),
    DURABILITY("durability", "classes");

    private final String key;
    private final String unit;

    Objective(String key, String unit) {
        this.key = key;
        this.unit = unit;
    }

    /** Name in files and answers. */
    public String key() {
        return key;
    }

    /** Unit of its value. */
    public String unit() {
        return unit;
    }

    /** True where more is better. */
    public boolean moreIsBetter() {
        return this == STYLE || this == DURABILITY;
    }
}
