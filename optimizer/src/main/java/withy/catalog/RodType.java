package withy.catalog;

/** Kind of rod. Surf spinning has its own tables for counts, spacing and reach. */
public enum RodType {
    SPINNING,
    CASTING,
    SURF_SPINNING;

    /** True where the reel hangs below the rod and the line leaves a fixed spool. */
    public boolean spinningReel() {
        return this != CASTING;
    }
}
