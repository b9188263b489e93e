package withy.catalog;

/** How the sections of a blank join. */
public enum FerruleKind {
    NONE,
    PUT_OVER,
    SPIGOT,
    SLEEVE
}
