/**
 * The rod as a machine: how stiff it is, how it bends under a weight and a line, how quick it is, what its guide train and wraps cost, how it
 * fits the hand, how sure its weight is. Computed from a measured rod. May import {@code units}, {@code catalog}, {@code brief},
 * {@code mechanics}, {@code rod}.
 */
@NullMarked
package withy.machine;

import org.jspecify.annotations.NullMarked;
