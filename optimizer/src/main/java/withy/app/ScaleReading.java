package withy.app;

import withy.units.MassUnit;
import withy.units.Quantities;
import withy.units.UnitsFault;

/** What a scale on a rod's bench says, as typed. */
public final class ScaleReading {
    /** Heaviest thing on such a scale, mg: 5 kg. */
    private static final long MOST_MG = 5_000_000;

    private ScaleReading() {}

    /** Milligrams of a weight such as 18.5 g or 0.65 oz; throws where it can't be read or is no weight of a rod or its part. */
    public static long milligrams(String told) {
        long mg = Math.round(Quantities.mass(told, MassUnit.GRAM).grams() * 1000);
        if (mg < 1 || mg > MOST_MG) {
            throw new UnitsFault(
                    told, 0, told, "0.001 g to " + MOST_MG / 1000 + " g", "Maybe the decimal point slipped.");
        }
        return mg;
    }
}
