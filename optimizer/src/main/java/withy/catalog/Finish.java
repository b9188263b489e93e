package withy.catalog;

/**
 * Two-part coat over the wraps; price and weight are those of one pack.
 *
 * @param densityGMl mixed density, g/ml
 * @param packMl volume of one pack, ml
 * @param resinParts resin parts by volume
 * @param hardenerParts hardener parts by volume
 * @param potLifeMin working time, minutes
 * @param recoatHours hours before the next coat
 * @param cureHours hours until it can be used
 */
public record Finish(
        PartFacts facts,
        double densityGMl,
        double packMl,
        double resinParts,
        double hardenerParts,
        double potLifeMin,
        double recoatHours,
        double cureHours)
        implements Part {
    @Override
    public PartKind kind() {
        return PartKind.FINISH;
    }
}
