/**
 * Text for terminal and paper from the answers of {@code app}; no arithmetic beyond formatting. May import {@code units catalog brief mechanics
 * rod rules objectives search explain shop app}.
 */
@NullMarked
package withy.report;

import org.jspecify.annotations.NullMarked;
