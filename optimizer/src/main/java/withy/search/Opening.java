package withy.search;

import java.util.Map;
import java.util.Objects;
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
        return of(catalog, query, aim, unpriced(query.brief()));
    }

    /** A brief without its budget. */
    static Brief unpriced(Brief brief) {
        return new BriefDraft(brief).budget(null).brief();
    }

    /**
     * The same.
     *
     * @param unpriced the question's brief {@link #unpriced}; one object for the same brief is soon compared
     */
    static Opening of(Catalog catalog, Query query, Aim aim, Brief unpriced) {
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
                && same(query, one.query);
    }

    /** All of two questions that is left here: priorities are the brief's own, and there are no ceilings. */
    private static boolean same(Query one, Query other) {
        return Objects.equals(one.brief(), other.brief())
                && Objects.equals(one.rulebook(), other.rulebook())
                && one.forced().equals(other.forced())
                && one.refused().equals(other.refused())
                && one.fixed().equals(other.fixed())
                && one.empty().equals(other.empty())
                && Objects.equals(one.reelFootMm(), other.reelFootMm());
    }

    @Override
    public int hashCode() {
        return Objects.hash(query.forced(), query.refused(), query.reelFootMm());
    }
}
