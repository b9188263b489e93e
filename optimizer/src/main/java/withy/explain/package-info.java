/**
 * Says why: what one build gives up against another, in the customer's units and words. Questions to the search go through the Solver of {@code
 * objectives}. May import {@code units catalog brief mechanics rod rules objectives}.
 */
@NullMarked
package withy.explain;

import org.jspecify.annotations.NullMarked;
