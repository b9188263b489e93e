package withy.search;

import withy.brief.Brief;
import withy.catalog.Catalog;
import withy.objectives.Scoring;
import withy.objectives.Solver.Query;
import withy.rod.Setting;
import withy.rod.Tariff;

/**
 * What a question wants of a build: what a score is made of, and the ceilings it must keep.
 *
 * @param brief the brief
 * @param scoring its score under the question's priorities
 * @param bounds its ceilings
 */
record Aim(Brief brief, Scoring scoring, Bounds bounds) {
    /** Further than any tip, mm. */
    private static final double FURTHEST_MM = 6000;

    static Aim of(Catalog catalog, Query query) {
        Brief brief = query.brief();
        return new Aim(
                brief,
                Scoring.of(brief, catalog.rates(), query.priorities()),
                Bounds.of(query, new Tariff(catalog.rates(), brief)));
    }

    /** True where a milligram more ahead of the reel foot never makes a rod better, wherever it hangs. */
    boolean weightIsBurden() {
        long own = scoring.perOutsideMgMm();
        return bounds.outsideMgMm() == Long.MAX_VALUE && leastPerMgAhead(own) >= 0 && leastPerMgAhead(-own) >= 0;
    }

    private double leastPerMgAhead(long slope) {
        Linear k = new Prices(slope, 0, 0, 0, 0).linear(this, 0);
        return k.leastPerMg(0, FURTHEST_MM, Setting.armMm(brief));
    }
}
