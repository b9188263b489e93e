package withy.search;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.objectives.Solver.Query;

/**
 * What decides the ground of a question: equal ones may share it.
 *
 * @param catalog the shop
 * @param query the question without its priorities, ceilings (the budget among them), the parts it forces, and those it refuses that are told by placings
 * @param weightIsBurden true where a milligram more ahead of the reel foot never makes a rod better
 * @param fewArbors true where arbors that another does as well as can be left out
 */
record Opening(Catalog catalog, Query query, boolean weightIsBurden, boolean fewArbors) {

    static Opening of(Catalog catalog, Query query, Aim aim) {
        Brief unpriced = new BriefDraft(query.brief()).budget(null).brief();
        Query open = query.withBrief(unpriced)
                .withPriorities(unpriced.priorities())
                .under(Map.of())
                .forcing(unusual(catalog, query))
                .refusing(notLoose(catalog, query));
        return new Opening(catalog, open, aim.weightIsBurden(), ArborChoice.few(query, aim));
    }

    private static Set<String> notLoose(Catalog catalog, Query query) {
        Set<String> refused = new TreeSet<>(query.refused());
        refused.removeIf(id -> Stations.isLoose(catalog, id));
        return refused;
    }

    /** Forced parts that are open only because they are: parts that are open anyway may as well be left out. */
    private static Set<String> unusual(Catalog catalog, Query query) {
        Set<String> unusual = new TreeSet<>(query.forced());
        unusual.removeIf(id -> {
            Part part = catalog.find(id);
            return part == null || catalog.rates().usual(part, query.brief().rodType());
        });
        return unusual;
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
