package withy.rules;

import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Material;
import withy.catalog.Part;
import withy.catalog.PartKind;

/** Frames, seats, hoods, keepers and whatever else is of metal reach the corrosion class asked. */
final class Salt implements Rule {
    @Override
    public String code() {
        return "salt";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (corrodes(part)) {
            bench.atLeast(
                    "corrosion-class", part.facts().corrosionClass(), brief.corrosionClass(), Unit.CLASS, part.id());
        } else {
            bench.notApplicable("corrosion-class");
        }
    }

    private static boolean corrodes(Part part) {
        PartKind kind = part.kind();
        boolean holdsMetal = kind == PartKind.GUIDE
                || kind == PartKind.TIP_TOP
                || kind == PartKind.REEL_SEAT
                || kind == PartKind.HOOD
                || kind == PartKind.KEEPER;
        return holdsMetal || metal(part.facts().material());
    }

    private static boolean metal(Material material) {
        return material == Material.ALUMINIUM
                || material == Material.NICKEL_SILVER
                || material == Material.STAINLESS
                || material == Material.TITANIUM
                || material == Material.BRASS;
    }
}
