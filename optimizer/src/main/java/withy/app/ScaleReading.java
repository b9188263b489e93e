package withy.app;

import java.util.EnumSet;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import withy.catalog.Part;
import withy.catalog.PartKind;
import withy.explain.Phrases;
import withy.shop.Shop;
import withy.shop.Weights;
import withy.units.MassUnit;
import withy.units.Quantities;
import withy.units.QuantityText;
import withy.units.UnitsFault;

/** What a scale on a rod's bench says, as typed. */
public final class ScaleReading {
    /** Heaviest thing on such a scale, mg: 5 kg. */
    private static final long MOST_MG = 5_000_000;

    /** So that a reading just at the edge is inside however its sum was rounded. */
    private static final double ROUNDING = 1e-9;

    /**
     * A reading is far off where it misses the weight that was told by more than this many times its ±. The ± is taken as two standard
     * deviations, so that no piece in a million is so far off by chance. ASSUMED.
     */
    private static final double FAR = 4;

    /** Last digit of a coarse bench scale, g: what is off by less is not far, however small the part. ASSUMED. */
    private static final double COARSE_G = 0.1;

    /** But the smallest part is not this many times as heavy or as light as told; a slip of the decimal point is ten times. ASSUMED. */
    private static final double MOST_TIMES = 5;

    /** What is cut to length before it is glued, or used up by and by, may be this many times lighter than listed. ASSUMED. */
    private static final double MOST_TIMES_CUT = 20;

    private static final Set<PartKind> CUT =
            EnumSet.of(PartKind.GRIP, PartKind.ARBOR, PartKind.THREAD, PartKind.FINISH, PartKind.ADHESIVE);

    /** Fewest pieces weighed so far that speak against the list where both differ. ASSUMED. */
    private static final int FEWEST = 2;

    private ScaleReading() {}

    /**
     * What is odd about a reading of one piece of a part, to be asked back before it is booked: listed and read weight in a sentence.
     * Null where nothing is, or where the pieces of it weighed so far are as far off the list.
     */
    public static @Nullable String doubt(Workshop workshop, Part part, long mg, QuantityText units) {
        double listedG = part.facts().weightG();
        double toleranceG = part.facts().weightTolG();
        double mostDown = CUT.contains(part.kind()) ? MOST_TIMES_CUT : MOST_TIMES;
        double grams = mg / 1000.0;
        boolean cut = mostDown > MOST_TIMES && grams < listedG && grams * mostDown >= listedG;
        if (cut || !far(listedG, toleranceG, grams)) {
            return null;
        }
        Weights weighed = weighed(workshop, part.id());
        boolean asWeighed = weighed != null && weighed.pieces() >= FEWEST && !far(weighed.meanG(), toleranceG, grams);
        return asWeighed ? null : told("scale.doubt", part.facts().name(), listedG, toleranceG, grams, units);
    }

    /** The same of a finished rod, against what was foretold of it. */
    public static @Nullable String doubt(JobAnswer job, long mg, QuantityText units) {
        JobAnswer.Foretold foretold = job.predicted();
        double grams = mg / 1000.0;
        return foretold != null && far(foretold.weightOfPiecesG(), foretold.toleranceG(), grams)
                ? told("scale.doubtRod", "", foretold.weightOfPiecesG(), foretold.toleranceG(), grams, units)
                : null;
    }

    /** That a finished rod was weighed already and otherwise, both told; null where it was not. */
    public static @Nullable String again(JobAnswer job, long mg, QuantityText units) {
        var built = job.asBuilt();
        return built == null || Math.round(built.weightG() * 1000) == mg
                ? null
                : Phrases.of("scale.doubtRod.again", units.fineMass(built.weightG()), units.fineMass(mg / 1000.0));
    }

    private static boolean far(double rightG, double toleranceG, double grams) {
        return Math.abs(grams - rightG) > Math.max(FAR * toleranceG, COARSE_G) * (1 + ROUNDING)
                || grams > rightG * MOST_TIMES
                || grams < rightG / MOST_TIMES;
    }

    private static @Nullable Weights weighed(Workshop workshop, String part) {
        if (!Shop.exists(workshop.folder())) {
            return null;
        }
        try (Shop shop = Shop.reading(workshop.folder(), workshop.day())) {
            return shop.scale().weights().get(part);
        }
    }

    private static String told(
            String key, String name, double rightG, double toleranceG, double grams, QuantityText units) {
        return Phrases.of(
                key + (grams > rightG ? ".heavier" : ".lighter"),
                name,
                units.fineMass(rightG),
                units.fineMass(toleranceG),
                units.fineMass(grams),
                units.fineMass(Math.abs(grams - rightG)));
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
