/**
 * Makes the sample catalogues: invented makers, weights that follow from geometry and density, a documented seed. Used by nothing that a user
 * runs on his own parts. May import {@code catalog} and {@code units}.
 */
@NullMarked
package withy.catalog.sample;

import org.jspecify.annotations.NullMarked;
