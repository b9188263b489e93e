/**
 * Second opinions on the product: every build of small catalogues, an independent solver, and every rule and figure written again. May import
 * everything.
 */
@NullMarked
package withy.oracle;

import org.jspecify.annotations.NullMarked;
