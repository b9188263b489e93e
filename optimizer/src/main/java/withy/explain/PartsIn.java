package withy.explain;

import java.util.Set;
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

    /** Some rod with the parts that breaks no rule but these, or null. */
    @Nullable
    Found any(Set<String> rules) {
        Build build = inquiry.any(without(rules));
        return build == null ? null : inquiry.measured(build);
    }
}
