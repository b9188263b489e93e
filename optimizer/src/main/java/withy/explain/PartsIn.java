package withy.explain;

import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import withy.objectives.Solver.Query;
import withy.rod.Build;

/**
 * Parts that must be in, and what is asked of rods that hold them while some rules are let go.
 *
 * @param inquiry to ask
 * @param parts ids
 */
record PartsIn(Inquiry inquiry, Set<String> parts) {

    /** The question with the parts in and without some rules. */
    Query without(Set<String> rules) {
        return inquiry.query().forcing(parts).withRulebook(inquiry.rulebooks().without(rules));
    }

    /** Some rod with the parts that breaks no rule but these, on the best rod's blank where one can be built there, or null. */
    @Nullable
    Found any(Set<String> rules) {
        Query query = without(rules);
        Found first = inquiry.first();
        Build near = first == null ? null : inquiry.any(query.forcing(onBlank(first)));
        Build build = near == null ? inquiry.any(query) : near;
        return build == null ? null : inquiry.measured(build);
    }

    private Set<String> onBlank(Found rod) {
        Set<String> both = new TreeSet<>(parts);
        both.add(rod.build().layout().blankId());
        return both;
    }
}
