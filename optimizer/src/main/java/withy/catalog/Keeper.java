package withy.catalog;

/**
 * A hook keeper, wrapped on ahead of the handle.
 *
 * @param feet 1 or 2
 * @param footLengthMm length of each foot, mm
 */
public record Keeper(PartFacts facts, int feet, double footLengthMm) implements Part {
    @Override
    public PartKind kind() {
        return PartKind.KEEPER;
    }
}
