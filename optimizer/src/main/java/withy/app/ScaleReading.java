package withy.app;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Phrases;
import withy.units.MassUnit;
import withy.units.Quantities;
import withy.units.QuantityText;
import withy.units.UnitsFault;

/** What a scale on a rod's bench says, as typed. */
public final class ScaleReading {
    /** Heaviest thing on such a scale, mg: 5 kg. */
    private static final long MOST_MG = 5_000_000;

    /** A part is hardly ever this many times as heavy or as light as listed; a slip of the decimal point is ten times. ASSUMED. */
    private static final double MOST_TIMES = 5;

    /** Grips and arbors may be cut short before they are weighed. ASSUMED. */
    private static final double MOST_TIMES_CUT = 20;

    /** A finished rod is foretold to a few per cent. ASSUMED. */
    private static final double MOST_TIMES_ROD = 2;

    private ScaleReading() {}

    /** What is odd about a reading of one piece of a part, to be asked back before it is kept; null where nothing is. */
    public static @Nullable String doubt(Part part, long mg, QuantityText units) {
        boolean cut = part.kind() == PartKind.GRIP || part.kind() == PartKind.ARBOR;
        return doubt(part.facts().weightG(), mg, cut ? MOST_TIMES_CUT : MOST_TIMES, units, "scale.doubt");
    }

    /** The same of a finished rod that was foretold. */
    public static @Nullable String doubt(double foretoldG, long mg, QuantityText units) {
        return doubt(foretoldG, mg, MOST_TIMES_ROD, units, "scale.doubtRod");
    }

    private static @Nullable String doubt(double rightG, long mg, double mostDown, QuantityText units, String key) {
        double grams = mg / 1000.0;
        double mostUp = Math.min(mostDown, MOST_TIMES);
        if (rightG <= 0 || grams <= rightG * mostUp && grams >= rightG / mostDown) {
            return null;
        }
        boolean heavier = grams > rightG;
        double times = heavier ? grams / rightG : rightG / grams;
        return Phrases.of(
                key + (heavier ? ".heavier" : ".lighter"),
                units.fineMass(grams),
                String.format(Locale.ROOT, times < 10 ? "%.1f" : "%.0f", times),
                units.fineMass(rightG));
    }

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
