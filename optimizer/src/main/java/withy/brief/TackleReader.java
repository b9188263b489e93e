package withy.brief;

import org.jspecify.annotations.Nullable;
import withy.brief.Brief.Lure;
import withy.brief.Brief.Reel;
import withy.catalog.RodType;

/** Reads lure and reel. */
final class TackleReader {
    private final Fields root;
    private final Notes notes;

    TackleReader(Fields root) {
        this.root = root;
        this.notes = root.notes();
    }

    Lure lure(RodType type) {
        Fields fields = root.object("lure");
        Double lightest = fields.quantity("lightest", Quantity.MASS, Bounds.LURE_G);
        Double usual = fields.quantity("usual", Quantity.MASS, Bounds.LURE_G);
        Double heaviest = fields.quantity("heaviest", Quantity.MASS, Bounds.LURE_G);
        fields.finish();
        if (lightest == null && usual == null && heaviest == null) {
            Lure whole = usualLure(type);
            notes.taken(
                    Default.LURE,
                    Bounds.plain(whole.lightestG()) + " to " + Bounds.plain(whole.heaviestG()) + ", usually "
                            + Bounds.plain(whole.usualG()));
            return whole;
        }
        if (usual == null) {
            usual = heaviest != null
                    ? Math.max(tenth(0.6 * heaviest), lightest == null ? 0 : lightest)
                    : tenth(2 * (lightest == null ? 0 : lightest));
            notes.taken(Default.LURE_USUAL, usual);
        }
        if (lightest == null) {
            lightest = tenth(usual / 2);
            notes.taken(Default.LURE_LIGHTEST, lightest);
        }
        if (heaviest == null) {
            heaviest = tenth(usual * 1.5);
            notes.taken(Default.LURE_HEAVIEST, heaviest);
        }
        if (!(lightest <= usual && usual <= heaviest)) {
            notes.fault(
                    "lure",
                    Bounds.plain(lightest) + ", " + Bounds.plain(usual) + ", " + Bounds.plain(heaviest) + " g",
                    "lightest ≤ usual ≤ heaviest",
                    "Maybe two of the three are swapped, or one is in another unit.");
        }
        return new Lure(lightest, usual, heaviest);
    }

    /** ASSUMED: a middle rod of the type. */
    private static Lure usualLure(RodType type) {
        return switch (type) {
            case SPINNING -> new Lure(5, 10, 20);
            case CASTING -> new Lure(7, 14, 28);
            case SURF_SPINNING -> new Lure(80, 110, 150);
        };
    }

    private static double tenth(double grams) {
        return Bounds.LURE_G.clamp(Math.round(grams * 10) / 10.0);
    }

    Reel reel(RodType type, Lure lure) {
        Fields fields = root.object("reel");
        Integer size = fields.whole("size", 0, 30_000);
        Double foot = fields.quantity("footLength", Quantity.LENGTH, Bounds.FOOT_MM);
        Double thick = fields.quantity("footThickness", Quantity.LENGTH, Bounds.FOOT_THICK_MM);
        Double wide = fields.quantity("footWidth", Quantity.LENGTH, Bounds.FOOT_WIDE_MM);
        Double mass = fields.quantity("mass", Quantity.MASS, Bounds.REEL_G);
        Double offset = fields.quantity("centreOffset", Quantity.LENGTH, Bounds.OFFSET_MM);
        Double lip = fields.quantity("lipDiameter", Quantity.LENGTH, Bounds.LIP_MM);
        Double stem = fields.quantity("stemHeight", Quantity.LENGTH, Bounds.STEM_MM);
        fields.finish();
        boolean measured = foot != null && thick != null && wide != null && mass != null && lip != null && stem != null;
        if (size == null || size == 0 && !measured) {
            size = measured ? 0 : ReelTable.usualSize(type, lure.usualG(), lure.heaviestG());
            if (!measured) {
                notes.taken(Default.REEL_SIZE, size);
            }
        }
        Reel usual = ReelTable.of(type, size).reel(size);
        return new Reel(
                size,
                or(foot, usual.footLengthMm(), Default.REEL_FOOT),
                or(thick, usual.footThicknessMm(), Default.REEL_THICKNESS),
                or(wide, usual.footWidthMm(), Default.REEL_WIDTH),
                or(mass, usual.massG(), Default.REEL_MASS),
                or(offset, usual.centreOffsetMm(), Default.REEL_OFFSET),
                or(lip, usual.lipDiameterMm(), Default.REEL_LIP),
                or(stem, usual.stemHeightMm(), Default.REEL_STEM));
    }

    private double or(@Nullable Double told, double usual, Default which) {
        if (told != null) {
            return told;
        }
        notes.taken(which, usual);
        return usual;
    }
}
