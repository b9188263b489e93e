/**
 * Measures what the optimizer takes, and holds a few of its optima against a second look. May import every package of the optimizer; none of them
 * may import it.
 */
@NullMarked
package withy.benchmarks;

import org.jspecify.annotations.NullMarked;
