package withy.catalog;

/** Where along its length a blank bends, from the whole (slow) to the tip only (extra fast). */
public enum Action {
    SLOW,
    MODERATE,
    MODERATE_FAST,
    FAST,
    EXTRA_FAST
}
