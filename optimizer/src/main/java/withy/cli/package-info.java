/**
 * The terminal: reads the command line, calls one use case of {@code app}, prints what {@code report} made of it.
 * May import every package but {@code web}.
 */
@NullMarked
package withy.cli;

import org.jspecify.annotations.NullMarked;
