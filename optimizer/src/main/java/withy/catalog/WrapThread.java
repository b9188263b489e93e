package withy.catalog;

/**
 * Wrapping thread; price and weight are those of one spool.
 *
 * @param letter size letter (A, B, C, D …), maker's own
 * @param diameterMm thread diameter, mm
 * @param tex linear density, g/km
 * @param metresPerSpool metres on one spool
 * @param colourPreserved true where it keeps its colour without a preserver
 */
public record WrapThread(
        PartFacts facts, String letter, double diameterMm, double tex, double metresPerSpool, boolean colourPreserved)
        implements Part {
    @Override
    public PartKind kind() {
        return PartKind.THREAD;
    }
}
