/**
 * A customer's brief: wishes, priorities, the defaults for what was left out, and the reading and checking of brief files. May import {@code
 * units} and {@code catalog}.
 */
@NullMarked
package withy.brief;

import org.jspecify.annotations.NullMarked;
