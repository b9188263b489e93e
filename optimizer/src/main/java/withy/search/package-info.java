/**
 * Choosing: candidates fitted to the brief, exact completion of a layout, proof over layouts, the offer of three, and the engine's model in
 * {@code search.planning}. Hands out builds and bounds, never planning objects. May import {@code units catalog brief mechanics rod rules
 * objectives}.
 */
@NullMarked
package withy.search;

import org.jspecify.annotations.NullMarked;
