/**
 * The few use cases: propose, measure, check a catalogue, list parts; and the answers they give, the same for terminal, page and paper. May
 * import {@code units catalog brief mechanics rod rules objectives search explain shop}.
 */
@NullMarked
package withy.app;

import org.jspecify.annotations.NullMarked;
