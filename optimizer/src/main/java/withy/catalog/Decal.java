package withy.catalog;

/**
 * An inscription or mark under the finish.
 *
 * @param widthMm along the blank, mm
 * @param heightMm around the blank, mm
 */
public record Decal(PartFacts facts, double widthMm, double heightMm) implements Part {
    @Override
    public PartKind kind() {
        return PartKind.DECAL;
    }
}
