package withy.brief;

/** The six things traded against each other; names are the same in briefs, answers and commands. */
public enum Objective {
    WEIGHT("weight", "weight", "g"),
    BALANCE("balance", "balance", "N·mm"),
    SWING_WEIGHT("swingWeight", "swing weight", "kg·m²"),
    PRICE("price", "price", "minor"),
    STYLE("style", "look", "points"),
    DURABILITY("durability", "sturdiness", "classes");

    private final String key;
    private final String word;
    private final String unit;

    Objective(String key, String word, String unit) {
        this.key = key;
        this.word = word;
        this.unit = unit;
    }

    /** Name in files and answers. */
    public String key() {
        return key;
    }

    /** What a builder calls it. */
    String word() {
        return word;
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
