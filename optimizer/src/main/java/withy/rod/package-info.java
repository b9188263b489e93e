/**
 * A build (ids) and the rod it makes (measured once): where each part lies, what it weighs, how the rod hangs in the hand, what it costs. May
 * import {@code units}, {@code catalog}, {@code brief}, {@code mechanics}.
 */
@NullMarked
package withy.rod;

import org.jspecify.annotations.NullMarked;
