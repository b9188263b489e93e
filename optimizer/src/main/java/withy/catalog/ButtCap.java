package withy.catalog;

/**
 * Closes the butt end; glued or pushed over the blank's butt behind the last grip.
 *
 * @param innerMm inner diameter, mm
 * @param outerMm outer diameter, mm
 * @param addedMm length it adds behind the blank, mm
 * @param soft true for rubber and the like, which stretch over the blank
 * @param counterweightMaxG heaviest weight it can hold, g; 0 = none
 */
public record ButtCap(
        PartFacts facts, double innerMm, double outerMm, double addedMm, boolean soft, double counterweightMaxG)
        implements Part {
    @Override
    public PartKind kind() {
        return PartKind.BUTT_CAP;
    }
}
