/**
 * Quantities as values: read and printed at the edge, in the units a builder types. Inside the program everything is
 * millimetre, gram, newton-millimetre and minor money units. Imports nothing of ours.
 */
@NullMarked
package withy.units;

import org.jspecify.annotations.NullMarked;
