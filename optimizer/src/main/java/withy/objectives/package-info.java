/**
 * The six objectives of a rod, the score they make, dominance between builds, and what any solver of the project must offer. May import {@code
 * units catalog brief mechanics rod rules}.
 */
@NullMarked
package withy.objectives;

import org.jspecify.annotations.NullMarked;
