package withy.rules;

import withy.brief.Brief;
import withy.catalog.Blank;
import withy.catalog.Catalog;
import withy.catalog.Part;

/**
 * The blank is rated for the usual lure and for the heaviest; the builder's own rating is used where he recorded one. A lightest lure under
 * {@value #LIGHTEST_SHARE} of the rated minimum is warned of (common practice).
 */
final class LureRange implements Rule {
    static final String CODE = "lure-range";
    static final double LIGHTEST_SHARE = 0.7;

    @Override
    public String code() {
        return CODE;
    }

    @Override
    public void onCandidate(Brief brief, Catalog catalog, Part part, Bench bench) {
        if (!(part instanceof Blank blank)) {
            return;
        }
        Brief.Lure lure = brief.lure();
        Double ownMin = blank.ownLureMinG();
        Double ownMax = blank.ownLureMaxG();
        double min = ownMin != null ? ownMin : blank.lureMinG();
        double max = ownMax != null ? ownMax : blank.lureMaxG();
        bench.atLeast("usual", lure.usualG(), min, Unit.G, blank.id());
        bench.atMost("heaviest", lure.heaviestG(), max, Unit.G, blank.id());
        bench.warnBelow("lightest", lure.lightestG(), LIGHTEST_SHARE * min, Unit.G, blank.id());
    }
}
