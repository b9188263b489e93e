package withy.search;

import java.util.Map;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.objectives.Solver.Query;

/**
 * What decides the ground of a question: equal ones may share it.
 *
 * @param catalog the shop
 * @param query the question without its priorities and ceilings, the budget among them
 * @param weightIsBurden true where a milligram more ahead of the reel foot never makes a rod better
 * @param fewArbors true where arbors that another does as well as can be left out
 */
record Opening(Catalog catalog, Query query, boolean weightIsBurden, boolean fewArbors) {

    static Opening of(Catalog catalog, Query query, Aim aim) {
        Brief unpriced = new BriefDraft(query.brief()).budget(null).brief();
        Query open =
                query.withBrief(unpriced).withPriorities(unpriced.priorities()).under(Map.of());
        return new Opening(catalog, open, aim.weightIsBurden(), ArborChoice.few(query, aim));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Opening one
                && catalog == one.catalog
                && weightIsBurden == one.weightIsBurden
                && fewArbors == one.fewArbors
                && query.equals(one.query);
    }

    @Override
    public int hashCode() {
        return query.hashCode();
    }
}
