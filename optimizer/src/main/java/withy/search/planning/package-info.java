/**
 * The whole choice as the planning engine sees it: layout and stations as entities, rules and objectives as constraints that read them from
 * {@code rules} and {@code objectives}. Takes a {@link withy.search.planning.Problem}, hands out builds; its mutable classes stay here. Loaded
 * only when a question is not settled by proof. May import {@code units catalog brief mechanics rod rules objectives} and the engine, but not
 * {@code search}, which hands in what it knows.
 */
@NullMarked
package withy.search.planning;

import org.jspecify.annotations.NullMarked;
