package withy.catalog;

/**
 * A bushing that fills the gap between seat and blank; cut freely, reamed to the blank and trimmed to the seat's bore.
 *
 * @param odMm outer diameter as sold, mm
 * @param idMm inner diameter as sold, mm
 * @param lengthMm length as sold, mm
 * @param minWallMm thinnest wall it may be left with, mm
 */
public record Arbor(PartFacts facts, double odMm, double idMm, double lengthMm, double minWallMm) implements Part {
    @Override
    public PartKind kind() {
        return PartKind.ARBOR;
    }

    /** Density from weight and geometry, g/mm³. */
    public double densityGMm3() {
        return massMg() / 1000.0 / (Math.PI / 4 * (odMm * odMm - idMm * idMm) * lengthMm);
    }
}
