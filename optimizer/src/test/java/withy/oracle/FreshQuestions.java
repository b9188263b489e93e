package withy.oracle;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.jspecify.annotations.Nullable;
import withy.brief.Brief;
import withy.brief.BriefDraft;
import withy.brief.Objective;
import withy.catalog.Catalog;
import withy.catalog.Part;
import withy.explain.Inquiry;
import withy.fixture.Changed;
import withy.objectives.Solver.Query;
import withy.objectives.Solver.Solution;
import withy.objectives.Solver.Watch;
import withy.rod.Build;
import withy.rod.Rod;
import withy.rules.Rulebook;
import withy.search.Search;

/** Whole questions on one catalogue, each put to a search that knows nothing of those before; what is not proven fails. */
final class FreshQuestions {
    private final Catalog catalog;

    FreshQuestions(Catalog catalog) {
        this.catalog = catalog;
    }

    static Query query(Brief brief) {
        return Query.of(brief, Rulebook.standard());
    }

    static Solution solved(Catalog shop, Query query) {
        Solution solution = new Search(shop).solve(query, Watch.NONE);
        assertTrue(solution.proven(), "not proven: " + query);
        return solution;
    }

    @Nullable
    Build best(Brief brief) {
        return solved(catalog, query(brief)).build();
    }

    /**
     * Some build or none. A build is its own proof, so the first one found ends the question, but that there is none must be proven. Where there is a
     * budget the cheapest build is asked for as if there were none, and its price held against it.
     */
    @Nullable
    Build some(Query query) {
        Long budget = query.brief().budgetMinor();
        boolean bites = budget != null
                && query.rulebook().rules().stream()
                        .anyMatch(rule -> rule.code().equals("budget"));
        Brief free = new BriefDraft(query.brief()).budget(null).brief();
        Query asked = bites ? query.withBrief(free).withPriorities(Inquiry.only(Objective.PRICE)) : query;
        AtomicReference<Build> first = new AtomicReference<>();
        Watch watch = new Watch(() -> first.get() != null, (build, objectives, score) -> {
            if (!bites || Rod.measure(catalog, free, build).figures().priceMinor() <= budget) {
                first.compareAndSet(null, build);
            }
        });
        Solution solution = new Search(catalog).solve(asked, watch);
        assertTrue(first.get() != null || solution.proven(), "neither a build nor the proof of none: " + query);
        return first.get();
    }

    @Nullable
    Build without(Brief brief, String id, Set<String> rules) {
        Rulebook book = Rulebook.standard();
        for (String rule : rules) {
            book = book.without(rule);
        }
        return some(Query.of(brief, book).forcing(Set.of(id)));
    }

    static boolean wins(Catalog shop, Query query, String id) {
        Build build = solved(shop, query).build();
        return build != null && Compared.holds(build, Set.of(id));
    }

    boolean possible(Brief brief, Set<String> kept) {
        for (Brief one : Unasked.but(brief, kept)) {
            if (some(query(one)) != null) {
                return true;
            }
        }
        return false;
    }

    Catalog with(String id, String path, Object value) {
        List<Part> parts = new ArrayList<>();
        for (Part part : catalog.byId().values()) {
            parts.add(part.id().equals(id) ? (Part) Changed.with((Record) part, path, value) : part);
        }
        return new Catalog(catalog.rates(), catalog.asOf(), catalog.hash(), parts);
    }
}
