package withy.units;

/** Which units the reader wants to see. */
public enum UnitSystem {
    METRIC,
    IMPERIAL,
    /** Metric, with imperial in brackets. */
    BOTH
}
