package withy.catalog;

/**
 * A grip as sold; it may be cut shorter (its end diameters stay) and reamed wider.
 *
 * @param place where on the handle it belongs
 * @param lengthMm length as sold, mm
 * @param shortestMm shortest it may be cut to, mm
 * @param frontOdMm outer diameter of the end toward the tip, mm
 * @param midOdMm outer diameter half-way, mm
 * @param rearOdMm outer diameter of the end toward the butt, mm
 * @param boreMm bore as sold, mm
 * @param reamMaxMm widest it may be reamed, mm
 * @param frontFinished true where the front edge is shaped and needs no check
 * @param rearFinished true where the rear edge is shaped and needs no check
 * @param rearClosed true where the rear end is closed and takes the place of a butt cap
 * @param recessFamily fore grips: hood family it is recessed for; empty = plain
 */
public record Grip(
        PartFacts facts,
        Place place,
        double lengthMm,
        double shortestMm,
        double frontOdMm,
        double midOdMm,
        double rearOdMm,
        double boreMm,
        double reamMaxMm,
        boolean frontFinished,
        boolean rearFinished,
        boolean rearClosed,
        String recessFamily)
        implements Part {

    /** Where a grip belongs. FULL runs unbroken from the butt to the seat. */
    public enum Place {
        REAR,
        BUTT,
        FORE,
        FULL
    }

    @Override
    public PartKind kind() {
        return PartKind.GRIP;
    }
}
