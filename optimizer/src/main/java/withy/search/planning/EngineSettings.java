package withy.search.planning;

/**
 * How long and how carefully the engine works. Ends by counts, never by the clock, so that equal input gives equal answers.
 *
 * @param seed of every random choice
 * @param layouts layouts the kernel completes in the first phase
 * @param slotMoves moves of the second phase, on single stations and groups of them
 * @param lateAcceptance steps back whose score a move of the second phase must reach
 * @param checked true = every score is worked out a second time from nothing and compared; slow, for tests
 */
public record EngineSettings(long seed, long layouts, long slotMoves, int lateAcceptance, boolean checked) {

    /** What the product runs with. */
    public static final EngineSettings STANDARD = new EngineSettings(20_260_302L, 2_000, 20_000, 200, false);

    public EngineSettings {
        if (layouts < 0 || slotMoves < 0 || lateAcceptance < 1) {
            throw new IllegalArgumentException("engine settings of " + layouts + " layouts, " + slotMoves
                    + " slot moves and a late acceptance of " + lateAcceptance
                    + "; moves must be at least 0 and late acceptance at least 1.\nMaybe a number lost its digits.");
        }
    }

    public EngineSettings withSeed(long other) {
        return new EngineSettings(other, layouts, slotMoves, lateAcceptance, checked);
    }

    public EngineSettings with(long otherLayouts, long slots) {
        return new EngineSettings(seed, otherLayouts, slots, lateAcceptance, checked);
    }

    /** The same with every score checked. */
    public EngineSettings checking() {
        return new EngineSettings(seed, layouts, slotMoves, lateAcceptance, true);
    }
}
