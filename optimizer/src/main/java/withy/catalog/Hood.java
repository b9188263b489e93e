package withy.catalog;

/**
 * A moving hood (with its nut) offered in place of the one a seat is sold with.
 *
 * @param family thread family, equal to the seat's {@code hoodFamily}
 * @param size nominal size, equal to the seat's
 * @param faceOdMm outer diameter of its outer face, mm; replaces the seat's face on that end
 * @param doubleLock true where two nuts or a ratchet hold it
 */
public record Hood(PartFacts facts, String family, int size, double faceOdMm, boolean doubleLock) implements Part {
    @Override
    public PartKind kind() {
        return PartKind.HOOD;
    }
}
