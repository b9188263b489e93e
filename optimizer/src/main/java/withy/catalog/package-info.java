/**
 * The shop's catalogue: one record a part kind, the shop's rates, and the reading and checking of the builder's own files. May import {@code
 * units} only. The CSV library lives here.
 */
@NullMarked
package withy.catalog;

import org.jspecify.annotations.NullMarked;
