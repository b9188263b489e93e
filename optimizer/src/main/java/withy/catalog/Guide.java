package withy.catalog;

/**
 * One guide: a ring in a frame on one or two feet.
 *
 * @param family the maker's series
 * @param ringSize nominal ring size, mm (about the ring's outer diameter)
 * @param ringIdMm clear inner diameter, mm
 * @param ringMaterial what the ring is made of
 * @param braidOk true where the maker rates the ring for braid
 * @param frameFinish word for the frame's finish; equal through one train
 * @param heightMm blank surface to ring centre, mm
 * @param feet 1 or 2
 * @param footLengthMm length of each foot, mm
 * @param highFrame true for a tall spinning frame
 */
public record Guide(
        PartFacts facts,
        String family,
        double ringSize,
        double ringIdMm,
        RingMaterial ringMaterial,
        boolean braidOk,
        String frameFinish,
        double heightMm,
        int feet,
        double footLengthMm,
        boolean highFrame)
        implements Part {
    @Override
    public PartKind kind() {
        return PartKind.GUIDE;
    }
}
