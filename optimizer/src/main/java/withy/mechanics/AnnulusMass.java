package withy.mechanics;

/**
 * Mass of the filling between a straight bore and the tapering blank inside it: arbors, and the blank's own shape cut out of
 * a piece bored straight. m = ρ·V of {@link Frustum} with the blank's diameter as its bore. Valid while the blank fits.
 */
public final class AnnulusMass {
    private AnnulusMass() {}

    /**
     * The filling as masses along the rod.
     *
     * @param profile blank's outer diameter, mm
     * @param fromMm butt end of the filling, mm from the butt
     * @param toMm tip end of the filling
     * @param outerMm diameter that is filled up to, mm
     * @param densityGPerCm3 density of the filling
     */
    public static MassSum around(
            TaperProfile profile, double fromMm, double toMm, double outerMm, double densityGPerCm3) {
        MassSum sum = MassSum.NONE;
        double from = fromMm;
        double boreAtFrom = profile.at(fromMm);
        for (int i = 0; i < profile.stations(); i++) {
            double x = profile.stationMm(i);
            if (x > fromMm && x < toMm) {
                if (x > from) {
                    sum = sum.plus(new Frustum(x - from, outerMm, outerMm, boreAtFrom, profile.valueAtStation(i))
                            .at(from, densityGPerCm3));
                    from = x;
                }
                boreAtFrom = profile.valueAtStation(i);
            }
        }
        return sum.plus(
                new Frustum(toMm - from, outerMm, outerMm, boreAtFrom, profile.at(toMm)).at(from, densityGPerCm3));
    }
}
