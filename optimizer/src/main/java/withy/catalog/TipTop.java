package withy.catalog;

/**
 * The ring on the tip.
 *
 * @param family the maker's series
 * @param tubeMm inner diameter of the tube, mm
 * @param tubeDepthMm how far the tube goes over the tip, mm
 * @param ringSize nominal ring size, mm
 * @param ringIdMm clear inner diameter, mm
 * @param ringMaterial what the ring is made of
 * @param braidOk true where the maker rates the ring for braid
 * @param frameFinish word for the frame's finish; equal through one train
 * @param addedMm length it adds ahead of the blank, to the ring's outer edge, mm
 */
public record TipTop(
        PartFacts facts,
        String family,
        double tubeMm,
        double tubeDepthMm,
        double ringSize,
        double ringIdMm,
        RingMaterial ringMaterial,
        boolean braidOk,
        String frameFinish,
        double addedMm)
        implements Part {
    @Override
    public PartKind kind() {
        return PartKind.TIP_TOP;
    }
}
