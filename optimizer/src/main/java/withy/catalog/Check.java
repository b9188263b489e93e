package withy.catalog;

/**
 * A winding check or trim ring: a thin ring that finishes an edge between grip or seat and the blank.
 *
 * @param innerMm inner diameter, mm
 * @param outerMm outer diameter, mm
 * @param widthMm length along the blank, mm
 * @param soft true where it stretches over the blank
 */
public record Check(PartFacts facts, double innerMm, double outerMm, double widthMm, boolean soft) implements Part {
    @Override
    public PartKind kind() {
        return PartKind.CHECK;
    }
}
