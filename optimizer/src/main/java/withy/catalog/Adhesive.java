package withy.catalog;

/**
 * Two-part glue for seat, grips, arbors, caps; price and weight are those of one pack.
 *
 * @param densityGMl mixed density, g/ml
 * @param packMl volume of one pack, ml
 * @param resinParts resin parts by volume
 * @param hardenerParts hardener parts by volume
 * @param potLifeMin working time, minutes
 * @param cureHours hours until it carries load
 */
public record Adhesive(
        PartFacts facts,
        double densityGMl,
        double packMl,
        double resinParts,
        double hardenerParts,
        double potLifeMin,
        double cureHours)
        implements Part {
    @Override
    public PartKind kind() {
        return PartKind.ADHESIVE;
    }
}
