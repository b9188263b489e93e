package withy.rules;

import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.catalog.Guide;
import withy.catalog.Part;
import withy.catalog.TipTop;

/** Braid runs only through rings rated for braid. */
final class RingForLine implements Rule {
    @Override
    public String code() {
        return "ring-for-line";
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (part instanceof Guide guide) {
            ring(brief, guide.braidOk(), part.id(), bench);
        } else if (part instanceof TipTop tipTop) {
            ring(brief, tipTop.braidOk(), part.id(), bench);
        }
    }

    private static void ring(Brief brief, boolean braidOk, String partId, Bench bench) {
        if (brief.line().kind() == Brief.LineKind.BRAID) {
            bench.holds("braid", braidOk, partId);
        } else {
            bench.notApplicable("braid");
        }
    }
}
