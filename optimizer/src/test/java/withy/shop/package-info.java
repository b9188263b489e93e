/** Tests of the shop's memory with real files and real processes. May import everything. */
@NullMarked
package withy.shop;

import org.jspecify.annotations.NullMarked;
